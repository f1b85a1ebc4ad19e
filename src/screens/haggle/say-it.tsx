import { useState } from 'preact/hooks';
import type { HatBlock, JobLot, Offer } from '../../core/records.ts';
import { useSaleActions } from '../../parts/sale-actions.ts';
import { money } from '../../text/format.ts';
import { Button } from '../../ui/button.tsx';
import { MoneyField } from '../../ui/field.tsx';
import css from './haggle.module.css';

type Saying = readonly { readonly what: Offer['what']; readonly words: string }[];

const atStall: Saying = [
  { what: 'offered', words: 'I offer' },
  { what: 'asked', words: 'They ask' },
  { what: 'refused', words: 'Refused' },
  { what: 'agreed', words: 'Agreed' },
  { what: 'paid', words: 'Paid' },
];
const inRoom: Saying = [
  { what: 'agreed', words: 'Mine at' },
  { what: 'refused', words: 'Another’s at' },
  { what: 'paid', words: 'Paid' },
];

/** One amount, and what it may be; the likeliest amounts are chips. In a saleroom the hammer is all there is to say. */
export function SayIt({
  carrier,
  isAuction,
  asked,
  suggested,
}: {
  readonly carrier: HatBlock | JobLot;
  readonly isAuction: boolean;
  readonly asked: number | null;
  readonly suggested: number | null;
}) {
  const actions = useSaleActions();
  const [amount, setAmount] = useState<number | null>(null);
  const [round, setRound] = useState(0);
  const likely = isAuction ? [carrier.bidNow ?? null] : [suggested, asked];
  const chips = [...new Set(likely.filter((chip): chip is number => chip !== null && chip > 0))];
  const say = (what: Offer['what']) => (): void => {
    if (amount !== null && amount >= 0) actions.offer(carrier, what, amount);
  };
  const none = amount === null || amount < 0;
  const words = amount === null || amount < 0 ? '' : ` ${money(amount, carrier.currency)}`;
  return (
    <>
      <MoneyField key={round} label="Amount" currency={carrier.currency} value={amount} onChange={setAmount} />
      {chips.length > 0 && (
        <div class={css.chips}>
          {chips.map((chip) => (
            <Button
              key={chip}
              pressed={amount === chip}
              onPress={() => {
                setAmount(chip);
                setRound(round + 1);
              }}
            >
              {money(chip, carrier.currency)}
              {isAuction ? ' as bid' : chip === suggested ? ' next' : ' as asked'}
            </Button>
          ))}
        </div>
      )}
      <div class={css.say} data-room={isAuction || undefined}>
        {(isAuction ? inRoom : atStall).map((one) => (
          <Button key={one.what} onPress={say(one.what)} disabled={none}>
            {one.words}
            {words}
          </Button>
        ))}
      </div>
    </>
  );
}
