import type { Catalogue } from '../catalogue.ts';
import { type Circumstances, holds } from '../condition.ts';
import { type PaceBook, workingOrder } from '../plan.ts';
import { amountOf, type Cause, type joined } from '../wanted.ts';
import { logNormalTable, logStudentTable, pertTable, type QuantileTable } from './quantile-table.ts';

/** One treatment as the draws use it: tables instead of three points. */
export interface Work {
  readonly id: string;
  readonly setUp: QuantileTable;
  readonly perUnit: QuantileTable | null;
  readonly unit: Parameters<typeof joined>[0] | null;
  readonly wait: QuantileTable;
  readonly consumables: number;
  readonly reference: keyof PaceBook;
}

/** What one finding, or one that may be there, asks of the bench. Treatments go by their rank in working order. */
export interface Demand {
  readonly uses: readonly Quantity[];
  /** Every step it leads to: what it uses, and what that brings with it. */
  readonly steps: readonly number[];
  /** Rank at which its failing shows and the rest is not worth doing; −1 when no use of it is essential. */
  readonly essential: number;
  /** Rank of its last use: done only if the work gets that far; −1 without uses. */
  readonly last: number;
}

/** How much of a treatment. */
export interface Quantity {
  readonly rank: number;
  readonly amount: number;
}

/** All treatments of a catalogue by rank in working order, with what each brings with it on this block. */
export interface Workshop {
  readonly works: readonly Work[];
  /** Steps of every plan, with what they bring. */
  readonly always: readonly number[];
  /** By rank: the amounts of others that come with it. */
  readonly brings: readonly (readonly Quantity[])[];
  demandOf(cause: Omit<Cause, 'id'>): Demand;
  paceTable(reference: keyof PaceBook): QuantileTable;
}

/** Before any log of one's own: a quarter of spread shared by the whole block, median 1. Trade estimate. */
const SPREAD_WITHOUT_LOG = 0.25;

const tables = new WeakMap<object, readonly Work[]>();

function worksOf(catalogue: Pick<Catalogue, 'treatments'>): readonly Work[] {
  const known = tables.get(catalogue.treatments);
  if (known) return known;
  const works = [...workingOrder(catalogue).keys()].map((id): Work => {
    const treatment = catalogue.treatments[id];
    if (!treatment) throw new Error(`The order names ${id}, which the catalogue does not have.`);
    const { per } = treatment;
    const size = per?.size ?? 1;
    return {
      id,
      setUp: pertTable(treatment.setUpHours),
      perUnit: per && pertTable({ o: per.hours.o / size, m: per.hours.m / size, p: per.hours.p / size }),
      unit: per?.unit ?? null,
      wait: pertTable(treatment.waitHours),
      consumables: treatment.consumables,
      reference: treatment.reference,
    };
  });
  tables.set(catalogue.treatments, works);
  return works;
}

/** The workshop for one block: which treatments there are, what brings what, at the owner's pace. */
export function workshopFor(block: Omit<Circumstances, 'finding'>, catalogue: Catalogue, pace: PaceBook): Workshop {
  const works = worksOf(catalogue);
  const rankOf = workingOrder(catalogue);
  const brings = works.map(({ id }) =>
    (catalogue.treatments[id]?.brings ?? [])
      .filter(({ when }) => !when || holds(when, block))
      .map(({ treatment, amount }) => ({
        rank: rankOf.get(treatment) ?? -1,
        amount: amount ? amountOf(amount, {}) : 0,
      }))
      .filter(({ rank }) => rank >= 0),
  );
  const withAllBrought = (ranks: readonly number[]): readonly number[] => {
    const whole = new Set(ranks);
    // A set grows while it is walked, so what is brought may bring more.
    for (const rank of whole) for (const brought of brings[rank] ?? []) whole.add(brought.rank);
    return [...whole];
  };

  return {
    works,
    always: withAllBrought(works.flatMap(({ id }, rank) => (catalogue.treatments[id]?.always ? [rank] : []))),
    brings: brings.map((brought) => brought.filter(({ amount }) => amount > 0)),
    demandOf({ kind, answers, grade, zoneClass }) {
      const here = { ...block, finding: { answers, grade, zoneClass } };
      const wanted = kind.treatments.filter(
        ({ fromGrade, when }) => grade >= fromGrade && (!when || holds(when, here)),
      );
      const uses = wanted.flatMap((use) => {
        const rank = rankOf.get(use.treatment);
        return rank === undefined ? [] : [{ rank, amount: amountOf(use.amount, answers), essential: use.essential }];
      });
      const lastOf = (list: readonly { rank: number }[]): number => Math.max(-1, ...list.map(({ rank }) => rank));
      return {
        uses,
        steps: withAllBrought(uses.map(({ rank }) => rank)),
        essential: lastOf(uses.filter(({ essential }) => essential)),
        last: lastOf(uses),
      };
    },
    paceTable(reference) {
      const own = pace[reference];
      const mu = Math.log(own?.median ?? 1);
      return own?.spread.kind === 'logStudent'
        ? logStudentTable(mu, own.spread.scale, own.spread.freedom)
        : logNormalTable(mu, own?.spread.sigma ?? SPREAD_WITHOUT_LOG);
    },
  };
}
