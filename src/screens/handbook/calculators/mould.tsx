import { useState } from 'preact/hooks';
import { MOULD_CAUTIONS, mouldAnswer, sourcesOfMould } from '../../../core/advice/mould.ts';
import { USUAL } from '../../../core/advice/usual.ts';
import type { MouldSigns } from '../../../core/physics/mould-risk.ts';
import { mouldWords } from '../../../text/advice/mould.ts';
import { ChoiceField, NumberField, TickField } from '../../../ui/field.tsx';
import { Advised } from '../advised.tsx';
import { AirFields } from '../air-fields.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';
import { useRoom } from '../use-room.ts';

type Construction = NonNullable<MouldSigns['construction']>;
const constructions = [
  { id: 'solid', label: 'Solid' },
  { id: 'laminated', label: 'Plies or layers' },
  { id: 'papierMache', label: 'Papier-mâché' },
  { id: 'sparterie', label: 'Sparterie' },
] as const satisfies readonly { id: Construction; label: string }[];
const ticks = [
  { sign: 'smellsAfterDryMonth', label: 'It still smells after a month in dry air' },
  { sign: 'chemicalSmellOrCrystals', label: 'A chemical smell, or white crystals' },
  { sign: 'buyerAtRisk', label: 'Whoever handles it has asthma, a mould allergy or a weak immune system' },
] as const;

function Mould() {
  const [room, setRoom] = useRoom();
  const [coverPct, setCover] = useState<number | null>(10);
  const [surfaceCm2, setSurface] = useState<number | null>(USUAL.surfaceCm2);
  const [moisturePct, setMoisture] = useState<number | null>(null);
  const [probeMm, setProbe] = useState<number | null>(null);
  const [construction, setConstruction] = useState<Construction | null>(null);
  const [seen, setSeen] = useState<Pick<MouldSigns, (typeof ticks)[number]['sign']>>({});
  const answer = mouldAnswer({
    room,
    coverage: coverPct === null ? null : coverPct / 100,
    surfaceCm2: surfaceCm2 ?? USUAL.surfaceCm2,
    moisturePct,
    signs: { ...seen, ...(construction ? { construction } : {}), ...(probeMm === null ? {} : { probeMm }) },
  });
  return (
    <div class={css.pair}>
      <div>
        <AirFields air={room} onChange={setRoom} />
        <NumberField
          label="Grown over"
          unit="%"
          step={5}
          max={100}
          chips={[1, 5, 20, 60]}
          value={coverPct}
          onChange={setCover}
        />
        <NumberField
          label="Face of all blocks together"
          hint="A crown has about 1000 cm²; count the whole shelf."
          unit="cm²"
          step={500}
          min={50}
          max={1_000_000}
          value={surfaceCm2}
          onChange={setSurface}
        />
        <ChoiceField label="Built" none value={construction} options={constructions} onChange={setConstruction} />
        <NumberField label="A needle sinks" unit="mm" step={1} max={80} value={probeMm} onChange={setProbe} />
        <NumberField
          label="Moisture by a meter"
          unit="%"
          step={1}
          max={60}
          value={moisturePct}
          onChange={setMoisture}
        />
        {ticks.map(({ sign, label }) => (
          <TickField
            key={sign}
            label={label}
            value={seen[sign] === true}
            onChange={(yes) => setSeen((before) => ({ ...before, [sign]: yes }))}
          />
        ))}
      </div>
      <div>
        <Advised
          words={mouldWords(answer)}
          cautions={MOULD_CAUTIONS}
          sources={sourcesOfMould(answer.mask)}
          source="Growth on pine sapwood: Hukka and Viitanen 1999. Outbreak sizes: Canadian Conservation Institute. When to refuse: trade estimate."
        />
      </div>
    </div>
  );
}

export default {
  id: 'mould',
  order: 13,
  title: 'Mould',
  about: 'Whether it grows in your room, how large the outbreak is, when to leave a block.',
  Panel: Mould,
} satisfies Calculator;
