import type { Condition, ThreePoint, Treatment } from '../../core/catalogue.ts';
import type { MaterialId, TreatmentId } from '../ids.ts';
import type { ResourceId } from '../resources.ts';
import { memory } from '../source.ts';

/** A treatment whose predecessors and resources must be in the catalogue. */
export type Step = Treatment<TreatmentId, ResourceId>;

/** Hours: optimistic, most likely, pessimistic. */
export const hours = (o: number, m: number, p: number): ThreePoint => ({ o, m, p });
export const noWait = hours(0, 0, 0);

/** Hours, waits and consumables without a source of their own. */
export const judged = memory('Hours, waits and consumables: trade estimate, from memory.');

const carvable = [
  'lime',
  'alder',
  'poplar',
  'sapele',
  'mahogany',
  'beech',
  'pine',
  'balsa',
  'plywood',
  'cork',
  'plaster',
] as const satisfies readonly MaterialId[];
/** What is scraped, filled level and sealed: not metal, straw, paper, foam or resin. */
export const ifCarvable = { material: carvable } as const satisfies Condition;

/** A mended block is tried on a scrap hat before a good one; small shapes, pans, stands and heads are not blocked under tension. */
export const ifBlockedOn = {
  all: [{ group: ['crown', 'brim', 'full', 'puzzle'] }, ifCarvable],
} as const satisfies Condition;

/** Where a surface has been opened and filled, it is made true again: this share of the face for each such job. */
export const trueAgain = (areaPct: number, why: string) =>
  ({ treatment: 'scrapeAndTrue', when: ifCarvable, amount: { fixed: areaPct }, why }) as const;
export const tryItOut = {
  treatment: 'testBlock',
  when: ifBlockedOn,
  why: 'What steam and tension can undo is tried on scrap first.',
} as const;
