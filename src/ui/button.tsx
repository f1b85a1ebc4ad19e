import type { ComponentChildren } from 'preact';
import css from './button.module.css';

interface Props {
  readonly children: ComponentChildren;
  readonly onPress?: () => void;
  readonly href?: string;
  /** `main` once a screen: the thing one came to do. `quiet` sits in text. */
  readonly look?: 'main' | 'plain' | 'quiet';
  readonly pressed?: boolean;
  readonly disabled?: boolean;
  readonly wide?: boolean;
  readonly label?: string;
  readonly type?: 'button' | 'submit';
  readonly expanded?: boolean;
}

/** A button, or a link that looks like one when it goes somewhere. */
export function Button({
  children,
  onPress,
  href,
  look = 'plain',
  pressed,
  disabled,
  wide,
  label,
  type = 'button',
  expanded,
}: Props) {
  const looks = { class: css.button, 'data-look': look, 'data-wide': wide || undefined, 'aria-label': label };
  if (href) {
    return (
      <a {...looks} href={href} onClick={onPress}>
        {children}
      </a>
    );
  }
  return (
    <button
      {...looks}
      type={type}
      onClick={onPress}
      aria-pressed={pressed}
      aria-expanded={expanded}
      disabled={disabled}
    >
      {children}
    </button>
  );
}

/** The main action with the lesser ones beside it, under the thumb of the hand in use; below one another where words are large. */
export const ActionRow = ({ children }: { readonly children: ComponentChildren }) => (
  <div class={css.row}>{children}</div>
);
