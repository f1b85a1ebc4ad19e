import type { WithCautions } from './cautions.ts';
import { requirePositive } from './range.ts';

/** Median grain of coated abrasives, micrometres, ±3. SOURCE: ISO 6344 P grades, as remembered. */
export const GRIT_MICROMETRES = {
  P60: 269,
  P80: 201,
  P100: 162,
  P120: 125,
  P150: 100,
  P180: 82,
  P220: 68,
  P240: 58.5,
  P320: 46.2,
  P400: 35,
} as const;
export type Grit = keyof typeof GRIT_MICROMETRES;
export const GRITS = Object.keys(GRIT_MICROMETRES) as Grit[];

/**
 * How a block is sanded: no jump of more than 1.6 in grain size; P80 only for glue and steps; stop at P240, for finer burnishes and felt slips.
 * SOURCE: trade estimate.
 */
export const SANDING = {
  largestJump: 1.6,
  roughOnly: 'P80',
  start: 'P120',
  stop: 'P240',
  cautions: ['hardwoodDust', 'hiddenPins', 'leadPaint', 'mercury'],
} as const satisfies WithCautions & { largestJump: number; roughOnly: Grit; start: Grit; stop: Grit };

/** How many times coarser one grit is than another. SOURCE: {@link GRIT_MICROMETRES} */
export const jump = (from: Grit, to: Grit): number => GRIT_MICROMETRES[from] / GRIT_MICROMETRES[to];

export interface GritPlan {
  readonly grits: readonly Grit[];
  /** The last grit is finer than felt likes. */
  readonly burnishes: boolean;
}

/**
 * Fewest grits from one to another without too big a jump, both ends included.
 * @throws RangeError if the second is coarser than the first
 * SOURCE: {@link SANDING}; each neighbour in the series is within the jump.
 */
export function gritPlan(from: Grit, to: Grit): GritPlan {
  if (GRITS.indexOf(to) < GRITS.indexOf(from)) throw new RangeError(`to: got ${to}, expected ${from} or finer.`);
  const grits: Grit[] = [from];
  for (let last = from; last !== to; ) {
    const within = GRITS.filter(
      (grit) => jump(grit, to) >= 1 && jump(last, grit) > 1 && jump(last, grit) <= SANDING.largestJump,
    );
    last = within.at(-1) ?? to;
    grits.push(last);
  }
  return { grits, burnishes: GRITS.indexOf(to) > GRITS.indexOf(SANDING.stop) };
}

/** A head size step round the block, mm. SOURCE: common practice. */
export const HEAD_SIZE_STEP_MM = 10;

/**
 * Shape lost to sanding: share of a head size between two measurements of the circumference; negative if it grew.
 * @param beforeMm, afterMm above 0
 * @throws RangeError outside that
 * SOURCE: {@link HEAD_SIZE_STEP_MM}
 */
export function sizeStepsLost(beforeMm: number, afterMm: number): number {
  return (requirePositive('beforeMm', beforeMm) - requirePositive('afterMm', afterMm)) / HEAD_SIZE_STEP_MM;
}
