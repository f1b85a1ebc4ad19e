import type { Air } from './air.ts';
import type { CautionId, WithCautions } from './cautions.ts';
import { criticalHumidityPct, weeksToFirstGrowth } from './mould-growth.ts';
import { requireRange } from './range.ts';
import type { SourcedRow, Span } from './sourced.ts';

/**
 * Lines in use: no risk below, damp above, and the climate for a shelf of blocks, percent humidity.
 * SOURCE: each row.
 */
export const HUMIDITY_LINES = {
  noRisk: {
    belowPct: 65,
    coldestC: 2,
    hottestC: 45,
    source: 'days-to-mould table of an image permanence institute, as quoted in a public forum',
    confidence: 'looked-up',
  },
  damp: {
    abovePct: 75,
    source: 'Canadian Conservation Institute, incorrect relative humidity',
    confidence: 'looked-up',
  },
  store: {
    lowPct: 45,
    highPct: 55,
    outerLowPct: 40,
    outerHighPct: 60,
    source: 'own choice: below mould, at the edge of beetle hatching, where wood moves least per point (Getty 1998)',
    confidence: 'own',
  },
  swing: { pointsAroundMonthMean: 10, source: 'EN 15757:2010, as remembered', confidence: 'memory' },
} as const satisfies Record<string, SourcedRow>;

export type MouldWeather =
  | { readonly kind: 'no-risk'; readonly because: 'dry' | 'cold' | 'hot' }
  /** Above the cautious line, below what sapwood needs: watch grime, starch and felt. */
  | { readonly kind: 'watch'; readonly damp: boolean; readonly growsAbovePct: number }
  | { readonly kind: 'grows'; readonly weeksToFirstGrowth: number };

/**
 * What that air means for mould on a block.
 * @param air −50 to 80 °C, 0 to 100 %
 * @throws RangeError outside those
 * SOURCE: {@link HUMIDITY_LINES}; growth after Hukka and Viitanen 1999.
 */
export function mouldWeather(air: Air): MouldWeather {
  const temperatureC = requireRange('temperatureC', air.temperatureC, -50, 80);
  const relativeHumidityPct = requireRange('relativeHumidityPct', air.relativeHumidityPct, 0, 100);
  const { noRisk, damp } = HUMIDITY_LINES;
  if (temperatureC < noRisk.coldestC) return { kind: 'no-risk', because: 'cold' };
  if (temperatureC > noRisk.hottestC) return { kind: 'no-risk', because: 'hot' };
  if (relativeHumidityPct < noRisk.belowPct) return { kind: 'no-risk', because: 'dry' };
  const growsAbovePct = criticalHumidityPct(temperatureC);
  if (relativeHumidityPct < growsAbovePct)
    return { kind: 'watch', damp: relativeHumidityPct > damp.abovePct, growsAbovePct };
  return { kind: 'grows', weeksToFirstGrowth: weeksToFirstGrowth(air) };
}

/** How a shelf's humidity suits wooden blocks. @throws RangeError outside 0 to 100. SOURCE: {@link HUMIDITY_LINES} */
export function storeClimate(relativeHumidityPct: number): 'right' | 'bearable' | 'too dry' | 'too damp' {
  requireRange('relativeHumidityPct', relativeHumidityPct, 0, 100);
  const { lowPct, highPct, outerLowPct, outerHighPct } = HUMIDITY_LINES.store;
  if (relativeHumidityPct < outerLowPct) return 'too dry';
  if (relativeHumidityPct > outerHighPct) return 'too damp';
  return relativeHumidityPct >= lowPct && relativeHumidityPct <= highPct ? 'right' : 'bearable';
}

/** Visible growth that makes an outbreak small, medium or large, m². SOURCE: Canadian Conservation Institute, mould outbreak guide (looked up). */
export const OUTBREAK_M2 = { smallBelow: 0.3, mediumTo: 3, largeTo: 10 } as const;

/**
 * Size of an outbreak from its visible growth. One block is always small; a cellar of them is not.
 * @param visibleM2 0 or more
 * @throws RangeError below zero
 * SOURCE: {@link OUTBREAK_M2}; beyond the last line it is for professionals.
 */
