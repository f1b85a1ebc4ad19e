import type { LotRow } from '../../core/lots.ts';
import type { LotOrder } from '../../core/lots-order.ts';
import type { Sale } from '../../core/records.ts';
import { lotName } from '../../parts/lot-name.ts';
import { days, hours } from '../../text/format.ts';
import { lookWords } from '../../text/lots.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { haggleHref, Limit, lotHref, Price, Surplus } from './lot-figures.tsx';
import { type Fills, LotMarks, LotVerdict } from './lot-marks.tsx';
import css from './table.module.css';

/** Which way a column sorts: best first. */
const ascending: readonly LotOrder[] = ['price', 'hours', 'days', 'verdict', 'number'];

/** The lots as a table: one row a lot, headers that sort. */
export function LotGrid({
  sale,
  rows,
  fills,
  order,
  onOrder,
}: {
  readonly sale: Sale;
  readonly rows: readonly LotRow[];
  readonly fills: Fills;
  readonly order: LotOrder;
  readonly onOrder: (order: LotOrder) => void;
}) {
  const heads: readonly { readonly by: LotOrder; readonly label: string; readonly figures?: true }[] = [
    { by: 'number', label: 'Lot' },
    { by: 'verdict', label: 'Verdict' },
    { by: 'limit', label: sale.terms.way === 'auction' ? 'Bid up to' : 'Pay up to', figures: true },
    { by: 'price', label: 'Price', figures: true },
    { by: 'surplus', label: 'Surplus', figures: true },
    { by: 'hours', label: 'Hours', figures: true },
    { by: 'days', label: 'Days', figures: true },
    { by: 'look', label: 'What to know' },
  ];
  return (
    <table class={css.table}>
      <caption class="visually-hidden">Lots of the sale</caption>
      <thead>
        <tr>
          {heads.map(({ by, label, figures }) => (
            <th
              key={by}
              scope="col"
              data-figures={figures}
              aria-sort={order === by ? (ascending.includes(by) ? 'ascending' : 'descending') : undefined}
            >
              <button type="button" onClick={() => onOrder(by)}>
                {label}
                <span aria-hidden="true">{order === by ? (ascending.includes(by) ? ' ▲' : ' ▼') : ''}</span>
              </button>
            </th>
          ))}
          <td />
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Line key={row.id} row={row} sale={sale} fills={fills} />
        ))}
      </tbody>
    </table>
  );
}

function Line({ row, sale, fills }: { readonly row: LotRow; readonly sale: Sale; readonly fills: Fills }) {
  const { catalogue } = useApp();
  const name = lotName(row.lot, catalogue);
  const { currency } = sale;
  return (
    <tr>
      <th scope="row">
        <a href={lotHref(row)}>{name}</a>
      </th>
      <td>
        <LotVerdict row={row} />
      </td>
      <td data-figures>
        <Limit row={row} currency={currency} />
      </td>
      <td data-figures>
        <Price row={row} currency={currency} />
      </td>
      <td data-figures>
        <Surplus row={row} currency={currency} />
      </td>
      <td data-figures class="figures">
        {hours(row.hours)}
      </td>
      <td data-figures class="figures">
        {days(row.days)}
      </td>
      <td>
        <LotMarks row={row} sale={sale} fills={fills} />
        {row.looked !== 'all' && <small>{lookWords(row, currency, catalogue)}</small>}
      </td>
      <td>
        <Button href={haggleHref(row)} label={`Haggle: ${name}`}>
          Haggle
        </Button>
      </td>
    </tr>
  );
}
