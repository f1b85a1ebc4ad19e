import { useState } from 'preact/hooks';
import { WATCHES, type Watch } from '../../core/quarantine.ts';
import type { Fields } from '../../core/records.ts';
import { useQuarantineActions } from '../../parts/quarantine-actions.ts';
import type { BlockCase } from '../../parts/use-case.ts';
import { dayHere } from '../../text/days.ts';
import { watchWords } from '../../text/quarantine.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { ChoiceField, TextField } from '../../ui/field.tsx';
import css from './quarantine.module.css';

const options = WATCHES.map((id) => ({ id, label: watchWords[id].label, text: watchWords[id].text }));

/** Puts a block into quarantine: what for, since when, where. What its findings say is already chosen. */
export function Begin({ of }: { readonly of: BlockCase }) {
  const { now } = useApp();
  const actions = useQuarantineActions();
  const today = dayHere(now());
  const gate = of.assessment.gates.find(({ watch }) => watch);
  const [reason, setReason] = useState<Watch>(gate?.watch ?? 'unknownSource');
  const [begunOn, setBegun] = useState<string | null>(today);
  const [where, setWhere] = useState('');
  const fields: Partial<Fields<'quarantine'>> = { reason, begunOn: begunOn ?? today, where, why: gate?.advice ?? '' };
  return (
    <>
      {gate && <p class={css.gate}>{gate.advice}</p>}
      <ChoiceField
        label="What is it watched for?"
        value={reason}
        options={options}
        onChange={(picked) => picked && setReason(picked)}
      />
      <DayField label="Apart since" value={begunOn} max={today} onChange={setBegun} />
      <TextField
        label="Where"
        value={where}
        placeholder="lidded clear box on white paper"
        hint="Clear lidded box or sealed bag, white paper beneath, away from felt, straw and timber."
        onChange={setWhere}
      />
      <Button look="main" wide onPress={() => actions.begin(of.block, fields)}>
        Keep it apart
      </Button>
    </>
  );
}
