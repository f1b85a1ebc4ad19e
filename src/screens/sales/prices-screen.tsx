import { entry } from '../../core/catalogue.ts';
import { type PriceEntry, type PriceRange, priceListOf } from '../../core/price-list.ts';
import { usePriceLines } from '../../parts/use-price-lines.ts';
import { VerdictMark } from '../../parts/verdict-mark.tsx';
import { money } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { Page } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import css from './sales.module.css';

/** What blocks were asked and paid for, as the owner met them: bought and not bought alike. */
export default function PricesScreen() {
  const list = priceListOf(usePriceLines());
  return (
    <Page title="Your price list" back={{ href: to('/sales'), label: 'Sales' }}>
      <p class={css.hint}>
        From your own sales, bought or not; paid is all in. On a block’s page two prices or more become a suggestion for
        an equal used block, never more than that.
      </p>
      {list.length === 0 ? (
        <p class={css.lead}>Nothing yet. Every price you write down at a sale teaches this list.</p>
      ) : (
        <ul class={css.list}>
          {list.map((one) => (
            <Entry key={[one.blockType, one.material, one.verdict, one.currency].join()} of={one} />
          ))}
        </ul>
      )}
    </Page>
  );
}

const rangeWords = ({ count, low, median, high }: PriceRange, currency: string): string =>
  count === 1
    ? `${money(low, currency)}, once`
    : `${money(low, currency)} to ${money(high, currency)}, the middle ${money(median, currency)}, ${count} times`;

function Entry({ of }: { readonly of: PriceEntry }) {
  const { catalogue } = useApp();
  const { blockType, material, verdict, currency, asked, paid } = of;
  const type = entry(catalogue.types, blockType)?.term ?? blockType;
  const wood = material === null ? '' : `, ${entry(catalogue.materials, material)?.term ?? material}`;
  return (
    <li class={css.entry}>
      <b>
        {type}
        {wood}
      </b>
      <VerdictMark verdict={verdict} />
      {asked && <span class="figures">Asked {rangeWords(asked, currency)}</span>}
      {paid && <span class="figures">Paid {rangeWords(paid, currency)}</span>}
    </li>
  );
}
