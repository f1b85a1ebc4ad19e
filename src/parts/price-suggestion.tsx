import { priceLineOf, suggestedPrice } from '../core/price-list.ts';
import { money } from '../text/format.ts';
import { Button } from '../ui/button.tsx';
import { useActions } from './actions.ts';
import css from './source-line.module.css';
import type { BlockCase } from './use-case.ts';
import { usePriceLines } from './use-price-lines.ts';

/** What one's own list says an equal used block costs: with its count and range, and taken over only by a tap. */
export function PriceSuggestion({ of }: { readonly of: BlockCase }) {
  const actions = useActions();
  const lines = usePriceLines(of.block.blockType);
  const { block, assessment, offers } = of;
  const found = suggestedPrice(priceLineOf(block, assessment.verdict, offers), lines);
  if (!found) return null;
  const say = (amount: number): string => money(amount, block.currency);
  const range = found.low === found.high ? say(found.low) : `${say(found.low)} to ${say(found.high)}`;
  return (
    <p class={css.source}>
      Your own list: {found.count} like it{found.sameMaterial ? ', of the same material' : ''},{' '}
      {found.from === 'paid' ? 'paid' : 'asked'} {range}, the middle {say(found.median)}.{' '}
      {block.equalUsedPrice !== found.median && (
        <Button
          look="quiet"
          onPress={() => actions.setBlock(block, { equalUsedPrice: found.median }, 'the used price')}
        >
          Use {say(found.median)} for an equal used block
        </Button>
      )}
    </p>
  );
}
