import { entry } from '../../core/catalogue.ts';
import type { Statement } from '../../core/records.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { SelectField, TextField } from '../../ui/field.tsx';
import css from './story.module.css';

type Evidence = Statement['evidence'];

/** What a step rests on: each piece with its kind and, in words, where it is to be seen. */
export function EvidenceRows({
  evidence,
  onChange,
}: {
  readonly evidence: Evidence;
  readonly onChange: (evidence: Evidence) => void;
}) {
  const { catalogue } = useApp();
  return (
    <fieldset class={css.evidence}>
      <legend>What it rests on</legend>
      {evidence.map((piece, index) => {
        const kind = entry(catalogue.evidence, piece.kind);
        return (
          <div key={index} class={css.piece}>
            <TextField
              label={kind?.term ?? piece.kind}
              hint={kind?.text}
              value={piece.text}
              onChange={(text) => onChange(evidence.map((each, at) => (at === index ? { ...each, text } : each)))}
            />
            <Button
              look="quiet"
              label={`Remove the evidence: ${kind?.term ?? piece.kind}`}
              onPress={() => onChange(evidence.filter((_, at) => at !== index))}
            >
              Remove
            </Button>
          </div>
        );
      })}
      <SelectField
        label="Add evidence"
        value=""
        options={[
          { id: '', label: 'What kind is it?' },
          ...Object.entries(catalogue.evidence).map(([id, { term }]) => ({ id, label: term })),
        ]}
        onChange={(kind) => kind !== '' && onChange([...evidence, { kind, text: '' }])}
      />
    </fieldset>
  );
}
