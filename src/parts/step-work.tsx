import { useState } from 'preact/hooks';
import { isInDoubt, isRunning } from '../core/steps/stints.ts';
import { blockWait } from '../core/steps/waits.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { list } from '../text/format.ts';
import { momentWords } from '../text/moments.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { useNow, zoneHere } from './clock.ts';
import { StepDone } from './step-done.tsx';
import { SoFar, WriteMinutes } from './step-minutes.tsx';
import { stepName } from './step-name.ts';
import css from './step-work.module.css';
import { StintQuestion } from './stint-question.tsx';
import { TimerFace } from './timer-face.tsx';
import type { BlockCase } from './use-case.ts';
import { useWorkActions } from './work-actions.ts';

export interface StepProps {
  readonly of: BlockCase;
  /** All of the block's work, in order. */
  readonly items: readonly WorkItem[];
  readonly item: WorkItem;
}

/**
 * The doing of one step: start and stop, or minutes as they are said; done; and what it then waits for.
 * @param inTurn keys of steps that are seen to come before it anyway
 */
export function StepWork({ of, items, item, inTurn = [] }: StepProps & { readonly inTurn?: readonly string[] }) {
  if (item.stand === 'done') return <StepDone of={of} item={item} />;
  return (
    <div class={css.work}>
      {item.stints.filter(isInDoubt).map((stint) => (
        <StintQuestion key={stint.id} stint={stint} item={item} />
      ))}
      <BeforeIt items={items} item={item} inTurn={inTurn} />
      <Doing of={of} item={item} />
    </div>
  );
}

/** What stands in the way: a wait that runs, or steps that come first. Said, not forbidden: the hands know better. */
function BeforeIt({ items, item, inTurn }: Omit<StepProps, 'of'> & { readonly inTurn: readonly string[] }) {
  const { catalogue } = useApp();
  const now = useNow();
  const wait = blockWait(items, now);
  const before = item.after
    .filter((key) => !inTurn.includes(key))
    .flatMap((key) => items.find((each) => each.key === key) ?? []);
  return (
    <>
      {wait && (
        <p class={css.wait}>
          Still waiting after “{stepName(wait.item, catalogue)}”, until{' '}
          {momentWords(Date.parse(wait.wait.until), now, zoneHere())}.
        </p>
      )}
      {before.length > 0 && (
        <p class={css.hint}>First: {list(before.map((each) => `“${stepName(each, catalogue)}”`))}.</p>
      )}
    </>
  );
}

function Doing({ of, item }: Pick<StepProps, 'of' | 'item'>) {
  const { catalogue } = useApp();
  const actions = useWorkActions();
  const [writing, setWriting] = useState(false);
  const name = stepName(item, catalogue);
  const running = item.stints.find(isRunning);
  const start = item.minutes > 0 ? 'Go on' : 'Start';
  return (
    <>
      {running && <TimerFace stint={running} item={item} />}
      <div class={css.buttons}>
        {running ? (
          <Button label={`Pause: ${name}`} onPress={() => actions.stop(running)}>
            Pause
          </Button>
        ) : (
          <Button label={`${start}: ${name}`} onPress={() => actions.start(of.block, item)}>
            {start}
          </Button>
        )}
        <Button label={`Done: ${name}`} onPress={() => actions.finish(of.block, item)}>
          Done
        </Button>
        <Button
          look="quiet"
          expanded={writing}
          label={`Write minutes down: ${name}`}
          onPress={() => setWriting(!writing)}
        >
          Write minutes down
        </Button>
      </div>
      {writing && <WriteMinutes of={of} item={item} onWritten={() => setWriting(false)} />}
      <SoFar item={item} />
    </>
  );
}
