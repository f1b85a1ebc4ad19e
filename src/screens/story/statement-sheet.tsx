import { blank } from '../../core/blank.ts';
import { entry } from '../../core/catalogue.ts';
import { useActions } from '../../parts/actions.ts';
import { DateField } from '../../parts/date-field.tsx';
import { OtherWords } from '../../parts/other-words.tsx';
import type { BlockCase } from '../../parts/use-case.ts';
import { opening } from '../../text/format.ts';
import { stepOf } from '../../text/provenance.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceField, SelectField, TextField, TickField } from '../../ui/field.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { EvidenceRows } from './evidence-rows.tsx';
import css from './story.module.css';

/** Options of a table, with the chosen id kept among them though this app may not know it. */
function optionsOf(table: Readonly<Record<string, { readonly term: string }>>, chosen: string) {
  const known = Object.entries(table).map(([id, { term }]) => ({ id, label: term }));
  return entry(table, chosen) ? known : [{ id: chosen, label: chosen }, ...known];
}

/** One step: how it passed, from whom, where, when, how sure and on what that rests. Saved as it is entered. */
export function StatementSheet({
  of,
  statementId,
  onClose,
}: {
  readonly of: BlockCase;
  readonly statementId: string;
  readonly onClose: () => void;
}) {
  const { catalogue } = useApp();
  const actions = useActions();
  const statement = of.statements.find(({ id }) => id === statementId);
  if (!statement) return null;
  const set = (patch: Parameters<typeof actions.setStatement>[1]): void => actions.setStatement(statement, patch);
  const saysNothing = statement.transfer === blank.statement.transfer;
  return (
    <Sheet
      title="A step of its history"
      onClose={onClose}
      foot={
        <Button
          look="quiet"
          onPress={() => {
            actions.removeStatement(statement);
            onClose();
          }}
        >
          Remove this step
        </Button>
      }
    >
      <p class={css.preview} aria-live="polite">
        {opening(stepOf(statement, catalogue, { showPrivate: true }))}
        {statement.direct ? ';' : '.'}
      </p>
      <SelectField
        label="How it passed"
        value={statement.transfer}
        options={optionsOf(catalogue.transfers, statement.transfer)}
        onChange={(transfer) => set({ transfer })}
      />
      <TextField
        label={saysNothing ? 'Who had it, or what is told' : 'Whom'}
        hint={saysNothing ? 'Stands in the chain as you write it: used for “Act II – Duchess”.' : undefined}
        value={statement.party}
        onChange={(party) => set({ party })}
      />
      <OtherWords record={statement} path="party" />
      <TickField
        label="Keep this name to yourself"
        hint="Others then read “a private owner”; place and date stay. What you write under evidence or note is not hidden."
        value={statement.partyIsPrivate}
        onChange={(partyIsPrivate) => set({ partyIsPrivate })}
      />
      <TextField label="Place" value={statement.place} onChange={(place) => set({ place })} />
      <OtherWords record={statement} path="place" />
      <DateField label="When" value={statement.when} onChange={(when) => set({ when })} />
      <ChoiceField
        label="How sure"
        value={statement.certainty}
        options={Object.entries(catalogue.certainties).map(([id, { term, needs }]) => ({
          id,
          label: term,
          text: needs,
        }))}
        onChange={(certainty) => certainty && set({ certainty })}
      />
      <EvidenceRows evidence={statement.evidence} onChange={(evidence) => set({ evidence })} />
      <TickField
        label="Passed straight on to the next owner"
        hint="Otherwise the chain shows a gap after this step."
        value={statement.direct}
        onChange={(direct) => set({ direct })}
      />
      <TextField
        label="Note"
        hint="Printed in the brackets, after the evidence."
        lines={2}
        value={statement.note}
        onChange={(note) => set({ note })}
      />
      <OtherWords record={statement} path="note" />
    </Sheet>
  );
}
