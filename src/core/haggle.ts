import { nextBid } from './lot-price.ts';
import type { Offer, SaleTerms } from './records.ts';
import { type MinorUnits, minor } from './units.ts';
import { openingOffer } from './value.ts';
import { allInAt } from './worth.ts';

/** Of the price asked, what one hopes to settle at. Trade estimate: in the handbook's example 95 of 120. */
const USUAL_SETTLING = 0.8;

/** What to say first, aim for and stop at. Hammer or ticket prices, minor units. */
export interface Figures {
  readonly opening: number | null;
  readonly aim: number | null;
  /** The limit; null where no price at all is right. */
  readonly stop: number | null;
  /** The price asked lies so far under the limit that haggling long could lose the block. */
  readonly payIt: boolean;
}

/** Round to whole units downwards, from fifty on to fives: a figure one can say. */
function roundly(amount: number, unit: number): number {
  const step = amount >= 50 * unit ? 5 * unit : unit;
  return Math.floor(amount / step) * step;
}

/** Asked at two thirds of the limit or less. Own choice, after the handbook's advice on its best lot (52 asked, worth 85). */
const EASILY_WITHIN = 2 / 3;

/**
 * Opening and stopping figure: one aims at four fifths of what is asked, or the limit if that is less, and opens so that the
 * middle between the two is the aim (2T − A).
 * @param unit minor units of one whole unit of the currency, to round to
 */
export function figuresFor(asked: number | null, limit: number | null, unit: number): Figures {
  if (limit === null || limit <= 0) return { opening: null, aim: null, stop: null, payIt: false };
  if (asked === null) return { opening: null, aim: null, stop: limit, payIt: false };
  const aim = Math.min(limit, roundly(asked * USUAL_SETTLING, unit));
  return {
    opening: roundly(openingOffer(aim, asked), unit),
    aim,
    stop: limit,
    payIt: asked <= limit * EASILY_WITHIN,
  };
}

/** What to say next: half way from one's last offer to what they ask, never over the limit; null where nothing is left to say. */
export function nextOffer(
  offers: readonly Pick<Offer, 'what' | 'amount'>[],
  asked: number | null,
  { opening, stop }: Figures,
  unit: number,
): number | null {
  if (stop === null) return null;
  const last = offers.filter(({ what }) => what === 'offered').at(-1)?.amount;
  if (last === undefined) return opening;
  const next = Math.min(stop, asked === null ? stop : Math.max(last, Math.ceil((last + asked) / 2 / unit) * unit));
  return next > last ? next : null;
}

/** A rung of the ladder of bids. */
export interface Rung {
  readonly bid: number;
  readonly allIn: MinorUnits;
}

export interface Ladder {
  /** From the next bid up to the stop, at most so many. */
  readonly rungs: readonly Rung[];
  /** The highest bid one may make; null when the next is over it already. */
  readonly stop: Rung | null;
  /** Rungs between the last shown and the stop. */
  readonly hidden: number;
}

const MOST_RUNGS = 6;
/** Rungs counted before giving up: a ladder of pennies is no ladder. */
const LONGEST = 2_000;

/**
 * The bids still to come, by the saleroom's steps, up to one's limit.
 * @param standing the bid that stands; null before the first @param limit highest hammer price, minor units
 */
export function ladderOf(standing: number | null, limit: number | null, terms: SaleTerms): Ladder {
  const rung = (bid: number): Rung => ({ bid, allIn: allInAt(bid, terms) });
  if (limit === null) return { rungs: [], stop: null, hidden: 0 };
  // Any amount is a bid: the one that matters is the last.
  if (terms.bidSteps.length === 0) {
    const last = limit > (standing ?? 0) ? rung(limit) : null;
    return { rungs: last ? [last] : [], stop: last, hidden: 0 };
  }
  const first =
    standing === null
      ? (terms.bidSteps[0]?.from ?? 0) || nextBid(0, terms.bidSteps)
      : nextBid(standing, terms.bidSteps);
  if (first > limit) return { rungs: [], stop: null, hidden: 0 };
  const bids: number[] = [];
  for (let bid = first; bid <= limit && bids.length < LONGEST; bid = nextBid(bid, terms.bidSteps)) bids.push(bid);
  const stop = minor(bids.at(-1) ?? first);
  const shown = bids.slice(0, MOST_RUNGS);
  return { rungs: shown.map(rung), stop: rung(stop), hidden: bids.length - shown.length };
}
