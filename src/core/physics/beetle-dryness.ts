import { requireRange } from './range.ts';

/**
 * Dryness that holds furniture beetle back: humidity of hatching, percent, and the moisture below which it does not establish.
 * SOURCE: handbook of urban insects and arachnids (2005) (looked up); moisture from an encyclopaedic summary (looked up).
 */
export const FURNITURE_BEETLE_DRYNESS = {
  noHatchAtOrBelowPct: 45,
  goodHatchPct: 65,
  establishesAboveMoisturePct: 12,
} as const;

/** What the air of a store does for furniture-beetle eggs. @throws RangeError outside 0 to 100. SOURCE: {@link FURNITURE_BEETLE_DRYNESS} */
export function eggsIn(relativeHumidityPct: number): 'do not hatch' | 'some hatch' | 'hatch well' {
  const { noHatchAtOrBelowPct, goodHatchPct } = FURNITURE_BEETLE_DRYNESS;
  requireRange('relativeHumidityPct', relativeHumidityPct, 0, 100);
  if (relativeHumidityPct <= noHatchAtOrBelowPct) return 'do not hatch';
  return relativeHumidityPct < goodHatchPct ? 'some hatch' : 'hatch well';
}
