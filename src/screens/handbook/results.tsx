import type { ComponentChildren } from 'preact';
import css from './calculators.module.css';

/** What comes out, line by line, and on one line where the formula comes from. */
export function Results({
  rows,
  source,
  empty = 'Fill in the figures above.',
}: {
  /** Undefined until there is enough to reckon with. */
  readonly rows: readonly (readonly [string, ComponentChildren])[] | undefined;
  readonly source: string;
  readonly empty?: string;
}) {
  return (
    <>
      <div role="status">
        {rows ? (
          <dl class={`${css.results} figures`}>
            {rows.flatMap(([term, value]) => [<dt key={term}>{term}</dt>, <dd key={`${term} value`}>{value}</dd>])}
          </dl>
        ) : (
          <p class={css.empty}>{empty}</p>
        )}
      </div>
      <p class={css.source}>{source}</p>
    </>
  );
}
