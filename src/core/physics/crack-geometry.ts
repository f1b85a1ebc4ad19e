import { type HoldingHumidity, humidityHolding } from './equilibrium-moisture.ts';
import { requirePositive, requireRange } from './range.ts';
import type { PerPoint } from './wood.ts';

/** What separates the two directions: a ring-complete block must split to dry because it shrinks more along its rings than across them. */
export type Directions = Pick<PerPoint, 'radial' | 'tangential'>;

function difference({ radial, tangential }: Directions): number {
  requireRange('radial', radial, 0, 0.01);
  requireRange('tangential', tangential, 0, 0.01);
  if (tangential > radial) return tangential - radial;
  throw new RangeError(`tangential: got ${tangential}, expected more than the radial ${radial}.`);
}

/**
 * Opening at the rim of a crack from rim to pith in a round block that has dried, mm: π·D·(C_T − C_R)·(M_start − M_end).
 * A drier room opens it, a damper one closes it. Over-predicts where the block holds no pith (quarter of a log, laminated).
 * @param diameterMm above 0 · lossPoints moisture lost, 0 to 30 points
 * @throws RangeError outside those, or if the wood does not move more along its rings
 * SOURCE: own geometry for a full-depth radial crack; coefficients Wood Handbook table 13-5.
 */
export function radialGapMm(diameterMm: number, wood: Directions, lossPoints: number): number {
  requirePositive('diameterMm', diameterMm);
  requireRange('lossPoints', lossPoints, 0, 30);
  return Math.PI * diameterMm * difference(wood) * lossPoints;
}

/** Drier room, wider crack. SOURCE: sign of {@link radialGapMm}. */
export function crackMoves(fromMoisturePct: number, toMoisturePct: number): 'opens' | 'closes' | 'rests' {
  if (toMoisturePct === fromMoisturePct) return 'rests';
  return toMoisturePct < fromMoisturePct ? 'opens' : 'closes';
}

export interface Closing {
  readonly moisturePct: number;
  readonly humidity: HoldingHumidity;
}

/**
 * Moisture, and the humidity that brings it, at which a radial crack would just close.
 * @param gapMm 0 or more · diameterMm above 0 · moistureNowPct 0 to 100 · temperatureC −30 to 132.2
 * @throws RangeError outside those
 * SOURCE: {@link radialGapMm} turned round, then the equilibrium equation turned round.
 */
export function closingPoint(
  gapMm: number,
  diameterMm: number,
  wood: Directions,
  moistureNowPct: number,
  temperatureC: number,
): Closing {
  requireRange('gapMm', gapMm, 0, 1000);
  requirePositive('diameterMm', diameterMm);
  requireRange('moistureNowPct', moistureNowPct, 0, 100);
  const moisturePct = moistureNowPct + gapMm / (Math.PI * diameterMm * difference(wood));
  // Past any air the figure stops meaning anything, and a hair-thin difference of directions can make it huge.
  const humidity = humidityHolding(temperatureC, Math.min(moisturePct, 300));
  return { moisturePct, humidity };
}

/**
 * Mean strain round the rim if the crack is forced shut dry, percent: 100·gap/(π·D).
 * @param gapMm 0 or more · diameterMm above 0
 * @throws RangeError outside those
 * SOURCE: own geometry.
 */
export function closingStrainPct(gapMm: number, diameterMm: number): number {
  requireRange('gapMm', gapMm, 0, 1000);
  requirePositive('diameterMm', diameterMm);
  return (100 * gapMm) / (Math.PI * diameterMm);
}

/** A block is no isotropic disc: real force and stress lie within a factor of two of the model. */
export const FORCE_DOUBT_FACTOR = 2;

/**
 * Force across the crack to close it, N: E·gap·length/(4π·e), a wedge gap in an elastic disc.
 * @param stiffnessMpa across the grain, above 0 · gapMm 0 or more · lengthMm of the crack, above 0
 * @throws RangeError outside those
 * SOURCE: textbook elasticity (from memory); doubt {@link FORCE_DOUBT_FACTOR}.
 */
export function closingForceN(stiffnessMpa: number, gapMm: number, lengthMm: number): number {
  requirePositive('stiffnessMpa', stiffnessMpa);
  requireRange('gapMm', gapMm, 0, 1000);
  requirePositive('lengthMm', lengthMm);
  return (stiffnessMpa * gapMm * lengthMm) / (4 * Math.PI * Math.E);
}

/**
 * Tension locked in at the rim once the crack has been forced shut, MPa: E·gap/(2π·D).
 * @param stiffnessMpa across the grain, above 0 · gapMm 0 or more · diameterMm above 0
 * @throws RangeError outside those
 * SOURCE: same model as {@link closingForceN}.
 */
export function rimStressMpa(stiffnessMpa: number, gapMm: number, diameterMm: number): number {
  requirePositive('stiffnessMpa', stiffnessMpa);
  requireRange('gapMm', gapMm, 0, 1000);
  requirePositive('diameterMm', diameterMm);
  return (stiffnessMpa * gapMm) / (2 * Math.PI * diameterMm);
}

/**
 * Crushing beyond which wood across the grain keeps a permanent set, and the strain often taken as safe, percent.
 * SOURCE: set 0.5 to 1 %, Getty 1998 (looked up); 0.4 % from museum strain studies of the 1990s (from memory).
 */
export const STRAIN_LIMITS_PCT = { safe: 0.4, setBegins: 0.5, setCertain: 1 } as const;
