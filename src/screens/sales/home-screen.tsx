import { useState } from 'preact/hooks';
import { broughtHome } from '../../core/going-home.ts';
import { NOT_BOUGHT, type NotBought } from '../../core/lot-price.ts';
import type { LotRow } from '../../core/lots.ts';
import { orderedRows } from '../../core/lots-order.ts';
import type { Sale } from '../../core/records.ts';
import { allInAt } from '../../core/worth.ts';
import { lotName } from '../../parts/lot-name.ts';
import { type Decided, useSaleActions } from '../../parts/sale-actions.ts';
import { useLots } from '../../parts/use-lots.ts';
import { dayHere } from '../../text/days.ts';
import { money } from '../../text/format.ts';
import { NOT_BOUGHT_WORDS } from '../../text/lots.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { MoneyField, SelectField } from '../../ui/field.tsx';
import { Page } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import css from './home.module.css';
import { NoSale } from './no-sale.tsx';

export default function HomeScreen({ params }: { params: Params }) {
  const { store } = useApp();
  const sale = store.get('sale', params.id ?? '');
  return sale ? <Home sale={sale} /> : <NoSale />;
}

type Fate = 'bought' | NotBought | 'open';

const fates: readonly { readonly id: Fate; readonly label: string }[] = [
  { id: 'bought', label: 'Bought' },
  ...NOT_BOUGHT.map((id) => ({ id, label: `Not bought: ${NOT_BOUGHT_WORDS[id].toLocaleLowerCase('en-GB')}` })),
  { id: 'open', label: 'Still deciding: stays on the table' },
];

/** What is likely, to be put right by hand: bought if agreed, else the plainest reason the figures give. */
function likely({ standing, surplus, blocks, limit }: LotRow): Fate {
  if (standing === 'agreed' || standing === 'paid') return 'bought';
  if (blocks.length > 0 && blocks.every(({ refused, verdict }) => refused || verdict === 'leave')) return 'tooRisky';
  return (surplus !== null && surplus < 0) || limit === null ? 'tooDear' : 'notNeeded';
}

/** Still on the table: at least one block nobody has put anywhere yet. */
const isOnTable = ({ lot }: LotRow): boolean => lot.blocks.some(({ block }) => block.place === 'lookingAt');

/** The end of the day: what became of every lot. One tap puts all of it where it belongs, undo brings it back. */
function Home({ sale }: { readonly sale: Sale }) {
  const { now } = useApp();
  const actions = useSaleActions();
  const { rows } = useLots(sale);
  const [said, setSaid] = useState<Readonly<Record<string, { readonly fate?: Fate; readonly price?: number | null }>>>(
    {},
  );
  const left = orderedRows(rows.filter(isOnTable), 'number', 'all');
  const table = to('/sale/:id', { id: sale.id });
  const decided = left.map((row) => ({
    row,
    fate: said[row.id]?.fate ?? likely(row),
    price: said[row.id]?.price === undefined ? (row.price?.amount ?? null) : (said[row.id]?.price ?? null),
  }));
  const bought = decided.filter(({ fate }) => fate === 'bought');
  const unpriced = bought.filter(({ price }) => price === null || price < 0);
  const spent = bought.reduce(
    (sum, { price }) => sum + (price === null ? 0 : allInAt(Math.max(0, price), sale.terms)),
    0,
  );
  const say = (id: string, more: { fate?: Fate; price?: number | null }): void =>
    setSaid({ ...said, [id]: { ...said[id], ...more } });
  const home = (): void => {
    actions.goHome(
      sale,
      decided.filter((one): one is Decided => one.fate !== 'open'),
      dayHere(now()),
    );
    go('#/');
  };
  return (
    <Page
      title="Go home"
      under={sale.title.trim() || 'Unnamed sale'}
      back={{ href: table, label: 'The lots' }}
      dock={
        <Button look="main" wide onPress={home} disabled={left.length === 0 || unpriced.length > 0}>
          {bought.length === 0 ? 'Go home with nothing' : `Go home with ${bought.length}`}
        </Button>
      }
    >
      {left.length === 0 ? (
        <p>Everything looked at here has been put where it belongs.</p>
      ) : (
        <>
          <p>
            What you bought goes to the shelf with its price and how it came to you; the rest is let go with its reason,
            and still teaches what such blocks cost and what is usually wrong with them.
          </p>
          <p role="status" class="figures">
            {bought.length === 0
              ? 'Nothing bought so far.'
              : `Bought: ${bought.length}, ${money(spent, sale.currency)} in all.`}
            {unpriced.length > 0 && ' Say what you paid for each.'}
          </p>
          {decided.map((one) => (
            <OneLot key={one.row.id} {...one} sale={sale} onSay={(more) => say(one.row.id, more)} />
          ))}
        </>
      )}
    </Page>
  );
}

function OneLot({
  row,
  fate,
  price,
  sale,
  onSay,
}: {
  readonly row: LotRow;
  readonly fate: Fate;
  readonly price: number | null;
  readonly sale: Sale;
  readonly onSay: (more: { fate?: Fate; price?: number | null }) => void;
}) {
  const { catalogue } = useApp();
  const name = lotName(row.lot, catalogue);
  return (
    <div class={css.lot}>
      <SelectField label={name} value={fate} options={fates} onChange={(next) => onSay({ fate: next })} />
      {fate === 'bought' && (
        <>
          <MoneyField
            label={`${sale.terms.way === 'auction' ? 'Hammer price' : 'Paid'}, ${name}`}
            currency={sale.currency}
            value={price}
            onChange={(amount) => onSay({ price: amount })}
          />
          <Where row={row} price={price ?? 0} sale={sale} />
        </>
      )}
    </div>
  );
}

/** Where its blocks will go, and what comes on top of the price. */
function Where({ row, price, sale }: { readonly row: LotRow; readonly price: number; readonly sale: Sale }) {
  const brought = broughtHome(row, Math.max(0, price), sale.terms);
  const fees = brought.reduce((sum, one) => sum + one.fees, 0);
  const apart = brought.filter(({ place }) => place === 'quarantine').length;
  const gone = brought.filter(({ place }) => place === 'letGo').length;
  return (
    <ul class={css.where}>
      {fees > 0 && <li class="figures">{money(fees, sale.currency)} on top at these terms.</li>}
      {apart > 0 && (
        <li data-warn>
          {brought.length === 1 ? 'Goes' : `${apart} of ${brought.length} go`} into quarantine: bag before it leaves the
          table.
        </li>
      )}
      {gone > 0 && <li>{gone} not wanted: let go at once.</li>}
    </ul>
  );
}
