import { entry, type Treatment } from './catalogue.ts';
import { allIn, type SaleTerms } from './fees.ts';
import type { Expense, Job, Offer, Stint, WorkStep } from './records.ts';
import { type MinorUnits, minor, roundMinor } from './units.ts';
import type { Price, Worth } from './worth.ts';

/** The catalogue's estimates are pence; in another currency they are not added to it. */
const CATALOGUE_CURRENCY = 'GBP';

/** One line of what a block has cost. */
export interface SpentLine {
  readonly what: 'price' | 'fees' | 'premium' | 'platform' | 'vat' | 'fixed' | 'expense' | 'consumables' | 'hours';
  /** Words of an expense, id of a treatment, or empty. */
  readonly of: string;
  readonly amount: MinorUnits;
  /** Written down by the owner, worked out from what was, or the catalogue's estimate. */
  readonly from: 'recorded' | 'derived' | 'estimate';
  /** Id of the treatment an expense was for. */
  readonly treatment?: string;
  /** Hands-on hours of a line of hours. */
  readonly hours?: number;
}

/** Everything spent in one currency; nothing of another is ever in its total. */
export interface SpentIn {
  readonly currency: string;
  readonly lines: readonly SpentLine[];
  readonly total: MinorUnits;
}

type WrittenDown = Pick<Job, 'treatment' | 'actualHours' | 'stepId'>;
type DoneStep = Pick<WorkStep, 'id' | 'treatment' | 'added' | 'done'>;

export interface SpentFacts {
  readonly offers: readonly Pick<Offer, 'what' | 'amount' | 'currency' | 'saleId' | 'fees'>[];
  /** Terms of the sale it was paid at, in that sale's currency; null where none is known. */
  readonly sale: { readonly id: string; readonly currency: string; readonly terms: SaleTerms } | null;
  readonly jobs: readonly WrittenDown[];
  readonly steps: readonly DoneStep[];
  readonly stints: readonly Pick<Stint, 'stepId' | 'minutes'>[];
  readonly expenses: readonly Pick<Expense, 'what' | 'treatment' | 'amount' | 'currency'>[];
  /** Minor units an hour, and of which currency. */
  readonly hourlyRate: number;
  readonly rateCurrency: string;
  readonly treatments: Readonly<Record<string, Pick<Treatment, 'consumables'>>>;
}

type Line = SpentLine & { readonly currency: string };

/** The price last written down as paid, with what its sale put on top: as it was written then, else at the terms. */
function priceLines({ offers, sale }: SpentFacts): readonly Line[] {
  const paid = offers.filter(({ what }) => what === 'paid').at(-1);
  if (!paid || paid.amount < 0) return [];
  const { amount, currency } = paid;
  const price: Line = { what: 'price', of: '', amount: minor(amount), currency, from: 'recorded' };
  if (paid.fees != null) {
    return paid.fees === 0
      ? [price]
      : [price, { what: 'fees', of: '', amount: minor(paid.fees), currency, from: 'recorded' }];
  }
  if (!sale || sale.id !== paid.saleId || sale.currency !== currency) return [price];
  const { premium, platform, vat, fixed } = allIn(minor(amount), sale.terms);
  const fees = { premium, platform, vat, fixed };
  return [
    price,
    ...(Object.keys(fees) as (keyof typeof fees)[])
      .filter((what) => fees[what] !== 0)
      .map((what): Line => ({ what, of: '', amount: fees[what], currency, from: 'derived' })),
  ];
}

