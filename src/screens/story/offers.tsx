import { useState } from 'preact/hooks';
import type { Offer } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import type { BlockCase } from '../../parts/use-case.ts';
import { money } from '../../text/format.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceField, MoneyField } from '../../ui/field.tsx';
import css from './story.module.css';

const words: Record<Offer['what'], string> = {
  asked: 'Asked',
  offered: 'You offered',
  refused: 'Refused',
  agreed: 'Agreed',
  paid: 'Paid',
};
const options = (Object.keys(words) as Offer['what'][]).map((id) => ({ id, label: words[id] }));

/** Local day and hour of a moment, as one reads it. */
const at = (instant: string): string =>
  new Date(instant).toLocaleString('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  });

/** What was asked, offered and paid, in order; a new line is written down with one tap. */
export function Offers({ of }: { readonly of: BlockCase }) {
  const actions = useActions();
  const { block, offers } = of;
  const [what, setWhat] = useState<Offer['what']>('offered');
  const [amount, setAmount] = useState<number | null>(null);
  const [round, setRound] = useState(0);
  const write = (): void => {
    if (amount === null) return;
    actions.addOffer(block, what, amount);
    setAmount(null);
    setRound(round + 1);
  };
  return (
    <>
      {offers.length === 0 && <p class={css.hint}>No offers written down yet.</p>}
      <ul class={css.offers}>
        {offers.map((offer) => (
          <li key={offer.id}>
            <span>
              {words[offer.what]} <b class="figures">{money(offer.amount, offer.currency)}</b>
              <small>{at(offer.at)}</small>
            </span>
            <Button
              look="quiet"
              label={`Remove: ${words[offer.what]} ${money(offer.amount, offer.currency)}`}
              onPress={() => actions.removeOffer(offer)}
            >
              Remove
            </Button>
          </li>
        ))}
      </ul>
      <ChoiceField
        label="What happened"
        value={what}
        options={options}
        onChange={(picked) => picked && setWhat(picked)}
      />
      <MoneyField key={round} label="Amount" currency={block.currency} value={amount} onChange={setAmount} />
      <Button onPress={write} disabled={amount === null || amount < 0}>
        Write it down
      </Button>
    </>
  );
}
