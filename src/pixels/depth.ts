/**
 * By how much a feature `heightMm` nearer to the lens than the scale is over-read, as a share: h / (D − h).
 * @param distanceMm from the lens to the scale
 * Source: pinhole geometry.
 */
export const depthErrorShare = (distanceMm: number, heightMm: number): number => heightMm / (distanceMm - heightMm);

/** The least distance from lens to scale that keeps that error within `share`: h·(1 + 1/share). Source: pinhole geometry. */
export const distanceForDepthError = (heightMm: number, share: number): number => heightMm * (1 + 1 / share);

/** Tilt of a round thing that looks `minorPx` by `majorPx`, in degrees: arccos(minor/major). Source: orthographic approximation. */
export const tiltOfRound = (majorPx: number, minorPx: number): number =>
  (Math.acos(Math.min(1, minorPx / majorPx)) * 180) / Math.PI;

/** True length of an apparent one measured straight along a tilt. Source: orthographic approximation. */
export const unforeshortened = (apparentMm: number, tiltDeg: number): number =>
  apparentMm / Math.cos((tiltDeg * Math.PI) / 180);

/**
 * Standard error of a length read off by two taps against a reference read off by two taps, in mm.
 * Source: error propagation, length·√(2(σ/reference)² + 2(σ/length)²), lengths in pixels.
 */
export const lengthSigmaMm = (lengthMm: number, lengthPx: number, referencePx: number, sigmaPx: number): number =>
  lengthMm * Math.SQRT2 * Math.hypot(sigmaPx / referencePx, sigmaPx / lengthPx);
