import type { Physics } from '../catalogue.ts';
import type { CautionId } from '../physics/cautions.ts';
import { type CrackShape, crackVolumeMm3, dentOf } from '../physics/dents.ts';
import { FILLERS, type FillerId, type FillPlan, fillPlan } from '../physics/fillers.ts';
import type { Sourced, Span } from '../physics/sourced.ts';
import { type Assumption, type Outcome, waitingFor } from './outcome.ts';
import { aboveZero, isYes, type Subject } from './subject.ts';
import { SOURCES } from './usual.ts';

const MM2_PER_CM2 = 100;

/** A hollow by its measures, as a damage is measured. */
export type HollowSize =
  | { readonly hollow: 'cap'; readonly acrossMm: number; readonly depthMm: number; readonly count: number }
  | { readonly hollow: 'wedge'; readonly mouthMm: number; readonly lengthMm: number; readonly depthMm: number }
  | { readonly hollow: 'bowl'; readonly areaCm2: number; readonly depthMm: number };

export interface FillQuestion {
  readonly size: HollowSize;
  readonly onPinnedLine: boolean;
  /** Opens and shuts with the seasons. */
  readonly moving: boolean;
}

export type FillerObjection = 'pins' | 'steam';

export interface FillerChoice {
  readonly filler: FillerId;
  /** For the likely volume. */
  readonly plan: FillPlan;
  /** To mix, least to most, mm³. */
  readonly mixMm3: Span;
  readonly objections: readonly FillerObjection[];
}

export interface FillAnswer {
  readonly question: FillQuestion;
  /** Of all hollows together. */
  readonly volumeMm3: Span & { readonly likely: number };
  /** Fewest objections first, then least waiting; none is hidden, the owner may have only one tin. */
  readonly fillers: readonly FillerChoice[];
}

/** Share of area × depth that a bowl holds at least: a paraboloid. SOURCE: geometry. */
const BOWL_SHARE = 0.5;

const VOLUMES: {
  readonly [H in HollowSize['hollow']]: (size: Extract<HollowSize, { hollow: H }>) => FillAnswer['volumeMm3'];
} = {
  cap: ({ acrossMm, depthMm, count }) => {
    // Deeper than wide is a hole: a half ball with a straight shaft under it.
    const capMm = Math.min(depthMm, acrossMm / 2);
    const shaft = Math.PI * (acrossMm / 2) ** 2 * (depthMm - capMm);
    const each = dentOf(acrossMm, capMm).volumeMm3 + shaft;
    return { low: each * count, likely: each * count, high: each * count };
  },
  wedge: ({ mouthMm, lengthMm, depthMm }) => {
    const as = (shape: CrackShape): number => crackVolumeMm3(lengthMm, mouthMm, depthMm, shape);
    return { low: as('bothTaper'), likely: as('mouthTapers'), high: as('even') };
  },
  bowl: ({ areaCm2, depthMm }) => {
    const high = areaCm2 * MM2_PER_CM2 * depthMm;
    return { low: high * BOWL_SHARE, likely: (high * (1 + BOWL_SHARE)) / 2, high };
  },
};

function volumeOf<H extends HollowSize['hollow']>(size: Extract<HollowSize, { hollow: H }>): FillAnswer['volumeMm3'] {
  return VOLUMES[size.hollow as H](size);
}

/** Pastes that hold a pin at least fairly. */
const TAKES_PINS: readonly string[] = ['as wood', 'fair'];

function objectionsTo(filler: FillerId, onPinnedLine: boolean): readonly FillerObjection[] {
  const { pins, steam } = FILLERS[filler];
  return [
    ...(onPinnedLine && !TAKES_PINS.includes(pins) ? (['pins'] as const) : []),
    ...(steam === 'softens' ? (['steam'] as const) : []),
  ];
}

/**
 * Volume of a hollow as a range, and for every filler how much to mix, in how many layers, and how long they dry.
 * @param question every measure above 0
 * @throws RangeError outside that
 * SOURCE: dents.ts and {@link FILLERS}; spread of shapes is geometry.
 */
