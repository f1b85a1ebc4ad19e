import css from './score-rule.module.css';

/** The score as a ruler: found as a filled length, attainable as a mark beyond it. */
export function ScoreRule({ found, after }: { readonly found: number; readonly after: number }) {
  const now = Math.round(found);
  const then = Math.round(after);
  return (
    <figure class={css.rule}>
      <svg
        viewBox="0 0 200 14"
        preserveAspectRatio="none"
        role="img"
        aria-label={`${now} of 100 as found, ${then} if every repair holds`}
      >
        <path class={css.track} d="M0 7h200" />
        <path class={css.reach} d={`M0 7h${then * 2}`} />
        <path class={css.found} d={`M0 7h${now * 2}`} />
        <path class={css.ticks} d="M0 1v12M50 4v6M100 4v6M150 4v6M200 1v12" />
        <path class={css.mark} d={`M${then * 2} 0v14`} />
      </svg>
      <figcaption class="figures">
        <b>{now}</b> as found · <b>{then}</b> restored
      </figcaption>
    </figure>
  );
}
