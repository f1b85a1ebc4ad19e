import type { HatBlock, JobLot, Pin, Sale } from '../core/records.ts';
import { notBoughtWords } from '../text/lots.ts';
import { Button } from '../ui/button.tsx';
import { ChoiceField, MoneyField, TextField, TickField } from '../ui/field.tsx';
import { OtherWords } from './other-words.tsx';
import { useSaleActions } from './sale-actions.ts';

const pins: readonly { readonly id: Pin | 'sums'; readonly label: string }[] = [
  { id: 'sums', label: 'As the sums say' },
  { id: 'in', label: 'Take it' },
  { id: 'out', label: 'Leave it' },
];

/** Number, price, estimate, how it was seen, and whether it is taken or left by hand: of a block by itself or a job lot. */
export function LotFigureFields({ sale, carrier }: { readonly sale: Sale; readonly carrier: HatBlock | JobLot }) {
  const actions = useSaleActions();
  const set = (patch: Parameters<typeof actions.setFigures>[1], label: string): void =>
    actions.setFigures(carrier, patch, label);
  const { currency } = carrier;
  const isAuction = sale.terms.way === 'auction';
  return (
    <>
      {carrier.notBought != null && (
        <p>
          Not bought: {notBoughtWords(carrier.notBought).toLocaleLowerCase('en-GB')}.{' '}
          <Button look="quiet" onPress={() => actions.backOnTable(carrier)}>
            Back on the table
          </Button>
        </p>
      )}
      <TextField
        label="Ticket or lot number"
        value={carrier.objectNumber}
        onChange={(objectNumber) => set({ objectNumber }, 'the number')}
      />
      <OtherWords record={carrier} path="objectNumber" />
      <MoneyField
        label={isAuction ? 'Price asked, if it has one' : 'Price asked'}
        currency={currency}
        value={carrier.priceAsked}
        onChange={(priceAsked) => set({ priceAsked }, 'the price asked')}
      />
      {isAuction && (
        <>
          <MoneyField
            label="Estimate from"
            currency={currency}
            value={carrier.estimateLow ?? null}
            onChange={(estimateLow) => set({ estimateLow }, 'the estimate')}
          />
          <MoneyField
            label="Estimate to"
            hint="Without a bid, the middle of the estimate stands for the price."
            currency={currency}
            value={carrier.estimateHigh ?? null}
            onChange={(estimateHigh) => set({ estimateHigh }, 'the estimate')}
          />
        </>
      )}
      <TickField
        label="Seen in pictures only"
        hint="Then bid as on something risky, however clean it looks, and ask the seller."
        value={carrier.fromPictures ?? sale.channel === 'auctionOnline'}
        onChange={(fromPictures) => set({ fromPictures }, 'how it was seen')}
      />
      <ChoiceField
        label="What to take"
        value={carrier.pinned ?? 'sums'}
        options={pins}
        onChange={(pin) => set({ pinned: pin === 'sums' ? null : pin }, 'the pin')}
      />
    </>
  );
}
