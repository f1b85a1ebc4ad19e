import { useState } from 'preact/hooks';
import { useQuarantineActions } from '../../parts/quarantine-actions.ts';
import type { QuarantineView } from '../../parts/quarantine-facts.ts';
import type { BlockCase } from '../../parts/use-case.ts';
import { dayWords } from '../../text/days.ts';
import { Button } from '../../ui/button.tsx';
import { TextField } from '../../ui/field.tsx';
import css from './quarantine.module.css';

/** The way out: open when the last look showed nothing, before that only with a reason. */
export function Leave({ of, view }: { readonly of: BlockCase; readonly view: QuarantineView }) {
  const actions = useQuarantineActions();
  const [reason, setReason] = useState('');
  const { quarantine, course } = view;
  const leave = (early: boolean): void =>
    actions.move(of.block, 'toDo', { leaving: { quarantine, early, reason: early ? reason : '' } });
  if (course.state === 'over') {
    return (
      <Button look="main" wide onPress={() => leave(false)}>
        Out of quarantine, to the blocks to do
      </Button>
    );
  }
  return (
    <details>
      <summary>Leave before {dayWords(course.endsOn)}</summary>
      <p class={css.gate}>
        What lives in one block gets into the others, into straw and felt. Treat it first, or keep it where nothing else
        of wood, straw or felt stands, and tell whoever takes it.
      </p>
      <TextField label="Why before its time?" value={reason} onChange={setReason} />
      <Button disabled={reason.trim() === ''} onPress={() => leave(true)}>
        Leave early
      </Button>
    </details>
  );
}
