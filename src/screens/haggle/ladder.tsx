import { ladderOf } from '../../core/haggle.ts';
import type { LotRow } from '../../core/lots.ts';
import type { HatBlock, JobLot, Sale } from '../../core/records.ts';
import { useSaleActions } from '../../parts/sale-actions.ts';
import { minorDigits, money } from '../../text/format.ts';
import { Button } from '../../ui/button.tsx';
import { MoneyField } from '../../ui/field.tsx';
import { Section } from '../../ui/page.tsx';
import css from './haggle.module.css';

/** Without printed steps nobody calls pence: the last bid is the stop as it is shown. */
function sayable(limit: number | null, { terms, currency }: Sale): number | null {
  if (limit === null || terms.bidSteps.length > 0) return limit;
  const unit = 10 ** minorDigits(currency);
  return Math.floor(limit / unit) * unit;
}

/** Bids still to come, each with what it costs in all; the last is the stop. One tap: that is the bid now. */
export function BidLadder({
  row,
  sale,
  carrier,
  covered,
}: {
  readonly row: LotRow;
  readonly sale: Sale;
  readonly carrier: HatBlock | JobLot;
  readonly covered: boolean;
}) {
  const actions = useSaleActions();
  const standing = carrier.bidNow ?? null;
  const { rungs, stop, hidden } = ladderOf(standing, sayable(row.limit ?? null, sale), sale.terms);
  const say = (amount: number): string => money(amount, sale.currency);
  const set = (bidNow: number | null): void => actions.setFigures(carrier, { bidNow }, 'the bid');
  return (
    <Section title="Bids">
      <MoneyField
        key={standing ?? 'none'}
        label="Bid that stands"
        hint="Somebody else’s. Tap a rung below when it is called."
        currency={sale.currency}
        value={standing}
        onChange={set}
      />
      {covered ? null : rungs.length === 0 ? (
        <p role="status">
          {row.limit === undefined ? 'Reckoning the limit…' : 'The next bid is over your limit: let it go.'}
        </p>
      ) : (
        <ol class={css.ladder} aria-label="Bids up to your limit, the next first">
          {rungs.map(({ bid, allIn }) => (
            <li key={bid} data-stop={bid === stop?.bid || undefined}>
              <Button onPress={() => set(bid)} label={`${say(bid)} is bid`}>
                {say(bid)}
              </Button>
              <span class="figures">
                {say(allIn)} in all{bid === stop?.bid && ', your last bid'}
              </span>
            </li>
          ))}
          {hidden > 0 && stop && (
            <li data-stop>
              <span>
                {hidden > 1 && `${hidden - 1} more, then `}
                <b class="figures">{say(stop.bid)}</b>: {say(stop.allIn)} in all, your last bid
              </span>
            </li>
          )}
        </ol>
      )}
    </Section>
  );
}
