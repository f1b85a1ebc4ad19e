import { toPixel } from '../../core/mark-geometry.ts';
import { Button } from '../../ui/button.tsx';
import type { Desk } from './desk.ts';
import css from './measure.module.css';
import type { Pixels } from './use-pixels.ts';

const STEPS = [
  ['←', 'Left', -1, 0],
  ['↑', 'Up', 0, -1],
  ['↓', 'Down', 0, 1],
  ['→', 'Right', 1, 0],
] as const;

/** Picks one point after another and moves it by a screen pixel: for what a finger is too broad for. */
export function Nudge({ desk: { stage, size } }: { readonly desk: Desk }) {
  const { handles, onMove, onRemove } = stage.work.value;
  if (handles.length === 0) return null;
  const held = stage.held.value;
  const pick = (by: number): void => {
    const next = held === null ? (by > 0 ? 0 : handles.length - 1) : (held + by + handles.length) % handles.length;
    stage.held.value = next;
    stage.said.value = `Point ${next + 1} of ${handles.length}.`;
  };
  const nudge = (dx: number, dy: number): void => {
    const spot = held === null ? undefined : handles[held];
    if (held === null || !spot) return;
    const by = 1 / (stage.view.value?.zoom ?? 1);
    const [x, y] = toPixel(spot, size);
    onMove(held, [(x + dx * by) / size.width, (y + dy * by) / size.height], true);
  };
  return (
    <fieldset class={css.nudge} aria-label="Points">
      <button type="button" aria-label="Point before" onClick={() => pick(-1)}>
        ‹
      </button>
      <span class="figures">{held === null ? 'Points' : `${held + 1} of ${handles.length}`}</span>
      <button type="button" aria-label="Next point" onClick={() => pick(1)}>
        ›
      </button>
      {held !== null &&
        STEPS.map(([sign, label, dx, dy]) => (
          <button key={label} type="button" aria-label={`Nudge: ${label}`} onClick={() => nudge(dx, dy)}>
            {sign}
          </button>
        ))}
      {held !== null && onRemove && (
        <button
          type="button"
          class={css.word}
          onClick={() => {
            onRemove(held);
            stage.held.value = null;
          }}
        >
          Remove point
        </button>
      )}
    </fieldset>
  );
}

/** How far the worker is, and a way to stop it. Keeps its place while there is nothing to say. */
export function Busy({ pixels }: { readonly pixels: Pixels }) {
  if (pixels.fault)
    return (
      <p class={css.refused} role="alert">
        {pixels.fault}
      </p>
    );
  if (!pixels.busy) return null;
  const { name, share } = pixels.busy;
  return (
    <p class={css.busy}>
      <progress value={share} max={1} aria-label={name} />
      <span>{name}</span>
      <Button look="quiet" onPress={pixels.stop}>
        Stop
      </Button>
    </p>
  );
}

/** A figure with what it rests on. */
export function Figure({
  label,
  value,
  by,
}: {
  readonly label: string;
  readonly value: string;
  readonly by?: string | undefined;
}) {
  return (
    <div class={css.figure}>
      <dt>{label}</dt>
      <dd>
        <b class="figures">{value}</b>
        {by && <small>{by}</small>}
      </dd>
    </div>
  );
}
