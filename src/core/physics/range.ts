/**
 * Gives `value` back if it is a finite number within [low, high].
 * @throws RangeError naming what came and what was expected; NaN and ±Infinity are refused too.
 */
export function requireRange(name: string, value: number, low: number, high: number): number {
  if (Number.isFinite(value) && value >= low && value <= high) return value;
  throw new RangeError(`${name}: got ${value}, expected ${low} to ${high}.`);
}

/**
 * Gives `value` back if it is finite and above zero (or zero, if allowed) and no larger than `high`.
 * @throws RangeError naming what came and what was expected.
 */
export function requirePositive(name: string, value: number, high: number = Number.MAX_VALUE): number {
  if (value > 0 && value <= high) return value;
  throw new RangeError(
    `${name}: got ${value}, expected more than 0${high < Number.MAX_VALUE ? ` and at most ${high}` : ''}.`,
  );
}

/** @throws RangeError unless `value` is a whole number within [low, high]. */
export function requireWhole(name: string, value: number, low: number, high: number = Number.MAX_SAFE_INTEGER): number {
  if (Number.isInteger(value) && value >= low && value <= high) return value;
  throw new RangeError(
    `${name}: got ${value}, expected a whole number from ${low}${high < Number.MAX_SAFE_INTEGER ? ` to ${high}` : ''}.`,
  );
}

/**
 * Next whole number up, but not for the dust of binary arithmetic: 2.1 / 0.3 is 7.000000000000001,
 * which must not cost the owner an eighth layer.
 */
export const wholeUp = (value: number): number => Math.ceil(value - 1e-9);
