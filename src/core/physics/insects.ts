import type { Sourced, Span } from './sourced.ts';

export type HoleShape = 'round' | 'oval' | 'ragged';
/** What falls out, as a thumb and finger feel it. */
export const DUSTS = [
  'none',
  'gritty',
  'flour',
  'talcPacked',
  'bunPellets',
  'twoColouredPellets',
  'sixSidedPellets',
  'coarsePacked',
] as const;
export type Dust = (typeof DUSTS)[number];
/** Large-pored: oak, ash, elm, walnut. Fine-pored: lime, beech, alder, maple, poplar. */
export const WOOD_KINDS = ['softwood', 'hardwoodLargePored', 'hardwoodFinePored'] as const;
export type WoodKind = (typeof WOOD_KINDS)[number];

export interface Borer extends Sourced {
  readonly name: string;
  readonly zoological: string;
  readonly holeMm: Span;
  readonly shapes: readonly HoleShape[];
  readonly dusts: readonly Dust[];
  readonly woods: readonly WoodKind[];
  /** Lives only where the wood is damp or decayed. */
  readonly needsDamp: boolean;
  readonly needsBark: boolean;
  readonly darkWalls: boolean;
  readonly where: 'anywhere' | 'warm regions';
  /** First and last month adults are out in the north; null where there is no season. */
  readonly outMonthsNorth: readonly [first: number, last: number] | null;
  readonly season: 'months' | 'all year' | 'varies' | 'not applicable';
  readonly cycleYears: Span | null;
  readonly returnsToDryWood: 'yes' | 'if damp' | 'seldom' | 'never';
  readonly note?: string;
}

const ANY_WOOD = WOOD_KINDS;
/** What most borers have in common. */
const DRY = { needsDamp: false, needsBark: false, darkWalls: false, where: 'anywhere' } as const;
const HARDWOOD = ['hardwoodLargePored', 'hardwoodFinePored'] as const;

