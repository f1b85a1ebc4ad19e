/** Numbers as advice says them. */

/** To so many digits, without an empty tail. */
export const tidy = (value: number, digits: number): string =>
  value.toLocaleString('en-GB', { maximumFractionDigits: digits, useGrouping: false }).replace('-', '−');

/** `64–72`, or one figure where both ends say the same. */
export function span(low: number, high: number, digits = 0): string {
  const [a, b] = [tidy(low, digits), tidy(high, digits)];
  return a === b ? a : `${a}–${b}`;
}

/** `12.5 %`, from a figure in per cent. */
export const pct = (value: number, digits = 1): string => `${tidy(value, digits)} %`;

/** `13–51 %`, from shares. */
export const shares = (low: number, high: number): string => `${span(low * 100, high * 100)} %`;

const MM3_PER_CM3 = 1000;

/** `0.3–0.8 cm³`, finer where it is little. */
export function volume(lowMm3: number, highMm3: number): string {
  const digits = highMm3 < MM3_PER_CM3 / 10 ? 3 : highMm3 < 10 * MM3_PER_CM3 ? 2 : 0;
  return `${span(lowMm3 / MM3_PER_CM3, highMm3 / MM3_PER_CM3, digits)} cm³`;
}

const NEWTON_PER_KG = 9.80665;
/** To two figures: a force known to a factor of two has no more. */
const rough = (value: number): number => Number(value.toPrecision(2));

/** `800–3200 N, as 82–330 kg press`. */
export const force = (lowN: number, highN: number): string =>
  `${span(rough(lowN), rough(highN))} N, as ${span(rough(lowN / NEWTON_PER_KG), rough(highN / NEWTON_PER_KG))} kg press`;

/** `1 layer`, `3 layers`. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
