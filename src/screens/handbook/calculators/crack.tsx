import { useState } from 'preact/hooks';
import { type CrackQuestion, closeCrack, sourcesOfCrack } from '../../../core/advice/crack.ts';
import { USUAL_WOODS } from '../../../core/advice/usual.ts';
import { CRACK_ACTION_DETAILS } from '../../../core/physics/crack-advice.ts';
import { WOOD_IDS, WOODS, type WoodId } from '../../../core/physics/woods.ts';
import { LengthField } from '../../../parts/length-field.tsx';
import { crackWords } from '../../../text/advice/crack.ts';
import { opening } from '../../../text/format.ts';
import { useApp } from '../../../ui/app.ts';
import { ChoiceField, NumberField, SelectField, TickField } from '../../../ui/field.tsx';
import { Advised } from '../advised.tsx';
import { AirFields } from '../air-fields.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';
import { useRoom } from '../use-room.ts';

type Choice = WoodId | 'usual' | 'none';
const woodsOf = (choice: Choice): readonly WoodId[] =>
  choice === 'usual' ? USUAL_WOODS : choice === 'none' ? [] : [choice];
const woods: readonly { readonly id: Choice; readonly label: string }[] = [
  { id: 'usual', label: 'Not known: lime or basswood' },
  { id: 'none', label: 'Plywood, sapele, anything without figures' },
  ...WOOD_IDS.map((id) => ({ id, label: opening(WOODS[id].name) })).sort((a, b) =>
    a.label.localeCompare(b.label, 'en-GB'),
  ),
];
const ways = [
  { id: 'round', label: 'A round block', text: 'towards its middle' },
  { id: 'board', label: 'Boards', text: 'a brim, a glue line' },
] as const satisfies readonly { id: CrackQuestion['across']; label: string; text: string }[];

function Crack() {
  const { units } = useApp().store.settings.value;
  const [wood, setWood] = useState<Choice>('usual');
  const [across, setAcross] = useState<CrackQuestion['across']>('round');
  const [gapMm, setGap] = useState<number | null>(1);
  const [spanMm, setSpan] = useState<number | null>(160);
  const [lengthMm, setLength] = useState<number | null>(null);
  const [depthMm, setDepth] = useState<number | null>(null);
  const [moisturePct, setMoisture] = useState<number | null>(null);
  const [holdsPith, setPith] = useState(true);
  const [closesByHand, setByHand] = useState(false);
  const [room, setRoom] = useRoom();
  const answer =
    gapMm === null || !spanMm
      ? undefined
      : closeCrack({
          across,
          gapMm,
          spanMm,
          woods: woodsOf(wood),
          room,
          moisturePct,
          lengthMm: lengthMm || null,
          depthMm: depthMm || null,
          holdsPith,
          closesByHand,
        });
  return (
    <div class={css.pair}>
      <div>
        <SelectField label="Wood" value={wood} options={woods} onChange={setWood} />
        <ChoiceField label="The crack is in" value={across} options={ways} onChange={(way) => way && setAcross(way)} />
        <LengthField label="Gap at the widest" valueMm={gapMm} stepMm={0.5} maxMm={30} onChange={setGap} />
        <LengthField
          label={across === 'round' ? 'Block, across' : 'Boards, across the grain'}
          valueMm={spanMm}
          stepMm={5}
          minMm={1}
          maxMm={1000}
          onChange={setSpan}
        />
        <LengthField
          label="Length of the crack"
          hint="For force and clamps."
          valueMm={lengthMm}
          stepMm={10}
          maxMm={600}
          onChange={setLength}
        />
        <LengthField
          label="Depth of its faces"
          hint="Empty: to the middle of a round block, through a usual board."
          valueMm={depthMm}
          stepMm={5}
          maxMm={300}
          onChange={setDepth}
        />
        <AirFields air={room} onChange={setRoom} />
        <NumberField
          label="Moisture by a meter"
          hint="Empty: as that air keeps it."
          unit="%"
          step={1}
          max={60}
          value={moisturePct}
          onChange={setMoisture}
        />
        <TickField label="The middle of the tree is in it" value={holdsPith} onChange={setPith} />
        <TickField label="It closes under hand pressure" value={closesByHand} onChange={setByHand} />
      </div>
      <div>
        <Advised
          words={answer && crackWords(answer, units)}
          cautions={answer ? CRACK_ACTION_DETAILS[answer.action].cautions : []}
          sources={answer ? sourcesOfCrack(answer) : []}
          source="Own geometry of a ring-complete block, moved by the Wood Handbook’s figures; the bounds are our own rule, not published."
        />
      </div>
    </div>
  );
}

export default {
  id: 'crack',
  order: 7,
  title: 'Will a crack close?',
  about: 'Gap, wood and air: clamp it, damp it first, or fit a sliver.',
  Panel: Crack,
} satisfies Calculator;
