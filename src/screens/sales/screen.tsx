import type { Sale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { BlockRow } from '../../parts/block-row.tsx';
import { DiligenceFields } from '../../parts/diligence-fields.tsx';
import { TermsFields } from '../../parts/terms-fields.tsx';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import { AboutFields } from './about-fields.tsx';
import { BudgetFields } from './budget-fields.tsx';
import { RemoveSale } from './remove-sale.tsx';
import css from './sales.module.css';
import { SellerFields } from './seller-fields.tsx';

export default function SaleScreen({ params }: { params: Params }) {
  const { store } = useApp();
  const sale = store.get('sale', params.id ?? '');
  return sale ? <SalePage sale={sale} /> : <NoSale />;
}

function SalePage({ sale }: { readonly sale: Sale }) {
  const actions = useActions();
  const look = (): void => {
    const id = actions.startBlock({ saleId: sale.id, currency: sale.currency });
    go(to('/block/:id/look', { id }));
  };
  return (
    <Page
      title={sale.title.trim() || 'Unnamed sale'}
      under={[sale.when.words.trim(), sale.place.trim()].filter(Boolean).join(', ')}
      back={{ href: to('/sales'), label: 'Sales' }}
      dock={
        <Button look="main" wide onPress={look}>
          Look at a block here
        </Button>
      }
      aside={
        <>
          <Section title="Terms">
            <TermsFields
              terms={sale.terms}
              currency={sale.currency}
              onChange={(terms) => actions.setSale(sale, { terms })}
            />
          </Section>
          <Section title="Before you pay">
            <DiligenceFields sale={sale} />
          </Section>
          <RemoveSale sale={sale} />
        </>
      }
    >
      <Lots sale={sale} />
      <Section title="About it">
        <AboutFields sale={sale} />
      </Section>
      <Section title="Seller">
        <SellerFields sale={sale} />
      </Section>
      <Section title="What you have to spend">
        <BudgetFields sale={sale} />
      </Section>
    </Page>
  );
}

/** The blocks looked at here, newest first as on the shelf, each with its verdict, limit and what is asked. */
function Lots({ sale }: { readonly sale: Sale }) {
  const { store } = useApp();
  const blocks = [...store.blocksOf(sale.id)].reverse();
  return (
    <Section title="Blocks here" aside={<span class="figures">{blocks.length}</span>}>
      {blocks.length === 0 ? (
        <p class={css.hint}>None looked at yet.</p>
      ) : (
        <ul>
          {blocks.map(({ id }) => (
            <BlockRow key={id} id={id} />
          ))}
        </ul>
      )}
    </Section>
  );
}

function NoSale() {
  return (
    <Page title="Not in this book" back={{ href: to('/sales'), label: 'Sales' }}>
      <p>This sale is not on this phone. It may have been removed; if that was just now, undo brings it back.</p>
    </Page>
  );
}
