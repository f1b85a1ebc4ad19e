import { entry } from '../core/catalogue.ts';
import { days, hoursRange, money } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import { StepAdvice } from './advice.tsx';
import { LogTime } from './log-time.tsx';
import css from './plan-list.module.css';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';

const unitWords = { areaPct: '% of the surface', lengthMm: 'mm', areaCm2: 'cm²', count: '×', coats: 'coats' } as const;

/** The work in the order it must be done: caution first, then why, how, how long and what it waits for. */
export function PlanList({ of }: { readonly of: BlockCase }) {
  const { catalogue } = useApp();
  const { findingName } = useNames(of);
  const { plan, days: elapsed } = of.assessment;
  return (
    <>
      <p class={css.sum}>
        <b class="figures">{hoursRange(plan.hours.o, plan.hours.p)}</b> of work over{' '}
        <b class="figures">{days(elapsed.total)}</b>, {money(plan.consumables, of.block.currency)} of consumables.
      </p>
      <ol class={css.steps}>
        {plan.steps.map((step, index) => {
          const treatment = entry(catalogue.treatments, step.treatment);
          const when = elapsed.steps[index];
          if (!treatment) return null;
          const because = [
            ...new Set(step.because.map(({ findingId }) => (findingId ? findingName(findingId) : ''))),
          ].filter(Boolean);
          return (
            <li key={step.treatment}>
              <details>
                <summary>
                  <span>
                    {treatment.term}
                    <small class="figures">
                      {hoursRange(step.hours.o, step.hours.p)}
                      {step.waitHours.m > 0 && `, then wait ${waitWords(step.waitHours.m)}`}
                      {when && ` · day ${when.from + 1}`}
                    </small>
                  </span>
                </summary>
                {treatment.cautions.length > 0 && (
                  <ul class={css.cautions}>
                    {treatment.cautions.map((caution) => (
                      <li key={caution}>{caution}</li>
                    ))}
                  </ul>
                )}
                {because.length > 0 && <p>For {because.join(', ')}.</p>}
                <div class={css.advice}>
                  <StepAdvice of={of} step={step} />
                </div>
                <p>{treatment.how}</p>
                {step.amount !== null && treatment.per && step.amount > 0 && (
                  <p class="figures">
                    Amount: {Math.round(step.amount)} {unitWords[treatment.per.unit]}
                  </p>
                )}
                {treatment.tools.length > 0 && <p>Wants: {treatment.tools.join(', ')}.</p>}
                <p>Done when: {treatment.doneWhen}</p>
                <LogTime of={of} step={step} />
                <p class={css.source}>
                  {treatment.source.kind === 'estimate' || treatment.source.kind === 'memory' ? 'Trade estimate. ' : ''}
                  {treatment.source.text}
                </p>
              </details>
            </li>
          );
        })}
      </ol>
    </>
  );
}

const waitWords = (hours: number): string => (hours < 36 ? `${Math.round(hours)} h` : days(Math.round(hours / 24)));
