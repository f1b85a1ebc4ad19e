import type { VatBase } from '../core/fees.ts';
import type { SaleTerms } from '../core/records.ts';
import { termsSentence } from '../text/fee-sentences.ts';
import { ChoiceField, MoneyField } from '../ui/field.tsx';
import { BidSteps } from './bid-steps.tsx';
import { CustomsFields } from './customs-fields.tsx';
import { FixedCosts } from './fixed-costs.tsx';
import { PercentField } from './percent-field.tsx';
import { PremiumTiers } from './premium-tiers.tsx';
import css from './terms-fields.module.css';

const ways: readonly { id: SaleTerms['way']; label: string; text: string }[] = [
  { id: 'ticket', label: 'Ticket', text: 'the price on it' },
  { id: 'haggle', label: 'Haggle', text: 'a price to agree' },
  { id: 'auction', label: 'Auction', text: 'hammer and fees' },
];

const vatBases: readonly { id: VatBase; label: string; text: string }[] = [
  { id: 'nothing', label: 'Nothing', text: 'none, or inside the rates' },
  { id: 'fees', label: 'The fees', text: 'premium and platform charge' },
  { id: 'everything', label: 'Everything', text: 'the hammer price as well' },
];

/** Terms of a sale: how prices come about and everything that comes on top. What an auction alone has shows only there. */
export function TermsFields({
  terms,
  currency,
  onChange,
}: {
  readonly terms: SaleTerms;
  readonly currency: string;
  readonly onChange: (terms: SaleTerms) => void;
}) {
  const set = (patch: Partial<SaleTerms>): void => onChange({ ...terms, ...patch });
  return (
    <div class={css.terms}>
      <ChoiceField
        label="How a price comes about"
        value={terms.way}
        options={ways}
        onChange={(way) => way && set({ way })}
      />
      {(terms.way === 'auction' || hasAuctionTerms(terms)) && (
        <AuctionFields terms={terms} currency={currency} set={set} />
      )}
      <h3>Costs whatever the price</h3>
      <FixedCosts costs={terms.fixedCosts} currency={currency} onChange={(fixedCosts) => set({ fixedCosts })} />
      <h3>Customs</h3>
      <CustomsFields customs={terms.customs ?? null} currency={currency} onChange={(customs) => set({ customs })} />
      <p class={css.sentence} role="status">
        {termsSentence(terms, currency)}
      </p>
    </div>
  );
}

/** Fees that count though the way is no auction: shown, because the sums take them. */
const hasAuctionTerms = ({ premium, minimumPremium, platformRate, vatRate, vatOn, bidSteps }: SaleTerms): boolean =>
  premium.length > 0 ||
  minimumPremium > 0 ||
  platformRate > 0 ||
  (vatRate > 0 && vatOn !== 'nothing') ||
  bidSteps.length > 0;

function AuctionFields({
  terms,
  currency,
  set,
}: {
  readonly terms: SaleTerms;
  readonly currency: string;
  readonly set: (patch: Partial<SaleTerms>) => void;
}) {
  return (
    <>
      <h3>Buyer’s premium</h3>
      <PremiumTiers tiers={terms.premium} currency={currency} onChange={(premium) => set({ premium })} />
      <MoneyField
        label="Least premium a lot is charged"
        currency={currency}
        value={terms.minimumPremium || null}
        onChange={(least) => set({ minimumPremium: Math.max(0, least ?? 0) })}
      />
      <PercentField
        label="Online platform’s charge"
        hint="On the hammer price; 0 in the room."
        step={0.5}
        share={terms.platformRate}
        onChange={(platformRate) => set({ platformRate })}
      />
      <PercentField
        label="VAT"
        hint="Rates change: take it from the sale’s terms."
        share={terms.vatRate}
        chips={[0, 20]}
        onChange={(vatRate) => set({ vatRate })}
      />
      <ChoiceField
        label="VAT falls on"
        value={terms.vatOn}
        options={vatBases}
        onChange={(vatOn) => vatOn && set({ vatOn })}
      />
      <h3>Bid steps</h3>
      <BidSteps steps={terms.bidSteps} currency={currency} onChange={(bidSteps) => set({ bidSteps })} />
    </>
  );
}
