import { requirePositive, requireRange } from './range.ts';

/**
 * Moisture now, percent, from two weighings and the moisture then: (1 + M₁)·m₂/m₁ − 1.
 * @param beforeG, nowG above 0 · beforeMoisturePct 0 to 300
 * @throws RangeError outside those, or if the block weighs less than its dry wood did
 * SOURCE: definition of moisture content.
 */
export function moistureFromWeighing(beforeG: number, beforeMoisturePct: number, nowG: number): number {
  requirePositive('beforeG', beforeG);
  requirePositive('nowG', nowG);
  requireRange('beforeMoisturePct', beforeMoisturePct, 0, 300);
  const moisturePct = 100 * ((1 + beforeMoisturePct / 100) * (nowG / beforeG) - 1);
  const dryG = beforeG / (1 + beforeMoisturePct / 100);
  if (moisturePct >= 0) return moisturePct;
  throw new RangeError(`nowG: got ${nowG}, expected at least the ${dryG.toFixed(1)} g the dry wood weighs.`);
}

/**
 * Mass lost (positive) or gained on the way from one moisture to another, g.
 * @param nowG above 0 · moistures 0 to 300
 * @throws RangeError outside those
 * SOURCE: definition of moisture content.
 */
export function massLossG(nowG: number, moisturePct: number, toMoisturePct: number): number {
  requirePositive('nowG', nowG);
  requireRange('moisturePct', moisturePct, 0, 300);
  requireRange('toMoisturePct', toMoisturePct, 0, 300);
  return nowG * (1 - (1 + toMoisturePct / 100) / (1 + moisturePct / 100));
}

/** Two weighings this far apart that differ by less than this mean the block has settled. Common practice, no source. */
export const SETTLED = { daysApart: 7, underPct: 0.1 } as const;

export type Settling =
  | { readonly kind: 'too-soon'; readonly daysToWait: number }
  | { readonly kind: 'settled'; readonly changePct: number }
  | { readonly kind: 'drying' | 'wetting'; readonly changePct: number };

/**
 * Has the block come to rest with its room? Weighings closer than a week prove nothing.
 * @param firstG, secondG above 0 · daysBetween 0 or more
 * @throws RangeError outside those
 * SOURCE: {@link SETTLED}, common practice.
 */
export function settling(firstG: number, secondG: number, daysBetween: number): Settling {
  requirePositive('firstG', firstG);
  requirePositive('secondG', secondG);
  requireRange('daysBetween', daysBetween, 0, 100_000);
  if (daysBetween < SETTLED.daysApart) return { kind: 'too-soon', daysToWait: SETTLED.daysApart - daysBetween };
  const changePct = 100 * (secondG / firstG - 1);
  if (Math.abs(changePct) < SETTLED.underPct) return { kind: 'settled', changePct };
  return { kind: changePct < 0 ? 'drying' : 'wetting', changePct };
}
