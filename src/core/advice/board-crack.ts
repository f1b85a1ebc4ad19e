import type { Closing } from '../physics/crack-geometry.ts';
import { humidityHolding } from '../physics/equilibrium-moisture.ts';
import { requirePositive, requireRange } from '../physics/range.ts';
import type { Span } from '../physics/sourced.ts';
import { WOODS, type WoodId } from '../physics/woods.ts';

/**
 * Strain across boards drawn together dry, percent: 100·gap/width.
 * @param gapMm 0 to 1000 · widthMm of the boards across their grain, above 0
 * @throws RangeError outside those
 * SOURCE: geometry.
 */
export function boardStrainPct(gapMm: number, widthMm: number): number {
  requireRange('gapMm', gapMm, 0, 1000);
  return (100 * gapMm) / requirePositive('widthMm', widthMm);
}

/**
 * Moisture and humidity at which boards, held at their outer edges, would have swollen a gap between them shut, and the
 * span of that humidity from the wood's own spread: M + gap/(width·C_T).
 * @param gapMm 0 to 1000 · widthMm above 0 · moistureNowPct 0 to 100 · temperatureC −30 to 132.2
 * @throws RangeError outside those
 * SOURCE: Wood Handbook eq. 13-2, ΔD = D·C_T·ΔM, turned round; materials handbook §1.4 for a split along a glue line or flat face.
 */
export function boardClosing(
  gapMm: number,
  widthMm: number,
  wood: WoodId,
  moistureNowPct: number,
  temperatureC: number,
): { readonly closing: Closing; readonly humidityPct: Span } {
  requireRange('gapMm', gapMm, 0, 1000);
  requirePositive('widthMm', widthMm);
  requireRange('moistureNowPct', moistureNowPct, 0, 100);
  const { perPoint, uncertainty } = WOODS[wood];
  const at = (share: number): Closing => {
    const moisturePct = moistureNowPct + gapMm / (widthMm * perPoint.tangential * share);
    return { moisturePct, humidity: humidityHolding(temperatureC, Math.min(moisturePct, 300)) };
  };
  const percent = ({ humidity }: Closing): number => (humidity.kind === 'found' ? humidity.relativeHumidityPct : 100);
  return { closing: at(1), humidityPct: { low: percent(at(1 + uncertainty)), high: percent(at(1 - uncertainty)) } };
}
