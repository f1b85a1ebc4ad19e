import { useState } from 'preact/hooks';
import { holesAnswer, sourcesOfRanking } from '../../../core/advice/borers.ts';
import type { HoleClues } from '../../../core/physics/borer-ranking.ts';
import { DUSTS, type Dust, type HoleShape, WOOD_KINDS, type WoodKind } from '../../../core/physics/insects.ts';
import { LIFE_SIGNS, type LifeSigns, readLifeSigns } from '../../../core/physics/signs-of-life.ts';
import { borerWords, dustWords, signWords } from '../../../text/advice/borers.ts';
import { opening } from '../../../text/format.ts';
import { ChoiceField, NumberField, SelectField, TickField } from '../../../ui/field.tsx';
import { Advised } from '../advised.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';
import { Results } from '../results.tsx';

const yesOrNo = [
  { id: 'yes', label: 'In a row along it' },
  { id: 'no', label: 'Scattered' },
] as const;
const shapes = [
  { id: 'round', label: 'Round' },
  { id: 'oval', label: 'Oval' },
  { id: 'ragged', label: 'Ragged' },
] as const satisfies readonly { id: HoleShape; label: string }[];
const kinds: Readonly<Record<WoodKind, { readonly label: string; readonly text: string }>> = {
  softwood: { label: 'Softwood', text: 'pine, deal' },
  hardwoodFinePored: { label: 'Fine-pored', text: 'lime, alder, beech' },
  hardwoodLargePored: { label: 'Large-pored', text: 'oak, ash, mahogany' },
};
const others = [
  { clue: 'darkWalls', label: 'The walls of the holes are stained dark' },
  { clue: 'damp', label: 'The wood is, or was, damp or decayed' },
  { clue: 'bark', label: 'There is bark on it' },
  { clue: 'warmRegion', label: 'It lived in a warm region' },
] as const;

const without = <T extends object>(whole: T, key: keyof T): T => {
  const { [key]: _, ...rest } = whole;
  return rest as T;
};

const verdicts = {
  alive: 'alive',
  'perhaps-alive': 'perhaps alive',
  'looks-old': 'looks old; watch it all the same',
  'cannot-tell': 'cannot be told yet',
} as const;

function Borers() {
  const [clues, setClues] = useState<HoleClues>({});
  const [signs, setSigns] = useState<LifeSigns>({});
  const put = <C extends keyof HoleClues>(clue: C, value: HoleClues[C] | null): void =>
    setClues((before) => (value === null ? without(before, clue) : { ...before, [clue]: value }));
  const life = readLifeSigns(signs);
  const activity = life.verdict === 'alive' ? 'active' : life.verdict === 'looks-old' ? 'inactive' : 'unknown';
  const answer = holesAnswer(clues, activity);
  return (
    <div class={css.pair}>
      <div>
        <ChoiceField
          label="Do the holes follow the pinning line?"
          none
          value={clues.followsPinningLine === undefined ? null : clues.followsPinningLine ? 'yes' : 'no'}
          options={yesOrNo}
          onChange={(picked) => put('followsPinningLine', picked && picked === 'yes')}
        />
        <NumberField
          label="Hole across"
          unit="mm"
          step={0.1}
          max={12}
          chips={[1, 1.5, 2, 3, 8]}
          value={clues.holeMm ?? null}
          onChange={(mm) => put('holeMm', mm || null)}
        />
        <SelectField
          label="Dust between thumb and finger"
          value={clues.dust ?? ''}
          options={[{ id: '', label: 'Not looked' }, ...DUSTS.map((id) => ({ id, label: opening(dustWords[id]) }))]}
          onChange={(dust) => put('dust', (dust || null) as Dust | null)}
        />
        <ChoiceField
          label="Shape"
          none
          value={clues.shape ?? null}
          options={shapes}
          onChange={(shape) => put('shape', shape)}
        />
        <ChoiceField
          label="Wood"
          none
          value={clues.wood ?? null}
          options={WOOD_KINDS.map((id) => ({ id, ...kinds[id] }))}
          onChange={(wood) => put('wood', wood)}
        />
        {others.map(({ clue, label }) => (
          <TickField
            key={clue}
            label={label}
            value={clues[clue] === true}
            onChange={(yes) => put(clue, yes ? true : null)}
          />
        ))}
        <h3>Signs of life</h3>
        {LIFE_SIGNS.map((sign) => (
          <TickField
            key={sign}
            label={opening(signWords[sign])}
            value={signs[sign] === true}
            onChange={(yes) => setSigns((before) => (yes ? { ...before, [sign]: true } : without(before, sign)))}
          />
        ))}
      </div>
      <div>
        <Advised
          words={borerWords(answer)}
          cautions={activity === 'active' ? ['freezeCanFail', 'insecticide'] : []}
          sources={sourcesOfRanking(answer.ranking)}
          source="Sizes, dust, woods and years from pest plates and handbooks; how clues are weighed, and how common each is in hat blocks, is a trade estimate."
        />
        <Results
          rows={[
            ['By the signs', verdicts[life.verdict]],
            ...(life.structuralLoss ? [['Wood', 'has been lost, whatever lives in it'] as const] : []),
          ]}
          source="One sure sign of life outweighs any number of signs of age. Regional museums guidance; common practice."
        />
      </div>
    </div>
  );
}

export default {
  id: 'borers',
  order: 10,
  title: 'Pins or beetles?',
  about: 'Holes, dust and wood: suspects in order, and whether anything lives.',
  Panel: Borers,
} satisfies Calculator;
