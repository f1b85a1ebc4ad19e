import { assess } from '../core/assess.ts';
import { plainTerms } from '../core/blank.ts';
import { type PriceLine, priceLineOf } from '../core/price-list.ts';
import type { HatBlock } from '../core/records.ts';
import type { Store } from '../store/store.ts';
import { useApp } from '../ui/app.ts';

type Key = readonly unknown[];

/** Lines kept from one drawing to the next: a verdict costs a whole assessment, and nearly all blocks stay as they were. */
const kept = new WeakMap<Store, Map<string, { readonly key: Key; readonly line: PriceLine }>>();

function linesOf(store: Store) {
  const found = kept.get(store) ?? new Map();
  kept.set(store, found);
  return found as Map<string, { readonly key: Key; readonly line: PriceLine }>;
}

/**
 * What was asked and paid for every block ever looked at, bought or not; of one type, where only that is wanted. The
 * example teaches nothing.
 */
export function usePriceLines(blockType?: string | null): readonly PriceLine[] {
  const { store, catalogue } = useApp();
  const known = linesOf(store);
  const settings = store.settings.value;
  const lineOf = (block: HatBlock): PriceLine[] => {
    const survey = store.surveyOf(block.id);
    const offers = store.offersOf(block.id);
    if (!survey || (block.priceAsked === null && offers.length === 0)) return [];
    const findings = store.findingsOf(block.id);
    const key = [block, survey, findings, offers];
    const before = known.get(block.id);
    if (before && key.every((part, n) => part === before.key[n])) return [before.line];
    // Neither terms nor pace nor rates change a verdict.
    const { verdict } = assess({ block, survey, findings, terms: plainTerms, settings, pace: {} }, catalogue);
    const line = priceLineOf(block, verdict, offers);
    known.set(block.id, { key, line });
    return [line];
  };
  return store.blocks.value
    .filter((block) => !block.example && (blockType === undefined || block.blockType === blockType))
    .flatMap(lineOf);
}
