import { useState } from 'preact/hooks';
import { entry } from '../core/catalogue.ts';
import { insuranceOf, type SpentIn, type SpentLine, spentOn } from '../core/spent.ts';
import { hours, money, moneyAbout } from '../text/format.ts';
import { spentWords } from '../text/spent.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { MoneyField, SelectField, TextField } from '../ui/field.tsx';
import { limitOf } from './answer.tsx';
import css from './money-spent.module.css';
import { useQuarantineActions } from './quarantine-actions.ts';
import type { BlockCase } from './use-case.ts';
import { useForecast, useForecastCase } from './use-forecast.ts';

/** What the block has cost, against the limit and against what it would cost to put back. */
export function MoneySpent({ of }: { readonly of: BlockCase }) {
  const { store, catalogue } = useApp();
  const actions = useQuarantineActions();
  const { block, sale, offers, settings } = of;
  const jobs = store.jobsOf(block.id);
  const expenses = store.expensesOf(block.id);
  const sums = spentOn({
    ...{
      offers,
      jobs,
      expenses,
      steps: store.stepsOf(block.id),
      stints: store.stintsOf(block.id),
      treatments: catalogue.treatments,
      hourlyRate: settings.hourlyRate,
    },
    sale: sale ?? null,
    rateCurrency: settings.currency,
  });
  return (
    <>
      {sums.length === 0 && <p class={css.hint}>Nothing yet: no price paid, no hours logged, nothing bought for it.</p>}
      {sums.map((sum) => (
        <Sum key={sum.currency} sum={sum} />
      ))}
      {sums.length > 1 && (
        <p class={css.hint}>Sums in different currencies are not added up: Blockworth knows no rate of the day.</p>
      )}
      <Against of={of} sums={sums} />
      <details>
        <summary>Write down money spent</summary>
        <NewExpense of={of} />
        <ul class={css.expenses}>
          {expenses.map((expense) => (
            <li key={expense.id}>
              <span>
                {expense.what || 'Something'} <b class="figures">{money(expense.amount, expense.currency)}</b>
              </span>
              <Button
                look="quiet"
                label={`Take out: ${expense.what} ${money(expense.amount, expense.currency)}`}
                onPress={() => actions.removeExpense(expense.id)}
              >
                Take out
              </Button>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Sum({ sum: { currency, lines, total } }: { readonly sum: SpentIn }) {
  const { catalogue } = useApp();
  const nameOf = ({ what, hours: worked = 0, ...line }: SpentLine): string =>
    what === 'hours' ? `Your ${hours(worked)} at your rate` : spentWords({ what, ...line }, catalogue);
  return (
    <table class={css.sum}>
      <caption>Spent, in {currency}</caption>
      <tbody>
        {lines.map((line, index) => (
          <tr key={`${line.what} ${line.of} ${index}`}>
            <th scope="row">
              {nameOf(line)}
              {line.from === 'estimate' && <small>trade estimate; write down what it cost to replace it</small>}
            </th>
            <td class="figures">{money(line.amount, currency)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">In all</th>
          <td class="figures">{money(total, currency)}</td>
        </tr>
      </tfoot>
    </table>
  );
}

/** The same figures beside the limit, a new one and an equal used one; only where the currency is the block's own. */
function Against({ of, sums }: { readonly of: BlockCase; readonly sums: readonly SpentIn[] }) {
  const { block, assessment } = of;
  const { forecast } = useForecast(useForecastCase(of), block.id);
  const own = sums.find(({ currency }) => currency === block.currency);
  const paid = own?.lines.find(({ what }) => what === 'price')?.amount;
  const limit = limitOf({ of, forecast });
  const { newForOld, newFrom, cashValue, usedFrom } = insuranceOf(assessment.worth);
  const said = (amount: number): string => money(amount, block.currency);
  // An estimate has no pence.
  const figure = (amount: number, source: typeof newFrom): string =>
    source === 'owner' ? said(amount) : moneyAbout(amount, block.currency);
  const from = (source: typeof newFrom): string => (source === 'owner' ? 'your own figure' : 'trade estimate');
  return (
    <dl class={css.against}>
      {paid !== undefined && limit !== undefined && (
        <div>
          <dt>Price against the limit</dt>
          <dd class="figures" data-say={limit !== null && paid <= limit ? 'within' : 'over'}>
            {limit === null ? 'no price was worth paying' : `${said(paid)} of ${moneyAbout(limit, block.currency)}`}
            <small>The limit as it stands with what is known today.</small>
          </dd>
        </div>
      )}
      {own && (
        <div>
          <dt>All spent against a new one</dt>
          <dd class="figures" data-say={own.total <= newForOld ? 'within' : 'over'}>
            {said(own.total)} of {said(newForOld)}
            {sums.length > 1 && <small>Only what was spent in {block.currency}.</small>}
          </dd>
        </div>
      )}
      <div>
        <dt>Insure at</dt>
        <dd class="figures">
          {figure(newForOld, newFrom)}
          <small>New for old: made to order, {from(newFrom)}. Delivery comes on top.</small>
        </dd>
      </div>
      <div>
        <dt>In cash</dt>
        <dd class="figures">
          {figure(cashValue, usedFrom)}
          <small>What an equal used one costs, {from(usedFrom)}.</small>
        </dd>
      </div>
    </dl>
  );
}

function NewExpense({ of }: { readonly of: BlockCase }) {
  const { store, catalogue } = useApp();
  const actions = useQuarantineActions();
  const [what, setWhat] = useState('');
  const [amount, setAmount] = useState<number | null>(null);
  const [treatment, setTreatment] = useState('');
  const [round, setRound] = useState(0);
  const { block } = of;
  const worked = [
    ...new Set([
      ...store.jobsOf(block.id).map((job) => job.treatment),
      ...of.assessment.plan.steps.map((step) => step.treatment),
    ]),
  ];
  const write = (): void => {
    if (amount === null || amount < 0) return;
    actions.addExpense(block, { what, amount, treatment: treatment || null, currency: block.currency });
    setWhat('');
    setAmount(null);
    setRound(round + 1);
  };
  return (
    <>
      <TextField label="What for" value={what} placeholder="resin, bags, a lead test" onChange={setWhat} />
      <MoneyField key={round} label="How much" currency={block.currency} value={amount} onChange={setAmount} />
      <SelectField
        label="For which step"
        hint="Then the catalogue’s estimate for that step gives way."
        value={treatment}
        options={[
          { id: '', label: 'None in particular' },
          ...worked.map((id) => ({ id, label: entry(catalogue.treatments, id)?.term ?? id })),
        ]}
        onChange={setTreatment}
      />
      <Button disabled={amount === null || amount < 0} onPress={write}>
        Write the money down
      </Button>
    </>
  );
}
