import { useId } from 'preact/hooks';
import css from './day-field.module.css';

const EARLIEST = '1900-01-01';
const LATEST = '2199-12-31';

/** A day of the calendar, by the platform's own picker; `YYYY-MM-DD`, or null when empty. */
export function DayField({
  label,
  hint,
  value,
  min,
  max,
  onChange,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly value: string | null;
  readonly min?: string;
  readonly max?: string;
  readonly onChange: (day: string | null) => void;
}) {
  const id = useId();
  return (
    <div class={css.field}>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="date"
        value={value ?? ''}
        min={min ?? EARLIEST}
        max={max ?? LATEST}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onInput={(event) => {
          const day = event.currentTarget.value;
          // A year half typed reads as 0002 or 0020: it is left standing until it is one.
          if (day === '') onChange(null);
          else if (day >= EARLIEST && day <= LATEST) onChange(day);
        }}
      />
      {hint && <p id={`${id}-hint`}>{hint}</p>}
    </div>
  );
}
