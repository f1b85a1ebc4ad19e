import { requireRange } from './range.ts';
import type { Sourced, Span } from './sourced.ts';
import type { WoodId } from './woods.ts';

type Figures = Sourced & { readonly of: Partial<Record<WoodId, number>> };

/**
 * Specific gravity: oven-dry mass over volume at 12 % moisture, no unit; ±0.04.
 * SOURCE: Wood Handbook property tables, as remembered.
 */
export const SPECIFIC_GRAVITY = {
  source: 'Wood Handbook property tables, as remembered',
  confidence: 'memory',
  within: 0.04,
  of: {
    balsa: 0.16,
    obeche: 0.34,
    easternWhitePine: 0.35,
    americanBasswood: 0.37,
    redAlder: 0.41,
    yellowPoplar: 0.42,
    mahogany: 0.5,
    blackWalnut: 0.55,
    yellowBirch: 0.62,
    sugarMaple: 0.63,
    americanBeech: 0.64,
  },
} as const satisfies Figures & { within: number };

/**
 * Strength in tension across the grain at 12 % moisture, MPa; ±0.3.
 * SOURCE: Wood Handbook FPL-GTR-190 (2010) table 5-3, as remembered.
 */
export const TENSION_ACROSS_GRAIN_MPA = {
  source: 'Wood Handbook FPL-GTR-190 (2010) table 5-3, as remembered',
  confidence: 'memory',
  of: {
    easternWhitePine: 2.1,
    americanBasswood: 2.4,
    redAlder: 2.9,
    yellowPoplar: 3.7,
    blackWalnut: 4.8,
    whiteOak: 5.5,
    yellowBirch: 6.3,
    americanBeech: 7.0,
  },
} as const satisfies Figures;

/**
 * Stiffness (Young's modulus) across the rings' grain, MPa. Without a figure for the wood, plan with `planning`.
 * SOURCE: Wood Handbook elastic ratios, as remembered; planning figure our own middle.
 */
export const STIFFNESS_ACROSS_GRAIN_MPA = {
  source: 'Wood Handbook elastic ratios, as remembered',
  confidence: 'memory',
  planning: 500,
  of: { americanBasswood: 273, yellowBirch: 695 },
} as const satisfies Figures & { planning: number };

/** Woods whose figures of strength may stand in for a European genus. Own pairing. */
const STAND_INS: Partial<Record<WoodId, WoodId>> = {
  lime: 'americanBasswood',
  alder: 'redAlder',
  beech: 'americanBeech',
  walnut: 'blackWalnut',
  oak: 'whiteOak',
  mahoganyGenus: 'mahogany',
};

/** The figure for a wood, or for its American cousin, or null: never a guess. */
export function figureFor(figures: { readonly of: Partial<Record<WoodId, number>> }, wood: WoodId): number | null {
  const cousin = STAND_INS[wood];
  return figures.of[wood] ?? (cousin === undefined ? null : (figures.of[cousin] ?? null));
}

/**
 * Mass of sound wood, g: V·G·(1 + M/100).
 * @param volumeCm3 0 or more · specificGravity 0.05 to 1.4 · moisturePct 0 to 100
 * @throws RangeError outside those
 * SOURCE: definition of specific gravity and moisture content.
 */
export function woodMassG(volumeCm3: number, specificGravity: number, moisturePct: number): number {
  requireRange('volumeCm3', volumeCm3, 0, 1e6);
  requireRange('specificGravity', specificGravity, 0.05, 1.4);
  requireRange('moisturePct', moisturePct, 0, 100);
  return volumeCm3 * specificGravity * (1 + moisturePct / 100);
}

/**
 * Density a sound piece may have, kg/m³, or null where the wood has no figure.
 * @param moisturePct 0 to 100
 * SOURCE: {@link SPECIFIC_GRAVITY}
 */
export function densitySpanKgM3(wood: WoodId, moisturePct: number): Span | null {
  const gravity = figureFor(SPECIFIC_GRAVITY, wood);
  if (gravity === null) return null;
  return {
    low: woodMassG(1000, gravity - SPECIFIC_GRAVITY.within, moisturePct),
    high: woodMassG(1000, gravity + SPECIFIC_GRAVITY.within, moisturePct),
  };
}
