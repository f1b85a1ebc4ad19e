import type { Assessment } from './assess.ts';
import type { Verdict } from './catalogue.ts';
import { shapeOf } from './head-size.ts';
import { type LotPrice, priceOf, type Standing, standingOf } from './lot-price.ts';
import type { Finding, HatBlock, JobLot, Offer, SaleTerms, Survey } from './records.ts';
import type { Look } from './simulate/looks.ts';
import type { Forecast, Strategy } from './simulate/simulate.ts';
import { type MinorUnits, minor } from './units.ts';
import { allInAt, highestPriceFor } from './worth.ts';

/** A block at a sale with its answers. */
export interface LotBlock {
  readonly block: HatBlock;
  readonly survey: Survey;
  readonly findings: readonly Finding[];
  readonly book: Assessment;
  /** Undefined until it is reckoned. */
  readonly forecast: Forecast | undefined;
}

/** What is sold at one price: a block by itself, or a job lot of several. */
export interface Lot {
  /** Of the block, or of the job lot. */
  readonly id: string;
  readonly job: JobLot | null;
  readonly blocks: readonly LotBlock[];
  /** Oldest first. */
  readonly offers: readonly Offer[];
}

/** Terms the lots are sold at, in which currency, and what a copy takes: the same for all. */
export interface TableFacts {
  readonly currency: string;
  readonly terms: SaleTerms;
  readonly copy: { readonly hours: number; readonly days: number };
}

export const LOOKED = ['not', 'partly', 'all'] as const;
/** How far a lot was looked at: nothing, some, everything that can be on it. */
export type Looked = (typeof LOOKED)[number];

/** A block as the table counts it. */
export interface BlockFigures {
  readonly id: string;
  readonly verdict: Verdict;
  readonly looked: Looked;
  /** Most it is worth in all, minor units; undefined while not reckoned. */
  readonly worth: MinorUnits | undefined;
  /** Hands-on hours and days of the whole restoration, also where it would serve as it is; of a copy where only that pays. */
  readonly hours: number;
  readonly days: number;
  readonly quarantine: boolean;
  readonly refused: boolean;
  readonly shape: string | null;
}

/** A line of the table. Money in minor units, whole. */
export interface LotRow {
  readonly id: string;
  readonly lot: Lot;
  readonly blocks: readonly BlockFigures[];
  readonly looked: Looked;
  /** Most it is worth in all, disposal taken off: wanted blocks only. Undefined while not reckoned. */
  readonly worth: number | undefined;
  /** The same as a hammer or ticket price at the terms; null when even 0 is too much. */
  readonly limit: MinorUnits | null | undefined;
  readonly price: LotPrice | null;
  readonly allIn: MinorUnits | null;
  readonly surplus: number | null;
  readonly hours: number;
  readonly days: number;
  readonly quarantine: boolean;
  /** The look most worth taking next, of all its blocks. */
  readonly look: (Look & { readonly blockId: string }) | null;
  readonly standing: Standing;
  /** A lot in another currency than the sale's is shown and not reckoned with: nothing is converted. */
  readonly otherCurrency: string | null;
}

/** Whether everything, something or nothing was looked for. */
export function lookedAt(kinds: Assessment['kinds']): Looked {
  const open = kinds.filter(({ state }) => state === 'notLooked').length;
  return open === 0 ? 'all' : open === kinds.length ? 'not' : 'partly';
}

/**
 * Most a block is worth in all: the lower of the book's and the forecast's, as the limit on its own page. Until the first
 * forecast is there the book stands in only where everything was looked at.
 */
export function worthInAll({ book, forecast }: Pick<LotBlock, 'book' | 'forecast'>): MinorUnits | undefined {
  if (forecast) return minor(Math.min(forecast.ceiling, book.worth.walkAway));
  return lookedAt(book.kinds) === 'all' ? book.worth.walkAway : undefined;
}

const hasEffect = ({ gates }: Assessment, effect: string): boolean =>
  gates.some(({ effects }) => effects.some((one) => one === effect));

function timeOf({ book, forecast }: LotBlock, copy: TableFacts['copy']): TableFacts['copy'] {
  const whole = {
    hours: forecast?.hours.p50 ?? book.plan.meanHours,
    days: Math.round(forecast?.days.p50 ?? book.days.total),
  };
  const time: Record<Strategy, TableFacts['copy']> = { restore: whole, copy, keep: whole };
  return time[forecast?.best ?? 'restore'];
}

export function figuresOf(one: LotBlock, { copy }: Pick<TableFacts, 'copy'>): BlockFigures {
  const { block, survey, book } = one;
  return {
    ...timeOf(one, copy),
    id: block.id,
    verdict: book.verdict,
    looked: lookedAt(book.kinds),
    worth: worthInAll(one),
    quarantine: hasEffect(book, 'quarantine'),
    refused: hasEffect(book, 'refuse'),
    shape: shapeOf(block, survey.measures),
  };
}

/** Whether a block is wanted of its lot: alone always, in a job lot if it is worth anything. */
export const isWanted = ({ worth }: Pick<BlockFigures, 'worth'>): boolean => worth === undefined || worth > 0;

/** A lot as a line of the table. The worth of a job lot is the sum of what is wanted, nothing for the rest. */
export function rowOf(lot: Lot, facts: TableFacts): LotRow {
  const blocks = lot.blocks.map((one) => figuresOf(one, facts));
  const currencies = [...(lot.job ? [lot.job] : []), ...lot.blocks.map(({ block }) => block)].map((of) => of.currency);
  const otherCurrency = currencies.find((currency) => currency !== facts.currency) ?? null;
  const isKnown = otherCurrency === null && blocks.length > 0 && blocks.every(({ worth }) => worth !== undefined);
  const worth = isKnown
    ? blocks.reduce((sum, one) => sum + Math.max(0, one.worth ?? 0), 0) - (lot.job?.disposal ?? 0)
    : undefined;
  const wanted = lot.job ? blocks.filter(isWanted) : blocks;
  const price = otherCurrency === null ? priceOf(lot, facts.terms) : null;
  const allIn = price && allInAt(price.amount, facts.terms);
  const looks = lot.blocks.flatMap(({ block, forecast }) =>
    (forecast?.looks ?? []).map((look) => ({ ...look, blockId: block.id })),
  );
  return {
    id: lot.id,
    lot,
    blocks,
    looked: blocks.every(({ looked }) => looked === 'all')
      ? 'all'
      : blocks.every(({ looked }) => looked === 'not')
        ? 'not'
        : 'partly',
    worth,
    limit: worth === undefined ? undefined : worth < 0 ? null : highestPriceFor(minor(worth), facts.terms),
    price,
    allIn,
    surplus: worth === undefined || allIn === null ? null : worth - allIn,
    hours: wanted.reduce((sum, { hours }) => sum + hours, 0),
    days: Math.max(0, ...wanted.map(({ days }) => days)),
    quarantine: blocks.some(({ quarantine }) => quarantine),
    look: looks.reduce<LotRow['look']>((best, look) => (look.worth > (best?.worth ?? 0) ? look : best), null),
    standing: standingOf(lot),
    otherCurrency,
  };
}
