import type { Sale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { useLots } from '../../parts/use-lots.ts';
import { useApp } from '../../ui/app.ts';
import { ActionRow, Button } from '../../ui/button.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import { AddLot } from './add-lot.tsx';
import { LotsTable } from './lots-table.tsx';
import { NoSale } from './no-sale.tsx';
import css from './sales.module.css';
import { Take } from './take.tsx';

export default function SaleScreen({ params }: { params: Params }) {
  const { store } = useApp();
  const sale = store.get('sale', params.id ?? '');
  return sale ? <SalePage sale={sale} /> : <NoSale />;
}

/** The table of lots while walking round, and what to take of it. What one writes down once is a page of its own. */
function SalePage({ sale }: { readonly sale: Sale }) {
  const actions = useActions();
  const { rows, reckoning } = useLots(sale);
  const look = (): void => {
    const id = actions.startBlock({ saleId: sale.id, currency: sale.currency });
    go(to('/block/:id/look', { id }));
  };
  const at = (path: string): string => to(`/sale/:id${path}`, { id: sale.id });
  return (
    <Page
      wide
      title={sale.title.trim() || 'Unnamed sale'}
      under={
        <>
          {[sale.when.words.trim(), sale.place.trim()].filter(Boolean).join(' · ') || 'Not described yet'} ·{' '}
          <a href={at('/record')}>Terms, seller, purse</a>
        </>
      }
      back={{ href: to('/sales'), label: 'Sales' }}
      dock={
        <ActionRow>
          <Button look="main" wide onPress={look}>
            Look at a block here
          </Button>
          <Button href={at('/home')}>Go home</Button>
        </ActionRow>
      }
    >
      {rows.length === 0 ? (
        <p class={css.lead}>
          No lot yet. Look at a block here, and it stands in this table with what it is worth at these terms.
        </p>
      ) : (
        <>
          <Take sale={sale} rows={rows} />
          <LotsTable sale={sale} rows={rows} reckoning={reckoning} />
        </>
      )}
      <Section title="Several at one price">
        <AddLot sale={sale} rows={rows} />
      </Section>
    </Page>
  );
}
