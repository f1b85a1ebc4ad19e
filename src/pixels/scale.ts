import type { Mm, Px } from './types.ts';

/** Turns places in a photo into millimetres on one flat surface, and says how far to trust it. */
export type Scale = {
  /** Position on the surface in mm; origin and axes are the reference object's. */
  toMm(p: Px): Mm;
  /** One standard error, in mm, of the distance between two places. */
  sigmaMm(a: Px, b: Px): number;
  readonly source: 'card' | 'coin' | 'two-points';
  /** How far the surface lies nearer to the camera than the reference object; 0 = side by side. */
  readonly zMm: number;
  /** Tilt of the surface against the view in degrees, where the reference shows it. */
  readonly tiltDeg?: number;
};

export type Length = { readonly lengthMm: number; readonly sigmaMm: number };

/** How far a finger or cursor misses a well-defined point, each way, in pixels. Trade estimate. */
export const TAP_SIGMA_PX = 0.7;

/** Straight distance on the surface between two places, with one standard error. */
export const distanceMm = (scale: Scale, a: Px, b: Px): Length => ({
  lengthMm: apart(scale.toMm(a), scale.toMm(b)),
  sigmaMm: scale.sigmaMm(a, b),
});

/** Length along a path on the surface, in mm. */
export function pathMm(scale: Scale, path: readonly Px[]): number {
  let sum = 0;
  let last: Mm | undefined;
  for (const p of path) {
    const here = scale.toMm(p);
    if (last) sum += apart(last, here);
    last = here;
  }
  return sum;
}

export const apart = (a: Mm, b: Mm): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Standard error of a distance that comes from both end points being TAP_SIGMA_PX off, in mm. */
export function tapSigmaMm(toMm: (p: Px) => Mm, a: Px, b: Px): number {
  const base = apart(toMm(a), toMm(b));
  let variance = 0;
  for (const [dx, dy] of [
    [1, 0],
    [0, 1],
  ] as const) {
    variance += (apart(toMm([a[0] + dx, a[1] + dy]), toMm(b)) - base) ** 2;
    variance += (apart(toMm(a), toMm([b[0] + dx, b[1] + dy])) - base) ** 2;
  }
  return TAP_SIGMA_PX * Math.sqrt(variance);
}

/**
 * Scale from two places a known distance apart (a ruler, a printed line). Square-on photos only: tilt can not be seen.
 * @returns undefined when the places are under 20 px apart or the length is not positive
 * Source: error propagation of both ends; tilt counted as 3 % (a camera held by hand within about 14°), trade estimate.
 */
export function scaleFromTwoPoints(a: Px, b: Px, lengthMm: number): Scale | undefined {
  const px = Math.hypot(a[0] - b[0], a[1] - b[1]);
  if (!(px >= 20 && lengthMm > 0)) return undefined;
  const mm = lengthMm / px;
  const toMm = (p: Px): Mm => [(p[0] - a[0]) * mm, (p[1] - a[1]) * mm];
  const own = (Math.SQRT2 * TAP_SIGMA_PX) / px;
  return {
    toMm,
    sigmaMm: (p, q) => Math.hypot(tapSigmaMm(toMm, p, q), apart(toMm(p), toMm(q)) * Math.hypot(own, 0.03)),
    source: 'two-points',
    zMm: 0,
  };
}
