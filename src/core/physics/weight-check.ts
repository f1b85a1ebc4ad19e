import { domeVolumeCm3 } from './block-geometry.ts';
import { requirePositive } from './range.ts';
import type { Span } from './sourced.ts';

/**
 * Shares of the expected mass that mean something, for solid blocks.
 * SOURCE: under 60 % of the dome figure eaten, straight sides up to half as much again: trade handbook, from memory.
 * More than 20 % lighter than its wood, look for tunnels: trade estimate.
 */
export const WEIGHT_LINES = { eatenBelow: 0.6, lightBelow: 0.8, straightSidesUpTo: 1.5 } as const;

export interface WeighedBlock {
  readonly massG: number;
  /** Density the wood may have as it stands, kg/m³. */
  readonly densityKgM3: Span;
}

export type WeightVerdict = 'eaten' | 'look-for-tunnels' | 'as-expected' | 'heavier-than-its-wood';

export interface WeightReading {
  readonly expectedG: Span & { readonly likely: number };
  /** Of the likely mass; low and high from the span of the density. */
  readonly share: Span & { readonly likely: number };
  readonly verdict: WeightVerdict;
  /** The verdict is the same at either end of the density's span. */
  readonly certain: boolean;
}

function verdictOf(share: number, heavyAbove: number): WeightVerdict {
  if (share < WEIGHT_LINES.eatenBelow) return 'eaten';
  if (share < WEIGHT_LINES.lightBelow) return 'look-for-tunnels';
  return share > heavyAbove ? 'heavier-than-its-wood' : 'as-expected';
}

function reading(volumeCm3: number, { massG, densityKgM3 }: WeighedBlock, heavyAbove: number): WeightReading {
  requirePositive('massG', massG);
  requirePositive('densityKgM3.low', densityKgM3.low, requirePositive('densityKgM3.high', densityKgM3.high, 25_000));
  const low = (volumeCm3 * densityKgM3.low) / 1000;
  const high = (volumeCm3 * densityKgM3.high) / 1000;
  const likely = (low + high) / 2;
  const share = { low: massG / high, likely: massG / likely, high: massG / low };
  const verdict = verdictOf(share.likely, heavyAbove);
  const certain = verdictOf(share.low, heavyAbove) === verdict && verdictOf(share.high, heavyAbove) === verdict;
  return { expectedG: { low, likely, high }, share, verdict, certain };
}

/**
 * Is a solid block as heavy as a dome of its length, width and depth in its wood would be? A dome is the least such a block can be,
 * so only figures beyond half as much again are heavy.
 * @param lengthMm, widthMm, depthMm outside, above 0 · block mass above 0 g, density above 0
 * @throws RangeError outside those. Hollow blocks and shells are not for this check.
 * SOURCE: {@link WEIGHT_LINES}
 */
export function weighAsDome(lengthMm: number, widthMm: number, depthMm: number, block: WeighedBlock): WeightReading {
  const dome = { halfLengthMm: lengthMm / 2, halfWidthMm: widthMm / 2, heightMm: depthMm };
  return reading(domeVolumeCm3(dome), block, WEIGHT_LINES.straightSidesUpTo);
}

/** A measured volume leaves no room for straight sides: a fifth too heavy is already another wood, a wet one, or metal inside. Own rule. */
const HEAVY_WITH_VOLUME = 1.2;

/**
 * The same with a known volume, by water displacement in a bag or from its shape.
 * @param volumeCm3 above 0 · block mass above 0 g, density above 0
 * @throws RangeError outside those
 * SOURCE: {@link WEIGHT_LINES}
 */
export function weighAgainstVolume(volumeCm3: number, block: WeighedBlock): WeightReading {
  return reading(requirePositive('volumeCm3', volumeCm3), block, HEAVY_WITH_VOLUME);
}