export function outbreakSize(visibleM2: number): 'none' | 'small' | 'medium' | 'large' | 'professional' {
  requireRange('visibleM2', visibleM2, 0, 1e6);
  if (visibleM2 === 0) return 'none';
  if (visibleM2 < OUTBREAK_M2.smallBelow) return 'small';
  if (visibleM2 <= OUTBREAK_M2.mediumTo) return 'medium';
  return visibleM2 <= OUTBREAK_M2.largeTo ? 'large' : 'professional';
}

export interface MouldSigns {
  /** How far a probe sinks into soft wood, mm. */
  readonly probeMm?: number;
  /** Share of the surface grown over, 0 to 1. */
  readonly coverage?: number;
  readonly construction?: 'solid' | 'laminated' | 'papierMache' | 'sparterie';
  readonly smellsAfterDryMonth?: boolean;
  readonly chemicalSmellOrCrystals?: boolean;
  readonly buyerAtRisk?: boolean;
}

export type MouldRefusal =
  | { readonly code: 'rot-not-mould'; readonly probeMm: number; readonly limitMm: number }
  | { readonly code: 'too-far-through-thin-layers'; readonly coverage: number; readonly limit: number }
  | { readonly code: 'smell-stays' }
  | { readonly code: 'perhaps-pesticide' }
  | { readonly code: 'buyer-at-risk' };

/** SOURCE: trade estimate. */
export const MOULD_REFUSAL = { probeOverMm: 3, coverageOver: 0.5 } as const;

/**
 * Why a mouldy block should be refused: an empty list means no reason was seen, not that there is none.
 * @param signs probe 0 to 300 mm, coverage 0 to 1
 * @throws RangeError outside those
 * SOURCE: {@link MOULD_REFUSAL}, trade estimate.
 */
export function mouldRefusals(signs: MouldSigns): {
  readonly because: readonly MouldRefusal[];
  readonly cautions: readonly CautionId[];
} {
  const probeMm = requireRange('probeMm', signs.probeMm ?? 0, 0, 300);
  const coverage = requireRange('coverage', signs.coverage ?? 0, 0, 1);
  const because: MouldRefusal[] = [];
  const cautions = new Set<CautionId>(['mould']);
  if (probeMm > MOULD_REFUSAL.probeOverMm)
    because.push({ code: 'rot-not-mould', probeMm, limitMm: MOULD_REFUSAL.probeOverMm });
  if (coverage > MOULD_REFUSAL.coverageOver && signs.construction !== undefined && signs.construction !== 'solid')
    because.push({ code: 'too-far-through-thin-layers', coverage, limit: MOULD_REFUSAL.coverageOver });
  if (signs.smellsAfterDryMonth) because.push({ code: 'smell-stays' });
  if (signs.chemicalSmellOrCrystals) {
    because.push({ code: 'perhaps-pesticide' });
    cautions.add('pesticideResidue');
  }
  if (signs.buyerAtRisk) because.push({ code: 'buyer-at-risk' });
  return { because, cautions: [...cautions] };
}

interface MouldStep extends WithCautions {
  readonly step: string;
  readonly relativeHumidityPct?: Span;
  readonly noHeat?: boolean;
  readonly where?: string;
  readonly optional?: boolean;
  readonly days?: number;
  readonly belowPct?: number;
}

/**
 * Cleaning a mouldy block, in order.
 * SOURCE: national conservation institute guide (looked up) and common practice; peroxide contact from memory.
 */
export const MOULD_CLEANING = [
  { step: 'bag', cautions: ['mould'] },
  { step: 'dryFirst', relativeHumidityPct: { low: 45, high: 50 }, noHeat: true, cautions: ['mould', 'sunlight'] },
  { step: 'pinsOut', cautions: ['hiddenPins'] },
  { step: 'brushIntoVacuum', where: 'outdoors or under extraction, HEPA', cautions: ['mould'] },
  { step: 'wipeBarelyDamp', cautions: ['mould'] },
  { step: 'peroxide', optional: true, cautions: ['peroxide', 'peroxidePinsOut', 'peroxideBleaches', 'neverMix'] },
  { step: 'dryAgain', cautions: ['sunlight'] },
  { step: 'watch', days: 30, belowPct: 55, cautions: ['mould'] },
] as const satisfies readonly MouldStep[];
