import type { Catalogue } from '../catalogue.ts';
import { type Circumstances, holds } from '../condition.ts';
import { amountOf, type Cause, type joined, type PaceBook, workingOrder } from '../plan.ts';
import { at, logNormalTable, logStudentTable, pertTable, type QuantileTable, tableOf } from './quantile-table.ts';

/** One treatment as the draws use it: tables instead of three points. */
interface Work {
  readonly id: string;
  readonly setUp: QuantileTable;
  readonly perUnit: QuantileTable | null;
  readonly unit: Parameters<typeof joined>[0] | null;
  readonly wait: QuantileTable;
  readonly consumables: number;
  readonly reference: keyof PaceBook;
}

/** What one finding, or one that may be there, asks of the bench. */
export interface Demand {
  /** Rank of the treatment in working order, and how much of it. */
  readonly uses: readonly { readonly rank: number; readonly amount: number }[];
  /** Rank at which its failing shows and the rest is not worth doing; −1 when no use of it is essential. */
  readonly essential: number;
  /** Rank of its last use: done only if the work gets that far; −1 without uses. */
  readonly last: number;
}

/** All treatments of a catalogue by rank in working order, with what each brings with it on this block. */
export interface Workshop {
  readonly works: readonly Work[];
  readonly always: readonly number[];
  /** The ranks of a set with everything brought along, in working order, and the amounts that come with them. */
  complete(set: number): {
    readonly ranks: readonly number[];
    readonly amounts: readonly (readonly [rank: number, amount: number])[];
  };
  demandOf(cause: Omit<Cause, 'id'>): Demand;
  readonly paceTable: (reference: keyof PaceBook) => QuantileTable;
}

/** Before any log of one's own: a quarter of spread shared by the whole block, median 1. Trade estimate. */
const SPREAD_WITHOUT_LOG = 0.25;

// Sets of treatments are bits of one number: exact up to 52, and JavaScript's own bit operations stop at 32.
export const MOST_TREATMENTS = 52;
export const bit = (rank: number): number => 2 ** rank;
export const has = (set: number, rank: number): boolean => Math.floor(set / bit(rank)) % 2 === 1;

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
  if (works.length > MOST_TREATMENTS)
    throw new Error(`${works.length} treatments came, at most ${MOST_TREATMENTS} fit a set.`);
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
  const completed = new Map<number, ReturnType<Workshop['complete']>>();
  const paces = new Map<keyof PaceBook, QuantileTable>();

  function complete(set: number): ReturnType<Workshop['complete']> {
    const known = completed.get(set);
    if (known) return known;
    let whole = set;
    const todo = works.map((_, rank) => rank).filter((rank) => has(set, rank));
    for (const rank of todo) {
      for (const brought of brings[rank] ?? []) {
        if (has(whole, brought.rank)) continue;
        whole += bit(brought.rank);
        todo.push(brought.rank);
      }
    }
    const ranks = works.map((_, rank) => rank).filter((rank) => has(whole, rank));
    const amounts = ranks.flatMap((rank) =>
      (brings[rank] ?? []).filter(({ amount }) => amount > 0).map((one) => [one.rank, one.amount] as const),
    );
    const result = { ranks, amounts };
    completed.set(set, result);
    return result;
  }

  return {
    works,
    always: works.flatMap(({ id }, rank) => (catalogue.treatments[id]?.always ? [rank] : [])),
    complete,
    demandOf({ kind, answers, grade, zoneClass }) {
      const here = { ...block, finding: { answers, grade, zoneClass } };
      const wanted = kind.treatments.filter(
        ({ fromGrade, when }) => grade >= fromGrade && (!when || holds(when, here)),
      );
      const uses = wanted.flatMap((use) => {
        const rank = rankOf.get(use.treatment);
        return rank === undefined ? [] : [{ rank, amount: amountOf(use.amount, answers), essential: use.essential }];
      });
      const ranks = (list: readonly { rank: number }[]): number => Math.max(-1, ...list.map(({ rank }) => rank));
      return { uses, essential: ranks(uses.filter(({ essential }) => essential)), last: ranks(uses) };
    },
    paceTable(reference) {
      let table = paces.get(reference);
      if (!table) {
        const own = pace[reference];
        const mu = Math.log(own?.median ?? 1);
        if (own?.spread.kind === 'logStudent') table = logStudentTable(mu, own.spread.scale, own.spread.freedom);
        else {
          const sigma = own?.spread.sigma ?? SPREAD_WITHOUT_LOG;
          table = sigma === 0 ? tableOf(() => Math.exp(mu)) : logNormalTable(mu, sigma);
        }
        paces.set(reference, table);
      }
      return table;
    },
  };
}

/** Hours of a treatment at chance `u`: set-up and rate are slow together on a slow evening. */
export const hoursAt = (work: Work, amount: number, u: number): number =>
  at(work.setUp, u) + (work.perUnit && amount > 0 ? amount * at(work.perUnit, u) : 0);
