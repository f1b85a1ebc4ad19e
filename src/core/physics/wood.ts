import type { Sourced } from './sourced.ts';

/** Fractions of width per percentage point of moisture, valid 6 to 14 % moisture. */
export interface PerPoint extends Sourced {
  readonly radial: number;
  readonly tangential: number;
}

/** Percent of the green size lost on the way to oven-dry. */
export interface Shrinkage extends Sourced {
  readonly radialPct: number;
  readonly tangentialPct: number;
  readonly volumetricPct?: number;
}

/** How one wood moves. */
export interface Wood {
  readonly name: string;
  readonly botanical: string;
  readonly perPoint: PerPoint;
  /** Null where no figure was found: the wide range is then derived from the coefficient. */
  readonly shrinkage: Shrinkage | null;
  /** Share by which a single piece may differ from these figures, either way. */
  readonly uncertainty: number;
  readonly note?: string;
}

/**
 * Piece-to-piece spread of shrinkage, as a share: one standard deviation.
 * SOURCE: Wood Handbook ch. 4 gives a coefficient of variation of about 15 % (from memory); the wider ones are our own estimate for
 * genus averages and for tables read second-hand.
 */
export const MOVEMENT_SPREAD = { measured: 0.15, genusAverage: 0.2, secondHand: 0.25 } as const;

/**
 * Dimensional-change coefficient from whole shrinkage: C = S/(3000 − 20·S), per point of moisture.
 * It gives back 16 of 17 domestic pairs of the printed table to 0.00001 (not white oak), but fails for most imported woods.
 * @param shrinkagePct green to oven-dry, 0 to 20
 * SOURCE: worked out from Wood Handbook eq. 13-3 at 10 % moisture.
 */
export const perPointFromShrinkage = (shrinkagePct: number): number => shrinkagePct / (3000 - 20 * shrinkagePct);

/** {@link perPointFromShrinkage} turned round, in percent. */
export const shrinkageFromPerPoint = (perPoint: number): number => (3000 * perPoint) / (1 + 20 * perPoint);
