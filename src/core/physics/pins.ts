import { requirePositive, requireRange } from './range.ts';
import { figureFor, SPECIFIC_GRAVITY } from './wood-strength.ts';
import type { WoodId } from './woods.ts';

/**
 * Pull that draws a smooth pin out of side grain, N: 54.12·G^2.5·D·L. Pushing it in is harder in proportion.
 * @param specificGravity at 12 % moisture, 0.05 to 1.2 · diameterMm above 0 to 6 · depthMm above 0 to 100
 * @throws RangeError outside those
 * SOURCE: Wood Handbook nail formula, as remembered, stretched down to pins.
 */
export function pinWithdrawalN(specificGravity: number, diameterMm: number, depthMm: number): number {
  requireRange('specificGravity', specificGravity, 0.05, 1.2);
  requirePositive('diameterMm', diameterMm, 6);
  requirePositive('depthMm', depthMm, 100);
  return 54.12 * specificGravity ** 2.5 * diameterMm * depthMm;
}

/** Pull on a 0.9 mm pin 10 mm deep, N: below the first it falls out, to the second it goes in with a thumb, above the third it bends. SOURCE: trade estimate from the woods named in the handbook. */
export const PIN_COMFORT_N = { drops: 20, comfortable: 60, bends: 140 } as const;

export type PinFeel =
  | { readonly kind: 'drops' | 'comfortable' | 'firm' | 'bends'; readonly pullN: number }
  | { readonly kind: 'unknown' };

/**
 * How a wood takes blocking pins. Lime, alder and poplar are the sweet spot; beech bends pins, balsa drops them.
 * SOURCE: {@link pinWithdrawalN}; lines {@link PIN_COMFORT_N}
 */
export function pinFeel(wood: WoodId): PinFeel {
  const gravity = figureFor(SPECIFIC_GRAVITY, wood);
  if (gravity === null) return { kind: 'unknown' };
  const pullN = pinWithdrawalN(gravity, 0.9, 10);
  if (pullN < PIN_COMFORT_N.drops) return { kind: 'drops', pullN };
  if (pullN > PIN_COMFORT_N.bends) return { kind: 'bends', pullN };
  return { kind: pullN <= PIN_COMFORT_N.comfortable ? 'comfortable' : 'firm', pullN };
}
