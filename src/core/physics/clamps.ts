import { requirePositive, requireRange, requireWhole, wholeUp } from './range.ts';
import type { Sourced, Span } from './sourced.ts';

const MPA_PER_PSI = 0.006894757293168;

/** Pounds per square inch in MPa. SOURCE: definition of the units. */
export const mpaFromPsi = (psi: number): number => psi * MPA_PER_PSI;

/**
 * Pressure to close a glue line, MPa. Old cracks: aim at closed faces, no more.
 * SOURCE: glue-maker advice in the press, 100–150 and 175–250 psi (looked up); old cracks a trade estimate.
 */
export const CLAMP_PRESSURE_MPA = {
  softwood: { low: 0.7, high: 1, source: 'glue-maker advice in the woodworking press', confidence: 'looked-up' },
  hardwood: { low: 1.2, high: 1.7, source: 'glue-maker advice in the woodworking press', confidence: 'looked-up' },
  oldCrack: { low: 0.3, high: 0.7, source: 'trade estimate', confidence: 'estimate' },
} as const satisfies Record<string, Span & Sourced>;

/**
 * Clamps needed along a glue line: area × pressure ÷ force, rounded up, at least one.
 * @param pressureMpa above 0 to 20 · lengthMm, depthMm of the glued face, above 0 · clampN force of one clamp, above 0
 * @throws RangeError outside those
 * SOURCE: own model.
 */
export function clampsNeeded(line: { pressureMpa: number; lengthMm: number; depthMm: number; clampN: number }): number {
  requirePositive('pressureMpa', line.pressureMpa, 20);
  requirePositive('lengthMm', line.lengthMm);
  requirePositive('depthMm', line.depthMm);
  requirePositive('clampN', line.clampN);
  return Math.max(1, wholeUp((line.pressureMpa * line.lengthMm * line.depthMm) / line.clampN));
}

/**
 * Widest spacing of clamps, mm: pressure fans out at about 45°, so twice the distance from pad to glue line.
 * @param padToGlueMm above 0
 * @throws RangeError outside that
 * SOURCE: common practice.
 */
export const clampSpacingMm = (padToGlueMm: number): number => 2 * requirePositive('padToGlueMm', padToGlueMm);

/**
 * Force across a crack through the middle of a round block from straps under tension, N: two legs of each cross it.
 * @param tensionN 0 to 100 000 · straps whole, 1 to 20
 * @throws RangeError outside those
 * SOURCE: own geometry.
 */
export function strapForceN(tensionN: number, straps = 1): number {
  requireRange('tensionN', tensionN, 0, 100_000);
  return 2 * tensionN * requireWhole('straps', straps, 1, 20);
}

/**
 * Pressure that makes on the crack's faces, MPa.
 * @param tensionN 0 to 100 000 · lengthMm along the block, depthMm across it, above 0
 * @throws RangeError outside those
 * SOURCE: {@link strapForceN}
 */
export function strapPressureMpa(tensionN: number, lengthMm: number, depthMm: number, straps = 1): number {
  requirePositive('lengthMm', lengthMm);
  requirePositive('depthMm', depthMm);
  return strapForceN(tensionN, straps) / (lengthMm * depthMm);
}
