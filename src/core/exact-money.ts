import { apportion } from './apportion.ts';
import { type MinorUnits, minor } from './units.ts';

/**
 * Exact sums of money times rates. Rates are taken to the millionth (0.0495 → 49 500), so an amount times two
 * rates is a whole number of millionths of millionths of a minor unit, and nothing is lost before the one rounding.
 */
const MILLION = 1_000_000n;
const WHOLE = MILLION * MILLION;

/** An exact amount, in millionths of millionths of a minor unit. */
export type Exact = bigint;

/** A rate in millionths. @throws when negative or not finite */
export function millionths(rate: number): bigint {
  if (!(rate >= 0 && rate <= 1000))
    throw new Error(`Rate came as ${rate}, expected a share of 0 or more (0.24 for 24 %).`);
  return BigInt(Math.round(rate * 1e6));
}

export const exact = (amount: MinorUnits): Exact => BigInt(amount) * WHOLE;

/** An exact amount times a rate; the amount may have been through one rate already, not two. */
export const times = (amount: Exact, rate: number): Exact => (amount * millionths(rate)) / MILLION;

/**
 * A bill whose lines add up to its total. The rounding rule: the exact total is rounded once, to the nearest whole
 * minor unit with halves up; what remains after the lines that are whole by nature is shared among the rounded lines
 * by largest remainder. A saleroom that rounds line by line may differ by a minor unit or two.
 * @param wholeLines amounts that are whole already
 * @param exactLines amounts that are computed from rates, none negative
 */
export function addUp<Line extends string>(
  wholeLines: readonly MinorUnits[],
  exactLines: Readonly<Record<Line, Exact>>,
): { readonly lines: Readonly<Record<Line, MinorUnits>>; readonly total: MinorUnits } {
  const names = Object.keys(exactLines) as Line[];
  const computed = names.reduce((sum, name) => sum + exactLines[name], 0n);
  const rounded = Number((computed + WHOLE / 2n) / WHOLE);
  // An even split of nothing is 0 each, so an all-zero bill needs no case of its own.
  const parts = apportion(
    rounded,
    names.map((name) => Number(exactLines[name])),
  );
  const lines = Object.fromEntries(names.map((name, index) => [name, minor(parts[index] ?? 0)]));
  return {
    lines: lines as Record<Line, MinorUnits>,
    total: minor(wholeLines.reduce((sum: number, line) => sum + line, rounded)),
  };
}

/**
 * The highest whole amount whose cost stays within a limit, between `from` and `to`; the cost must rise with the amount.
 * @returns null when even `from` costs too much
 */
export function highestWithin(
  limit: MinorUnits,
  cost: (amount: MinorUnits) => MinorUnits,
  from: MinorUnits,
  to: MinorUnits,
): MinorUnits | null {
  if (from > to || cost(from) > limit) return null;
  let [low, high] = [from as number, to as number];
  while (low < high) {
    const middle = low + Math.ceil((high - low) / 2);
    if (cost(minor(middle)) <= limit) low = middle;
    else high = middle - 1;
  }
  return minor(low);
}
