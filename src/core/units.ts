declare const unit: unique symbol;

/** A number that wears its unit in its type, so that pence cannot be passed where millimetres are expected. */
export type Unit<Name extends string> = number & { readonly [unit]: Name };

export type Millimetres = Unit<'mm'>;
export type Hours = Unit<'h'>;
/** Whole minor units of one currency: pence, cents. Never a fraction, so sums never drift. */
export type MinorUnits = Unit<'minor'>;

/** A length or a difference of lengths. @throws when not finite */
export function mm(n: number): Millimetres {
  if (!Number.isFinite(n)) throw new Error(`Millimetres came as ${n}, expected a finite number.`);
  return n as Millimetres;
}

/** A duration. @throws when negative or not finite */
export function hours(n: number): Hours {
  if (!Number.isFinite(n) || n < 0) throw new Error(`Hours came as ${n}, expected a finite number of 0 or more.`);
  return n as Hours;
}

/** Money that is already whole. @throws when it is not: round on purpose, with `roundMinor` or `floorMinor` */
export function minor(n: number): MinorUnits {
  if (!Number.isSafeInteger(n)) throw new Error(`Money came as ${n}, expected whole minor units.`);
  return (n === 0 ? 0 : n) as MinorUnits;
}

/**
 * Binary noise allowed for when a computed amount is made whole: 0.29 × 100 arrives as 28.999999999999996
 * and must floor to 29. A millionth of a penny is far above the noise and far below any real difference.
 */
const NOISE = 1e-6;

/** The nearest whole minor unit, halves up (what an invoice does). */
export const roundMinor = (n: number): MinorUnits => minor(Math.floor(n + 0.5 + NOISE));

/** The whole minor unit at or below: for limits, which must not be overstepped by rounding. */
export const floorMinor = (n: number): MinorUnits => minor(Math.floor(n + NOISE));
