import { requirePositive, requireRange } from './range.ts';

export interface Dent {
  readonly volumeMm3: number;
  readonly ballRadiusMm: number;
  readonly wallMm2: number;
}

/**
 * A dent as the cap of a ball: volume π·h·(3a² + h²)/6, ball radius (a² + h²)/2h, wall π·(a² + h²), a half the width.
 * @param acrossMm above 0 · deepMm above 0, at most `acrossMm` (deeper is a hole)
 * @throws RangeError outside those
 * SOURCE: geometry.
 */
export function dentOf(acrossMm: number, deepMm: number): Dent {
  requirePositive('acrossMm', acrossMm);
  requirePositive('deepMm', deepMm, acrossMm);
  const a2 = (acrossMm / 2) ** 2;
  const h = deepMm;
  return {
    volumeMm3: (Math.PI * h * (3 * a2 + h * h)) / 6,
    ballRadiusMm: (a2 + h * h) / (2 * h),
    wallMm2: Math.PI * (a2 + h * h),
  };
}

/** How a crack runs out: an even V; its mouth narrowing to nothing; mouth and depth both. */
export type CrackShape = 'even' | 'mouthTapers' | 'bothTaper';
const WEDGE_SHARE = { even: 2, mouthTapers: 4, bothTaper: 6 } as const satisfies Record<CrackShape, number>;

/**
 * Room in a crack taken as a wedge, mm³: length × mouth × depth over 2, 4 or 6.
 * @param lengthMm above 0 · mouthMm 0 or more · depthMm 0 or more
 * @throws RangeError outside those
 * SOURCE: geometry.
 */
export function crackVolumeMm3(lengthMm: number, mouthMm: number, depthMm: number, shape: CrackShape): number {
  requirePositive('lengthMm', lengthMm);
  requireRange('mouthMm', mouthMm, 0, 1000);
  requireRange('depthMm', depthMm, 0, 1000);
  return (lengthMm * mouthMm * depthMm) / WEDGE_SHARE[shape];
}
