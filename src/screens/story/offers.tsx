import { useState } from 'preact/hooks';
import type { Offer } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { OFFER_WORDS, OfferList } from '../../parts/offer-list.tsx';
import type { BlockCase } from '../../parts/use-case.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceField, MoneyField } from '../../ui/field.tsx';

const options = (Object.keys(OFFER_WORDS) as Offer['what'][]).map((id) => ({ id, label: OFFER_WORDS[id] }));

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
      <OfferList offers={offers} none="No offers written down yet." />
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
