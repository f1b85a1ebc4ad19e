import type { CautionId } from './cautions.ts';
import { requireRange, wholeUp } from './range.ts';

/**
 * How fast and how far to damp a block: at most 5 points of humidity a week, never above 65 %.
 * SOURCE: common practice, no source; no published rate for cracked blocks was found.
 */
export const HUMIDIFYING = {
  pointsPerWeek: 5,
  ceilingPct: 65,
  cautions: ['looseWhileDamp', 'dampSlowly'],
} as const satisfies { pointsPerWeek: number; ceilingPct: number; cautions: readonly CautionId[] };

export type HumidifyingPlan =
  | {
      readonly kind: 'steps';
      readonly steps: readonly { readonly week: number; readonly relativeHumidityPct: number }[];
    }
  | { readonly kind: 'not-needed' }
  | { readonly kind: 'refused'; readonly neededPct: number; readonly ceilingPct: number };

/**
 * Humidity to set in the box week by week, or the refusal: a target above the ceiling is mould country.
 * The wood follows later than the air; hold the last step until two weighings agree.
 * @param fromPct humidity the block has lived in, 0 to 100 · toPct humidity wanted, 0 to 100
 * @throws RangeError outside those
 * SOURCE: {@link HUMIDIFYING}
 */
export function humidifyingPlan(fromPct: number, toPct: number): HumidifyingPlan {
  requireRange('fromPct', fromPct, 0, 100);
  requireRange('toPct', toPct, 0, 100);
  const { pointsPerWeek, ceilingPct } = HUMIDIFYING;
  if (toPct > ceilingPct) return { kind: 'refused', neededPct: toPct, ceilingPct };
  if (toPct <= fromPct) return { kind: 'not-needed' };
  const weeks = Math.max(1, wholeUp((toPct - fromPct) / pointsPerWeek));
  const steps = Array.from({ length: weeks }, (_, k) => ({
    week: k + 1,
    relativeHumidityPct: Math.min(toPct, fromPct + (k + 1) * pointsPerWeek),
  }));
  return { kind: 'steps', steps };
}
