import type { Sale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { MoneyField, NumberField } from '../../ui/field.tsx';

/** Money and bench hours that are there for this sale: what to take together rests on both. */
export function BudgetFields({ sale }: { readonly sale: Sale }) {
  const actions = useActions();
  return (
    <>
      <MoneyField
        label="Money with you, all costs in"
        currency={sale.currency}
        value={sale.budget}
        onChange={(budget) => actions.setSale(sale, { budget })}
      />
      <NumberField
        label="Bench hours to spare"
        unit="h"
        step={5}
        max={2000}
        value={sale.hoursToSpare}
        onChange={(hoursToSpare) => actions.setSale(sale, { hoursToSpare })}
      />
    </>
  );
}
