import css from './several-field.module.css';

/** Several of a few, each a button that stays pressed. */
export function SeveralField<T extends string | number>({
  label,
  hideLabel = false,
  options,
  onToggle,
}: {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly options: readonly {
    readonly id: T;
    readonly label: string;
    /** The whole word where the label is short for it. */
    readonly name?: string;
    readonly chosen: boolean;
    /** Neither to be chosen nor to be let go of now. */
    readonly fixed?: boolean;
  }[];
  readonly onToggle: (id: T) => void;
}) {
  return (
    <fieldset class={css.several}>
      <legend class={hideLabel ? 'visually-hidden' : undefined}>{label}</legend>
      <div>
        {options.map((option) => (
          <button
            key={option.id}
            type="button"
            aria-pressed={option.chosen}
            aria-label={option.name}
            disabled={option.fixed}
            onClick={() => onToggle(option.id)}
          >
            {option.label}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
