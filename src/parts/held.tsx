import type { GradedFinding } from '../core/assess.ts';
import { percent } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import { ChoiceField } from '../ui/field.tsx';
import { useActions } from './actions.ts';
import type { BlockCase } from './use-case.ts';

/** After the work: did the repair hold? Kept beside the chance it was given, to see how good one's chances are. */
export function Held({ of, graded }: { readonly of: BlockCase; readonly graded: GradedFinding }) {
  const { store } = useApp();
  const actions = useActions();
  const { chance } = graded.loss;
  if (chance === null) return null;
  const judged = store.repairsOf(of.block.id).find(({ findingId }) => findingId === graded.finding.id);
  return (
    <ChoiceField
      label="Repaired? Did it hold?"
      hint={`Given ${percent(judged?.chance ?? chance)} before the work. Your answer teaches how far to trust such chances.`}
      none
      value={judged ? (judged.held ? 'held' : 'failed') : null}
      options={[
        { id: 'held', label: 'It held' },
        { id: 'failed', label: 'It failed' },
      ]}
      onChange={(answer) =>
        actions.judgeRepair(graded.finding, judged, chance, answer === null ? null : answer === 'held')
      }
    />
  );
}
