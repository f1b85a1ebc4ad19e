/** What lies between the head and the block. */
export interface Allowance {
  /** Room for comfort, mm of circumference; usually 3 to 6 (trade estimate). */
  readonly easeMm: number;
  /** Thickness of the ribbon (0.4) or leather (to 1.5) inside, mm (trade estimate). */
  readonly bandMm: number;
  /** Share the material draws in after blocking: felt 0 to 0.015, straw 0 to 0.005 (trade estimate). */
  readonly shrink: number;
}

function checkShrink(shrink: number): void {
  if (!(shrink >= 0 && shrink < 1)) throw new Error(`Shrink came as ${shrink}, expected a share from 0 to under 1.`);
}

/** Head size lost to a band of this thickness, mm: 2π per millimetre. Geometry. */
export const bandLossMm = (bandMm: number): number => 2 * Math.PI * bandMm;

/** Block needed for a head, mm: (head + ease + 2π·band) ÷ (1 − shrink). Source: own formula. */
export function blockForHeadMm(headMm: number, { easeMm, bandMm, shrink }: Allowance): number {
  checkShrink(shrink);
  return (headMm + easeMm + bandLossMm(bandMm)) / (1 - shrink);
}

/** Head a block serves, mm: the inverse of `blockForHeadMm`. */
export function headFromBlockMm(blockMm: number, { easeMm, bandMm, shrink }: Allowance): number {
  checkShrink(shrink);
  return blockMm * (1 - shrink) - bandLossMm(bandMm) - easeMm;
}

/** Outside of a crown blocked in material this thick, mm: block + 2π·thickness. Geometry. */
export const crownOutsideMm = (blockMm: number, materialMm: number): number => blockMm + bandLossMm(materialMm);

/** Room left when the blocked crown goes through a brim opening, mm of circumference; below 0 it will not pass. */
export const openingRoomMm = (openingMm: number, blockMm: number, materialMm: number): number =>
  openingMm - crownOutsideMm(blockMm, materialMm);

/** Thickness of wrapping that enlarges a block by so much circumference, mm. Geometry. */
export const wrapThicknessMm = (increaseMm: number): number => increaseMm / (2 * Math.PI);
