import type { Setting } from './block.ts';
import type { Catalogue, UseRule } from './catalogue.ts';
import { holds } from './condition.ts';
import type { Job, ReadyCheck, WorkStep } from './records.ts';

/** One check before first use and how it stands. */
export interface CheckStanding {
  readonly id: string;
  readonly check: UseRule;
  readonly state: 'open' | ReadyCheck['outcome'];
  /** What answers it: what was written down, the step done at the bench, or hours logged for the work itself. */
  readonly by: ReadyCheck | WorkStep | Job | null;
}

export interface ReadyStanding {
  /** Those asked of such a block, in the catalogue's order. */
  readonly checks: readonly CheckStanding[];
  /** Essential ones that stand in the way: neither passed nor left out with a reason. */
  readonly missing: readonly CheckStanding[];
}

/** The rules of a list that apply to such a block. */
export const rulesFor = (rules: Readonly<Record<string, UseRule>>, setting: Setting): readonly [string, UseRule][] =>
  Object.entries(rules).filter(([, { when }]) => !when || holds(when, setting));

/**
 * Whether a block may become ready: every essential check was passed, by a word of the owner or by work logged for it,
 * or left out with a reason. A check that failed stands in the way whatever was logged.
 * SOURCE: trade handbook §6.3 for the checks; which are essential is our own rule.
 */
export function readyStanding(
  written: readonly ReadyCheck[],
  { jobs, steps }: { readonly jobs: readonly Job[]; readonly steps: readonly WorkStep[] },
  setting: Setting,
  { beforeFirstUse }: Pick<Catalogue, 'beforeFirstUse'>,
): ReadyStanding {
  const checks = rulesFor(beforeFirstUse, setting).map(([id, check]): CheckStanding => {
    const word = written.filter((one) => one.check === id).at(-1);
    if (word) return { id, check, state: word.outcome, by: word };
    const step = steps.filter(({ treatment, done }) => done && check.treatment && treatment === check.treatment).at(-1);
    const by = step ?? jobs.filter(({ treatment }) => check.treatment && treatment === check.treatment).at(-1);
    return by ? { id, check, state: 'passed', by } : { id, check, state: 'open', by: null };
  });
  const settled = ({ state, by }: CheckStanding): boolean =>
    state === 'passed' || (state === 'skipped' && by?.type === 'readyCheck' && by.note.trim() !== '');
  return { checks, missing: checks.filter((one) => one.check.essential && !settled(one)) };
}
