import type { Condition, DamageKind, Origin } from '../../core/catalogue.ts';
import type { MaterialId, TreatmentId } from '../ids.ts';
import { memory } from '../source.ts';
import type { StationId } from '../stations.ts';
import { yesNo } from './asks.ts';

/** A damage kind whose treatments, materials and stations must be in the catalogue. */
export type Kind = DamageKind<TreatmentId, MaterialId, StationId>;

export const solidWoods = [
  'lime',
  'alder',
  'poplar',
  'sapele',
  'mahogany',
  'beech',
  'pine',
  'balsa',
] as const satisfies readonly MaterialId[];
export const woods = [...solidWoods, 'plywood'] as const satisfies readonly MaterialId[];
export const metals = ['aluminium', 'iron'] as const satisfies readonly MaterialId[];
/** Bound with paste: water and steam undo them. */
export const pasted = ['sparterie', 'papierMache'] as const satisfies readonly MaterialId[];

/** Weighs in the verdict like any damage. */
export const inFull = { critical: true, repair: true } as const;

/** Chances by origin, in this order: workshop in use, dealer, damp store, unknown. */
export const chances = (
  workshopInUse: number,
  dealer: number,
  dampStore: number,
  unknown: number,
): Readonly<Record<Origin, number>> => ({ workshopInUse, dealer, dampStore, unknown });

/** Wood that crack and filler sums hold for; an unnamed material counts as any wood. */
export const inWood = { material: woods } as const satisfies Condition;
const boards = { group: ['brim'] } as const satisfies Condition;
/** A crack in a block turned or carved from one piece: towards its middle. */
export const inRound = { all: [inWood, { not: boards }] } as const satisfies Condition;
/** The same in a brim, which is boards. */
export const inBoards = { all: [inWood, boards] } as const satisfies Condition;
/** Where the fillers of the trade are meant to go, and the damage is bad enough for one. */
export const takesFiller = {
  all: [{ material: [...woods, 'cork'] }, { grade: { from: 2 } }],
} as const satisfies Condition;
/** A solid crown, which weighs what a dome of its wood weighs. */
export const solidCrown = { all: [inWood, { group: ['crown', 'puzzle'] }] } as const satisfies Condition;

/** Grade bounds and wording without a source of their own. */
export const judged = memory('Bounds, wording, treatability and odds: trade estimate, from memory.');

/** Asked wherever there is paint. */
export const leadPaint = yesNo('paintLeadPossible', 'Old white, green, red or cream paint?', 'It may hold lead.');
export const leadGate = {
  when: { ask: 'paintLeadPossible', is: true },
  effects: ['noSanding'],
  advice: 'Lead test before any sanding, scraping or heat. Until then: gloves, damp wiping, no dust, no children near.',
} as const satisfies Kind['gates'][number];
