import { useState } from 'preact/hooks';
import type { LotRow } from '../../core/lots.ts';
import { isWanted } from '../../core/lots.ts';
import type { JobLot, Sale } from '../../core/records.ts';
import { minor } from '../../core/units.ts';
import { allocateLot } from '../../core/value.ts';
import { useActions } from '../../parts/actions.ts';
import { blockName } from '../../parts/block-name.ts';
import { LotFigureFields } from '../../parts/lot-figure-fields.tsx';
import { jobName } from '../../parts/lot-name.ts';
import { OtherWords } from '../../parts/other-words.tsx';
import { useSaleActions } from '../../parts/sale-actions.ts';
import { useLotRow, useSaleOf } from '../../parts/use-lot-row.ts';
import { VerdictMark } from '../../parts/verdict-mark.tsx';
import { money, moneyAbout } from '../../text/format.ts';
import { limitFigure, workWords } from '../../text/lots.ts';
import { useApp } from '../../ui/app.ts';
import { ActionRow, Button } from '../../ui/button.tsx';
import { MoneyField, TextField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { type Params, to } from '../../ui/route.ts';
import { go } from '../../ui/router.tsx';
import css from './lot.module.css';
import { haggleHref } from './lot-figures.tsx';

export default function LotScreen({ params }: { params: Params }) {
  const { store } = useApp();
  const lot = store.get('lot', params.id ?? '');
  const sale = useSaleOf(params.id ?? '');
  return lot && sale ? <AtSale lot={lot} sale={sale} /> : <NoLot />;
}

function AtSale({ lot, sale }: { readonly lot: JobLot; readonly sale: Sale }) {
  const row = useLotRow(sale, lot.id);
  return row ? <LotPage lot={lot} sale={sale} row={row} /> : <NoLot />;
}

function LotPage({ lot, sale, row }: { readonly lot: JobLot; readonly sale: Sale; readonly row: LotRow }) {
  const actions = useSaleActions();
  const blockActions = useActions();
  const table = to('/sale/:id', { id: sale.id });
  const look = (): void => {
    const id = blockActions.startBlock({ saleId: sale.id, lotId: lot.id, currency: sale.currency });
    go(to('/block/:id/look', { id }));
  };
  return (
    <Page
      title={jobName(lot)}
      under="Several at one price"
      back={{ href: table, label: 'The lots' }}
      dock={
        <ActionRow>
          <Button look="main" wide onPress={look}>
            Look at a block of it
          </Button>
          <Button href={haggleHref(row)}>Haggle</Button>
        </ActionRow>
      }
      aside={
        <>
          <Section title="What the ticket says">
            <TextField label="Title" value={lot.title} onChange={(title) => actions.setLot(lot, { title })} />
            <OtherWords record={lot} path="title" />
            <LotFigureFields sale={sale} carrier={lot} />
            <MoneyField
              label="To be rid of the rest"
              hint="Tip, carriage, your time: taken off what the lot is worth."
              currency={lot.currency}
              value={lot.disposal}
              onChange={(disposal) =>
                actions.setLot(lot, { disposal: disposal === null ? null : Math.max(0, disposal) })
              }
            />
            <TextField label="Note" lines={3} value={lot.note} onChange={(note) => actions.setLot(lot, { note })} />
            <OtherWords record={lot} path="note" />
          </Section>
          <Section>
            <Button
              look="quiet"
              onPress={() => {
                actions.removeLot(lot);
                go(table, { replace: true });
              }}
            >
              Split it: each block a lot by itself
            </Button>
          </Section>
        </>
      }
    >
      <Section title="What it is worth">
        <dl class={css.sums}>
          <div>
            <dt>{sale.terms.way === 'auction' ? 'Bid up to' : 'Pay up to'}</dt>
            <dd class="figures">{limitFigure(row, sale.currency)}</dd>
          </div>
          <div>
            <dt>Price</dt>
            <dd class="figures">{row.price ? money(row.price.amount, sale.currency) : '–'}</dd>
          </div>
          <div>
            <dt>Work</dt>
            <dd class="figures">{workWords(row)}</dd>
          </div>
        </dl>
        <p class={css.hint}>
          The sum of what you want of it, nothing for the rest. The price is shared by worth, not by count.
        </p>
      </Section>
      <Section title="In it" aside={<span class="figures">{row.blocks.length}</span>}>
        <Contents row={row} sale={sale} />
      </Section>
      <Section title="Put in from the table">
        <PutIn lot={lot} sale={sale} />
      </Section>
    </Page>
  );
}

/** The blocks of the lot with worth and share of the price; what nobody wants says so. */
function Contents({ row, sale }: { readonly row: LotRow; readonly sale: Sale }) {
  const { catalogue } = useApp();
  const actions = useSaleActions();
  if (row.blocks.length === 0) return <p class={css.hint}>Nothing yet. Look at its blocks one by one.</p>;
  const shares = row.price
    ? allocateLot(
        minor(row.price.amount),
        row.blocks.map(({ worth }) => worth ?? 0),
      )
    : null;
  return (
    <ul class={css.contents}>
      {row.lot.blocks.map(({ block }, place) => {
        const figures = row.blocks[place];
        const share = shares?.[place];
        const name = blockName(block, catalogue);
        return (
          figures && (
            <li key={block.id}>
              <a href={to('/block/:id', { id: block.id })}>
                <b>{name}</b>
                <VerdictMark verdict={figures.verdict} />
                <small class="figures">
                  {figures.worth === undefined
                    ? 'not reckoned yet'
                    : isWanted(figures)
                      ? `worth ${moneyAbout(figures.worth, sale.currency)}`
                      : 'not wanted'}
                  {share !== undefined && share > 0 && `, ${money(share, sale.currency)} of the price`}
                </small>
              </a>
              <Button look="quiet" label={`Take out: ${name}`} onPress={() => actions.putInto(block, null)}>
                Take out
              </Button>
            </li>
          )
        );
      })}
    </ul>
  );
}

function PutIn({ lot, sale }: { readonly lot: JobLot; readonly sale: Sale }) {
  const { store, catalogue } = useApp();
  const actions = useSaleActions();
  const [open, setOpen] = useState(false);
  const loose = store.blocksOf(sale.id).filter(({ lotId, place }) => lotId == null && place === 'lookingAt');
  if (loose.length === 0) return <p class={css.hint}>No other block of this sale is a lot by itself.</p>;
  if (!open) return <Button onPress={() => setOpen(true)}>Choose blocks</Button>;
  return (
    <ul class={css.contents}>
      {loose.map((block) => {
        const name = blockName(block, catalogue);
        return (
          <li key={block.id}>
            <span>{name}</span>
            <Button label={`Put in: ${name}`} onPress={() => actions.putInto(block, lot.id)}>
              Put in
            </Button>
          </li>
        );
      })}
    </ul>
  );
}

function NoLot() {
  return (
    <Page title="No such lot" back={{ href: to('/sales'), label: 'Sales' }}>
      <p>This job lot is not on this phone, or its sale was removed. If that was just now, undo brings it back.</p>
    </Page>
  );
}
