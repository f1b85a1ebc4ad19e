import { useId, useState } from 'preact/hooks';
import fieldCss from '../../ui/field.module.css';
import { TickField } from '../../ui/field.tsx';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string | undefined;
  readonly isNew?: boolean;
}

/** A passphrase, hidden until shown on purpose; the phone's own keeper of passwords may fill it. */
export function PassphraseField(props: Props) {
  const [isShown, setShown] = useState(false);
  return (
    <div>
      <PassphraseInput {...props} isShown={isShown} />
      <TickField label="Show what is typed" value={isShown} onChange={setShown} />
    </div>
  );
}

/** A new passphrase, typed twice as long as it cannot be seen; one tick shows it, and then once is enough. */
export function NewPassphrase({
  typed,
  again,
  isShown,
  fault,
  onType,
  onTypeAgain,
  onShow,
}: {
  readonly typed: string;
  readonly again: string;
  readonly isShown: boolean;
  readonly fault: string | null;
  readonly onType: (typed: string) => void;
  readonly onTypeAgain: (again: string) => void;
  readonly onShow: (isShown: boolean) => void;
}) {
  const hint = fault ?? undefined;
  return (
    <div>
      <PassphraseInput
        label="Passphrase"
        value={typed}
        onChange={onType}
        isNew
        isShown={isShown}
        hint={isShown ? hint : undefined}
      />
      {!isShown && (
        <PassphraseInput
          label="The same again"
          value={again}
          onChange={onTypeAgain}
          isNew
          isShown={false}
          hint={hint}
        />
      )}
      <TickField label="Show what is typed" value={isShown} onChange={onShow} />
    </div>
  );
}

function PassphraseInput({
  label,
  value,
  onChange,
  hint,
  isNew = false,
  isShown,
}: Props & {
  readonly isShown: boolean;
}) {
  const id = useId();
  const shared = {
    ...{ id, value },
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
    </div>
  );
}
