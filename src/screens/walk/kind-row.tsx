import type { LookState } from '../../core/assess.ts';
import { entry } from '../../core/catalogue.ts';
import { useActions } from '../../parts/actions.ts';
import { GradeBadge } from '../../parts/grade-badge.tsx';
import type { BlockCase } from '../../parts/use-case.ts';
import { useNames } from '../../parts/use-names.ts';
import { useApp } from '../../ui/app.ts';
import css from './walk.module.css';

/** One damage kind at a station, in its three states: not looked, none seen, found. */
export function KindRow({
  of,
  kind,
  state,
  onFound,
  onOpen,
}: {
  readonly of: BlockCase;
  readonly kind: string;
  readonly state: LookState;
  readonly onFound: () => void;
  readonly onOpen: (findingId: string) => void;
}) {
  const { catalogue } = useApp();
  const actions = useActions();
  const { kindTerm, zoneTerm } = useNames(of);
  const findings = of.assessment.graded.filter(({ finding }) => finding.kind === kind);
  const term = kindTerm(kind);
  return (
    <li class={css.kind} data-state={state}>
      <div class={css.line}>
        <span class={css.term}>
          {term}
          <small>{entry(catalogue.damage, kind)?.definition}</small>
        </span>
        {state !== 'found' && (
          <button
            type="button"
            class={css.none}
            aria-pressed={state === 'noneSeen'}
            aria-label={`None seen: ${term}`}
            onClick={() => actions.noneSeen(of.survey, [kind], state !== 'noneSeen')}
          >
            None seen
          </button>
        )}
        <button
          type="button"
          class={css.found}
          onClick={onFound}
          aria-label={state === 'found' ? `Another: ${term}` : `Found: ${term}`}
        >
          {state === 'found' ? 'Another' : 'Found'}
        </button>
      </div>
      {findings.length > 0 && (
        <ul>
          {findings.map(({ finding, grade }) => (
            <li key={finding.id}>
              <button type="button" class={css.finding} onClick={() => onOpen(finding.id)}>
                <b class="figures">{finding.number}</b> {zoneTerm(finding.zone)} <GradeBadge grade={grade} />
              </button>
            </li>
          ))}
        </ul>
      )}
    </li>
  );
}
