import { moneyAbout } from '../text/format.ts';
import { MoneyField, NumberField } from '../ui/field.tsx';
import { useActions } from './actions.ts';
import { PriceSuggestion } from './price-suggestion.tsx';
import type { BlockCase } from './use-case.ts';

/** The owner's own figures behind the limit. What is left empty comes from the catalogue and shows in grey what it is. */
export function PriceFields({ of }: { readonly of: BlockCase }) {
  const actions = useActions();
  const { block, assessment } = of;
  const { worth } = assessment;
  const estimate = (price: { amount: number; from: string }): string =>
    price.from === 'estimate' ? moneyAbout(price.amount, block.currency).replace(/[^\d.]/g, '') : '';
  return (
    <>
      <MoneyField
        label="Price asked"
        currency={block.currency}
        value={block.priceAsked}
        onChange={(priceAsked) => actions.setBlock(block, { priceAsked }, 'the price asked')}
      />
      <MoneyField
        label="New, made to order"
        hint="Empty: the catalogue’s trade estimate, in grey."
        placeholder={estimate(worth.newPrice)}
        currency={block.currency}
        value={block.newPrice}
        onChange={(newPrice) => actions.setBlock(block, { newPrice }, 'the new price')}
      />
      <MoneyField
        label="An equal used block"
        hint="What one in the same state would cost you elsewhere; never pay more."
        placeholder={estimate(worth.equalUsed)}
        currency={block.currency}
        value={block.equalUsedPrice}
        onChange={(equalUsedPrice) => actions.setBlock(block, { equalUsedPrice }, 'the used price')}
      />
      <PriceSuggestion of={of} />
      <MoneyField
        label="Worth if the work fails"
        hint="As a pattern, an ornament, for parts."
        placeholder={estimate(worth.fallback)}
        currency={block.currency}
        value={block.fallbackPrice}
        onChange={(fallbackPrice) => actions.setBlock(block, { fallbackPrice }, 'the fallback')}
      />
      <NumberField
        label="Hats a year on it"
        hint="With margin and share: what it earns in use. An odd shape is bounded by that."
        unit="hats"
        step={1}
        max={500}
        value={block.hatsPerYear}
        onChange={(hatsPerYear) => actions.setBlock(block, { hatsPerYear }, 'hats a year')}
      />
      <MoneyField
        label="Margin on each hat"
        currency={block.currency}
        value={block.marginPerHat}
        onChange={(marginPerHat) => actions.setBlock(block, { marginPerHat }, 'the margin')}
      />
      <NumberField
        label="Share of it due to the block"
        unit="%"
        step={5}
        max={100}
        chips={[20, 35, 50]}
        value={block.blockShare === null ? null : Math.round(block.blockShare * 100)}
        onChange={(share) => actions.setBlock(block, { blockShare: share === null ? null : share / 100 }, 'the share')}
      />
    </>
  );
}
