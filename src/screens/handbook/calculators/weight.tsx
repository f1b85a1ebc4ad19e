import { useState } from 'preact/hooks';
import { SOURCES } from '../../../core/advice/usual.ts';
import { weigh } from '../../../core/advice/weight.ts';
import { LengthField } from '../../../parts/length-field.tsx';
import { weightWords } from '../../../text/advice/weight.ts';
import { useApp } from '../../../ui/app.ts';
import { NumberField, SelectField } from '../../../ui/field.tsx';
import { Advised } from '../advised.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';

function Weight() {
  const { catalogue, store } = useApp();
  const { units } = store.settings.value;
  const woods = Object.entries(catalogue.materials).filter(([, { group }]) => group === 'wood');
  const [material, setMaterial] = useState(woods[0]?.[0] ?? '');
  const [massG, setMass] = useState<number | null>(null);
  const [lengthMm, setLength] = useState<number | null>(200);
  const [widthMm, setWidth] = useState<number | null>(164);
  const [depthMm, setDepth] = useState<number | null>(130);
  const wood = woods.find(([id]) => id === material)?.[1];
  const answer =
    wood && massG && lengthMm && widthMm && depthMm
      ? weigh(massG, { lengthMm, widthMm, depthMm }, { low: wood.densityKgM3[0], high: wood.densityKgM3[1] })
      : undefined;
  return (
    <div class={css.pair}>
      <div>
        <SelectField
          label="Wood"
          value={material}
          options={woods.map(([id, { term }]) => ({ id, label: term }))}
          onChange={setMaterial}
        />
        <NumberField
          label="Weight"
          hint="By a kitchen or luggage scale."
          unit="g"
          step={10}
          max={20000}
          value={massG}
          onChange={setMass}
        />
        <LengthField label="Length, front to back" valueMm={lengthMm} stepMm={1} maxMm={600} onChange={setLength} />
        <LengthField label="Width, side to side" valueMm={widthMm} stepMm={1} maxMm={600} onChange={setWidth} />
        <LengthField label="Depth, rope line to tip" valueMm={depthMm} stepMm={1} maxMm={400} onChange={setDepth} />
      </div>
      <div>
        <Advised
          words={answer && weightWords(answer, units)}
          cautions={[]}
          sources={[SOURCES.dome]}
          source="A dome of the block’s length, width and depth: ⅔·π·½L·½W·depth, times the density of its wood. Bounds: trade estimate."
          empty="Fill in the weight: a solid crown in lime of this size is about a kilogram."
        />
        {wood && <p class={css.source}>Density of the wood: {wood.source.text}</p>}
      </div>
    </div>
  );
}

export default {
  id: 'weight',
  order: 12,
  title: 'Weight check',
  about: 'Whether a solid crown weighs what its wood should, or was eaten inside.',
  Panel: Weight,
} satisfies Calculator;
