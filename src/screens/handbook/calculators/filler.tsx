import { useState } from 'preact/hooks';
import { cautionsOfFillers, fillHollow, type HollowSize, sourcesOfFill } from '../../../core/advice/fill.ts';
import { LengthField } from '../../../parts/length-field.tsx';
import { fillWords } from '../../../text/advice/fill.ts';
import { ChoiceField, NumberField, TickField } from '../../../ui/field.tsx';
import { Advised } from '../advised.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';

const hollows = [
  { id: 'cap', label: 'A dent', text: 'round' },
  { id: 'wedge', label: 'A crack or cut' },
  { id: 'bowl', label: 'A loss', text: 'by its area' },
] as const satisfies readonly { id: HollowSize['hollow']; label: string; text?: string }[];

function Filler() {
  const [hollow, setHollow] = useState<HollowSize['hollow']>('cap');
  const [depthMm, setDepth] = useState<number | null>(3);
  const [acrossMm, setAcross] = useState<number | null>(20);
  const [count, setCount] = useState<number | null>(1);
  const [mouthMm, setMouth] = useState<number | null>(2);
  const [lengthMm, setLength] = useState<number | null>(100);
  const [areaCm2, setArea] = useState<number | null>(4);
  const [onPinnedLine, setPinned] = useState(false);
  const [moving, setMoving] = useState(false);

  const sizes: { readonly [H in HollowSize['hollow']]: HollowSize | undefined } = {
    cap: depthMm && acrossMm && count ? { hollow: 'cap', acrossMm, depthMm, count } : undefined,
    wedge: depthMm && mouthMm && lengthMm ? { hollow: 'wedge', mouthMm, lengthMm, depthMm } : undefined,
    bowl: depthMm && areaCm2 ? { hollow: 'bowl', areaCm2, depthMm } : undefined,
  };
  const size = sizes[hollow];
  const answer = size && fillHollow({ size, onPinnedLine, moving });
  return (
    <div class={css.pair}>
      <div>
        <ChoiceField
          label="The hollow"
          value={hollow}
          options={hollows}
          onChange={(picked) => picked && setHollow(picked)}
        />
        {hollow === 'cap' && (
          <>
            <LengthField label="Across" valueMm={acrossMm} stepMm={1} maxMm={100} onChange={setAcross} />
            <NumberField label="How many like it" unit="" step={1} min={1} max={60} value={count} onChange={setCount} />
          </>
        )}
        {hollow === 'wedge' && (
          <>
            <LengthField label="Width at the mouth" valueMm={mouthMm} stepMm={0.5} maxMm={30} onChange={setMouth} />
            <LengthField label="Length" valueMm={lengthMm} stepMm={10} maxMm={3000} onChange={setLength} />
          </>
        )}
        {hollow === 'bowl' && (
          <NumberField label="Area" unit="cm²" step={0.5} max={400} value={areaCm2} onChange={setArea} />
        )}
        <LengthField label="Depth" valueMm={depthMm} stepMm={0.5} maxMm={100} onChange={setDepth} />
        <TickField label="Pins or cord go in here" value={onPinnedLine} onChange={setPinned} />
        <TickField label="It opens and shuts with the seasons" value={moving} onChange={setMoving} />
      </div>
      <div>
        <Advised
          words={answer && fillWords(answer)}
          cautions={answer ? cautionsOfFillers(answer.fillers) : []}
          sources={answer ? sourcesOfFill(answer) : []}
          source="Volumes: geometry. Layers, hours and shrinkage: trade estimates; the label wins."
        />
      </div>
    </div>
  );
}

export default {
  id: 'filler',
  order: 9,
  title: 'Filler',
  about: 'How much, in how many layers, and how long each filler dries.',
  Panel: Filler,
} satisfies Calculator;
