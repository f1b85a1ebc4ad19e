import { useId, useState } from 'preact/hooks';
import fieldCss from '../../ui/field.module.css';
import { TickField } from '../../ui/field.tsx';

/** A passphrase, hidden until shown on purpose; the phone's own keeper of passwords may fill it. */
export function PassphraseField({
  label,
  value,
  onChange,
  hint,
  isNew = false,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string | undefined;
  readonly isNew?: boolean;
}) {
  const id = useId();
  const [isShown, setShown] = useState(false);
  const shared = {
    id,
    value,
    autocomplete: isNew ? 'new-password' : 'current-password',
    autocapitalize: 'none',
    spellcheck: false,
    'aria-describedby': hint ? `${id}-hint` : undefined,
    onInput: (event: { currentTarget: { value: string } }) => onChange(event.currentTarget.value),
  } as const;
  return (
    <div class={fieldCss.field}>
      <label for={id}>{label}</label>
      {isShown ? <input {...shared} type="text" /> : <input {...shared} type="password" />}
      {hint && (
        <p class={fieldCss.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <TickField label={`Show: ${label.toLowerCase()}`} value={isShown} onChange={setShown} />
    </div>
  );
}
