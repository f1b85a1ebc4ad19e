import { bidStepsRise } from '../core/fees.ts';
import type { SaleTerms } from '../core/records.ts';
import { Button } from '../ui/button.tsx';
import { MoneyField } from '../ui/field.tsx';
import css from './rows.module.css';
import { useDraft } from './use-draft.ts';

type Steps = SaleTerms['bidSteps'];

/** Bid steps of a saleroom: each holds from its price upwards. Without any, every amount is a bid. */
export function BidSteps({
  steps: stored,
  currency,
  onChange,
}: {
  readonly steps: Steps;
  readonly currency: string;
  readonly onChange: (steps: Steps) => void;
}) {
  const { rows: steps, wrong, edit } = useDraft(stored, bidStepsRise, onChange);
  const setRow = (index: number, row: Partial<Steps[number]>): void =>
    edit(steps.map((step, at) => (at === index ? { ...step, ...row } : step)));
  const add = (): void => {
    const last = steps.at(-1);
    edit([...steps, last ? { from: last.from * 2 || last.step * 10, step: last.step * 2 } : { from: 0, step: 500 }]);
  };
  return (
    <>
      {steps.length === 0 && <p class={css.empty}>No steps given: any amount counts as a bid.</p>}
      <ul class={css.rows}>
        {steps.map((step, index) => (
          <li key={index}>
            <MoneyField
              label={`Step ${index + 1} from`}
              currency={currency}
              value={step.from}
              onChange={(from) => setRow(index, { from: from ?? 0 })}
            />
            <MoneyField
              label={`Step ${index + 1} goes up by`}
              currency={currency}
              value={step.step}
              onChange={(by) => setRow(index, { step: by ?? 0 })}
            />
            <div class={css.remove}>
              <Button
                look="quiet"
                label={`Remove step ${index + 1}`}
                onPress={() => edit(steps.filter((_, at) => at !== index))}
              >
                Remove
              </Button>
            </div>
          </li>
        ))}
      </ul>
      {wrong && (
        <p class={css.wrong} role="status">
          Not stored yet: steps must start at rising prices, and each go up by more than nothing.
        </p>
      )}
      <Button onPress={add}>Add a bid step</Button>
    </>
  );
}
