import type { ComponentChildren } from 'preact';
import type { CautionId } from '../core/physics/cautions.ts';
import type { Sourced } from '../core/physics/sourced.ts';
import type { AdviceWords } from '../text/advice/words.ts';
import { sourceOf } from '../text/advice.ts';
import css from './advice.module.css';
import { Cautions } from './cautions.tsx';
import { SourceLine } from './source-line.tsx';

/** One piece of advice: cautions first, then what to do, the figures, why, and on what it rests. */
export function AdviceCard({
  words,
  cautions,
  assumed = [],
  needs = '',
  sources,
  about,
  more,
}: {
  readonly words: AdviceWords;
  readonly cautions: readonly CautionId[];
  readonly assumed?: readonly string[];
  readonly needs?: string;
  readonly sources: readonly Sourced[];
  /** Which findings, where that is not plain from the place. */
  readonly about?: string;
  /** Last inside the sources: the way on. */
  readonly more?: ComponentChildren;
}) {
  const { title, tone, lead, facts, points, list } = words;
  return (
    <section class={css.advice} data-tone={tone} aria-label={title}>
      <h3>{title}</h3>
      {about && <p class={css.small}>{about}</p>}
      <Cautions ids={cautions} />
      {lead && <p class={css.lead}>{lead}</p>}
      {needs && <p class={css.needs}>{needs}</p>}
      {facts.length > 0 && (
        <dl class={`${css.facts} figures`}>
          {facts.flatMap(([term, value]) => [<dt key={term}>{term}</dt>, <dd key={`${term} value`}>{value}</dd>])}
        </dl>
      )}
      {assumed.length > 0 && (
        <p class={css.small}>
          <b>Taken for granted:</b> {assumed.join('; ')}.
        </p>
      )}
      {points.length > 0 && (
        <details>
          <summary>Why</summary>
          <ul>
            {points.map((point) => (
              <li key={point}>{point}</li>
            ))}
          </ul>
        </details>
      )}
      {list && (
        <details>
          <summary>{list.title}</summary>
          <ol class="figures">
            {list.items.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ol>
        </details>
      )}
      {sources.length > 0 && (
        <details>
          <summary>Where this comes from</summary>
          {sources.map((source) => (
            <SourceLine key={source.source} source={sourceOf(source)} />
          ))}
          {more}
        </details>
      )}
    </section>
  );
}
