import type { Spot } from '../../core/mark-geometry.ts';
import { Button } from '../../ui/button.tsx';
import css from './measure.module.css';

/** Buttons for the named spots a tool wants tapped; the pressed one is what the next tap places. */
export function SpotChoice<T extends string>({
  label,
  names,
  placed,
  value,
  onChange,
}: {
  readonly label: string;
  readonly names: Readonly<Record<T, string>>;
  readonly placed: Readonly<Partial<Record<T, Spot>>>;
  readonly value: T;
  readonly onChange: (id: T) => void;
}) {
  return (
    <fieldset class={css.row} aria-label={label}>
      {(Object.keys(names) as T[]).map((id) => (
        <Button key={id} pressed={value === id} onPress={() => onChange(id)}>
          {names[id]}
          {placed[id] && <span aria-hidden="true"> ✓</span>}
          {placed[id] && <span class="visually-hidden">, placed</span>}
        </Button>
      ))}
    </fieldset>
  );
}
