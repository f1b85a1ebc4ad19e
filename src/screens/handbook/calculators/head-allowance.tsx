import { useState } from 'preact/hooks';
import {
  bandLossMm,
  blockForHeadMm,
  crownOutsideMm,
  headFromBlockMm,
  openingRoomMm,
  wrapThicknessMm,
} from '../../../core/head-allowance.ts';
import { LengthField } from '../../../parts/length-field.tsx';
import { PercentField } from '../../../parts/percent-field.tsx';
import { length } from '../../../text/format.ts';
import { useApp } from '../../../ui/app.ts';
import { ChoiceField } from '../../../ui/field.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';
import { Results } from '../results.tsx';

type Way = 'head' | 'block';
const ways = [
  { id: 'head', label: 'Head', text: 'which block it needs' },
  { id: 'block', label: 'Block', text: 'which head it serves' },
] as const;

/** Ease, band and shrink between the head and the block. */
function Allowance() {
  const { units } = useApp().store.settings.value;
  const [way, setWay] = useState<Way>('head');
  const [size, setSize] = useState<number | null>(570);
  const [easeMm, setEase] = useState<number | null>(5);
  const [bandMm, setBand] = useState<number | null>(0.8);
  const [shrink, setShrink] = useState(0.01);
  const allowance = { easeMm: easeMm ?? 0, bandMm: bandMm ?? 0, shrink };
  const result = size === null ? undefined : (way === 'head' ? blockForHeadMm : headFromBlockMm)(size, allowance);
  return (
    <>
      <h3>Head and block</h3>
      <ChoiceField label="What I have" value={way} options={ways} onChange={(picked) => picked && setWay(picked)} />
      <LengthField
        label={way === 'head' ? 'Head, by the tape' : 'Block, at the rope line'}
        valueMm={size}
        stepMm={1}
        maxMm={800}
        onChange={setSize}
      />
      <LengthField
        label="Ease"
        hint="Room for comfort; usually 3 to 6 mm."
        valueMm={easeMm}
        stepMm={1}
        maxMm={40}
        onChange={setEase}
      />
      <LengthField
        label="Thickness of the band inside"
        hint="Ribbon about 0.4 mm, leather to 1.5 mm."
        valueMm={bandMm}
        stepMm={0.1}
        maxMm={10}
        onChange={setBand}
      />
      <PercentField
        label="Draws in after blocking"
        hint="Felt 0 to 1.5 %, straw 0 to 0.5 %."
        step={0.5}
        share={shrink}
        onChange={(share) => setShrink(Math.min(share, 0.5))}
      />
      <Results
        rows={
          result === undefined
            ? undefined
            : [
                [way === 'head' ? 'Block to use' : 'Head it serves', length(result, units)],
                ['Of which the band takes', length(bandLossMm(allowance.bandMm), units)],
              ]
        }
        source="Block = (head + ease + 2π × band) ÷ (1 − shrink). Own formula; the figures in it are trade estimates."
      />
    </>
  );
}

/** Whether a blocked crown passes its brim, and how thick a wrap enlarges a block. */
function Outside() {
  const { units } = useApp().store.settings.value;
  const [blockMm, setBlock] = useState<number | null>(null);
  const [materialMm, setMaterial] = useState<number | null>(2.5);
  const [openingMm, setOpening] = useState<number | null>(null);
  const [increaseMm, setIncrease] = useState<number | null>(null);
  const outside = blockMm === null ? undefined : crownOutsideMm(blockMm, materialMm ?? 0);
  const room = blockMm === null || openingMm === null ? undefined : openingRoomMm(openingMm, blockMm, materialMm ?? 0);
  const passes = room === undefined ? '' : room >= 0 ? `${length(room, units)} to spare` : 'it will not pass';
  return (
    <>
      <h3>Crown through the brim, and wrapping</h3>
      <LengthField label="Block" valueMm={blockMm} stepMm={1} maxMm={800} onChange={setBlock} />
      <LengthField
        label="Thickness of felt or straw"
        valueMm={materialMm}
        stepMm={0.1}
        maxMm={20}
        onChange={setMaterial}
      />
      <LengthField label="Opening of the brim" valueMm={openingMm} stepMm={1} maxMm={800} onChange={setOpening} />
      <LengthField label="Enlarge the block by" valueMm={increaseMm} stepMm={1} maxMm={100} onChange={setIncrease} />
      <Results
        rows={
          outside === undefined && increaseMm === null
            ? undefined
            : [
                ...(outside === undefined ? [] : [['Crown, outside', length(outside, units)] as const]),
                ...(room === undefined ? [] : [['Through the opening', passes] as const]),
                ...(increaseMm === null
                  ? []
                  : [['Wrap to put on', length(wrapThicknessMm(increaseMm), units)] as const]),
              ]
        }
        source="Geometry: 2π of circumference for each millimetre of thickness."
      />
    </>
  );
}

function HeadAllowance() {
  return (
    <div class={css.pair}>
      <div>
        <Allowance />
      </div>
      <div>
        <Outside />
      </div>
    </div>
  );
}

export default {
  id: 'headAllowance',
  order: 4,
  title: 'Head and block',
  about: 'Ease, band and shrink: which block a head needs, and which head a block serves.',
  Panel: HeadAllowance,
} satisfies Calculator;
