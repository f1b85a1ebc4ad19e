import type { LotRow } from '../../core/lots.ts';
import { money, moneyAbout } from '../../text/format.ts';
import { limitFigure, PRICE_WORDS } from '../../text/lots.ts';
import { to } from '../../ui/route.ts';

/** Where a lot's own page is: the block's, or the job lot's. */
export const lotHref = ({ id, lot }: LotRow): string => (lot.job ? to('/lot/:id', { id }) : to('/block/:id', { id }));

export const haggleHref = ({ id }: Pick<LotRow, 'id'>): string => to('/haggle/:id', { id });

export const Limit = ({ row, currency }: { readonly row: LotRow; readonly currency: string }) => (
  <span class="figures">{limitFigure(row, currency)}</span>
);

/** Price with what says it, where that is not simply asked; dearer in the end only where the terms add something. */
export function Price({ row, currency }: { readonly row: LotRow; readonly currency: string }) {
  const { price, allIn } = row;
  if (!price) return <span>no price yet</span>;
  return (
    <span class="figures">
      {money(price.amount, currency)}
      {price.from !== 'asked' && <small> {PRICE_WORDS[price.from]}</small>}
      {allIn !== null && allIn !== price.amount && <small> {money(allIn, currency)} in all</small>}
    </span>
  );
}

/** What is left of the worth after paying. A sign, a word to a screen reader, and a colour. */
export function Surplus({ row, currency }: { readonly row: LotRow; readonly currency: string }) {
  const { surplus } = row;
  if (surplus === null) return <span class="figures">–</span>;
  return (
    <span class="figures" data-say={surplus >= 0 ? 'within' : 'over'}>
      {surplus > 0 ? '+' : ''}
      {moneyAbout(surplus, currency)}
    </span>
  );
}
