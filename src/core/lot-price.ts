import type { HatBlock, JobLot, Offer, SaleTerms } from './records.ts';

/** What a lot would cost before the sale's fees, and what says so: the surest there is. */
export interface LotPrice {
  /** Hammer or ticket price, minor units. */
  readonly amount: number;
  readonly from: 'paid' | 'agreed' | 'asked' | 'bid' | 'estimate';
}

/** Where a lot stands for the buyer. */
export type Standing = 'open' | 'agreed' | 'paid' | 'notBought';

/** Why a lot was not bought. Kept, because what was asked and refused teaches as much as what was paid. */
export const NOT_BOUGHT = [
  'tooDear',
  'tooRisky',
  'tooMuchWork',
  'outbid',
  'soldToOther',
  'purseEmpty',
  'notNeeded',
] as const;
export type NotBought = (typeof NOT_BOUGHT)[number];

interface Priced {
  readonly job: JobLot | null;
  readonly blocks: readonly { readonly block: HatBlock }[];
  readonly offers: readonly Pick<Offer, 'what' | 'amount'>[];
}

/** The record that carries the lot's own figures: the job lot, or the block that is a lot by itself. */
export const carrierOf = ({ job, blocks }: Pick<Priced, 'job' | 'blocks'>): JobLot | HatBlock | undefined =>
  job ?? blocks[0]?.block;

/** The bid that must be made to be the highest: one step up, on the saleroom's ladder. With no steps, one unit of a hundred. */
export function nextBid(standing: number, steps: SaleTerms['bidSteps']): number {
  const row = steps.filter(({ from }) => from <= standing).at(-1);
  if (!row) return steps[0] ? Math.max(standing + 1, steps[0].from) : standing + 100;
  const next = row.from + (Math.floor((standing - row.from) / row.step) + 1) * row.step;
  // A higher row may begin before the step is out.
  const higher = steps.find(({ from }) => from > standing);
  return higher ? Math.min(next, higher.from) : next;
}

const lastOf = (offers: Priced['offers'], what: Offer['what']): number | undefined =>
  offers.filter((offer) => offer.what === what).at(-1)?.amount;

/**
 * The price to reckon with: paid, agreed, asked; at an auction the next bid or the middle of the estimate, whichever is
 * more. Null where nobody has named any.
 */
export function priceOf(lot: Priced, terms: Pick<SaleTerms, 'bidSteps'>): LotPrice | null {
  const paid = lastOf(lot.offers, 'paid');
  if (paid !== undefined) return { amount: paid, from: 'paid' };
  const agreed = lastOf(lot.offers, 'agreed');
  if (agreed !== undefined) return { amount: agreed, from: 'agreed' };
  const carrier = carrierOf(lot);
  if (carrier?.priceAsked != null) return { amount: carrier.priceAsked, from: 'asked' };
  const bid = carrier?.bidNow == null ? null : nextBid(carrier.bidNow, terms.bidSteps);
  const [low, high] = [carrier?.estimateLow ?? carrier?.estimateHigh, carrier?.estimateHigh ?? carrier?.estimateLow];
  const middle = low == null || high == null ? null : Math.round((low + high) / 2);
  if (bid !== null && bid >= (middle ?? 0)) return { amount: bid, from: 'bid' };
  return middle === null ? null : { amount: middle, from: 'estimate' };
}

export function standingOf(lot: Priced): Standing {
  if (lastOf(lot.offers, 'paid') !== undefined) return 'paid';
  if (lastOf(lot.offers, 'agreed') !== undefined) return 'agreed';
  return carrierOf(lot)?.notBought == null ? 'open' : 'notBought';
}
