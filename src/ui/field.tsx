import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import { currencySymbol, money, readMoney } from '../text/format.ts';
import css from './field.module.css';

interface Labelled {
  readonly label: string;
  readonly hint?: ComponentChildren | undefined;
}

/** A line or a paragraph of text, saved as it is typed. */
export function TextField({
  label,
  hint,
  value,
  onChange,
  lines = 1,
  placeholder,
  list,
  autocomplete = 'off',
  inputMode,
}: Labelled & {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly lines?: number;
  readonly placeholder?: string | undefined;
  /** Suggestions, offered by the platform. */
  readonly list?: readonly string[];
  readonly autocomplete?: string;
  readonly inputMode?: 'text' | 'decimal' | 'numeric';
}) {
  const id = useId();
  const shared = {
    id,
    value,
    placeholder,
    autocomplete,
    'aria-describedby': hint ? `${id}-hint` : undefined,
    onInput: (event: { currentTarget: { value: string } }) => onChange(event.currentTarget.value),
  };
  return (
    <div class={css.field}>
      <label for={id}>{label}</label>
      {lines > 1 ? (
        <textarea {...shared} rows={lines} />
      ) : (
        <input {...shared} type="text" inputMode={inputMode} list={list && `${id}-list`} />
      )}
      {list && (
        <datalist id={`${id}-list`}>
          {list.map((item) => (
            <option key={item} value={item} />
          ))}
        </datalist>
      )}
      {hint && (
        <p class={css.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}

/** Money in minor units; what cannot be read is said and not stored. */
export function MoneyField({
  label,
  hint,
  value,
  currency,
  onChange,
  placeholder,
}: Labelled & {
  readonly value: number | null;
  readonly currency: string;
  readonly onChange: (minor: number | null) => void;
  readonly placeholder?: string | undefined;
}) {
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const shown = typed ?? (value === null ? '' : money(value, currency).replace(/[^\d.−-]/g, ''));
  const wrong = typed !== undefined && readMoney(typed, currency) === undefined;
  return (
    <div class={css.field}>
      <label for={id}>{label}</label>
      <span class={css.withUnit}>
        <span aria-hidden="true">{currencySymbol(currency)}</span>
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          class="figures"
          placeholder={placeholder}
          value={shown}
          aria-invalid={wrong || undefined}
          aria-describedby={hint || wrong ? `${id}-hint` : undefined}
          onInput={(event) => {
            const text = event.currentTarget.value;
            setTyped(text);
            const minor = readMoney(text, currency);
            if (minor !== undefined) onChange(minor);
          }}
          onBlur={() => {
            if (!wrong) setTyped(undefined);
          }}
        />
      </span>
      {(hint || wrong) && (
        <p class={css.hint} id={`${id}-hint`}>
          {wrong ? 'That is not an amount. Write it like 45 or 45.50.' : hint}
        </p>
      )}
    </div>
  );
}

/** A number with − and + for a thumb, chips for usual values, and a field for anything else. Empty is allowed. */
export function NumberField({
  label,
  hint,
  value,
  unit,
  step,
  min = 0,
  max,
  chips = [],
  onChange,
}: Labelled & {
  readonly value: number | null;
  readonly unit: string;
  readonly step: number;
  readonly min?: number;
  readonly max: number;
  readonly chips?: readonly number[];
  readonly onChange: (value: number | null) => void;
}) {
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const round = (raw: number): number => Math.min(max, Math.max(min, Math.round(raw / step) * step));
  const tidy = (raw: number): number => Number(raw.toFixed(4));
  const wrong = typed !== undefined && typed.trim() !== '' && !(Number(typed) >= min && Number(typed) <= max);
  const nudge = (by: number): void => {
    setTyped(undefined);
    onChange(tidy(round((value ?? (by > 0 ? min - by : min)) + by)));
  };
  return (
    <div class={css.field}>
      <label for={id}>{label}</label>
      <span class={css.stepper}>
        <button
          type="button"
          onClick={() => nudge(-step)}
          aria-label={`Less: ${label}`}
          disabled={value === null || value <= min}
        >
          −
        </button>
        <span class={css.withUnit}>
          <input
            id={id}
            type="text"
            inputMode="decimal"
            autocomplete="off"
            class="figures"
            value={typed ?? (value === null ? '' : String(tidy(value)))}
            aria-invalid={wrong || undefined}
            aria-describedby={hint || wrong ? `${id}-hint` : undefined}
            onInput={(event) => {
              const text = event.currentTarget.value.replace(',', '.');
              setTyped(text);
              if (text.trim() === '') onChange(null);
              else if (Number(text) >= min && Number(text) <= max) onChange(Number(text));
            }}
            onBlur={() => {
              if (!wrong) setTyped(undefined);
            }}
          />
          <span aria-hidden="true">{unit}</span>
        </span>
        <button
          type="button"
          onClick={() => nudge(step)}
          aria-label={`More: ${label}`}
          disabled={value !== null && value >= max}
        >
          +
        </button>
      </span>
      {chips.length > 0 && (
        <span class={css.chips}>
          {chips.map((chip) => (
            <button
              key={chip}
              type="button"
              aria-pressed={value === chip}
              aria-label={`${label}: ${chip} ${unit}`}
              onClick={() => {
                setTyped(undefined);
                onChange(value === chip ? null : chip);
              }}
            >
              {chip}
            </button>
          ))}
        </span>
      )}
      {(hint || wrong) && (
        <p class={css.hint} id={`${id}-hint`}>
          {wrong ? `Between ${min} and ${max}, please.` : hint}
        </p>
      )}
    </div>
  );
}

/** One of a few: a row of large radio buttons that wraps. Tapping the chosen one again takes it back if `none` is allowed. */
export function ChoiceField<T extends string>({
  label,
  hint,
  value,
  options,
  onChange,
  none = false,
  hideLabel = false,
}: Labelled & {
  readonly value: T | null;
  readonly options: readonly { readonly id: T; readonly label: string; readonly text?: string }[];
  readonly onChange: (value: T | null) => void;
  readonly none?: boolean;
  readonly hideLabel?: boolean;
}) {
  const name = useId();
  return (
    <fieldset class={css.field}>
      <legend class={hideLabel ? 'visually-hidden' : undefined}>{label}</legend>
      <div class={css.choices}>
        {options.map((option) => (
          <label key={option.id} class={css.choice}>
            <input
              type="radio"
              name={name}
              checked={value === option.id}
              onChange={() => onChange(option.id)}
              onClick={() => {
                if (none && value === option.id) onChange(null);
              }}
            />
            <span>
              {option.label}
              {option.text && <small>{option.text}</small>}
            </span>
          </label>
        ))}
      </div>
      {hint && <p class={css.hint}>{hint}</p>}
    </fieldset>
  );
}

/** Yes or not, as one large tick box. */
export function TickField({
  label,
  hint,
  value,
  onChange,
}: Labelled & { readonly value: boolean; readonly onChange: (value: boolean) => void }) {
  const id = useId();
  return (
    <div class={css.tick}>
      <input
        id={id}
        type="checkbox"
        checked={value}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      <label for={id}>{label}</label>
      {hint && (
        <p class={css.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}

/** A choice from a long list, by the platform's own picker. */
export function SelectField<T extends string>({
  label,
  hint,
  value,
  options,
  onChange,
}: Labelled & {
  readonly value: T;
  readonly options: readonly { readonly id: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
}) {
  const id = useId();
  return (
    <div class={css.field}>
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onChange={(event) => onChange(event.currentTarget.value as T)}
      >
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.label}
          </option>
        ))}
      </select>
      {hint && (
        <p class={css.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}
