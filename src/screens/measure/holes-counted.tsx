import type { DamageKind } from '../../core/catalogue.ts';
import type { Spot } from '../../core/mark-geometry.ts';
import type { Measured } from '../../core/records.ts';
import { plusMinus, rounded } from '../../text/measured.ts';
import { useApp } from '../../ui/app.ts';
import { type HoleSummary, METHOD_VERSION } from '../../workers/pixel-jobs.ts';
import { answersFrom } from './answers-from.ts';
import type { Desk } from './desk.ts';
import { Histogram } from './histogram.tsx';
import type { Candidate } from './holes-tool.tsx';
import css from './measure.module.css';
import { Figure } from './panel-parts.tsx';
import { referenceWords } from './references.ts';
import { Suspects } from './suspects.tsx';
import { TakeInto } from './take-into.tsx';

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

export function Counted({
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
