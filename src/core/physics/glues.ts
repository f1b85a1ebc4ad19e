import type { WithCautions } from './cautions.ts';
import { requireRange } from './range.ts';
import type { Sourced, SourcedRow } from './sourced.ts';

export interface Glue extends Sourced, WithCautions {
  readonly name: string;
  readonly clampMinutes: number;
  readonly fullCureHours: number;
  readonly coldestC: number;
  readonly widestGapMm: number;
  /** No upper figure where only a lower one is known. */
  readonly softensC: { readonly low: number; readonly high: number | null };
  readonly softensWhen: 'dry heat' | 'wet' | 'unless post-cured';
  readonly steam: 'good' | 'fair' | 'poor' | 'fails';
  readonly reversible: boolean;
}

const LABEL = {
  source: 'product-sheet figures as remembered; the label wins',
  confidence: 'memory',
} as const satisfies Sourced;

/** Glues for blocks, typical label figures. */
export const GLUES = {
  whitePva: {
    name: 'white PVA (D2)',
    clampMinutes: 30,
    fullCureHours: 24,
    coldestC: 10,
    widestGapMm: 0.15,
    softensC: { low: 40, high: 70 },
    softensWhen: 'dry heat',
    steam: 'poor',
    reversible: false,
    cautions: ['coolBeforePulling'],
    ...LABEL,
  },
  yellowAliphatic: {
    name: 'yellow aliphatic (D2)',
    clampMinutes: 30,
    fullCureHours: 24,
    coldestC: 10,
    widestGapMm: 0.15,
    softensC: { low: 50, high: 80 },
    softensWhen: 'dry heat',
    steam: 'poor',
    reversible: false,
    cautions: ['coolBeforePulling'],
    ...LABEL,
  },
  crossLinkedPva: {
    name: 'cross-linking PVA (D3, D4)',
    clampMinutes: 45,
    fullCureHours: 24,
    coldestC: 8,
    widestGapMm: 0.15,
    softensC: { low: 60, high: 90 },
    softensWhen: 'dry heat',
    steam: 'fair',
    reversible: false,
    cautions: ['coolBeforePulling'],
    ...LABEL,
  },
  hotHide: {
    name: 'hot hide glue',
    clampMinutes: 60,
    fullCureHours: 24,
    coldestC: 20,
    widestGapMm: 0.2,
    softensC: { low: 50, high: 65 },
    softensWhen: 'wet',
    steam: 'fails',
    reversible: true,
    cautions: ['freezeAnimalGlue'],
    ...LABEL,
  },
  liquidHide: {
    name: 'liquid hide glue',
    clampMinutes: 180,
    fullCureHours: 24,
    coldestC: 10,
    widestGapMm: 0.2,
    softensC: { low: 50, high: 65 },
    softensWhen: 'wet',
    steam: 'fails',
    reversible: true,
    cautions: ['freezeAnimalGlue'],
    ...LABEL,
  },
  onePartPolyurethane: {
    name: 'one-part polyurethane',
    clampMinutes: 120,
    fullCureHours: 24,
    coldestC: 5,
    // Its foam bridges more and holds nothing.
    widestGapMm: 0.3,
    softensC: { low: 80, high: null },
    softensWhen: 'dry heat',
    steam: 'good',
    reversible: false,
    cautions: ['isocyanate'],
    ...LABEL,
  },
  epoxy: {
    name: 'room-cure epoxy',
    clampMinutes: 480,
    fullCureHours: 72,
    coldestC: 10,
    widestGapMm: 5,
    softensC: { low: 45, high: 65 },
    softensWhen: 'unless post-cured',
    // Softens hot, keeps its shape if nothing pulls on it.
    steam: 'fair',
    reversible: false,
    cautions: ['epoxy', 'coolBeforePulling'],
    ...LABEL,
  },
} as const satisfies Record<string, Glue>;
export type GlueId = keyof typeof GLUES;
export const GLUE_IDS = Object.keys(GLUES) as GlueId[];