/** Insects that leave holes in wood. Ranges overlap: rank them, never name one. */
export const BORERS = {
  furnitureBeetle: {
    name: 'furniture beetle',
    zoological: 'Anobium punctatum',
    holeMm: { low: 1, high: 2 },
    shapes: ['round'],
    dusts: ['gritty'],
    woods: ANY_WOOD,
    ...DRY,
    outMonthsNorth: [4, 8],
    season: 'months',
    cycleYears: { low: 2, high: 5 },
    returnsToDryWood: 'yes',
    note: 'Sapwood. Dust in lemon-shaped pellets. One handbook gives holes up to 3 mm.',
    source: 'household pest hole plate; handbook of urban insects and arachnids (2005); regional museums guidance',
    confidence: 'looked-up',
  },
  powderpost: {
    name: 'powderpost beetle',
    zoological: 'Lyctus',
    holeMm: { low: 0.8, high: 1.6 },
    shapes: ['round'],
    dusts: ['flour'],
    woods: ['hardwoodLargePored'],
    ...DRY,
    outMonthsNorth: [4, 9],
    season: 'months',
    cycleYears: { low: 0.25, high: 2 },
    returnsToDryWood: 'yes',
    note: 'Starchy sapwood. Dust pours out. Season past July and a second year are from memory.',
    source: 'US inspection field table, USDA leaflet on powder-post beetles, household pest hole plate',
    confidence: 'looked-up',
  },
  deathwatch: {
    name: 'deathwatch beetle',
    zoological: 'Xestobium rufovillosum',
    holeMm: { low: 2, high: 5 },
    shapes: ['round'],
    dusts: ['bunPellets'],
    woods: ['hardwoodLargePored'],
    ...DRY,
    needsDamp: true,
    outMonthsNorth: [3, 6],
    season: 'months',
    cycleYears: { low: 1, high: 10 },
    returnsToDryWood: 'if damp',
    note: 'Damp, decayed oak or elm. 2–3 mm and 3–5 mm by different sources; months from memory.',
    source: 'UK trade sheet, household pest hole plate',
    confidence: 'looked-up',
  },
  houseLonghorn: {
    name: 'house longhorn',
    zoological: 'Hylotrupes bajulus',
    holeMm: { low: 6, high: 10 },
    shapes: ['oval'],
    dusts: ['coarsePacked'],
    woods: ['softwood'],
    ...DRY,
    outMonthsNorth: [6, 9],
    season: 'months',
    cycleYears: { low: 2, high: 10 },
    returnsToDryWood: 'yes',
    source: 'encyclopaedic summaries and US field table',
    confidence: 'looked-up',
  },
  fanBearingBorer: {
    name: 'fan-bearing borer',
    zoological: 'Ptilinus pectinicornis',
    holeMm: { low: 1, high: 1.5 },
    shapes: ['round'],
    dusts: ['talcPacked'],
    woods: ['hardwoodFinePored'],
    ...DRY,
    outMonthsNorth: [5, 7],
    season: 'months',
    cycleYears: { low: 2, high: 3 },
    returnsToDryWood: 'yes',
    note: 'Woods, season and cycle from memory.',
    source: 'household pest hole plate (a digit lost in the scan)',
    confidence: 'looked-up',
  },
  woodWeevil: {
    name: 'wood weevil',
    zoological: 'Euophryum confine',
    holeMm: { low: 0.5, high: 1.5 },
    shapes: ['ragged', 'oval'],
    dusts: ['gritty', 'flour'],
    woods: ANY_WOOD,
    ...DRY,
    needsDamp: true,
    outMonthsNorth: null,
    season: 'all year',
    cycleYears: { low: 0.6, high: 1 },
    returnsToDryWood: 'never',
    note: 'Only wet, decayed wood.',
    source: 'museum fact sheet on the species; size as remembered',
    confidence: 'memory',
  },
  ambrosiaBeetle: {
    name: 'ambrosia beetle, “pinhole borer”',
    zoological: 'Scolytinae, Platypodinae',
    holeMm: { low: 0.5, high: 3.2 },
    shapes: ['round'],
    dusts: ['none'],
    woods: ANY_WOOD,
    ...DRY,
    darkWalls: true,
    outMonthsNorth: null,
    season: 'not applicable',
    cycleYears: null,
    returnsToDryWood: 'never',
    note: 'Bored in the green log, before the block was made.',
    source: 'university pest key; US field table',
    confidence: 'looked-up',
  },
  barkBorer: {
    name: 'bark borer',
    zoological: 'Ernobius mollis',
    holeMm: { low: 1.5, high: 2.2 },
    shapes: ['round'],
    dusts: ['twoColouredPellets'],
    woods: ['softwood'],
    ...DRY,
    needsBark: true,
    outMonthsNorth: [5, 8],
    season: 'months',
    cycleYears: { low: 1, high: 1 },
    returnsToDryWood: 'never',
    note: 'Months and cycle from memory.',
    source: 'household pest hole plate',
    confidence: 'looked-up',
  },
  drywoodTermite: {
    name: 'drywood termite',
    zoological: 'Kalotermitidae',
    holeMm: { low: 1, high: 2 },
    shapes: ['round'],
    dusts: ['sixSidedPellets'],
    woods: ANY_WOOD,
    ...DRY,
    where: 'warm regions',
    outMonthsNorth: null,
    season: 'varies',
    cycleYears: null,
    returnsToDryWood: 'yes',
    note: 'A colony, not a cycle. Holes often plugged; pellets about 1 mm long.',
    source: 'pellets looked up; hole size as remembered',
    confidence: 'memory',
  },
  falsePowderpost: {
    name: 'false powderpost beetle',
    zoological: 'Bostrichidae',
    holeMm: { low: 2.3, high: 7.1 },
    shapes: ['round'],
    dusts: ['coarsePacked', 'talcPacked'],
    woods: HARDWOOD,
    ...DRY,
    outMonthsNorth: [4, 9],
    season: 'months',
    cycleYears: { low: 1, high: 1 },
    returnsToDryWood: 'seldom',
    note: 'Mostly fresh hardwood.',
    source: 'state university urban entomology pages',
    confidence: 'looked-up',
  },
  parasiticWasp: {
    name: 'parasitic wasp',
    zoological: 'Braconidae and kin',
    holeMm: { low: 0.3, high: 0.9 },
    shapes: ['round'],
    dusts: ['none'],
    woods: ANY_WOOD,
    ...DRY,
    outMonthsNorth: [5, 8],
    season: 'months',
    cycleYears: null,
    returnsToDryWood: 'never',
    note: 'Eats no wood: pinpricks beside larger holes say that living larvae were there.',
    source: 'household pest hole plate',
    confidence: 'looked-up',
  },
} as const satisfies Record<string, Borer>;
export type BorerId = keyof typeof BORERS;

/**
 * Pin and tack holes, the trap of hat blocks: in lines at the brim break or base, straight in, pressed or rusty rim, never widening, no pellets.
 * SOURCE: common practice, no source.
 */
export const TOOL_HOLES = {
  name: 'pin or tack holes',
  holeMm: { low: 0.5, high: 1.5 },
  shapes: ['round'],
  dusts: ['none'],
  woods: ANY_WOOD,
  source: 'common practice, no source',
  confidence: 'practice',
} as const satisfies Sourced & Pick<Borer, 'name' | 'holeMm' | 'shapes' | 'dusts' | 'woods'>;
