import { useState } from 'preact/hooks';
import { plainTerms } from '../../../core/blank.ts';
import { allIn } from '../../../core/fees.ts';
import type { SaleTerms } from '../../../core/records.ts';
import { minor } from '../../../core/units.ts';
import { TermsFields } from '../../../parts/terms-fields.tsx';
import { limitPriceSentence, sampleSums } from '../../../text/fee-sentences.ts';
import { money } from '../../../text/format.ts';
import { useApp } from '../../../ui/app.ts';
import { MoneyField, SelectField } from '../../../ui/field.tsx';
import type { Calculator } from '../calculator.ts';
import css from '../calculators.module.css';
import { Results } from '../results.tsx';

/** Where one starts when no sale is chosen: an auction whose own rates are still to be typed in. */
const auction: SaleTerms = {
  ...plainTerms,
  way: 'auction',
  premium: [{ upTo: null, rate: 0.24 }],
  vatRate: 0.2,
  vatOn: 'fees',
};

function Fees() {
  const { store } = useApp();
  const sales = store.all('sale').value;
  const [saleId, setSaleId] = useState('');
  const [terms, setTerms] = useState(auction);
  const sale = sales.find(({ id }) => id === saleId);
  const currency = sale?.currency ?? store.settings.value.currency;
  const [price, setPrice] = useState<number | null>(sampleSums(currency).price);
  const [limit, setLimit] = useState<number | null>(sampleSums(currency).limit);
  const bill = price === null || price < 0 ? undefined : allIn(minor(price), terms);
  const say = (amount: number): string => money(amount, currency);
  return (
    <>
      {sales.length > 0 && (
        <SelectField
          label="Terms of"
          hint="A copy to try things on; the sale itself is not changed."
          value={saleId}
          options={[
            { id: '', label: 'No sale: typed in here' },
            ...sales.map(({ id, title }) => ({ id, label: title || 'Unnamed sale' })),
          ]}
          onChange={(picked) => {
            setSaleId(picked);
            setTerms(sales.find(({ id }) => id === picked)?.terms ?? auction);
          }}
        />
      )}
      <div class={css.pair}>
        <div>
          <MoneyField label="Hammer or ticket price" currency={currency} value={price} onChange={setPrice} />
          <Results
            rows={
              bill && [
                ['Price', say(bill.hammer)],
                ['Premium', say(bill.premium)],
                ['Platform', say(bill.platform)],
                ['VAT', say(bill.vat)],
                ...(bill.customs === 0 ? [] : [['Carriage, duty, import tax', say(bill.customs)] as const]),
                ['Costs whatever the price', say(bill.fixed)],
                ['In all', <b key="all">{say(bill.total)}</b>],
              ]
            }
            source="Price + premium by slices + platform + VAT on what the terms say + fixed costs, rounded once. Saleroom terms; UK guidance on the auctioneers’ margin scheme."
          />
        </div>
        <div>
          <MoneyField label="Most to pay in all" currency={currency} value={limit} onChange={setLimit} />
          <Results
            rows={limit === null || limit < 0 ? undefined : [[limitPriceSentence(limit, terms, currency), '']]}
            source="The highest price whose bill stays within it, down to a bid step: the sum above turned round."
          />
        </div>
      </div>
      <details>
        <summary>The terms</summary>
        <TermsFields terms={terms} currency={currency} onChange={setTerms} />
      </details>
    </>
  );
}

export default {
  id: 'fees',
  order: 5,
  title: 'Fees both ways',
  about: 'From the hammer price to everything it costs, and from a limit to the highest bid.',
  Panel: Fees,
} satisfies Calculator;
