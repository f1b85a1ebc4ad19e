import { useState } from 'preact/hooks';
import { isInDoubt, isRunning } from '../core/steps/stints.ts';
import { waitOf, waitStand } from '../core/steps/waits.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { hours } from '../text/format.ts';
import { minutesWords, momentWords, spanWords } from '../text/moments.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { useNow, zoneHere } from './clock.ts';
import { WriteMinutes } from './step-minutes.tsx';
import { stepName } from './step-name.ts';
import css from './step-work.module.css';
import { StintQuestion } from './stint-question.tsx';
import type { BlockCase } from './use-case.ts';
import { useWorkActions } from './work-actions.ts';

const DAY_MS = 86_400_000;

/** A step that was done: when, how long it took beside the estimate, and the wait that followed. */
export function StepDone({ of, item }: { readonly of: BlockCase; readonly item: WorkItem }) {
  const { store, catalogue } = useApp();
  const actions = useWorkActions();
  const now = useNow();
  const [writing, setWriting] = useState(false);
  const ids = new Set(item.records.map(({ id }) => id));
  const job = store.jobsOf(of.block.id).find(({ stepId }) => stepId !== undefined && ids.has(stepId));
  const at = item.records.find(({ done }) => done)?.done?.at;
  const name = stepName(item, catalogue);
  return (
    <div class={css.work}>
      {item.stints
        .filter((stint) => isInDoubt(stint) || isRunning(stint))
        .map((stint) => (
          <StintQuestion key={stint.id} stint={stint} item={item} />
        ))}
      <p class="figures">
        {at && `Done ${momentWords(Date.parse(at), now, zoneHere())}. `}
        {item.minutes > 0
          ? `Took ${minutesWords(item.minutes)}${job ? `, estimated ${hours(job.estimateHours)}` : ''}.`
          : 'No time written down.'}
      </p>
      <WaitLine item={item} now={now} />
      <div class={css.buttons}>
        <Button
          look="quiet"
          expanded={writing}
          label={`Write minutes down: ${name}`}
          onPress={() => setWriting(!writing)}
        >
          Write minutes down
        </Button>
        <Button look="quiet" label={`Not done after all: ${name}`} onPress={() => actions.reopen(item)}>
          Not done after all
        </Button>
      </div>
      {writing && <WriteMinutes of={of} item={item} onWritten={() => setWriting(false)} />}
    </div>
  );
}

/** How long the wait still runs, in the phone's own time; it can be cut short or drawn out. */
export function WaitLine({ item, now }: { readonly item: WorkItem; readonly now: number }) {
  const { catalogue } = useApp();
  const actions = useWorkActions();
  const wait = waitOf(item);
  if (!wait) return null;
  const stand = waitStand(wait, now);
  const untilMs = Date.parse(wait.until);
  const name = stepName(item, catalogue);
  if (stand.state === 'over')
    return <p class={css.over}>Its wait is over since {momentWords(untilMs, now, zoneHere())}.</p>;
  return (
    <>
      <p class={css.wait}>
        {stand.state === 'clockBehind' ? (
          <>
            By this phone’s clock the wait has not begun yet: it was set back. It ends{' '}
            {momentWords(untilMs, now, zoneHere())}.
          </>
        ) : (
          <>
            Waits until <b class="figures">{momentWords(untilMs, now, zoneHere())}</b>, {spanWords(stand.leftMs)} to go.
          </>
        )}
      </p>
      <div class={css.buttons}>
        <Button look="quiet" label={`Ready already: ${name}`} onPress={() => actions.setWaitEnd(item, now)}>
          Ready already
        </Button>
        <Button look="quiet" label={`A day longer: ${name}`} onPress={() => actions.setWaitEnd(item, untilMs + DAY_MS)}>
          A day longer
        </Button>
      </div>
    </>
  );
}
