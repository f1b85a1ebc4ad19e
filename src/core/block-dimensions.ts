/** Wood stops swelling at about 30 % moisture (fibre saturation, from memory). */
export const FIBRE_SATURATION_PCT = 30;

/**
 * Change of a dimension as wood dries or takes up damp, mm: D · S/30 · Δ, valid below fibre saturation.
 * @param shrinkPct total shrinkage of the species from green to oven-dry in that direction; basswood radial 6.6, tangential 9.3
 * @param moistureChangePct points of moisture, negative for drying
 */
export const dimensionChangeMm = (sizeMm: number, shrinkPct: number, moistureChangePct: number): number =>
  (sizeMm * (shrinkPct / 100) * moistureChangePct) / FIBRE_SATURATION_PCT;

/** Drift of the tape against the size marked, in % of the mark: above 0 the block is smaller than its stamp says. */
export const driftFromMarkPct = (markedMm: number, tapedMm: number): number => (100 * (markedMm - tapedMm)) / markedMm;

/** Volume of a plain dome taken as half an ellipsoid, litres: ⅔·π·(L/2)·(W/2)·depth. Geometry. */
export const domeVolumeLitres = (dome: { lengthMm: number; widthMm: number; depthMm: number }): number =>
  ((2 / 3) * Math.PI * (dome.lengthMm / 2) * (dome.widthMm / 2) * dome.depthMm) / 1e6;

/** Weight of a solid, g; a block far under it is eaten, one far over it is wet, filled or another wood. */
export const solidWeightG = (volumeLitres: number, densityKgM3: number): number => volumeLitres * densityKgM3;
