import type { CautionId } from '../../core/physics/cautions.ts';
import type { Sourced } from '../../core/physics/sourced.ts';
import { AdviceCard } from '../../parts/advice-card.tsx';
import type { AdviceWords } from '../../text/advice/words.ts';
import css from './calculators.module.css';

/** A calculator's outcome as the plan would say it, with its cautions, and on one line where it comes from. */
export function Advised({
  words,
  cautions,
  sources,
  source,
  assumed = [],
  empty = 'Fill in the figures above.',
}: {
  /** Undefined until there is enough to reckon with. */
  readonly words: AdviceWords | undefined;
  readonly cautions: readonly CautionId[];
  readonly sources: readonly Sourced[];
  readonly source: string;
  readonly assumed?: readonly string[];
  readonly empty?: string;
}) {
  return (
    <>
      <div role="status">
        {words ? (
          <AdviceCard words={words} cautions={cautions} sources={sources} assumed={assumed} />
        ) : (
          <p class={css.empty}>{empty}</p>
        )}
      </div>
      <p class={css.source}>{source}</p>
    </>
  );
}
