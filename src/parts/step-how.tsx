import { entry } from '../core/catalogue.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { list } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { to } from '../ui/route.ts';
import { StepAdvice } from './advice.tsx';
import css from './plan-list.module.css';
import { SourceLine } from './source-line.tsx';
import type { BlockCase } from './use-case.ts';
import { useNames } from './use-names.ts';

const unitWords = { areaPct: '% of the surface', lengthMm: 'mm', areaCm2: 'cm²', count: '×', coats: 'coats' } as const;

/** How a step is done: what can hurt first, then why, how, with what, and when it is done. */
export function StepHow({ of, item }: { readonly of: BlockCase; readonly item: WorkItem }) {
  const { catalogue } = useApp();
  const { findingName } = useNames(of);
  const treatment = entry(catalogue.treatments, item.treatment);
  const [record] = item.records;
  if (!treatment || item.treatment === null) return record?.note ? <p>{record.note}</p> : null;
  const findings = item.serves.filter((id) => of.findings.some((finding) => finding.id === id)).map(findingName);
  const marks = of.marks.filter(({ id }) => item.serves.includes(id));
  return (
    <>
      {treatment.cautions.length > 0 && (
        <ul class={css.cautions} aria-label="Cautions">
          {treatment.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      {!item.calledFor && <p class={css.refused}>No finding asks for this any more; what was worked on it is kept.</p>}
      {findings.length > 0 && <p>For {list(findings)}.</p>}
      {marks.length > 0 && (
        <p>
          Marks:{' '}
          {list(marks.map(({ kind, text }) => `${entry(catalogue.marks, kind)?.term ?? kind}${text && ` “${text}”`}`))}.
        </p>
      )}
      <p class={css.why}>{[...new Set(item.because.map(({ why }) => why))].join(' ')}</p>
      <StepAdvice of={of} step={{ treatment: item.treatment, because: item.because }} />
      <p>{treatment.how}</p>
      {item.amount !== null && treatment.per && item.amount > 0 && (
        <p class="figures">
          Amount: {Math.round(item.amount)} {unitWords[treatment.per.unit]}
        </p>
      )}
      {treatment.tools.length > 0 && <p>Wants: {treatment.tools.join(', ')}.</p>}
      <p>Done when: {treatment.doneWhen}</p>
      {treatment.keptAt && (
        <Button look="quiet" href={to('/block/:id/quarantine', { id: of.block.id })}>
          Looks and freezing are written down here
        </Button>
      )}
      <SourceLine source={treatment.source} />
    </>
  );
}
