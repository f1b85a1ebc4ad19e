import type { SaleTerms } from '../core/records.ts';
import { Button } from '../ui/button.tsx';
import { MoneyField, TextField } from '../ui/field.tsx';
import css from './rows.module.css';

type Costs = SaleTerms['fixedCosts'];
const usual = ['Post', 'Packing', 'Share of the journey', 'Carrier', 'Parking'] as const;

/** Costs that come whatever the price: post, packing, a share of the journey. Tax included, as they are paid. */
export function FixedCosts({
  costs,
  currency,
  onChange,
}: {
  readonly costs: Costs;
  readonly currency: string;
  readonly onChange: (costs: Costs) => void;
}) {
  const setRow = (index: number, row: Partial<Costs[number]>): void =>
    onChange(costs.map((cost, at) => (at === index ? { ...cost, ...row } : cost)));
  const next = usual.find((what) => costs.every((cost) => cost.what !== what)) ?? '';
  return (
    <>
      <ul class={css.rows}>
        {costs.map((cost, index) => (
          <li key={index}>
            <TextField
              label={`Cost ${index + 1}`}
              value={cost.what}
              list={usual}
              onChange={(what) => setRow(index, { what })}
            />
            <MoneyField
              label={`Cost ${index + 1}, each block`}
              currency={currency}
              value={cost.amount}
              onChange={(amount) => setRow(index, { amount: Math.max(0, amount ?? 0) })}
            />
            <div class={css.remove}>
              <Button
                look="quiet"
                label={`Remove the cost ${cost.what || index + 1}`}
                onPress={() => onChange(costs.filter((_, at) => at !== index))}
              >
                Remove
              </Button>
            </div>
          </li>
        ))}
      </ul>
      <Button onPress={() => onChange([...costs, { what: next, amount: 0 }])}>Add a cost</Button>
    </>
  );
}
