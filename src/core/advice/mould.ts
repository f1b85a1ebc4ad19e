import { entry, type Physics } from '../catalogue.ts';
import type { Air } from '../physics/air.ts';
import { domeAreaRoughCm2 } from '../physics/block-geometry.ts';
import type { CautionId } from '../physics/cautions.ts';
import { type HoldingHumidity, humidityHolding } from '../physics/equilibrium-moisture.ts';
import { MASKS } from '../physics/exposure-limits.ts';
import { criticalHumidityPct } from '../physics/mould-growth.ts';
import {
  HUMIDITY_LINES,
  MOULD_CLEANING,
  type MouldRefusal,
  type MouldSigns,
  type MouldWeather,
  mouldRefusals,
  mouldWeather,
  outbreakSize,
} from '../physics/mould-risk.ts';
import type { Assumption, Outcome } from './outcome.ts';
import { domeOf } from './size-of-block.ts';
import { measured, onBlock, type Subject } from './subject.ts';
import { SOURCES, USUAL } from './usual.ts';

export interface MouldQuestion {
  readonly room: Air;
  /** Share of the surface grown over, 0 to 1; null when not measured. */
  readonly coverage: number | null;
  /** Of the whole face, cm². */
  readonly surfaceCm2: number;
  /** Of the wood, by a meter; null when not measured. */
  readonly moisturePct: number | null;
  readonly signs: Omit<MouldSigns, 'coverage'>;
}

export interface MouldAnswer {
  readonly question: MouldQuestion;
  readonly weather: MouldWeather;
  /** Lowest humidity at which sapwood grows mould in that room; null where it is too cold for any. */
  readonly growsAbovePct: number | null;
  /** Air that would keep the wood as damp as the meter says. */
  readonly asDampAs: HoldingHumidity | null;
  readonly outbreak: { readonly visibleM2: number; readonly size: ReturnType<typeof outbreakSize> } | null;
  readonly refuseBecause: readonly MouldRefusal[];
  /** Reasons to refuse it that nobody has looked into. */
  readonly refuseAlsoIf: readonly MouldRefusal['code'][];
  readonly mask: keyof typeof MASKS;
  readonly steps: typeof MOULD_CLEANING;
}

const CM2_PER_M2 = 10_000;

/** Growth over a tenth of the surface counts as heavy: visible without looking for it (mould index 4). SOURCE: own choice on the index of Hukka and Viitanen 1999. */
export const HEAVY_GROWTH_OVER = 0.1;

/** Which sign would settle each reason. */
const SETTLED_BY: Readonly<Record<MouldRefusal['code'], keyof MouldSigns>> = {
  'rot-not-mould': 'probeMm',
  'too-far-through-thin-layers': 'coverage',
  'smell-stays': 'smellsAfterDryMonth',
  'perhaps-pesticide': 'chemicalSmellOrCrystals',
  'buyer-at-risk': 'buyerAtRisk',
};

/**
 * Whether mould grows in the room, how large the outbreak is, whether to refuse the block, and what to wear.
 * @param question room −30 to 80 °C and 0 to 100 %, coverage 0 to 1, surface 0 or more, moisture 0 to 100 %
 * @throws RangeError outside those
 * SOURCE: mould-risk.ts, mould-growth.ts
 */
