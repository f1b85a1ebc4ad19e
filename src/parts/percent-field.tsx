import { NumberField } from '../ui/field.tsx';

/** A share, 0 to 1, typed in per cent. Kept to the millionth, as the fee sums take it. */
export function PercentField({
  label,
  hint,
  share,
  step = 1,
  chips = [],
  onChange,
}: {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly share: number;
  readonly step?: number;
  /** In per cent. */
  readonly chips?: readonly number[];
  readonly onChange: (share: number) => void;
}) {
  return (
    <NumberField
      label={label}
      hint={hint}
      unit="%"
      step={step}
      max={100}
      chips={chips}
      value={Number((share * 100).toFixed(4))}
      onChange={(percent) => onChange(Number(((percent ?? 0) / 100).toFixed(6)))}
    />
  );
}
