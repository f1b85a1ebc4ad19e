import { BORERS, type Borer, type BorerId, type Dust, type HoleShape, TOOL_HOLES, type WoodKind } from './insects.ts';
import { requirePositive } from './range.ts';

/** What was seen. Anything left out was not looked at, which is not the same as absent. */
export interface HoleClues {
  /** Do the holes follow the pinning line, at the brim break or base? Ask this first. */
  readonly followsPinningLine?: boolean;
  readonly holeMm?: number;
  readonly dust?: Dust;
  readonly shape?: HoleShape;
  readonly wood?: WoodKind;
  readonly darkWalls?: boolean;
  /** Is, or was, the wood damp or decayed? */
  readonly damp?: boolean;
  readonly bark?: boolean;
  readonly warmRegion?: boolean;
}
export type Clue = keyof HoleClues;

/** In the order worth asking: the pinning line first, because it settles most of them at once. */
export const CLUES_IN_ORDER = [
  'followsPinningLine',
  'holeMm',
  'dust',
  'shape',
  'wood',
  'darkWalls',
  'damp',
  'bark',
  'warmRegion',
] as const satisfies readonly Clue[];

export type Suspect = BorerId | 'toolHoles';

export interface RankedSuspect {
  readonly suspect: Suspect;
  /** Of one, over all suspects. A way to order them, not a probability measured anywhere. */
  readonly share: number;
  readonly evidence: readonly { readonly clue: Clue; readonly speaks: 'for' | 'against' }[];
}

export interface BorerRanking {
  /** Best first, never fewer than two: ranges overlap, and one name would be a pretence. */
  readonly ranked: readonly RankedSuspect[];
  /** What has not been asked yet, most telling first. */
  readonly ask: readonly Clue[];
  /** Share of the suspects that can attack dry wood again: the case for quarantine. */
  readonly returningShare: number;
}

/** How common each is in old hat blocks kept indoors, before looking. Shares of one. SOURCE: trade estimate. */
export const COMMON_IN_HAT_BLOCKS = {
  furnitureBeetle: 0.38,
  toolHoles: 0.3,
  powderpost: 0.07,
  fanBearingBorer: 0.06,
  ambrosiaBeetle: 0.06,
  deathwatch: 0.03,
  woodWeevil: 0.02,
  falsePowderpost: 0.02,
  parasiticWasp: 0.02,
  houseLonghorn: 0.015,
  barkBorer: 0.015,
  drywoodTermite: 0.01,
} as const satisfies Record<Suspect, number>;
const SUSPECTS = Object.keys(COMMON_IN_HAT_BLOCKS) as Suspect[];

/** Sources differ by about this much on hole sizes, mm. SOURCE: the spread of the published ranges. */
const SIZE_TOLERANCE_MM = 0.3;

/** What is left of a suspect's standing when a clue does not fit. SOURCE: trade estimate. */
const MISFIT = {
  size: 0.02,
  nearSize: 0.4,
  roundHole: 0.1,
  oddHole: 0.02,
  wood: 0.1,
  walls: 0.1,
  damp: 0.1,
  bark: 0.05,
  region: 0.05,
  line: 0.05,
} as const;

/**
 * The same for dust, by what was found: some is as good as a signature, some is easily mistaken, and old holes have lost theirs,
 * so that none seen speaks only a little against a dusty insect. SOURCE: trade estimate.
 */
const DUST_MISFIT = {
  none: 0.5,
  gritty: 0.08,
  flour: 0.08,
  talcPacked: 0.08,
  bunPellets: 0.05,
  coarsePacked: 0.05,
  twoColouredPellets: 0.01,
  sixSidedPellets: 0.005,
} as const satisfies Record<Dust, number>;

interface Traits extends Pick<Borer, 'holeMm' | 'shapes' | 'dusts' | 'woods'> {
  readonly isTool: boolean;
  readonly needsDamp: boolean;
  readonly needsBark: boolean;
  readonly darkWalls: boolean;
  readonly warmOnly: boolean;
}
const traitsOf = (suspect: Suspect): Traits =>
  suspect === 'toolHoles'
    ? { ...TOOL_HOLES, isTool: true, needsDamp: false, needsBark: false, darkWalls: false, warmOnly: false }
    : { ...BORERS[suspect], isTool: false, warmOnly: BORERS[suspect].where === 'warm regions' };