export function mouldAnswer({ room, coverage, surfaceCm2, moisturePct, signs }: MouldQuestion): MouldAnswer {
  const seen: MouldSigns = { ...signs, ...(coverage === null ? {} : { coverage }) };
  const { because } = mouldRefusals(seen);
  const visibleM2 = coverage === null ? null : (coverage * surfaceCm2) / CM2_PER_M2;
  const { coldestC, hottestC } = HUMIDITY_LINES.noRisk;
  const { temperatureC } = room;
  const thin = signs.construction !== undefined && signs.construction !== 'solid';
  return {
    question: { room, coverage, surfaceCm2, moisturePct, signs },
    weather: mouldWeather(room),
    growsAbovePct: temperatureC >= coldestC && temperatureC <= hottestC ? criticalHumidityPct(temperatureC) : null,
    asDampAs: moisturePct === null ? null : humidityHolding(temperatureC, moisturePct),
    outbreak: visibleM2 === null ? null : { visibleM2, size: outbreakSize(visibleM2) },
    refuseBecause: because,
    refuseAlsoIf: (Object.keys(SETTLED_BY) as MouldRefusal['code'][]).filter(
      (code) => seen[SETTLED_BY[code]] === undefined && (thin || code !== 'too-far-through-thin-layers'),
    ),
    mask: coverage !== null && coverage > HEAVY_GROWTH_OVER ? 'ffp3' : 'ffp2',
    steps: MOULD_CLEANING,
  };
}

/** Face of the block, cm²: a dome and its base where measured, two faces of a board, else a usual crown. SOURCE: geometry. */
function surfaceOf(subject: Subject): { readonly cm2: number; readonly assumed: readonly Assumption[] } {
  const dome = domeOf(subject);
  if (!('wanted' in dome)) {
    const half = { halfLengthMm: dome.lengthMm / 2, halfWidthMm: dome.widthMm / 2 };
    const baseCm2 = (Math.PI * half.halfLengthMm * half.halfWidthMm) / 100;
    return { cm2: domeAreaRoughCm2({ ...half, heightMm: dome.depthMm }) + baseCm2, assumed: [] };
  }
  const lengthMm = onBlock(subject, 'overallLengthMm');
  const widthMm = onBlock(subject, 'overallWidthMm');
  if (lengthMm !== null && widthMm !== null)
    return { cm2: (2 * Math.PI * (lengthMm / 2) * (widthMm / 2)) / 100, assumed: [] };
  return { cm2: USUAL.surfaceCm2, assumed: [{ code: 'surface', cm2: USUAL.surfaceCm2 }] };
}

/** Thin layers, where a named material of the block is built of them; solid where all are named and none is. */
function constructionOf({ setting, catalogue }: Subject): MouldSigns['construction'] {
  if (setting.assumed.includes('material')) return undefined;
  for (const id of setting.materials) {
    const layers = entry(catalogue.materials, id)?.layers;
    if (layers) return layers;
  }
  return 'solid';
}

/** What goes with every mouldy block. A step that may be left out carries its own cautions with its words. */
export const MOULD_CAUTIONS: readonly CautionId[] = [
  ...new Set(MOULD_CLEANING.flatMap((step) => ('optional' in step ? [] : step.cautions))),
];

export const sourcesOfMould = (mask: keyof typeof MASKS) => [
  SOURCES.mouldGrowth,
  HUMIDITY_LINES.noRisk,
  SOURCES.outbreak,
  SOURCES.refusal,
  MASKS[mask],
];

/** Advice on mould that was found. */
export function mouldOutcome(
  subject: Subject,
  { from }: Extract<Physics, { does: 'mouldRisk' }>,
): Outcome<MouldAnswer> {
  const { room } = subject.climate;
  const areaPct = measured(subject, from.area);
  const surface = surfaceOf(subject);
  const construction = constructionOf(subject);
  const answer = mouldAnswer({
    room,
    coverage: areaPct === null ? null : areaPct / 100,
    surfaceCm2: surface.cm2,
    moisturePct: measured(subject, from.moisture) ?? onBlock(subject, 'moisturePct'),
    signs: construction === undefined ? {} : { construction },
  });
  return {
    answer,
    needs: areaPct === null ? [{ ask: from.area }] : [],
    assumed: [
      ...(areaPct === null ? [] : surface.assumed),
      ...(subject.climate.assumed.includes('room') ? ([{ code: 'room', ...room }] as const) : []),
    ],
    cautions: MOULD_CAUTIONS,
    sources: sourcesOfMould(answer.mask),
  };
}
