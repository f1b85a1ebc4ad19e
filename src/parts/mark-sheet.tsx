import { entry } from '../core/catalogue.ts';
import type { Mark } from '../core/records.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { ChoiceField, SelectField, TextField, TickField } from '../ui/field.tsx';
import { Sheet } from '../ui/sheet.tsx';
import { useActions } from './actions.ts';
import { HandbookLink } from './handbook-link.tsx';
import css from './marks-editor.module.css';
import { OtherWords } from './other-words.tsx';
import { againstTape, readingsOf, tapeOf } from './stamped-size.ts';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';

/** One mark: what kind, the text as seen, where, and for a size what it can mean. Saved as it is entered. */
export function MarkSheet({
  of,
  markId,
  onClose,
}: {
  readonly of: BlockCase;
  readonly markId: string;
  readonly onClose: () => void;
}) {
  const { catalogue } = useApp();
  const actions = useActions();
  const { zoneTerm } = useNames(of);
  const mark = of.marks.find(({ id }) => id === markId);
  if (!mark) return null;
  const kind = entry(catalogue.marks, mark.kind);
  const kinds = { ...(kind ? {} : { [mark.kind]: { term: mark.kind } }), ...catalogue.marks };
  const zones = of.assessment.setting.type?.zones ?? Object.keys(catalogue.zones);
  return (
    <Sheet
      title={kind?.term ?? 'A mark'}
      onClose={onClose}
      foot={
        <Button
          look="quiet"
          onPress={() => {
            actions.removeMark(mark);
            onClose();
          }}
        >
          Remove this mark
        </Button>
      }
    >
      <SelectField
        label="Kind of mark"
        value={mark.kind}
        options={Object.entries(kinds).map(([id, { term }]) => ({ id, label: term }))}
        onChange={(picked) => actions.setMark(mark, { kind: picked, reading: null })}
      />
      {kind && (
        <p class={css.tells}>
          Looks like: {kind.pattern}. {kind.tells} <HandbookLink section="marks" entry={mark.kind} />
        </p>
      )}
      <TextField
        label="Text, as seen"
        hint="Letter for letter; a ? for what you cannot read."
        value={mark.text}
        onChange={(text) => actions.setMark(mark, { text })}
      />
      <OtherWords record={mark} path="text" />
      {kind?.isSize && <Readings of={of} mark={mark} />}
      <SelectField
        label="Where"
        value={mark.zone}
        options={[...new Set([mark.zone, ...zones])].map((id) => ({ id, label: zoneTerm(id) }))}
        onChange={(zone) => actions.setMark(mark, { zone })}
      />
      <TickField
        label="Worth keeping"
        hint="The plan then protects it before any scraping, sanding or damp."
        value={mark.keep}
        onChange={(keep) => actions.setMark(mark, { keep })}
      />
      {kind?.mayBePersonal && (
        <p class={css.tells}>
          A name here is history if the person is dead, and personal data if they may be living: leave it out of what
          you share.
        </p>
      )}
      <TextField label="Note" lines={2} value={mark.note} onChange={(note) => actions.setMark(mark, { note })} />
      <OtherWords record={mark} path="note" />
    </Sheet>
  );
}

/** What the stamp can mean, against the tape; the owner chooses, or leaves it open. */
function Readings({ of, mark }: { readonly of: BlockCase; readonly mark: Mark }) {
  const actions = useActions();
  const readings = readingsOf(of, mark);
  if (mark.text.trim() === '') return null;
  if (readings.length === 0) {
    return (
      <p class={css.tells}>No size on any scale: inches 19–26, centimetres 47–68, hat sizes 5¾–8½, points 0–9½.</p>
    );
  }
  return (
    <ChoiceField
      label="What the stamp can mean"
      hint={
        tapeOf(of) === null
          ? 'Take the tape round the rope line: only it decides which is meant.'
          : 'Nearest to the tape first. The tape wins; the stamp stays as it is.'
      }
      none
      value={mark.reading}
      options={readings.map((reading) => ({
        id: reading.reading,
        label: reading.label,
        text: againstTape(reading, of.settings.units),
      }))}
      onChange={(reading) => actions.setMark(mark, { reading })}
    />
  );
}
