import { erf } from './erf.ts';
import { requirePositive, requireRange } from './range.ts';
import type { BestLikelyWorst } from './sourced.ts';

/** How quickly heat spreads through wood across the grain, m²/s. SOURCE: Wood Handbook, as remembered. */
export const WOOD_THERMAL_DIFFUSIVITY = 1.6e-7;
/** A steamed face is taken to be at boiling heat. */
export const STEAM_C = 100;

/**
 * Temperature below a face suddenly held at another temperature, °C: T_s + (T_0 − T_s)·erf(x/(2√(αt))), a body much thicker than the depth.
 * @param depthMm 0 to 1000 · minutes 0 to 10 000 · faceC, startC −50 to 150 · diffusivityM2PerS 1e-8 to 1e-6
 * @throws RangeError outside those
 * SOURCE: textbook conduction (from memory); {@link WOOD_THERMAL_DIFFUSIVITY}.
 */
export function temperatureAtDepthC(
  depthMm: number,
  minutes: number,
  { faceC = STEAM_C, startC = 20, diffusivityM2PerS = WOOD_THERMAL_DIFFUSIVITY } = {},
): number {
  requireRange('depthMm', depthMm, 0, 1000);
  requireRange('faceC', faceC, -50, 150);
  requireRange('startC', startC, -50, 150);
  requireRange('minutes', minutes, 0, 10_000);
  if (depthMm === 0) return faceC;
  const reachMm = heatReachMm(minutes, diffusivityM2PerS);
  return reachMm === 0 ? startC : faceC + (startC - faceC) * erf(depthMm / reachMm);
}

/**
 * Depth at which 16 % of the face's rise is felt, mm: 2·√(α·t).
 * @param minutes 0 to 10 000
 * @throws RangeError outside that
 * SOURCE: {@link temperatureAtDepthC}
 */
export function heatReachMm(minutes: number, diffusivityM2PerS: number = WOOD_THERMAL_DIFFUSIVITY): number {
  requireRange('minutes', minutes, 0, 10_000);
  requireRange('diffusivityM2PerS', diffusivityM2PerS, 1e-8, 1e-6);
  return 2000 * Math.sqrt(diffusivityM2PerS * minutes * 60);
}

/** A glue line or filler this near a steamed face counts as hot; beyond the second depth one blocking hardly reaches it. Own rule. */
export const STEAM_DEPTHS_MM = { hotWithin: 10, coolBeyond: 20 } as const;

/** What one blocking does at a depth. @throws RangeError below zero. SOURCE: {@link STEAM_DEPTHS_MM} */
export function steamReaches(depthMm: number): 'hot' | 'warm' | 'hardly' {
  requireRange('depthMm', depthMm, 0, 1000);
  if (depthMm <= STEAM_DEPTHS_MM.hotWithin) return 'hot';
  return depthMm <= STEAM_DEPTHS_MM.coolBeyond ? 'warm' : 'hardly';
}

/** First zero of the Bessel function J0, and the weight of the first term of the cooling series, 2/(j·J1(j)). SOURCE: textbook. */
const FIRST_TERM = { root: 2.404825557695773, weight: 1.6019746 } as const;

/** Still air and wrapping stretch the ideal time. SOURCE: own reading of the difference between the model and 36 h measured in upholstery. */
export const WRAPPED_SLOWER = { best: 1, likely: 2, worst: 3 } as const satisfies BestLikelyWorst;

/**
 * Hours until the middle of a round block, its surface held at the freezer's temperature, is within a share of the whole step.
 * @param radiusMm above 0 to 500 · leftShare share of the step still to go, above 0 to 0.5 (the leading term alone is used)
 * @returns best: surface at once cold; likely and worst: still air and a wrapped block
 * @throws RangeError outside those
 * SOURCE: leading term of the cylinder series, textbook (from memory).
 */
export function coreHours(
  radiusMm: number,
  leftShare: number,
  diffusivityM2PerS: number = WOOD_THERMAL_DIFFUSIVITY,
): BestLikelyWorst {
  requirePositive('radiusMm', radiusMm, 500);
  requirePositive('leftShare', leftShare, 0.5);
  requireRange('diffusivityM2PerS', diffusivityM2PerS, 1e-8, 1e-6);
  const seconds =
    ((radiusMm / 1000) ** 2 * Math.log(FIRST_TERM.weight / leftShare)) / (FIRST_TERM.root ** 2 * diffusivityM2PerS);
  const best = seconds / 3600;
  return { best, likely: best * WRAPPED_SLOWER.likely, worst: best * WRAPPED_SLOWER.worst };
}
