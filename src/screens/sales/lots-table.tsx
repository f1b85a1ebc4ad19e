import { useState } from 'preact/hooks';
import type { LotRow } from '../../core/lots.ts';
import {
  countFitting,
  LOT_FILTERS,
  LOT_ORDERS,
  type LotFilter,
  type LotOrder,
  orderedRows,
} from '../../core/lots-order.ts';
import type { Sale } from '../../core/records.ts';
import { useShelfHeld } from '../../parts/use-shelf-held.ts';
import { SelectField } from '../../ui/field.tsx';
import { Section } from '../../ui/page.tsx';
import { useWide } from '../../ui/use-wide.ts';
import { LotCards } from './lot-cards.tsx';
import { LotGrid } from './lot-grid.tsx';
import css from './table.module.css';

const orderWords: Record<LotOrder, string> = {
  surplus: 'Most surplus',
  look: 'Most worth a look',
  price: 'Lowest price',
  limit: 'Highest limit',
  hours: 'Fewest hours',
  days: 'Fewest days',
  verdict: 'Best verdict',
  number: 'Lot number',
};

const filterWords: Record<LotFilter, string> = {
  all: 'All',
  open: 'Still open',
  within: 'Within the limit',
  notLooked: 'Not fully looked at',
  bought: 'Bought',
  notBought: 'Not bought',
};

/** The lots of a sale, ranked: cards on a phone, a table with headers that sort where there is room. */
export function LotsTable({
  sale,
  rows,
  reckoning,
}: {
  readonly sale: Sale;
  readonly rows: readonly LotRow[];
  readonly reckoning: number;
}) {
  const [order, setOrder] = useState<LotOrder>('surplus');
  const [filter, setFilter] = useState<LotFilter>('all');
  const wide = useWide();
  const { fills } = useShelfHeld(sale.example);
  const shown = orderedRows(rows, order, filter);
  return (
    <Section title="Lots" aside={<span class="figures">{rows.length}</span>}>
      <div class={css.controls}>
        {!wide && (
          <SelectField
            label="Sort by"
            value={order}
            options={LOT_ORDERS.map((id) => ({ id, label: orderWords[id] }))}
            onChange={setOrder}
          />
        )}
        <SelectField
          label="Show"
          value={filter}
          options={LOT_FILTERS.filter((id) => id === filter || countFitting(rows, id) > 0).map((id) => ({
            id,
            label: `${filterWords[id]} (${countFitting(rows, id)})`,
          }))}
          onChange={setFilter}
        />
      </div>
      <p class={css.reckoning} role="status">
        {reckoning > 0 ? `Reckoning ${reckoning === 1 ? 'one block' : `${reckoning} blocks`}…` : ''}
      </p>
      {shown.length === 0 && <p>No lot is like that now.</p>}
      {wide ? (
        <LotGrid sale={sale} rows={shown} fills={fills} order={order} onOrder={setOrder} />
      ) : (
        <LotCards sale={sale} rows={shown} fills={fills} />
      )}
    </Section>
  );
}