/** Consumables of the steps worked on or done: as written down for a step, else as the catalogue estimates them, once a step. */
function consumableLines({ jobs, steps, expenses, treatments }: SpentFacts): readonly Line[] {
  const recorded = expenses.map(
    ({ what, treatment, amount, currency }): Line => ({
      ...{ what: 'expense', of: what, amount: minor(amount), currency, from: 'recorded' },
      ...(treatment === null ? {} : { treatment }),
    }),
  );
  const bought = new Set(expenses.map(({ treatment }) => treatment));
  const done = steps.flatMap(({ treatment, done }) => (done && treatment !== null ? [treatment] : []));
  const worked = [...new Set([...jobs.map(({ treatment }) => treatment), ...done])].filter((id) => !bought.has(id));
  const estimated = worked.flatMap((id): Line[] => {
    const { consumables = 0 } = entry(treatments, id) ?? {};
    if (consumables === 0) return [];
    return [
      { what: 'consumables', of: id, amount: minor(consumables), currency: CATALOGUE_CURRENCY, from: 'estimate' },
    ];
  });
  return [...recorded, ...estimated];
}

/** Steps done for which nobody wrote hours down: those in the owner's own words, and those ticked without. */
export const doneWithoutJob = <Step extends DoneStep>(
  steps: readonly Step[],
  jobs: readonly Pick<Job, 'treatment' | 'stepId'>[],
): readonly Step[] =>
  steps
    .filter(({ id, done }) => done && !jobs.some(({ stepId }) => stepId === id))
    .filter(({ treatment, added }) => added || !jobs.some((job) => !job.stepId && job.treatment === treatment));

/** Hours of a step by its stints; null where none of them says minutes that count. */
export function clockedHours(
  { id }: Pick<WorkStep, 'id'>,
  stints: readonly Pick<Stint, 'stepId' | 'minutes'>[],
): number | null {
  const minutes = stints.filter(({ stepId }) => stepId === id).flatMap((stint) => stint.minutes ?? []);
  return minutes.length > 0 ? minutes.reduce((sum, each) => sum + each, 0) / 60 : null;
}

/** The owner's own hours, as logged or else as clocked on steps that were done, at the rate of today. */
function hoursLine({ jobs, steps, stints, hourlyRate, rateCurrency }: SpentFacts): readonly Line[] {
  const logged = jobs.map(({ actualHours }) => Math.max(0, actualHours));
  const clocked = doneWithoutJob(steps, jobs).map((step) => clockedHours(step, stints) ?? 0);
  const hours = [...logged, ...clocked].reduce((sum, each) => sum + each, 0);
  if (hours === 0) return [];
  return [
    { what: 'hours', of: '', amount: roundMinor(hours * hourlyRate), currency: rateCurrency, from: 'derived', hours },
  ];
}

/**
 * What a block has cost so far: price with the sale's fees, expenses, consumables, own hours. One sum for each currency,
 * the one with the price first; amounts of different currencies are never added up.
 * SOURCE: arithmetic; fees as in `fees.ts`.
 */
export function spentOn(facts: SpentFacts): readonly SpentIn[] {
  const lines = [...priceLines(facts), ...consumableLines(facts), ...hoursLine(facts)];
  return [...new Set(lines.map(({ currency }) => currency))].map((currency) => {
    const here = lines.filter((line) => line.currency === currency);
    return {
      currency,
      lines: here.map(({ currency: _, ...line }) => line),
      total: minor(here.reduce((sum, { amount }) => sum + amount, 0)),
    };
  });
}

/** What a block would cost to put back, and on what the figure rests. */
export interface Insurance {
  /** Made new to order; delivery comes on top. */
  readonly newForOld: MinorUnits;
  readonly newFrom: Price['from'];
  /** An equal used one. */
  readonly cashValue: MinorUnits;
  readonly usedFrom: Price['from'];
}

/**
 * Insure at the make-to-order price plus delivery; the cash value is what an equal used one costs.
 * SOURCE: trade handbook §3.4, insurance (common practice).
 */
export const insuranceOf = ({ newPrice, equalUsed }: Pick<Worth, 'newPrice' | 'equalUsed'>): Insurance => ({
  newForOld: newPrice.amount,
  newFrom: newPrice.from,
  cashValue: equalUsed.amount,
  usedFrom: equalUsed.from,
});
