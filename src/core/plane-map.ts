/*
 * Maps between two pictures of one flat face, in shares of each picture's width and height, so that they hold at any size
 * the pictures are shown or decoded at. Nine numbers, row by row; a place is taken as (x, y, 1) and divided through.
 */
export type PlaneMap = readonly [number, number, number, number, number, number, number, number, number];
type Place = readonly [x: number, y: number];
interface Size {
  readonly width: number;
  readonly height: number;
}

/** The nine numbers of a stored map; undefined when they are not nine finite ones. */
export const planeMap = (numbers: readonly number[]): PlaneMap | undefined =>
  numbers.length === 9 && numbers.every(Number.isFinite) ? (numbers as unknown as PlaneMap) : undefined;

/** Where a map takes a place; undefined at and beyond the horizon, where there is none. */
export function mapped([a, b, c, d, e, f, g, h, i]: PlaneMap, [x, y]: Place): Place | undefined {
  const w = g * x + h * y + i;
  return w > 1e-9 ? [(a * x + b * y + c) / w, (d * x + e * y + f) / w] : undefined;
}

/** First `second`, then `first`, as matrices are written. */
export function joined(first: PlaneMap, second: PlaneMap): PlaneMap {
  const cell = (row: number, column: number): number =>
    [0, 1, 2].reduce((sum, k) => sum + (first[3 * row + k] as number) * (second[3 * k + column] as number), 0);
  return [0, 1, 2].flatMap((row) => [0, 1, 2].map((column) => cell(row, column))) as unknown as PlaneMap;
}

/** The way back, scaled so that its last number is 1; undefined where a face is seen edge-on. Source: adjugate, textbook. */
export function inverted([a, b, c, d, e, f, g, h, i]: PlaneMap): PlaneMap | undefined {
  const adjugate = [
    ...[e * i - f * h, c * h - b * i, b * f - c * e],
    ...[f * g - d * i, a * i - c * g, c * d - a * f],
    ...[d * h - e * g, b * g - a * h, a * e - b * d],
  ];
  const last = adjugate[8] ?? 0;
  const det = a * (adjugate[0] as number) + b * (adjugate[3] as number) + c * (adjugate[6] as number);
  if (!(Math.abs(det) > 1e-12) || !(Math.abs(last) > 1e-12)) return undefined;
  return adjugate.map((value) => value / last) as unknown as PlaneMap;
}

const scaling = ({ width, height }: Size): PlaneMap => [width, 0, 0, 0, height, 0, 0, 0, 1];
const shrinking = ({ width, height }: Size): PlaneMap => [1 / width, 0, 0, 0, 1 / height, 0, 0, 0, 1];

/** A map between pixels of two pictures, as one between their shares. */
export const inShares = (pixels: PlaneMap, from: Size, to: Size): PlaneMap =>
  joined(shrinking(to), joined(pixels, scaling(from)));

/** A map between shares of two pictures, as one between pixels of sizes they are shown at. */
export const inPixels = (shares: PlaneMap, from: Size, to: Size): PlaneMap =>
  joined(scaling(to), joined(shares, shrinking(from)));

/** A map as the style of an element whose transform origin is its top left corner. Source: CSS Transforms 2, matrix3d(). */
export const asTransform = ([a, b, c, d, e, f, g, h, i]: PlaneMap): string =>
  `matrix3d(${[a, d, 0, g, b, e, 0, h, 0, 0, 1, 0, c, f, 0, i].join(', ')})`;
