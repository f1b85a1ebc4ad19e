import { useState } from 'preact/hooks';
import { CLAMP_PRESSURE_MPA, clampSpacingMm, clampsNeeded, strapPressureMpa } from '../../../core/physics/clamps.ts';
import { Cautions } from '../../../parts/cautions.tsx';
import { LengthField } from '../../../parts/length-field.tsx';
import { span, tidy } from '../../../text/advice/figures.ts';
import { length } from '../../../text/format.ts';
import { useApp } from '../../../ui/app.ts';
import { ChoiceField, NumberField } from '../../../ui/field.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';
import { Results } from '../results.tsx';

type Use = keyof typeof CLAMP_PRESSURE_MPA;
const uses = [
  { id: 'oldCrack', label: 'An old crack' },
  { id: 'softwood', label: 'New joint, soft wood' },
  { id: 'hardwood', label: 'New joint, hard wood' },
] as const satisfies readonly { id: Use; label: string }[];

function Clamps() {
  const { units } = useApp().store.settings.value;
  const [use, setUse] = useState<Use>('oldCrack');
  const [lengthMm, setLength] = useState<number | null>(100);
  const [depthMm, setDepth] = useState<number | null>(60);
  const [clampN, setClamp] = useState<number | null>(1000);
  const [padMm, setPad] = useState<number | null>(40);
  const { low, high, source } = CLAMP_PRESSURE_MPA[use];
  const line = lengthMm && depthMm && clampN ? { lengthMm, depthMm, clampN } : undefined;
  const needed = (pressureMpa: number): number => (line ? clampsNeeded({ pressureMpa, ...line }) : 0);
  return (
    <>
      <ChoiceField label="What is glued" value={use} options={uses} onChange={(picked) => picked && setUse(picked)} />
      <LengthField label="Length of the line" valueMm={lengthMm} stepMm={10} maxMm={1500} onChange={setLength} />
      <LengthField label="Depth of the faces" valueMm={depthMm} stepMm={5} maxMm={300} onChange={setDepth} />
      <NumberField
        label="Force of one clamp"
        hint="A small hand clamp or band 500 to 1000 N, a bar clamp 2000 N and more. 1000 N is 100 kg."
        unit="N"
        step={100}
        min={50}
        max={10000}
        chips={[500, 1000, 2000]}
        value={clampN}
        onChange={setClamp}
      />
      <LengthField
        label="From pad to glue line"
        hint="How far the pressure has to spread."
        valueMm={padMm}
        stepMm={5}
        maxMm={400}
        onChange={setPad}
      />
      <Cautions ids={['edgedToolsAndClamps', 'looseWhileDamp']} />
      <Results
        rows={
          line && [
            ['Clamps', span(needed(low), needed(high))],
            ['Pressure on the faces', `${tidy(low, 2)}–${tidy(high, 2)} MPa`],
            ...(padMm ? [['No further apart than', length(clampSpacingMm(padMm), units)] as const] : []),
            [
              'One band at that pull, round a crack to the middle',
              `${tidy(strapPressureMpa(line.clampN, line.lengthMm, line.depthMm), 2)} MPa`,
            ],
          ]
        }
        source={`Pressure × length × depth ÷ force, rounded up. Pressure: ${source}. Spread at about 45°: common practice. A band crosses the crack twice: own geometry.`}
      />
      <p class={css.note}>
        Shaped cauls spread the force and save the crown. Faces closed is enough: squeezing harder starves the joint.
      </p>
    </>
  );
}

export default {
  id: 'clamps',
  order: 8,
  title: 'Clamps needed',
  about: 'How many along a glue line, how far apart, and what a band does.',
  Panel: Clamps,
} satisfies Calculator;
