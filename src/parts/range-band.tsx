import type { Range } from '../core/simulate/simulate.ts';
import { between } from '../text/format.ts';
import css from './range-band.module.css';

/**
 * A range one can see: the band holds 8 cases in 10, the notch is the middle; a price asked stands on it as a flag. Said in
 * words for those who do not see it.
 */
export function RangeBand({
  label,
  range,
  max,
  min = 0,
  say,
  flag,
}: {
  readonly label: string;
  readonly range: Range;
  readonly min?: number;
  readonly max: number;
  readonly say: (value: number) => string;
  readonly flag?: { readonly at: number; readonly label: string } | undefined;
}) {
  const x = (value: number): number => Math.min(200, Math.max(0, ((value - min) / Math.max(1e-9, max - min)) * 200));
  const words = `${label}: 8 times in 10 between ${say(range.p10)} and ${say(range.p90)}, the middle ${say(range.p50)}${flag ? `; ${flag.label} ${say(flag.at)}` : ''}`;
  const left = x(range.p10);
  const width = Math.max(2, x(range.p90) - left);
  return (
    <figure class={css.band}>
      <figcaption>
        <span>{label}</span>
        <b class="figures">{between(say(range.p10), say(range.p90))}</b>
      </figcaption>
      <svg viewBox="0 0 200 18" preserveAspectRatio="none" role="img" aria-label={words}>
        <path class={css.line} d="M0 9h200" />
        <rect class={css.range} x={left} y="4" width={width} height="10" />
        <path class={css.middle} d={`M${x(range.p50)} 2v14`} />
        {flag && <path class={css.flag} d={`M${x(flag.at)} 0v18`} />}
      </svg>
      {flag && (
        <p class={css.said} aria-hidden="true">
          <span class={css.key} /> {flag.label} {say(flag.at)}
        </p>
      )}
    </figure>
  );
}
