import { hoursUntil } from '../../core/lots-choice.ts';
import { isDay } from '../../core/physics/civil-date.ts';
import type { Sale } from '../../core/records.ts';
import { useActions } from '../../parts/actions.ts';
import { dayHere } from '../../text/days.ts';
import { hours } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { DayField } from '../../ui/day-field.tsx';
import { MoneyField, NumberField } from '../../ui/field.tsx';

/** Money and bench hours that are there for this sale, and by when: what to take together rests on them. */
export function BudgetFields({ sale }: { readonly sale: Sale }) {
  const { store, now } = useApp();
  const actions = useActions();
  const { budget, hoursToSpare, neededBy } = sale;
  const today = dayHere(now());
  const evenings = neededBy && isDay(neededBy) ? hoursUntil(today, neededBy, store.settings.value) : null;
  return (
    <>
      <MoneyField
        label="Money with you, all costs in"
        currency={sale.currency}
        value={budget}
        onChange={(amount) => actions.setSale(sale, { budget: amount === null ? null : Math.max(0, amount) })}
      />
      <NumberField
        label="Bench hours to spare"
        unit="h"
        step={5}
        max={2000}
        value={hoursToSpare}
        onChange={(spare) => actions.setSale(sale, { hoursToSpare: spare })}
      />
      <DayField
        label="Ready by"
        hint={
          evenings === null
            ? 'Empty: no hurry.'
            : `Your evenings until then: ${hours(evenings)}. The lower of the two counts.`
        }
        value={neededBy}
        onChange={(day) => actions.setSale(sale, { neededBy: day })}
      />
    </>
  );
}
