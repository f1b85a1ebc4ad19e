import { useState } from 'preact/hooks';
import { figuresFor, nextOffer } from '../../core/haggle.ts';
import { carrierOf } from '../../core/lot-price.ts';
import type { LotRow } from '../../core/lots.ts';
import type { Sale } from '../../core/records.ts';
import { LotFigureFields } from '../../parts/lot-figure-fields.tsx';
import { lotName } from '../../parts/lot-name.ts';
import { OfferList } from '../../parts/offer-list.tsx';
import { useLotRow, useSaleOf } from '../../parts/use-lot-row.ts';
import { minorDigits } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { Evidence } from './evidence.tsx';
import { BigFigures } from './figures.tsx';
import css from './haggle.module.css';
import { BidLadder } from './ladder.tsx';
import { SayIt } from './say-it.tsx';

const HAGGLING =
  'Learn the price of the whole group first, name one figure, show the fault, pay at once. Common practice.';

export default function HaggleScreen({ params }: { params: Params }) {
  const id = params.id ?? '';
  const sale = useSaleOf(id);
  return sale ? <AtSale sale={sale} id={id} /> : <NotForSale />;
}

function AtSale({ sale, id }: { readonly sale: Sale; readonly id: string }) {
  const row = useLotRow(sale, id);
  return row ? <Haggle sale={sale} row={row} /> : <NotForSale />;
}

/** Figures large and quick to cover, the next thing to say at the thumb, and what was said with its hour. */
function Haggle({ sale, row }: { readonly sale: Sale; readonly row: LotRow }) {
  const { catalogue } = useApp();
  const [covered, setCovered] = useState(false);
  const carrier = carrierOf(row.lot);
  const { offers, job } = row.lot;
  const name = lotName(row.lot, catalogue);
  const unit = 10 ** minorDigits(sale.currency);
  const asked = carrier?.priceAsked ?? null;
  const figures = figuresFor(asked, row.limit ?? null, unit);
  const isAuction = sale.terms.way === 'auction';
  const table = to('/sale/:id', { id: sale.id });
  if (!carrier) return <NotForSale />;
  return (
    <Page
      quiet
      title={name}
      under={
        <>
          {sale.title.trim() || 'Unnamed sale'} ·{' '}
          <a href={to(job ? '/lot/:id' : '/block/:id', { id: row.id })}>{job ? 'The job lot' : 'The block'}</a>
        </>
      }
      back={{ href: table, label: 'The lots' }}
      dock={
        <Button look="main" wide pressed={covered} onPress={() => setCovered(!covered)}>
          {covered ? 'Show the figures' : 'Cover the figures'}
        </Button>
      }
      aside={
        <>
          <Section title="What was said">
            <OfferList offers={offers} none="Nothing yet." />
          </Section>
          <Section title="Receipt and ticket">
            <Evidence row={row} />
          </Section>
          <Section title="What the ticket says">
            <LotFigureFields sale={sale} carrier={carrier} />
          </Section>
        </>
      }
    >
      <BigFigures row={row} sale={sale} figures={figures} asked={asked} covered={covered} />
      {isAuction && <BidLadder row={row} sale={sale} covered={covered} carrier={carrier} />}
      <Section title={isAuction ? 'When the hammer falls' : 'Say it'}>
        <SayIt
          carrier={carrier}
          isAuction={isAuction}
          asked={asked}
          suggested={covered ? null : nextOffer(offers, asked, figures, unit)}
          key={offers.length}
        />
      </Section>
      <p class={css.hint}>
        {isAuction ? 'Decide the stop before the lot comes up, and keep to it. Common practice.' : HAGGLING}
      </p>
    </Page>
  );
}

function NotForSale() {
  return (
    <Page title="No sale to haggle at" back={{ href: '#/', label: 'Shelf' }}>
      <p>
        This block or lot belongs to no sale. Name the sale on the block’s first questions, and its terms come with it.
      </p>
    </Page>
  );
}
