import { useState } from 'preact/hooks';
import { applies, zonesFor } from '../../core/block.ts';
import { type DamageKind, entry } from '../../core/catalogue.ts';
import type { Fields } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { useNames } from '../../parts/use-names.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { SelectField } from '../../ui/field.tsx';
import type { Desk } from './desk.ts';
import css from './measure.module.css';

type Answers = Readonly<Record<string, number>>;

/**
 * Accepts what was measured: into a finding there is, or a new one of a kind that asks for it. Nothing measured changes
 * a finding before this button is pressed.
 */
export function TakeInto({
  desk,
  answersFor,
  mark,
}: {
  readonly desk: Desk;
  /** What this kind of damage takes of the measurement; nothing when it does not ask for it. */
  readonly answersFor: (kind: DamageKind) => Answers;
  readonly mark: Pick<Fields<'photoMark'>, 'shape' | 'points' | 'measured'>;
}) {
  const { catalogue } = useApp();
  const actions = useActions();
  const { of, photo, stage } = desk;
  const { findingName } = useNames(of);
  const [chosen, setChosen] = useState<string>();
  const [taken, setTaken] = useState<{ readonly key: string; readonly words: string }>();
  const { setting } = of.assessment;
  const takes = (kind: DamageKind | undefined): boolean => !!kind && Object.keys(answersFor(kind)).length > 0;
  const known = of.findings.filter((finding) => takes(entry(catalogue.damage, finding.kind)));
  const kinds = Object.entries(catalogue.damage).filter(([, kind]) => takes(kind) && applies(kind, setting, catalogue));
  const options = [
    ...known.map(({ id }) => ({ id, label: findingName(id) })),
    ...kinds.map(([id, kind]) => ({ id: `new ${id}`, label: `New finding: ${kind.term}` })),
  ];
  if (options.length === 0) return <p class={css.small}>No kind of damage of this block asks for this.</p>;

  // A new finding's kind is the person's to say, wherever there are two to choose from.
  const sure =
    known.find(({ id }) => id === photo.findingId) ?? known[0] ?? (options.length === 1 ? options[0] : undefined);
  const value = options.some(({ id }) => id === chosen) ? chosen : sure?.id;

  function take(): void {
    const finding = known.find(({ id }) => id === value);
    const kindId = finding?.kind ?? value?.replace('new ', '') ?? '';
    const kind = entry(catalogue.damage, kindId);
    if (!kind) return;
    const zones = zonesFor(kind, setting, catalogue);
    const answers = answersFor(kind);
    const into = finding
      ? { finding }
      : { kind: kindId, zone: zones.includes('whole') ? 'whole' : (zones[0] ?? 'whole') };
    const id = actions.takeMeasured(of.survey, photo, into, answers, mark);
    const labels = Object.keys(answers).map((ask) => kind.asks.find((known) => known.id === ask)?.label ?? ask);
    const words = `Taken, measured: ${labels.join(', ').toLocaleLowerCase('en-GB')}.`;
    setChosen(id);
    setTaken({ key: JSON.stringify([mark, id]), words });
    stage.said.value = words;
  }

  const isTaken = taken?.key === JSON.stringify([mark, value]);
  return (
    <div class={css.take}>
      <SelectField
        label="Take into"
        value={value ?? ''}
        options={value ? options : [{ id: '', label: 'Choose what it is' }, ...options]}
        onChange={setChosen}
      />
      {isTaken ? (
        <p class={css.done} role="status">
          {taken.words} The grade follows the finding’s own rules.
        </p>
      ) : (
        <div class={css.sticky}>
          <Button look="main" wide disabled={!value} onPress={take}>
            Take into the finding
          </Button>
        </div>
      )}
    </div>
  );
}
