import type { Sale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { DiligenceFields } from '../../parts/diligence-fields.tsx';
import { TermsFields } from '../../parts/terms-fields.tsx';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { AboutFields } from './about-fields.tsx';
import { BudgetFields } from './budget-fields.tsx';
import { NoSale } from './no-sale.tsx';
import { RemoveSale } from './remove-sale.tsx';
import { SellerFields } from './seller-fields.tsx';

export default function RecordScreen({ params }: { params: Params }) {
  const { store } = useApp();
  const sale = store.get('sale', params.id ?? '');
  return sale ? <RecordPage sale={sale} /> : <NoSale />;
}

/** What is written down of a sale once; every block looked at there carries it. */
function RecordPage({ sale }: { readonly sale: Sale }) {
  const actions = useActions();
  const table = to('/sale/:id', { id: sale.id });
  return (
    <Page
      title={sale.title.trim() || 'Unnamed sale'}
      under={[sale.when.words.trim(), sale.place.trim()].filter(Boolean).join(', ')}
      back={{ href: table, label: 'The lots' }}
      dock={
        <Button look="main" wide href={table}>
          To the lots
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