export type GlueObjection =
  | { readonly code: 'gap-too-wide'; readonly gapMm: number; readonly widestMm: number }
  | { readonly code: 'room-too-cold'; readonly roomC: number; readonly coldestC: number }
  | { readonly code: 'steam-nearby'; readonly steam: Glue['steam'] };

/**
 * Every glue with what speaks against it in this joint; fewest objections first. None is hidden: the owner may have only one tin.
 * @param gapMm 0 to 100 · roomC −20 to 60 · nearSteam whether the line lies within reach of a steamed face
 * @throws RangeError outside those
 * SOURCE: {@link GLUES}
 */
export function gluesFor(joint: { gapMm: number; roomC: number; nearSteam: boolean }): readonly {
  readonly glue: GlueId;
  readonly objections: readonly GlueObjection[];
}[] {
  const gapMm = requireRange('gapMm', joint.gapMm, 0, 100);
  const roomC = requireRange('roomC', joint.roomC, -20, 60);
  const objectionsTo = ({ widestGapMm, coldestC, steam }: Glue): GlueObjection[] => [
    ...(gapMm > widestGapMm ? [{ code: 'gap-too-wide', gapMm, widestMm: widestGapMm } as const] : []),
    ...(roomC < coldestC ? [{ code: 'room-too-cold', roomC, coldestC } as const] : []),
    ...(joint.nearSteam && (steam === 'poor' || steam === 'fails') ? [{ code: 'steam-nearby', steam } as const] : []),
  ];
  return GLUE_IDS.map((glue) => ({ glue, objections: objectionsTo(GLUES[glue]) })).sort(
    (a, b) => a.objections.length - b.objections.length,
  );
}

/** Moisture at which to glue, and largest difference to where the block will live, points. SOURCE: common practice. */
export const GLUING_MOISTURE = { lowPct: 6, highPct: 12, differencePoints: 2 } as const;

export type GluingReady =
  | { readonly kind: 'ready' }
  | { readonly kind: 'wait'; readonly because: 'too dry' | 'too damp' | 'far from home'; readonly moisturePct: number };

/**
 * Is the wood ready for glue?
 * @param moisturePct, homeMoisturePct 0 to 100
 * @throws RangeError outside that
 * SOURCE: {@link GLUING_MOISTURE}
 */
export function readyToGlue(moisturePct: number, homeMoisturePct: number): GluingReady {
  requireRange('moisturePct', moisturePct, 0, 100);
  requireRange('homeMoisturePct', homeMoisturePct, 0, 100);
  const { lowPct, highPct, differencePoints } = GLUING_MOISTURE;
  if (moisturePct < lowPct) return { kind: 'wait', because: 'too dry', moisturePct };
  if (moisturePct > highPct) return { kind: 'wait', because: 'too damp', moisturePct };
  if (Math.abs(moisturePct - homeMoisturePct) > differencePoints)
    return { kind: 'wait', because: 'far from home', moisturePct };
  return { kind: 'ready' };
}

/** Shear strengths a glue must keep, MPa, by class. They say nothing about heat. SOURCE: EN 204 table 2, as remembered; scope looked up. */
export const EN_204 = {
  coversHeat: false,
  D1: { dry: 10 },
  D2: { dry: 10, wettedAndDried: 8 },
  D3: { dry: 10, wetAfterFourDays: 2, dried: 8 },
  D4: { dry: 10, wetAfterFourDays: 4, wetAfterBoiling: 4 },
} as const;

/** Heat behaviour worth asking for or knowing. */
export const GLUE_HEAT = {
  watt91: {
    temperatureC: 80,
    hours: 1,
    passMpa: 7,
    source: 'EN 14257 (WATT 91), a glue-industry page',
    confidence: 'looked-up',
  },
  pvaAfterCooling: { heatedToC: 140, keepsMpa: 10, source: 'BioResources 2015', confidence: 'looked-up' },
  ureaResin: { softensBelowC: 70, source: 'Chow 1973, Holzforschung 27(2):64', confidence: 'looked-up' },
  melamineAndPhenolic: { softensAboveC: 120, source: 'Chow 1973, Holzforschung 27(2):64', confidence: 'looked-up' },
} as const satisfies Record<string, SourcedRow>;
