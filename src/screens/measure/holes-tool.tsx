import { useState } from 'preact/hooks';
import type { DamageKind } from '../../core/catalogue.ts';
import { nearest, outlineOf, type Spot } from '../../core/mark-geometry.ts';
import type { Measured } from '../../core/records.ts';
import { plusMinus, refusal, rounded } from '../../text/measured.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { NumberField } from '../../ui/field.tsx';
import { type FoundHole, type HoleSummary, METHOD_VERSION } from '../../workers/pixel-jobs.ts';
import { answersFrom } from './answers-from.ts';
import { type Desk, type Drawn, useWork } from './desk.ts';
import { Histogram } from './histogram.tsx';
import css from './measure.module.css';
import { Busy, Figure, Nudge } from './panel-parts.tsx';
import { referenceWords } from './references.ts';
import { savedMarks } from './saved-marks.ts';
import { Suspects } from './suspects.tsx';
import { TakeInto } from './take-into.tsx';
import { usePixels } from './use-pixels.ts';

interface Candidate extends FoundHole {
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

/** `1.2–2 mm`, or one size where all are alike. */
function rangeWords(across: readonly number[]): string {
  const [least, most] = [rounded(Math.min(...across), 0.05), rounded(Math.max(...across), 0.05)];
  return least === most ? `${least} mm` : `${least}–${most} mm`;
}

const middle = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return ((sorted[Math.floor(half - 0.5)] ?? 0) + (sorted[Math.floor(half)] ?? 0)) / 2;
};

const MM2_PER_DM2 = 10_000;
const MM2_PER_CM2 = 100;
const DM2_PER_CM2 = MM2_PER_CM2 / MM2_PER_DM2;

function Counted({
  desk,
  counted,
  all,
  outline,
  summary,
}: {
  readonly desk: Desk;
  readonly counted: readonly Candidate[];
  readonly all: readonly Candidate[];
  readonly outline: readonly Spot[];
  readonly summary: HoleSummary;
}) {
  const { catalogue } = useApp();
  const { scale } = desk.photo;
  if (counted.length === 0) {
    return (
      <p class={css.warn} role="note">
        No mark that looks like a hole. That is not “none seen”: look with your eyes and a low light.
      </p>
    );
  }
  const across = counted.map(({ diameterMm }) => diameterMm);
  const typical = middle(across);
  const sigmas = counted.flatMap(({ sigmaMm }) => (sigmaMm === null ? [] : [sigmaMm]));
  const typicalSigma = sigmas.length > 0 ? middle(sigmas) : null;
  const perDm2 = (counted.length / summary.areaMm2) * MM2_PER_DM2;
  // Counting: the error of a number of scattered things is its root. Source: Poisson.
  const perDm2Sigma = perDm2 / Math.sqrt(counted.length);
  const measured: Measured = {
    values: [
      { what: 'count', value: counted.length, sigma: null, unit: 'count' },
      { what: 'densityPerDm2', value: perDm2, sigma: perDm2Sigma, unit: 'perDm2' },
      {
        ...{ what: 'densityPerCm2', unit: 'perCm2' as const },
        ...{ value: perDm2 * DM2_PER_CM2, sigma: perDm2Sigma * DM2_PER_CM2 },
      },
      { what: 'diaMm', value: typical, sigma: typicalSigma, unit: 'mm' },
    ],
    method: 'holes',
    version: METHOD_VERSION,
    inputs: {
      outline: outline.map(([x, y]) => [x, y]),
      holes: counted.map(({ spot: [x, y], diameterMm }) => [x, y, diameterMm]),
      struck: all.filter(({ struck }) => struck).map(({ spot: [x, y] }) => [x, y]),
      areaMm2: summary.areaMm2,
      inLine: summary.inLine,
      reference: scale?.reference ?? 'twoPoints',
    },
  };
  const say = `${counted.length} ${counted.length === 1 ? 'mark that looks like a hole' : 'marks that look like holes'}`;
  return (
    <>
      <dl class={css.figures}>
        <Figure label="Counted" value={say} by={`in ${Math.round(summary.areaMm2 / MM2_PER_CM2)} cm²`} />
        <Figure label="On 10 × 10 cm" value={plusMinus(perDm2, perDm2Sigma, 'per dm²')} />
        <Figure
          label="Across"
          value={rangeWords(across)}
          by={`the middle one ${plusMinus(typical, typicalSigma, 'mm')}${scale ? `, by ${referenceWords(scale, catalogue)}` : ''}`}
        />
      </dl>
      <Histogram acrossMm={across} />
      <p class={summary.inLine ? css.warn : css.small} role="note">
        {summary.inLine
          ? 'These follow a straight line: pins or tacks, rather than beetles?'
          : 'They follow no straight line.'}
      </p>
      <Suspects of={desk.of} holeMm={typical} inLine={summary.inLine} />
      <TakeInto
        desk={desk}
        answersFor={holeAnswers(measured)}
        mark={{ shape: 'region', points: outline.map(([x, y]) => [x, y]), measured }}
      />
    </>
  );
}

/** Holes go into kinds that ask how densely they lie, with the count and size where those are asked. */
const holeAnswers =
  (measured: Measured) =>
  (kind: DamageKind): Record<string, number> =>
    kind.asks.some(({ id }) => id === 'densityPerDm2')
      ? answersFrom(measured, 'densityPerDm2')(kind)
      : answersFrom(measured, 'densityPerCm2')(kind);
