import { type PriceLine, priceLineOf } from '../core/price-list.ts';
import { useApp } from '../ui/app.ts';
import { useVerdicts } from './use-verdicts.ts';

/** What was asked and paid for every block ever looked at, bought or not. The example teaches nothing. */
export function usePriceLines(): readonly PriceLine[] {
  const { store } = useApp();
  const verdictOf = useVerdicts();
  return store.blocks.value
    .filter(({ example }) => !example)
    .flatMap((block) => {
      const offers = store.offersOf(block.id);
      // The verdict costs a whole assessment: only where there is a price to learn.
      if (block.priceAsked === null && offers.length === 0) return [];
      const verdict = verdictOf(block.id);
      return verdict ? [priceLineOf(block, verdict, offers)] : [];
    });
}