export function fillHollow(question: FillQuestion): FillAnswer {
  const { size, onPinnedLine } = question;
  const volumeMm3 = volumeOf(size);
  const { depthMm } = size;
  const fillers = (Object.keys(FILLERS) as FillerId[]).map((filler): FillerChoice => {
    const at = (volume: number): FillPlan => fillPlan(filler, { volumeMm3: volume, depthMm, onPinnedLine });
    return {
      filler,
      plan: at(volumeMm3.likely),
      mixMm3: { low: at(volumeMm3.low).mixMm3, high: at(volumeMm3.high).mixMm3 },
      objections: objectionsTo(filler, onPinnedLine),
    };
  });
  return {
    question,
    volumeMm3,
    fillers: fillers.sort(
      (a, b) => a.objections.length - b.objections.length || a.plan.waitHours.likely - b.plan.waitHours.likely,
    ),
  };
}

/** What every filling warns of, whichever filler is taken. */
export const cautionsOfFillers = (fillers: readonly FillerChoice[]): readonly CautionId[] => [
  ...new Set(fillers.flatMap(({ filler }) => FILLERS[filler].cautions)),
];

/** Where the figures of such an answer come from. All fillers rest on the same estimate. */
export const sourcesOfFill = ({ fillers }: FillAnswer): readonly Sourced[] => [
  SOURCES.wedge,
  ...fillers.slice(0, 1).map(({ filler }) => FILLERS[filler]),
];

type FillEntry = Extract<Physics, { does: 'fill' }>;

interface Sized {
  readonly size: HollowSize | null;
  readonly needs: readonly { readonly ask: string }[];
  readonly assumed: readonly Assumption[];
}

const wanting = (subject: Subject, ...asks: readonly (string | undefined)[]) =>
  asks.flatMap((ask) => (ask !== undefined && aboveZero(subject, ask) === null ? [{ ask }] : []));

function sizeOf(subject: Subject, entry: FillEntry): Sized {
  const of = (ask: string | undefined): number => aboveZero(subject, ask) ?? 0;
  if (entry.hollow === 'cap') {
    const { across, depth, count } = entry.from;
    const needs = wanting(subject, across, depth);
    const size = { hollow: 'cap', acrossMm: of(across), depthMm: of(depth), count: Math.max(1, of(count)) } as const;
    return { size: needs.length > 0 ? null : size, needs, assumed: [] };
  }
  if (entry.hollow === 'bowl') {
    const { area, depth } = entry.from;
    const needs = wanting(subject, area, depth);
    const size = { hollow: 'bowl', areaCm2: of(area), depthMm: of(depth) } as const;
    return { size: needs.length > 0 ? null : size, needs, assumed: [] };
  }
  const { mouth, length, depth } = entry.from;
  const needs = wanting(subject, mouth, length, depth);
  const mouthMm = mouth === undefined ? (entry.mouthMm ?? 0) : of(mouth);
  const size = { hollow: 'wedge', mouthMm, lengthMm: of(length), depthMm: of(depth) } as const;
  return {
    size: needs.length > 0 ? null : size,
    needs,
    assumed: mouth === undefined ? [{ code: 'mouth', mm: mouthMm }] : [],
  };
}

/** Advice on filling what was found. */
export function fillOutcome(subject: Subject, entry: FillEntry): Outcome<FillAnswer> {
  const { size, needs, assumed } = sizeOf(subject, entry);
  if (size === null) return waitingFor(needs);
  const moving = entry.hollow === 'wedge' && isYes(subject, entry.from.moving);
  const answer = fillHollow({ size, onPinnedLine: subject.zoneClass === 'line', moving });
  return {
    answer,
    needs: [],
    assumed,
    cautions: cautionsOfFillers(answer.fillers),
    sources: sourcesOfFill(answer),
  };
}
