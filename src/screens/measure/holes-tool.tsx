import { useState } from 'preact/hooks';
import { nearest, outlineOf, type Spot } from '../../core/mark-geometry.ts';
import { refusal } from '../../text/measured.ts';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/field.tsx';
import type { FoundHole, HoleSummary } from '../../workers/pixel-jobs.ts';
import { type Desk, type Drawn, useWork } from './desk.ts';
import { Counted } from './holes-counted.tsx';
import css from './measure.module.css';
import { Busy, Nudge } from './panel-parts.tsx';
import { savedMarks } from './saved-marks.ts';
import { usePixels } from './use-pixels.ts';

export interface Candidate extends FoundHole {
  readonly struck: boolean;
}

/** How near a tap must come to a circle to strike it out, in screen px beyond its rim. */
const REACH_PX = 14;

/** Marks that look like holes, proposed in an outline; each can be struck out, others added. */
export function HolesTool({ desk }: { readonly desk: Desk }) {
  const { facts, stage, size } = desk;
  const pixels = usePixels(desk);
  const [taps, setTaps] = useState<readonly Spot[]>([]);
  const [holes, setHoles] = useState<readonly Candidate[] | null>(null);
  const [summary, setSummary] = useState<HoleSummary | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  const [addMm, setAddMm] = useState<number | null>(1.5);
  const outline = outlineOf(taps);
  const counted = holes?.filter(({ struck }) => !struck) ?? [];

  async function weigh(next: readonly Candidate[]): Promise<void> {
    if (!facts) return;
    setHoles(next);
    const spots = next.filter(({ struck }) => !struck).map(({ spot }) => spot);
    const answer = await pixels.ask('weighHoles', { outline, holes: spots, facts });
    if (answer) setSummary(answer.ok ? answer : null);
  }

  async function count(): Promise<void> {
    if (!facts) return;
    const answer = await pixels.ask('findHoles', { outline, facts });
    if (!answer) return;
    setWhy(answer.ok ? null : refusal(answer.why));
    if (!answer.ok) return;
    stage.said.value = `${answer.holes.length} marks that look like holes.`;
    await weigh(answer.holes.map((hole) => ({ ...hole, struck: false })));
  }

  async function tapHole(spot: Spot): Promise<void> {
    if (!holes || !facts) return;
    const zoom = stage.view.value?.zoom ?? 1;
    const hit = nearest(
      holes.map((hole) => hole.spot),
      spot,
      size,
    );
    const hole = hit && holes[hit.index];
    if (hit && hole && (hit.px - hole.radius * size.width) * zoom < REACH_PX) {
      stage.said.value = hole.struck ? 'Counted again.' : 'Struck out.';
      await weigh(holes.map((other, i) => (i === hit.index ? { ...other, struck: !other.struck } : other)));
      return;
    }
    const found = await pixels.ask('holeAt', { spot, facts, otherwiseMm: addMm ?? 1.5 });
    if (!found?.ok) return;
    stage.said.value = 'Added.';
    await weigh([...holes, { ...found, struck: false }]);
  }

  useWork(stage, {
    drawn: [
      ...savedMarks(desk),
      ...(outline.length > 0
        ? [{ key: 'outline', shape: 'region' as const, points: outline }]
        : taps.length > 1
          ? [{ key: 'taps', shape: 'polyline' as const, points: taps }]
          : []),
      ...(holes ?? []).map(
        ({ spot, radius, struck }, i): Drawn => ({
          ...{ key: `hole ${i}`, shape: 'ring', points: [spot], radius },
          look: struck ? 'struck' : 'chosen',
        }),
      ),
    ],
    handles: holes ? [] : taps,
    onTap(spot) {
      if (holes) {
        void tapHole(spot);
        return;
      }
      setTaps([...taps, spot]);
      stage.said.value = `Corner ${taps.length + 1}.`;
    },
    onMove: (index, spot) => setTaps(taps.map((tap, i) => (i === index ? spot : tap))),
    onRemove: (index) => setTaps(taps.filter((_, i) => i !== index)),
  });

  if (!facts) {
    return (
      <p class={css.warn} role="note">
        Holes are told from knots by their size: set the <b>Scale</b> first.
      </p>
    );
  }
  return (
    <div class={css.tool}>
      <p class={css.say}>
        {holes
          ? 'Proposed, not believed: tap a circle to strike it out, tap a hole that was missed to add it.'
          : 'Tap two opposite corners of the place to count in, or go round it.'}
      </p>
      <div class={css.row}>
        {!holes && <Nudge desk={desk} />}
        {taps.length > 0 && (
          <Button
            look="quiet"
            onPress={() => {
              setTaps([]);
              setHoles(null);
              setSummary(null);
              setWhy(null);
            }}
          >
            Start again
          </Button>
        )}
      </div>
      <Busy pixels={pixels} />
      {why && (
        <p class={css.refused} role="alert">
          {why}
        </p>
      )}
      {!holes && outline.length > 0 && (
        <Button look="main" wide onPress={() => void count()}>
          Count the holes
        </Button>
      )}
      {holes && summary && <Counted desk={desk} counted={counted} all={holes} outline={outline} summary={summary} />}
      {holes && (
        <NumberField
          label="Size of a hole added by hand"
          hint="Used where the photograph does not show its rim."
          unit="mm"
          step={0.1}
          max={12}
          value={addMm}
          onChange={setAddMm}
        />
      )}
    </div>
  );
}
