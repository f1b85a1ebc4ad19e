import { requirePositive, requireRange } from './range.ts';

/**
 * Circumference of an oval, mm, from its half axes: Ramanujan's second formula; off by under 1e-6 for hat ovals (length up to 1.5 widths).
 * @param halfLengthMm, halfWidthMm above 0, either order
 * @throws RangeError otherwise
 * SOURCE: Ramanujan 1914, textbook (from memory).
 */
export function ovalPerimeterMm(halfLengthMm: number, halfWidthMm: number): number {
  requirePositive('halfLengthMm', halfLengthMm);
  requirePositive('halfWidthMm', halfWidthMm);
  const sum = halfLengthMm + halfWidthMm;
  const h = ((halfLengthMm - halfWidthMm) / sum) ** 2;
  return Math.PI * sum * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
}

export interface HalfAxes {
  readonly halfLengthMm: number;
  readonly halfWidthMm: number;
}

/**
 * Half axes of an oval of known circumference and length to width. The perimeter scales with size, so one evaluation is enough.
 * @param circumferenceMm above 0 · lengthToWidth 1 to 3
 * @throws RangeError outside those
 * SOURCE: {@link ovalPerimeterMm}
 */
export function halfAxesOf(circumferenceMm: number, lengthToWidth: number): HalfAxes {
  requirePositive('circumferenceMm', circumferenceMm);
  requireRange('lengthToWidth', lengthToWidth, 1, 3);
  const halfWidthMm = circumferenceMm / ovalPerimeterMm(lengthToWidth, 1);
  return { halfLengthMm: halfWidthMm * lengthToWidth, halfWidthMm };
}
