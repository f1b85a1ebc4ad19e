import { useState } from 'preact/hooks';
import { entry } from '../core/catalogue.ts';
import { pertQuantile } from '../core/estimate.ts';
import type { PlanStep } from '../core/plan.ts';
import { hours } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { NumberField } from '../ui/field.tsx';
import { useActions } from './actions.ts';
import css from './log-time.module.css';
import type { BlockCase } from './use-case.ts';

/** Writes down what a step took, beside what was estimated; the owner's pace is learnt from it. */
export function LogTime({ of, step }: { readonly of: BlockCase; readonly step: PlanStep }) {
  const { store, catalogue } = useApp();
  const actions = useActions();
  const [minutes, setMinutes] = useState<number | null>(null);
  const logged = store.jobsOf(of.block.id).filter(({ treatment }) => treatment === step.treatment);
  const treatment = entry(catalogue.treatments, step.treatment);
  if (!treatment) return null;
  return (
    <div class={css.log}>
      {logged.map((job) => (
        <p key={job.id} class="figures">
          Took {hours(job.actualHours)}, estimated {hours(job.estimateHours)}.{' '}
          <Button look="quiet" onPress={() => actions.removeJob(job)}>
            Take it out
          </Button>
        </p>
      ))}
      <NumberField
        label="It took me"
        unit="min"
        step={5}
        max={6000}
        chips={[15, 30, 60, 120]}
        value={minutes}
        onChange={setMinutes}
      />
      <Button
        disabled={!minutes}
        onPress={() => {
          if (!minutes) return;
          actions.logJob(of.block, {
            treatment: step.treatment,
            reference: treatment.reference,
            estimateHours: step.hours.m,
            lowHours: pertQuantile(step.hours, 0.1),
            highHours: pertQuantile(step.hours, 0.9),
            actualHours: minutes / 60,
          });
          setMinutes(null);
        }}
      >
        Write it down
      </Button>
    </div>
  );
}
