import { VERDICTS } from './catalogue.ts';
import { carrierOf } from './lot-price.ts';
import type { LotRow } from './lots.ts';

export const LOT_ORDERS = ['surplus', 'look', 'price', 'limit', 'hours', 'days', 'verdict', 'number'] as const;
export type LotOrder = (typeof LOT_ORDERS)[number];

export const LOT_FILTERS = ['all', 'open', 'within', 'notLooked', 'bought', 'notBought'] as const;
export type LotFilter = (typeof LOT_FILTERS)[number];

const isBought = ({ standing }: LotRow): boolean => standing === 'agreed' || standing === 'paid';

const fits: Record<LotFilter, (row: LotRow) => boolean> = {
  all: () => true,
  open: ({ standing }) => standing === 'open',
  within: ({ surplus, standing }) => standing === 'open' && surplus !== null && surplus >= 0,
  notLooked: ({ looked, standing }) => standing === 'open' && looked !== 'all',
  bought: isBought,
  notBought: ({ standing }) => standing === 'notBought',
};

const verdictRank = ({ blocks }: LotRow): number =>
  Math.min(VERDICTS.length, ...blocks.map(({ verdict }) => VERDICTS.indexOf(verdict)));

/** Unknown goes last whichever way one sorts. */
const up = (a: number | null | undefined, b: number | null | undefined): number =>
  a == null ? (b == null ? 0 : 1) : b == null ? -1 : a - b;
const down = (a: number | null | undefined, b: number | null | undefined): number =>
  a == null || b == null ? up(a, b) : b - a;

const number = ({ lot }: LotRow): string => carrierOf(lot)?.objectNumber ?? '';

/** Best first: most surplus, most worth a look, least price, highest limit, fewest hours and days, best verdict. */
const compare: Record<LotOrder, (a: LotRow, b: LotRow) => number> = {
  surplus: (a, b) => down(a.surplus, b.surplus),
  look: (a, b) => down(a.look?.worth, b.look?.worth),
  price: (a, b) => up(a.price?.amount, b.price?.amount),
  limit: (a, b) => down(a.limit, b.limit),
  hours: (a, b) => up(a.hours, b.hours),
  days: (a, b) => up(a.days, b.days),
  verdict: (a, b) => verdictRank(a) - verdictRank(b),
  number: (a, b) => number(a).localeCompare(number(b), 'en-GB', { numeric: true }),
};

/** Rows that fit, in an order; equals by number, then by id, so that nothing jumps. */
export const orderedRows = (rows: readonly LotRow[], order: LotOrder, filter: LotFilter): readonly LotRow[] =>
  rows.filter(fits[filter]).sort((a, b) => compare[order](a, b) || compare.number(a, b) || (a.id < b.id ? -1 : 1));

export const countFitting = (rows: readonly LotRow[], filter: LotFilter): number => rows.filter(fits[filter]).length;
