import { entry } from '../core/catalogue.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { useApp } from '../ui/app.ts';
import { Held } from './held.tsx';
import css from './plan-list.module.css';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';

/**
 * When nothing more is to be done for a finding: did its repair hold? Asked of the repairs that were given a chance of
 * failing, and only once the last step that bears on them, the test block included, is done.
 */
export function HeldQuestions({ of, items }: { readonly of: BlockCase; readonly items: readonly WorkItem[] }) {
  const { catalogue } = useApp();
  const { findingName } = useNames(of);
  const asked = of.assessment.graded.filter(({ finding, loss }) => {
    const bearing = items.filter(({ serves, treatment }) => serves.includes(finding.id) && treatment !== null);
    const repaired = bearing.some(
      ({ stand, treatment }) => stand === 'done' && !entry(catalogue.treatments, treatment)?.always,
    );
    return loss.chance !== null && repaired && bearing.every(({ stand }) => stand !== 'open');
  });
  if (asked.length === 0) return null;
  return (
    <div class={css.held}>
      <h3>Did the repairs hold?</h3>
      {asked.map((graded) => (
        <div key={graded.finding.id}>
          <p>
            <b>{findingName(graded.finding.id)}</b>
          </p>
          <Held of={of} graded={graded} />
        </div>
      ))}
    </div>
  );
}
