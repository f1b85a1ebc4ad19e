import type { CautionId, WithCautions } from './cautions.ts';
import { requirePositive, requireRange, wholeUp } from './range.ts';
import type { BestLikelyWorst, Sourced } from './sourced.ts';

export interface Filler extends Sourced, WithCautions {
  readonly name: string;
  readonly thickestLayerMm: number;
  readonly hoursPerLayer: BestLikelyWorst;
  readonly shrinkPct: number;
  readonly pins: 'as wood' | 'fair' | 'poor' | 'chips' | 'cracks at edges' | 'too hard unless bulked';
  readonly steam: 'good' | 'fair' | 'softens' | 'as its glue';
}

const ESTIMATE = {
  source: 'trade estimate, from memory; the label wins',
  confidence: 'estimate',
} as const satisfies Sourced;
const hours = (best: number, likely: number, worst: number): BestLikelyWorst => ({ best, likely, worst });

/** What goes into a dent or a gap. */
export const FILLERS = {
  waterBased: {
    name: 'water-based wood filler',
    thickestLayerMm: 3,
    hoursPerLayer: hours(1, 4, 24),
    shrinkPct: 8,
    pins: 'poor',
    steam: 'softens',
    cautions: ['hardwoodDust'],
    ...ESTIMATE,
  },
  solventBased: {
    name: 'solvent-based wood filler',
    thickestLayerMm: 3,
    hoursPerLayer: hours(0.5, 2, 12),
    shrinkPct: 6,
    pins: 'fair',
    steam: 'fair',
    cautions: ['solvents', 'hardwoodDust'],
    ...ESTIMATE,
  },
  polyester: {
    name: 'two-part polyester',
    thickestLayerMm: 10,
    hoursPerLayer: hours(0.3, 0.5, 1),
    shrinkPct: 2,
    pins: 'cracks at edges',
    steam: 'good',
    cautions: ['polyesterFiller', 'hardwoodDust'],
    ...ESTIMATE,
  },
  epoxyAndDust: {
    name: 'epoxy with wood dust',
    thickestLayerMm: 12,
    hoursPerLayer: hours(6, 12, 24),
    shrinkPct: 1,
    pins: 'too hard unless bulked',
    steam: 'fair',
    cautions: ['epoxy', 'hardwoodDust'],
    ...ESTIMATE,
  },
  shellacStick: {
    name: 'shellac stick',
    thickestLayerMm: 4,
    hoursPerLayer: hours(0.1, 0.2, 0.5),
    shrinkPct: 1,
    pins: 'chips',
    // Softens from about 65 °C, so a steamed face undoes it.
    steam: 'softens',
    cautions: ['solvents'],
    ...ESTIMATE,
  },
  woodSliver: {
    name: 'sliver of the same wood',
    // One piece, whatever the depth; beyond this it takes two.
    thickestLayerMm: 50,
    hoursPerLayer: hours(12, 24, 24),
    shrinkPct: 0,
    pins: 'as wood',
    steam: 'as its glue',
    cautions: ['edgedToolsAndClamps', 'hardwoodDust'],
    ...ESTIMATE,
  },
} as const satisfies Record<string, Filler>;
export type FillerId = keyof typeof FILLERS;

/**
 * Filler to mix for a hollow, mm³: V/(1 − shrinkage).
 * @param volumeMm3 0 or more · shrinkPct 0 to 50
 * @throws RangeError outside those
 * SOURCE: arithmetic.
 */
export function mixMm3(volumeMm3: number, shrinkPct: number): number {
  requireRange('volumeMm3', volumeMm3, 0, 1e9);
  return volumeMm3 / (1 - requireRange('shrinkPct', shrinkPct, 0, 50) / 100);
}

/**
 * Layers for a depth, rounded up, at least one.
 * @param depthMm above 0 · thickestLayerMm above 0
 * @throws RangeError outside those
 * SOURCE: arithmetic.
 */
export function layersFor(depthMm: number, thickestLayerMm: number): number {
  requirePositive('depthMm', depthMm);
  return Math.max(1, wholeUp(depthMm / requirePositive('thickestLayerMm', thickestLayerMm)));
}

export interface FillPlan {
  readonly layers: number;
  readonly mixMm3: number;
  /** Drying alone, layers one after the other; hollows filled together share it. */
  readonly waitHours: BestLikelyWorst;
  /** On a line that will be pinned use wood, not paste. */
  readonly rather: 'woodSliver' | null;
  readonly cautions: readonly CautionId[];
}

/**
 * Layers, amount and waiting for one hollow.
 * @param hollow volume 0 or more mm³, depth above 0 mm
 * @throws RangeError outside those
 * SOURCE: {@link FILLERS}; wood on pinned lines is common practice.
 */
export function fillPlan(
  filler: FillerId,
  hollow: { volumeMm3: number; depthMm: number; onPinnedLine: boolean },
): FillPlan {
  const { thickestLayerMm, hoursPerLayer, shrinkPct, cautions } = FILLERS[filler];
  const layers = layersFor(hollow.depthMm, thickestLayerMm);
  const { best, likely, worst } = hoursPerLayer;
  return {
    layers,
    mixMm3: mixMm3(hollow.volumeMm3, shrinkPct),
    waitHours: { best: best * layers, likely: likely * layers, worst: worst * layers },
    rather: hollow.onPinnedLine && filler !== 'woodSliver' ? 'woodSliver' : null,
    cautions,
  };
}
