import type { Verdict } from './catalogue.ts';
import type { HatBlock, Offer } from './records.ts';

/** What was asked and paid for one block, as it teaches. Minor units; paid is all in. */
export interface PriceLine {
  readonly blockId: string;
  readonly blockType: string | null;
  /** Main material; null when not said. */
  readonly material: string | null;
  readonly verdict: Verdict;
  readonly currency: string;
  readonly asked: number | null;
  readonly paid: number | null;
}

/** Prices of several blocks alike. Minor units. */
export interface PriceRange {
  readonly count: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** What one's own list says of blocks of a type, material and verdict. */
export interface PriceEntry {
  readonly blockType: string;
  readonly material: string | null;
  readonly verdict: Verdict;
  readonly currency: string;
  readonly asked: PriceRange | null;
  readonly paid: PriceRange | null;
}

/** What was asked last and what was paid, fees included. */
export function priceLineOf(
  block: Pick<HatBlock, 'id' | 'blockType' | 'materials' | 'currency' | 'priceAsked'>,
  verdict: Verdict,
  offers: readonly Pick<Offer, 'what' | 'amount' | 'currency' | 'fees'>[],
): PriceLine {
  const own = offers.filter(({ currency }) => currency === block.currency);
  const last = own.filter(({ what }) => what === 'paid').at(-1);
  const paid = last ? last.amount + (last.fees ?? 0) : 0;
  return {
    blockId: block.id,
    blockType: block.blockType,
    material: block.materials[0] ?? null,
    verdict,
    currency: block.currency,
    asked: block.priceAsked ?? own.filter(({ what }) => what === 'asked').at(-1)?.amount ?? null,
    // A gift is no price.
    paid: paid > 0 ? paid : null,
  };
}

/** Count, least, middle and most; null of none. The middle of an even number is the mean of the two, to the minor unit. */
export function rangeOf(prices: readonly (number | null)[]): PriceRange | null {
  const sorted = prices.filter((price): price is number => price !== null).sort((a, b) => a - b);
  const count = sorted.length;
  const [low, high] = [sorted[0], sorted.at(-1)];
  if (low === undefined || high === undefined) return null;
  const [a, b] = [sorted[(count - 1) >> 1] ?? low, sorted[count >> 1] ?? high];
  return { count, low, median: Math.round((a + b) / 2), high };
}

/** The list by type, material, verdict and currency; blocks of unknown type teach nothing. Sorted by type and material. */
export function priceListOf(lines: readonly PriceLine[]): readonly PriceEntry[] {
  const groups = new Map<string, PriceLine[]>();
  for (const line of lines) {
    if (line.blockType === null || (line.asked === null && line.paid === null)) continue;
    const key = [line.blockType, line.material ?? '', line.verdict, line.currency].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, group]) => {
      const [first] = group;
      if (!first || first.blockType === null) return [];
      const { blockType, material, verdict, currency } = first;
      const asked = rangeOf(group.map((line) => line.asked));
      const paid = rangeOf(group.map((line) => line.paid));
      return [{ blockType, material, verdict, currency, asked, paid }];
    });
}

/** What the list suggests an equal used block costs, and on what it rests. Only ever a suggestion. */
export interface PriceSuggestion extends PriceRange {
  readonly from: 'paid' | 'asked';
  /** Whether the blocks are of the same material as well. */
  readonly sameMaterial: boolean;
}

/** One price is an anecdote. Own choice. */
const LEAST_PRICES = 2;

/**
 * Price of an equal used block by one's own list: same type, verdict and currency, the block itself left out. What was paid
 * before what was asked, the same material before any. Null under two prices.
 */
export function suggestedPrice(
  of: Pick<PriceLine, 'blockId' | 'blockType' | 'material' | 'verdict' | 'currency'>,
  lines: readonly PriceLine[],
): PriceSuggestion | null {
  const alike = lines.filter(
    (line) =>
      line.blockId !== of.blockId &&
      line.blockType !== null &&
      line.blockType === of.blockType &&
      line.verdict === of.verdict &&
      line.currency === of.currency,
  );
  const ofMaterial = alike.filter(({ material }) => material !== null && material === of.material);
  for (const [some, sameMaterial] of [
    [ofMaterial, true],
    [alike, false],
  ] as const) {
    for (const from of ['paid', 'asked'] as const) {
      const range = rangeOf(some.map((line) => line[from]));
      if (range && range.count >= LEAST_PRICES) return { ...range, from, sameMaterial };
    }
  }
  return null;
}