interface Weighed {
  readonly weight: number;
  readonly fits: boolean;
}
const weigh = (fits: boolean, misfit: number): Weighed => ({ weight: fits ? 1 : misfit, fits });

/** A need that is met or not; suspects without it are indifferent. */
const need = (needed: boolean, met: boolean, misfit: number): Weighed | null => (needed ? weigh(met, misfit) : null);

function weighSize({ holeMm: { low, high } }: Traits, holeMm: number): Weighed {
  // A narrow range that holds the size says more than a wide one that does.
  const density = 1 / (high - low + 2 * SIZE_TOLERANCE_MM);
  const fits = holeMm >= low && holeMm <= high;
  const near = holeMm >= low - SIZE_TOLERANCE_MM && holeMm <= high + SIZE_TOLERANCE_MM;
  return { fits, weight: density * (fits ? 1 : near ? MISFIT.nearSize : MISFIT.size) };
}

const JUDGES: { readonly [C in Clue]: (traits: Traits, seen: Required<HoleClues>[C]) => Weighed | null } = {
  followsPinningLine: (traits, seen) => weigh(seen === traits.isTool, MISFIT.line),
  holeMm: weighSize,
  dust: (traits, seen) => weigh(traits.dusts.includes(seen), DUST_MISFIT[seen]),
  shape: (traits, seen) => weigh(traits.shapes.includes(seen), seen === 'round' ? MISFIT.roundHole : MISFIT.oddHole),
  wood: (traits, seen) => weigh(traits.woods.includes(seen), MISFIT.wood),
  darkWalls: (traits, seen) => weigh(seen === traits.darkWalls, MISFIT.walls),
  damp: (traits, seen) => need(traits.needsDamp, seen, MISFIT.damp),
  bark: (traits, seen) => need(traits.needsBark, seen, MISFIT.bark),
  warmRegion: (traits, seen) => need(traits.warmOnly, seen, MISFIT.region),
};

function judge<C extends Clue>(clue: C, traits: Traits, clues: HoleClues): Weighed | null {
  const seen = clues[clue];
  return seen === undefined ? null : JUDGES[clue](traits, seen as Required<HoleClues>[C]);
}

function judged(suspect: Suspect, clues: HoleClues) {
  const traits = traitsOf(suspect);
  let score: number = COMMON_IN_HAT_BLOCKS[suspect];
  const evidence: RankedSuspect['evidence'][number][] = [];
  for (const clue of CLUES_IN_ORDER) {
    const weighed = judge(clue, traits, clues);
    if (weighed === null) continue;
    score *= weighed.weight;
    evidence.push({ clue, speaks: weighed.fits ? 'for' : 'against' });
  }
  return { suspect, score, evidence };
}

const canReturn = (suspect: Suspect): boolean =>
  suspect !== 'toolHoles' && ['yes', 'if damp'].includes(BORERS[suspect].returnsToDryWood);

/**
 * Which insect, if any, made the holes: a ranked list from what was seen, and what to look at next.
 * @param clues hole size above 0 to 40 mm
 * @throws RangeError for a size outside that
 * SOURCE: ranges and signs in {@link BORERS}; how clues are weighed is a trade estimate, marked so above.
 */
export function rankBorers(clues: HoleClues): BorerRanking {
  if (clues.holeMm !== undefined) requirePositive('holeMm', clues.holeMm, 40);
  const scored = SUSPECTS.map((suspect) => judged(suspect, clues)).sort((a, b) => b.score - a.score);
  const total = scored.reduce((sum, { score }) => sum + score, 0);
  const all = scored.map(({ suspect, score, evidence }) => ({ suspect, share: score / total, evidence }));
  return {
    ranked: all.filter(({ share }, place) => share >= 0.01 || place < 2),
    ask: CLUES_IN_ORDER.filter((clue) => clues[clue] === undefined),
    returningShare: all.reduce((sum, { suspect, share }) => sum + (canReturn(suspect) ? share : 0), 0),
  };
}
