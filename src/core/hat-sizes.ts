/** 1 inch exactly (international yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4;

/**
 * How a UK hat size is read. `eighth-below-us`: ⅛ under the US size, the older British custom (encyclopaedia text on
 * hat size). `as-us`: some charts print the two alike. Ask the owner which scale is meant.
 */
export const UK_SCALES = ['eighth-below-us', 'as-us'] as const;
export type UkScale = (typeof UK_SCALES)[number];
export const DEFAULT_UK_SCALE: UkScale = 'eighth-below-us';

const EIGHTH = 1 / 8;
const nearest = (value: number, step: number): number => Math.round(value / step) * step;
const ukOffset = (scale: UkScale): number => (scale === 'eighth-below-us' ? EIGHTH : 0);

export const inchesFromMm = (circumferenceMm: number): number => circumferenceMm / MM_PER_INCH;
export const mmFromInches = (inches: number): number => inches * MM_PER_INCH;

/** US size before rounding: inches of circumference ÷ π (agrees with published charts, 53 to 64 cm). */
export const exactUsSize = (circumferenceMm: number): number => inchesFromMm(circumferenceMm) / Math.PI;

/** US size as stamped: to the nearest ⅛. One ⅛ is 9.975 mm of circumference. */
export const usSize = (circumferenceMm: number): number => nearest(exactUsSize(circumferenceMm), EIGHTH);

/** Circumference in the middle of a US size, mm. */
export const mmFromUsSize = (size: number): number => mmFromInches(size * Math.PI);

export const ukSize = (circumferenceMm: number, scale: UkScale = DEFAULT_UK_SCALE): number =>
  usSize(circumferenceMm) - ukOffset(scale);
export const mmFromUkSize = (size: number, scale: UkScale = DEFAULT_UK_SCALE): number =>
  mmFromUsSize(size + ukOffset(scale));

/** French points, unrounded: (cm − 47) ÷ 2 (fitted to the printed row of an encyclopaedia's size table). */
export const frenchPoints = (circumferenceMm: number): number => (circumferenceMm - 470) / 20;
export const mmFromFrenchPoints = (points: number): number => 470 + 20 * points;

/** The older rule: length plus width in inches, halved; not quite inches ÷ π, because an oval is longer than its mean circle. */
export const traditionalSize = ({ lengthMm, widthMm }: { lengthMm: number; widthMm: number }): number =>
  inchesFromMm(lengthMm + widthMm) / 2;

/** One line of the size table. A size is null where no chart prints one. */
export interface HatSizeRow {
  readonly cm: number;
  readonly inches: number;
  readonly us: number | null;
  readonly uk: number | null;
  readonly frenchPoints: number | null;
}

/** Sizes printed on charts: US 6 to 8½, and with them UK; French 0 to 9½ (handbook table, 47 to 68 cm). */
const PRINTED = { us: [6, 8.5], frenchPoints: [0, 9.5] } as const;
const within = (value: number, [low, high]: readonly [number, number]): boolean => value >= low && value <= high;

/** All names of one circumference: cm, inches, US, UK, French points (to the nearest ½). */
export function hatSizeRow(circumferenceMm: number, scale: UkScale = DEFAULT_UK_SCALE): HatSizeRow {
  const us = usSize(circumferenceMm);
  const points = nearest(frenchPoints(circumferenceMm), 0.5);
  const printed = within(us, PRINTED.us);
  return {
    cm: circumferenceMm / 10,
    inches: inchesFromMm(circumferenceMm),
    us: printed ? us : null,
    uk: printed ? ukSize(circumferenceMm, scale) : null,
    frenchPoints: within(points, PRINTED.frenchPoints) ? points : null,
  };
}

export const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'] as const;

/** A size in the trade's spelling, to the nearest ⅛: 7.125 → “7⅛”, 0.5 → “½”, 57 → “57”. */
export function formatEighths(value: number): string {
  const count = Math.round(Math.abs(value) * 8);
  const whole = Math.floor(count / 8);
  const fraction = EIGHTHS[count % 8] ?? '';
  const sign = value < 0 && count > 0 ? '−' : '';
  return `${sign}${whole === 0 && fraction !== '' ? '' : whole}${fraction}`;
}
