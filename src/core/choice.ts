import { search } from './choice-search.ts';

/** A block within a lot, as far as taking it goes. */
export interface ChoiceBlock {
  /** Type and size; copies of one share what it earns in use. Null: like no other. */
  readonly shape: string | null;
  /** Most it is worth in all, minor units: alone, with one other copy, with two…; the last holds for more. */
  readonly worth: readonly number[];
}

/** Something one pays for once: a block, a pair, a box of several. */
export interface ChoiceLot {
  readonly id: string;
  /** All in, at the terms of the sale. Whole minor units. */
  readonly price: number;
  /** Hands-on minutes of all that is wanted of it. Whole. */
  readonly minutes: number;
  readonly blocks: readonly ChoiceBlock[];
  /** What it costs to be rid of the rest. Whole minor units. */
  readonly disposal: number;
  /** Taken or left whatever the sums say. */
  readonly pinned: 'in' | 'out' | null;
}

/** What there is to spend. Null: no limit. */
export interface Purse {
  readonly money: number | null;
  readonly minutes: number | null;
  /** Copies already one's own, by shape. */
  readonly held: Readonly<Record<string, number>>;
}

/** A set of lots to take together. Worth less price is the surplus, disposal taken off the worth. */
export interface TakenSet {
  /** In the order of their ids. */
  readonly ids: readonly string[];
  readonly worth: number;
  readonly price: number;
  readonly minutes: number;
  readonly surplus: number;
}

export interface Choice {
  /** Highest surplus first. Empty only when what is pinned in does not fit. */
  readonly sets: readonly TakenSet[];
  /** How much what is pinned in goes over; null when it fits. */
  readonly short: { readonly money: number; readonly minutes: number } | null;
  /** False when the search was cut off: the sets are good, but there may be better. */
  readonly proven: boolean;
}

export interface ChoiceOptions {
  /** Sets to find: the best and its runners-up. */
  readonly sets?: number;
  /** Steps of the search after which it is cut off. */
  readonly most?: number;
}

/** Far above what a sale of sixty lots takes; random ones take some thousands. */
export const MOST_STEPS = 300_000;

const byId = (a: { readonly id: string }, b: { readonly id: string }): number => (a.id < b.id ? -1 : 1);

/** Worth of a block when so many copies of its shape are there, itself among them. More copies never make it dearer. */
const worthAmong = ({ worth }: ChoiceBlock, copies: number): number =>
  Math.max(0, Math.min(...worth.slice(0, Math.max(1, copies))));

/** Worth of a whole set: wanted blocks only, copies sharing their use, less disposal. */
function worthOf(lots: readonly ChoiceLot[], { held }: Pick<Purse, 'held'>): number {
  const copies = new Map(Object.entries(held));
  for (const { blocks } of lots)
    for (const { shape } of blocks) if (shape !== null) copies.set(shape, (copies.get(shape) ?? 0) + 1);
  let sum = 0;
  for (const { blocks, disposal } of lots) {
    for (const block of blocks) sum += worthAmong(block, block.shape === null ? 1 : (copies.get(block.shape) ?? 1));
    sum -= disposal;
  }
  return sum;
}

/** A set with its sums; the same whatever the order of the lots. */
export function setOf(lots: readonly ChoiceLot[], purse: Pick<Purse, 'held'>): TakenSet {
  const price = lots.reduce((sum, lot) => sum + lot.price, 0);
  const worth = worthOf(lots, purse);
  return {
    ids: lots.map(({ id }) => id).sort(),
    worth,
    price,
    minutes: lots.reduce((sum, { minutes }) => sum + minutes, 0),
    surplus: worth - price,
  };
}

/**
 * Which lots to take: the highest surplus Σ(worth − price) under money and minutes, and the runners-up. A set counts only
 * if no further lot could be added to its gain: leaving something out of a better set is no other plan.
 * Exact unless `proven` says otherwise. Prices are constants by lot, so tiers and minimum premiums change nothing. The
 * order of the lots is irrelevant. Source: assessment notes §7.
 */
export function choose(
  lots: readonly ChoiceLot[],
  purse: Purse,
  { sets: wanted = 3, most = MOST_STEPS }: ChoiceOptions = {},
): Choice {
  const sorted = [...lots].sort(byId);
  const pinned = sorted.filter((lot) => lot.pinned === 'in');
  const base = setOf(pinned, purse);
  const money = (purse.money ?? Number.POSITIVE_INFINITY) - base.price;
  const minutes = (purse.minutes ?? Number.POSITIVE_INFINITY) - base.minutes;
  if (money < 0 || minutes < 0)
    return { sets: [], short: { money: Math.max(0, -money), minutes: Math.max(0, -minutes) }, proven: true };
  const free = sorted.filter(
    (lot) => lot.pinned === null && lot.price <= money && lot.minutes <= minutes && setOf([lot], purse).surplus > 0,
  );
  const found = search(free, pinned, { money, minutes, held: purse.held }, { sets: wanted, most });
  return {
    sets: found.sets.map((taken) => setOf([...pinned, ...taken], purse)),
    short: null,
    proven: found.proven,
  };
}
