import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import { Button } from '../../ui/button.tsx';
import fieldCss from '../../ui/field.module.css';
import { TickField } from '../../ui/field.tsx';
import css from './keeping.module.css';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string | undefined;
  readonly isNew?: boolean;
}

/** Asks for the passphrase of what is locked, hidden until shown on purpose; the phone's own keeper of passwords may fill it. */
export function PassphraseForm({
  action,
  onTyped,
  beside,
  children,
}: {
  /** What the button says. */
  readonly action: string;
  readonly onTyped: (passphrase: string) => void;
  /** Another button beside it. */
  readonly beside?: ComponentChildren;
  /** What is said above. */
  readonly children?: ComponentChildren;
}) {
  const [typed, setTyped] = useState('');
  const [isShown, setShown] = useState(false);
  return (
    <form
      class={css.stack}
      onSubmit={(event) => {
        event.preventDefault();
        onTyped(typed);
      }}
    >
      {children}
      <div>
        <PassphraseInput label="Its passphrase" value={typed} onChange={setTyped} isShown={isShown} />
        <TickField label="Show what is typed" value={isShown} onChange={setShown} />
      </div>
      <div class={css.ways}>
        <Button type="submit" look="main" disabled={typed === ''}>
          {action}
        </Button>
        {beside}
      </div>
    </form>
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
