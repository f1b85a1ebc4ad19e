import { useId } from 'preact/hooks';
import css from './day-field.module.css';

/** `2026-10-20T18:30` where the phone is, from UTC: what the platform's picker shows. */
function shown(instant: string): string {
  const at = new Date(instant);
  return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}

/** A day and an hour, by the platform's own picker; a moment in UTC comes out. What is half typed is left standing. */
export function MomentField({
  label,
  hint,
  value,
  onChange,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly onChange: (instant: string) => void;
}) {
  const id = useId();
  return (
    <div class={css.field}>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="datetime-local"
        value={shown(value)}
        min="1900-01-01T00:00"
        max="2199-12-31T23:59"
        aria-describedby={hint ? `${id}-hint` : undefined}
        onInput={(event) => {
          const at = new Date(event.currentTarget.value);
          if (at.getFullYear() >= 1900 && at.getFullYear() <= 2199) onChange(at.toISOString());
        }}
      />
      {hint && <p id={`${id}-hint`}>{hint}</p>}
    </div>
  );
}
