import type { Verdict } from '../core/catalogue.ts';
import { useApp } from '../ui/app.ts';
import css from './verdict-mark.module.css';

/** One shape per verdict, so that colour is never the only sign: disc, half disc, triangle, outline, cross. */
const shapes: Record<Verdict, string> = {
  sound: 'M12 3a9 9 0 1 0 .01 0z',
  repairable: 'M12 3a9 9 0 1 0 .01 0zM12 5.5v13a6.5 6.5 0 0 0 0-13z',
  risky: 'M12 2.5 22 20.5H2z',
  copyOnly: 'M12 2 22 12 12 22 2 12zM12 5.6 5.6 12 12 18.4 18.4 12z',
  leave: 'M5.2 2.8 12 9.6l6.8-6.8 2.4 2.4L14.4 12l6.8 6.8-2.4 2.4L12 14.4l-6.8 6.8-2.4-2.4L9.6 12 2.8 5.2z',
};

/** A verdict as shape and word. */
export function VerdictMark({
  verdict,
  size = 'line',
}: {
  readonly verdict: Verdict;
  readonly size?: 'line' | 'large';
}) {
  const { catalogue } = useApp();
  return (
    <span class={css.verdict} data-verdict={verdict} data-size={size}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d={shapes[verdict]} fill-rule="evenodd" />
      </svg>
      {catalogue.verdicts[verdict].term}
    </span>
  );
}
