import { MM_PER_INCH } from '../core/hat-sizes.ts';
import { useApp } from '../ui/app.ts';
import { NumberField } from '../ui/field.tsx';

/** A length kept in millimetres and typed in the owner's units. */
export function LengthField({
  label,
  hint,
  valueMm,
  stepMm,
  minMm = 0,
  maxMm,
  onChange,
}: {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly valueMm: number | null;
  /** Of the + and −; in inches an eighth, or a sixteenth for steps under 2 mm. */
  readonly stepMm: number;
  readonly minMm?: number;
  readonly maxMm: number;
  readonly onChange: (mm: number | null) => void;
}) {
  const { store } = useApp();
  const inches = store.settings.value.units === 'inch';
  const shown = (mm: number): number => (inches ? Number((mm / MM_PER_INCH).toFixed(3)) : mm);
  return (
    <NumberField
      label={label}
      hint={hint}
      unit={inches ? 'in' : 'mm'}
      step={inches ? (stepMm < 2 ? 1 / 16 : 1 / 8) : stepMm}
      min={shown(minMm)}
      max={shown(maxMm)}
      value={valueMm === null ? null : shown(valueMm)}
      onChange={(typed) => onChange(typed === null || !inches ? typed : Number((typed * MM_PER_INCH).toFixed(2)))}
    />
  );
}
