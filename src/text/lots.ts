import { type Catalogue, entry, VERDICTS } from '../core/catalogue.ts';
import type { LotPrice, NotBought } from '../core/lot-price.ts';
import type { LotRow } from '../core/lots.ts';
import type { Filling } from '../core/shelf-gaps.ts';
import { days, hours, moneyAbout } from './format.ts';

/** What says the price, as it stands beside it. */
export const PRICE_WORDS = {
  paid: 'paid',
  agreed: 'agreed',
  asked: 'asked',
  bid: 'next bid',
  estimate: 'middle of the estimate',
} as const satisfies Record<LotPrice['from'], string>;

export const NOT_BOUGHT_WORDS = {
  tooDear: 'Too dear',
  tooRisky: 'Too risky',
  tooMuchWork: 'Too much work',
  outbid: 'Outbid',
  soldToOther: 'Sold to somebody else',
  purseEmpty: 'Purse empty',
  notNeeded: 'Not needed',
} as const satisfies Record<NotBought, string>;

/** A reason as stored; one from a newer app stands as it is. */
export const notBoughtWords = (reason: string): string =>
  (NOT_BOUGHT_WORDS as Readonly<Record<string, string>>)[reason] ?? reason;

/** `2 sound, 1 leave`: the verdicts of a job lot's blocks, best first. */
export function verdictsOf({ blocks }: LotRow, catalogue: Catalogue): string {
  return VERDICTS.flatMap((verdict) => {
    const count = blocks.filter((one) => one.verdict === verdict).length;
    return count === 0 ? [] : [`${count} ${catalogue.verdicts[verdict].term.toLocaleLowerCase('en-GB')}`];
  }).join(', ');
}

/** The limit in a word or figure: `…` while not reckoned. */
export function limitFigure({ limit }: Pick<LotRow, 'limit'>, currency: string): string {
  if (limit === undefined) return '…';
  return limit === null || limit === 0 ? 'nothing' : moneyAbout(limit, currency);
}

/** What a look would be worth, where nobody looked: `Not looked at yet. Knock first (20 s): worth £12`. */
export function lookWords({ look, looked }: LotRow, currency: string, catalogue: Catalogue): string {
  if (looked === 'all') return 'Looked at';
  const said = looked === 'not' ? 'Not looked at yet' : 'Partly looked at';
  if (!look) return said;
  const where = entry(catalogue.stations, look.station)?.term ?? look.station;
  return look.worth < 100
    ? `${said}; more looking would hardly change it`
    : `${said}. ${where} first (${look.seconds} s): worth ${moneyAbout(look.worth, currency)}`;
}

export const workWords = (row: Pick<LotRow, 'hours' | 'days'>): string => `${hours(row.hours)}, ${days(row.days)}`;

export const FILLING_WORDS = {
  size: 'fills a gap on your shelf',
  shape: 'a shape you have none of',
} as const satisfies Record<NonNullable<Filling>, string>;
