import { useId } from 'preact/hooks';
import css from './range-field.module.css';

/** A value found by sliding while something shows at once what it does. */
export function RangeField({
  label,
  said,
  onChange,
  ...range
}: {
  readonly label: string;
  /** The value in words, shown beside the label and read out. */
  readonly said: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  readonly onChange: (value: number) => void;
}) {
  const id = useId();
  return (
    <div class={css.range}>
      <label for={id}>{label}</label>
      <output for={id} class="figures">
        {said}
      </output>
      <input
        id={id}
        type="range"
        {...range}
        aria-valuetext={said}
        onInput={({ currentTarget }) => onChange(Number(currentTarget.value))}
      />
    </div>
  );
}
