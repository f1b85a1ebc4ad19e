import type { Offer } from '../core/records.ts';
import { money } from '../text/format.ts';
import { Button } from '../ui/button.tsx';
import { useActions } from './actions.ts';
import css from './offer-list.module.css';

export const OFFER_WORDS: Record<Offer['what'], string> = {
  asked: 'Asked',
  offered: 'You offered',
  refused: 'Refused',
  agreed: 'Agreed',
  paid: 'Paid',
};

/** Local day and hour of a moment, as one reads it. */
const at = (instant: string): string =>
  new Date(instant).toLocaleString('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  });

/** What was asked, offered and paid, in order, each with its hour; a slip is taken out again. */
export function OfferList({ offers, none }: { readonly offers: readonly Offer[]; readonly none: string }) {
  const actions = useActions();
  if (offers.length === 0) return <p class={css.none}>{none}</p>;
  return (
    <ul class={css.offers}>
      {offers.map((offer) => (
        <li key={offer.id}>
          <span>
            {OFFER_WORDS[offer.what]} <b class="figures">{money(offer.amount, offer.currency)}</b>
            {offer.fees != null && offer.fees > 0 && (
              <small class="figures">and {money(offer.fees, offer.currency)} on top</small>
            )}
            <small>{at(offer.at)}</small>
          </span>
          <Button
            look="quiet"
            label={`Remove: ${OFFER_WORDS[offer.what]} ${money(offer.amount, offer.currency)}`}
            onPress={() => actions.removeOffer(offer)}
          >
            Remove
          </Button>
        </li>
      ))}
    </ul>
  );
}
