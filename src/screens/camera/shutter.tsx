import type { Photo } from '../../core/records.ts';
import { StoredPicture } from '../../parts/stored-picture.tsx';
import css from './camera.module.css';

/** The row under the thumb: the shutter in the middle, the ghost on the thumb's side, the last photograph on the other. */
export function Shutter({
  disabled,
  busy,
  label,
  onPress,
  ghostHidden,
  onGhost,
  last,
}: {
  readonly disabled: boolean;
  readonly busy: boolean;
  readonly label: string;
  readonly onPress: () => void;
  readonly ghostHidden: boolean;
  /** Shows or hides the ghost; undefined where there is none. */
  readonly onGhost: (() => void) | undefined;
  readonly last: { readonly photo: Photo; readonly href: string } | undefined;
}) {
  return (
    <div class={css.row}>
      <span>
        {last && (
          <a class={css.last} href={last.href} aria-label="The last photograph">
            <StoredPicture sha256={last.photo.thumbnail} alt="" />
          </a>
        )}
      </span>
      <button
        type="button"
        class={css.shutter}
        aria-label={label}
        disabled={disabled}
        data-busy={busy || undefined}
        onClick={onPress}
      />
      <span>
        {onGhost && (
          <button type="button" class={css.plain} aria-pressed={!ghostHidden} onClick={onGhost}>
            {ghostHidden ? 'Show the ghost' : 'Hide the ghost'}
          </button>
        )}
      </span>
    </div>
  );
}
