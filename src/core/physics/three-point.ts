import { requireRange } from './range.ts';
import type { BestLikelyWorst } from './sourced.ts';

export interface MeanAndSpread {
  readonly mean: number;
  readonly sd: number;
}

/**
 * Mean and standard deviation of a three-point estimate: (b + 4l + w)/6 and (w − b)/6.
 * @param estimate best ≤ likely ≤ worst, 0 or more
 * @throws RangeError if they are out of order
 * SOURCE: PERT, textbook (from memory).
 */
export function meanOf({ best, likely, worst }: BestLikelyWorst): MeanAndSpread {
  requireRange('best', best, 0, likely);
  requireRange('worst', worst, likely, Number.MAX_VALUE);
  return { mean: (best + 4 * likely + worst) / 6, sd: (worst - best) / 6 };
}

/**
 * Sum of `count` like items each: means add, and variances add as if errors were independent. On one block they are not (same hands,
 * same wood): add a shared spread of 20 to 30 % on top before showing it.
 * @param counts 0 or more
 * @throws RangeError outside that
 * SOURCE: textbook; shared spread a trade estimate.
 */
export function sumOf(items: readonly { readonly each: BestLikelyWorst; readonly count: number }[]): MeanAndSpread {
  let mean = 0;
  let variance = 0;
  for (const { each, count } of items) {
    const one = meanOf(each);
    mean += requireRange('count', count, 0, 1e6) * one.mean;
    variance += count * one.sd ** 2;
  }
  return { mean, sd: Math.sqrt(variance) };
}
