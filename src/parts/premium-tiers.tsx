import { premiumTiersRise } from '../core/fees.ts';
import type { SaleTerms } from '../core/records.ts';
import { money } from '../text/format.ts';
import { Button } from '../ui/button.tsx';
import { MoneyField } from '../ui/field.tsx';
import { PercentField } from './percent-field.tsx';
import css from './rows.module.css';
import { useDraft } from './use-draft.ts';

type Tiers = SaleTerms['premium'];

/** Name of a slice for its labels: “to £500”, “£500 to £1,000”, “above £1,000”. */
function sliceName(tiers: Tiers, index: number, currency: string): string {
  const from = tiers[index - 1]?.upTo ?? null;
  const upTo = tiers[index]?.upTo ?? null;
  const say = (minor: number): string => money(minor, currency);
  if (from === null && index > 0) return 'above that';
  if (from === null) return upTo === null ? 'on the whole hammer price' : `to ${say(upTo)}`;
  return upTo === null ? `above ${say(from)}` : `${say(from)} to ${say(upTo)}`;
}

/** The buyer's premium by rising slices of the hammer price; usually one slice without an end. */
export function PremiumTiers({
  tiers: stored,
  currency,
  onChange,
}: {
  readonly tiers: Tiers;
  readonly currency: string;
  readonly onChange: (tiers: Tiers) => void;
}) {
  const { rows: tiers, wrong, edit } = useDraft(stored, premiumTiersRise, onChange);
  const setRow = (index: number, row: Partial<Tiers[number]>): void =>
    edit(tiers.map((tier, at) => (at === index ? { ...tier, ...row } : tier)));
  const addSlice = (): void => {
    const last = tiers.at(-1);
    edit([...tiers, { upTo: null, rate: last?.rate ?? 0.24 }]);
  };
  return (
    <>
      {tiers.length === 0 && <p class={css.empty}>No premium: the hammer price is what the lot costs.</p>}
      <ul class={css.rows}>
        {tiers.map((tier, index) => (
          <li key={index}>
            <PercentField
              label={`Premium ${sliceName(tiers, index, currency)}`}
              share={tier.rate}
              onChange={(rate) => setRow(index, { rate })}
            />
            {tiers.length > 1 || tier.upTo !== null ? (
              <MoneyField
                label={`Slice ${index + 1} ends at`}
                hint={index === tiers.length - 1 ? 'Empty: no end.' : undefined}
                currency={currency}
                value={tier.upTo}
                onChange={(upTo) => setRow(index, { upTo })}
              />
            ) : (
              <span />
            )}
            <div class={css.remove}>
              <Button
                look="quiet"
                label={`Remove the premium ${sliceName(tiers, index, currency)}`}
                onPress={() => edit(tiers.filter((_, at) => at !== index))}
              >
                Remove
              </Button>
            </div>
          </li>
        ))}
      </ul>
      {wrong && (
        <p class={css.wrong} role="status">
          Not stored yet: each slice must end above the one before it, and only the last may have no end.
        </p>
      )}
      <Button onPress={addSlice}>{tiers.length === 0 ? 'Add a premium' : 'Add a slice above'}</Button>
    </>
  );
}
