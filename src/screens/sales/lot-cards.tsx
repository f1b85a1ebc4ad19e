import type { LotRow } from '../../core/lots.ts';
import type { Sale } from '../../core/records.ts';
import { lotName } from '../../parts/lot-name.ts';
import { lookWords, workWords } from '../../text/lots.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { haggleHref, Limit, lotHref, Price, Surplus } from './lot-figures.tsx';
import { type Fills, LotMarks, LotVerdict } from './lot-marks.tsx';
import css from './table.module.css';

/** The lots one under another: name and verdict, the three figures that decide, work, what to look at; haggle beside. */
export function LotCards({
  sale,
  rows,
  fills,
}: {
  readonly sale: Sale;
  readonly rows: readonly LotRow[];
  readonly fills: Fills;
}) {
  return (
    <ul class={css.cards}>
      {rows.map((row) => (
        <Card key={row.id} row={row} sale={sale} fills={fills} />
      ))}
    </ul>
  );
}

function Card({ row, sale, fills }: { readonly row: LotRow; readonly sale: Sale; readonly fills: Fills }) {
  const { catalogue } = useApp();
  const name = lotName(row.lot, catalogue);
  return (
    <li>
      <a class={css.name} href={lotHref(row)}>
        <b>{name}</b>
        <LotVerdict row={row} />
      </a>
      <dl class={css.figures}>
        <div>
          <dt>{sale.terms.way === 'auction' ? 'Bid up to' : 'Pay up to'}</dt>
          <dd>
            <Limit row={row} currency={sale.currency} />
          </dd>
        </div>
        <div>
          <dt>Price</dt>
          <dd>
            <Price row={row} currency={sale.currency} />
          </dd>
        </div>
        <div>
          <dt>Surplus</dt>
          <dd>
            <Surplus row={row} currency={sale.currency} />
          </dd>
        </div>
      </dl>
      <LotMarks row={row} sale={sale} fills={fills} />
      <div class={css.last}>
        <span>
          {workWords(row)}
          {row.looked !== 'all' && <>. {lookWords(row, sale.currency, catalogue)}</>}
        </span>
        <Button href={haggleHref(row)} label={`Haggle: ${name}`}>
          Haggle
        </Button>
      </div>
    </li>
  );
}
