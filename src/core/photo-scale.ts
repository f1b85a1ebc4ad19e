/*
 * From pixels to millimetres in one photograph: a thing of known size in the plane of the thing measured.
 * Pinhole geometry; lens distortion is left out, so keep the work near the middle of the frame.
 */

/** @throws unless above 0 and finite */
function checkAbove0(name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) throw new Error(`${name} came as ${value}, expected above 0.`);
}

/** Scale of a photograph, px per mm, from a reference of known length. */
export function pixelsPerMm(referencePx: number, referenceMm: number): number {
  checkAbove0('Reference px', referencePx);
  checkAbove0('Reference mm', referenceMm);
  return referencePx / referenceMm;
}

export function lengthMm(lengthPx: number, pxPerMm: number): number {
  checkAbove0('Scale', pxPerMm);
  return lengthPx / pxPerMm;
}

/**
 * How much too long a feature reads when it is nearer to the lens than the scale, as a share: h/(D − h).
 * @param distanceMm lens to scale
 * @param heightMm feature above the scale; negative when it lies deeper, and then the share is negative
 * @throws when the feature would be at or behind the lens
 */
export function planeError(distanceMm: number, heightMm: number): number {
  checkAbove0('Distance', distanceMm);
  checkAbove0('Distance left', distanceMm - heightMm);
  return heightMm / (distanceMm - heightMm);
}

/** Least distance, mm, from lens to scale that keeps that error within `maxError`: h(1 + 1/e). At 2 %, 51 times the height. */
export function leastDistanceMm(heightMm: number, maxError: number): number {
  checkAbove0('Error', maxError);
  return heightMm * (1 + 1 / maxError);
}

const RADIANS = Math.PI / 180;

/**
 * Tilt of a round thing seen as an oval, degrees: arccos(minor/major), in either order. Orthographic approximation.
 * A coin 2 % out of round is tilted over 11°. Seven-sided coins are no circles: do not use them for this.
 */
export function tiltFromEllipseDeg(axisPx: number, otherAxisPx: number): number {
  checkAbove0('Axis', axisPx);
  checkAbove0('Axis', otherAxisPx);
  const [minor, major] = axisPx < otherAxisPx ? [axisPx, otherAxisPx] : [otherAxisPx, axisPx];
  return Math.acos(minor / major) / RADIANS;
}

/** True length of something measured along the tilt, mm: apparent ÷ cos(tilt). @throws at 90° and beyond */
export function unforeshortenedMm(apparentMm: number, tiltDeg: number): number {
  if (!(Math.abs(tiltDeg) < 90)) throw new Error(`Tilt came as ${tiltDeg}°, expected under 90°.`);
  return apparentMm / Math.cos(tiltDeg * RADIANS);
}

/**
 * Standard error of a measured length, mm: length·√(2(σ/px_ref)² + 2(σ/px_len)²), two end points each.
 * @param sigmaPx how well one end point is set, px
 */
export function lengthErrorMm(measured: {
  readonly lengthMm: number;
  readonly lengthPx: number;
  readonly referencePx: number;
  readonly sigmaPx: number;
}): number {
  checkAbove0('Reference px', measured.referencePx);
  checkAbove0('Length px', measured.lengthPx);
  const share = measured.sigmaPx * Math.SQRT2 * Math.hypot(1 / measured.referencePx, 1 / measured.lengthPx);
  return measured.lengthMm * share;
}
