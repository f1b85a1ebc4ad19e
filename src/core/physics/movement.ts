import { ovalPerimeterMm } from './oval.ts';
import { requirePositive, requireRange } from './range.ts';
import { shrinkageFromPerPoint, type Wood } from './wood.ts';

export type AcrossGrain = 'radial' | 'tangential';

/** Span in which the per-point coefficients hold. SOURCE: Wood Handbook eq. 13-2 (looked up). */
export const NARROW_SPAN_PCT = { low: 6, high: 14 } as const;
/** Wood stops moving about here. SOURCE: Wood Handbook eq. 13-3, as remembered. */
export const WIDE_CEILING_PCT = 30;

export interface MoistureStep {
  readonly fromMoisturePct: number;
  readonly toMoisturePct: number;
}

/**
 * Change of a width across the grain for small steps, mm (negative shrinks): D·C·(M_to − M_from). Meant for 6 to 14 % moisture;
 * {@link widthChange} chooses the rule by itself.
 * @param widthMm above 0 · perPoint fraction per point, 0 to 0.01 · moistures 0 to 30
 * @throws RangeError outside those
 * SOURCE: Wood Handbook eq. 13-2 (looked up).
 */
export function narrowChangeMm(
  widthMm: number,
  perPoint: number,
  { fromMoisturePct, toMoisturePct }: MoistureStep,
): number {
  requirePositive('widthMm', widthMm);
  requireRange('perPoint', perPoint, 0, 0.01);
  requireRange('fromMoisturePct', fromMoisturePct, 0, WIDE_CEILING_PCT);
  requireRange('toMoisturePct', toMoisturePct, 0, WIDE_CEILING_PCT);
  return widthMm * perPoint * (toMoisturePct - fromMoisturePct);
}

/**
 * Change of a width across the grain for wide steps, mm: D·(M_to − M_from)/(3000/S − 30 + M_from).
 * @param widthMm above 0 · shrinkagePct green to oven-dry, above 0 to 20 · moistures 0 to 30
 * @throws RangeError outside those
 * SOURCE: Wood Handbook eq. 13-3, as remembered.
 */
export function wideChangeMm(
  widthMm: number,
  shrinkagePct: number,
  { fromMoisturePct, toMoisturePct }: MoistureStep,
): number {
  requirePositive('widthMm', widthMm);
  requirePositive('shrinkagePct', shrinkagePct, 20);
  requireRange('fromMoisturePct', fromMoisturePct, 0, WIDE_CEILING_PCT);
  requireRange('toMoisturePct', toMoisturePct, 0, WIDE_CEILING_PCT);
  return (widthMm * (toMoisturePct - fromMoisturePct)) / (3000 / shrinkagePct - 30 + fromMoisturePct);
}

export interface WidthChange {
  readonly rule: 'narrow' | 'wide' | 'wide-from-coefficient';
  readonly changeMm: number;
  /** Nearest to zero and furthest from it, from the wood's own spread. */
  readonly leastMm: number;
  readonly mostMm: number;
}

const inNarrow = (moisturePct: number) => moisturePct >= NARROW_SPAN_PCT.low && moisturePct <= NARROW_SPAN_PCT.high;

/**
 * Change of a width of a named wood, by whichever rule holds. Above 30 % wood no longer swells, so moistures are counted to 30 at most.
 * @param wood row of WOODS · widthMm above 0 · moistures 0 to 300
 * @throws RangeError outside those
 * SOURCE: {@link narrowChangeMm}, {@link wideChangeMm}
 */
export function widthChange(wood: Wood, along: AcrossGrain, widthMm: number, step: MoistureStep): WidthChange {
  requireRange('fromMoisturePct', step.fromMoisturePct, 0, 300);
  requireRange('toMoisturePct', step.toMoisturePct, 0, 300);
  const counted = {
    fromMoisturePct: Math.min(step.fromMoisturePct, WIDE_CEILING_PCT),
    toMoisturePct: Math.min(step.toMoisturePct, WIDE_CEILING_PCT),
  };
  const rule =
    inNarrow(counted.fromMoisturePct) && inNarrow(counted.toMoisturePct)
      ? 'narrow'
      : wood.shrinkage
        ? 'wide'
        : 'wide-from-coefficient';
  const perPoint = wood.perPoint[along];
  const shrinkagePct =
    wood.shrinkage?.[along === 'radial' ? 'radialPct' : 'tangentialPct'] ?? shrinkageFromPerPoint(perPoint);
  const changeMm =
    rule === 'narrow' ? narrowChangeMm(widthMm, perPoint, counted) : wideChangeMm(widthMm, shrinkagePct, counted);
  return { rule, changeMm, leastMm: changeMm * (1 - wood.uncertainty), mostMm: changeMm * (1 + wood.uncertainty) };
}

export interface OvalDrift {
  readonly widthMm: number;
  readonly beforeMm: number;
  readonly afterMm: number;
  /** Change of the circumference as a share of what it was; negative shrinks. */
  readonly share: number;
}

/**
 * Circumference of a crown before and after its width has moved; the length runs along the grain and is taken to stay.
 * @param lengthMm, widthMm outside axes, above 0 · widthChangeMm as {@link widthChange} gives it
 * @throws RangeError if nothing of the width is left
 * SOURCE: Ramanujan's second formula for the perimeter; length along the grain hardly moves (trade handbook 1.6).
 */
export function ovalDrift(lengthMm: number, widthMm: number, widthChangeMm: number): OvalDrift {
  const after = requirePositive('width after the change, mm', widthMm + widthChangeMm);
  const beforeMm = ovalPerimeterMm(lengthMm / 2, widthMm / 2);
  const afterMm = ovalPerimeterMm(lengthMm / 2, after / 2);
  return { widthMm: after, beforeMm, afterMm, share: afterMm / beforeMm - 1 };
}
