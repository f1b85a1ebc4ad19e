import type { Stint } from '../core/records.ts';
import { doubtAbout, longestStint, spanOf } from '../core/steps/stints.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { minutesWords, stopWatch, timeWords } from '../text/moments.ts';
import { useApp } from '../ui/app.ts';
import { useNow, zoneHere } from './clock.ts';
import { StintQuestion } from './stint-question.tsx';
import css from './timer-face.module.css';

/** A running timer, large; or, where it shows what nobody works at one sitting, the question how long it really was. */
export function TimerFace({ stint, item }: { readonly stint: Stint; readonly item: WorkItem }) {
  const { store } = useApp();
  const now = useNow(1000);
  const span = spanOf(stint, now);
  if (doubtAbout(span, longestStint(store.settings.value))) return <StintQuestion stint={stint} item={item} />;
  return (
    <p class={css.face} role="timer" aria-label={`Running for ${minutesWords(span)}`}>
      <b class="figures" aria-hidden="true">
        {stopWatch(span * 60_000)}
      </b>
      <small class="figures">
        since {timeWords(Date.parse(stint.began), zoneHere())}
        {item.minutes > 0 && `, ${minutesWords(item.minutes)} before`}
      </small>
    </p>
  );
}
