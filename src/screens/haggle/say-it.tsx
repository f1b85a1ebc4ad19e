import { useState } from 'preact/hooks';
import type { HatBlock, JobLot, Offer } from '../../core/records.ts';
import { useSaleActions } from '../../parts/sale-actions.ts';
import { money } from '../../text/format.ts';
import { Button } from '../../ui/button.tsx';
import { MoneyField } from '../../ui/field.tsx';
import css from './haggle.module.css';

/** One amount, five things it may be; the likeliest amounts are chips. */
export function SayIt({
  carrier,
  asked,
  suggested,
}: {
  readonly carrier: HatBlock | JobLot;
  readonly asked: number | null;
  readonly suggested: number | null;
}) {
  const actions = useSaleActions();
  const [amount, setAmount] = useState<number | null>(null);
  const [round, setRound] = useState(0);
  const chips = [...new Set([suggested, asked].filter((chip): chip is number => chip !== null && chip > 0))];
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
              {chip === suggested ? ' next' : ' as asked'}
            </Button>
          ))}
        </div>
      )}
      <div class={css.say}>
        <Button onPress={say('offered')} disabled={none}>
          I offer{words}
        </Button>
        <Button onPress={say('asked')} disabled={none}>
          They ask{words}
        </Button>
        <Button onPress={say('refused')} disabled={none}>
          Refused{words}
        </Button>
        <Button onPress={say('agreed')} disabled={none}>
          Agreed{words}
        </Button>
        <Button onPress={say('paid')} disabled={none}>
          Paid{words}
        </Button>
      </div>
    </>
  );
}
