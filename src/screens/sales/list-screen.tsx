import type { Sale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Page } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import css from './sales.module.css';

export default function SalesScreen() {
  const { store } = useApp();
  const actions = useActions();
  const sales = [...store.all('sale').value].reverse();
  const start = (): void => go(to('/sale/:id/record', { id: actions.startSale() }));
  return (
    <Page
      title="Sales"
      dock={
        <Button look="main" wide onPress={start}>
          New sale
        </Button>
      }
    >
      {sales.length === 0 ? (
        <p class={css.lead}>
          No sale yet. Write one down and every block looked at there carries its seller, its place and its fees.
        </p>
      ) : (
        <ul class={css.list}>
          {sales.map((sale) => (
            <SaleRow key={sale.id} sale={sale} />
          ))}
        </ul>
      )}
      <p class={css.links}>
        <Button href={to('/sales/prices')}>Your price list</Button>
        <Button href={to('/sales/gaps')}>What the shelf lacks</Button>
      </p>
    </Page>
  );
}

function SaleRow({ sale }: { readonly sale: Sale }) {
  const { store } = useApp();
  const count = store.blocksOf(sale.id).length;
  const where = [sale.when.words.trim(), sale.place.trim()].filter(Boolean).join(', ');
  return (
    <li>
      <a href={to('/sale/:id', { id: sale.id })}>
        <b>{sale.title.trim() || 'Unnamed sale'}</b>
        <span>
          {where && `${where} · `}
          {count === 0 ? 'no blocks yet' : count === 1 ? '1 block' : `${count} blocks`}
          {sale.example && ' · example'}
        </span>
      </a>
    </li>
  );
}
