import { useState } from 'preact/hooks';
import { entry } from '../core/catalogue.ts';
import { movedStep } from '../core/steps/order.ts';
import { isRunning } from '../core/steps/stints.ts';
import { waitOf, waitStand } from '../core/steps/waits.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { days, hoursRange } from '../text/format.ts';
import { minutesWords, momentWords } from '../text/moments.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { useNow, zoneHere } from './clock.ts';
import css from './plan-list.module.css';
import { SkipStep } from './skip-step.tsx';
import { StepHow } from './step-how.tsx';
import { stepName } from './step-name.ts';
import { StepPhotos } from './step-photos.tsx';
import { type StepProps, StepWork } from './step-work.tsx';
import { useWorkActions } from './work-actions.ts';

const waitWords = (hours: number): string => (hours < 36 ? `${Math.round(hours)} h` : days(Math.round(hours / 24)));

/** How far a step has come: a word, and for the eye a shape. */
function standOf(item: WorkItem, now: number): { readonly id: string; readonly word: string } | undefined {
  const wait = waitOf(item);
  if (item.stints.some(isRunning)) return { id: 'running', word: 'Running' };
  if (wait && waitStand(wait, now).state !== 'over')
    return { id: 'waiting', word: `Waits until ${momentWords(Date.parse(wait.until), now, zoneHere())}` };
  if (item.stand === 'done') return { id: 'done', word: 'Done' };
  if (item.stand === 'skipped') return { id: 'skipped', word: 'Left out' };
  return item.minutes > 0 ? { id: 'begun', word: 'Begun' } : undefined;
}

interface Said extends StepProps {
  /** Says something to a screen reader. */
  readonly onSay: (words: string) => void;
}

/** One step of the plan as a row that opens; with Alt and the arrow keys it moves. */
export function PlanStepRow({ of, items, item, day, onSay }: Said & { readonly day?: number | undefined }) {
  const { catalogue } = useApp();
  const now = useNow();
  const stand = standOf(item, now);
  const isOpen = item.stand === 'open';
  const moving = useMoving({ of, items, item, onSay });
  return (
    <li data-stand={stand?.id}>
      <details>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: a summary is a button of the platform's own */}
        <summary
          {...(isOpen ? { 'aria-keyshortcuts': 'Alt+ArrowUp Alt+ArrowDown' } : {})}
          onKeyDown={(event) => {
            const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : undefined;
            if (!by || !event.altKey || !isOpen) return;
            event.preventDefault();
            moving.move(by);
          }}
        >
          <span>
            {stepName(item, catalogue)}
            <small class="figures">
              {stand && <b>{stand.word}</b>}
              {stand && (isOpen || item.minutes > 0) && ' · '}
              {isOpen ? hoursRange(item.hours.o, item.hours.p) : item.minutes > 0 && minutesWords(item.minutes)}
              {isOpen && item.waitHours.m > 0 && `, then wait ${waitWords(item.waitHours.m)}`}
              {isOpen && day !== undefined && ` · day ${day}`}
            </small>
          </span>
        </summary>
        <div class={css.open}>
          {item.stand === 'skipped' ? (
            <LeftOut of={of} item={item} />
          ) : (
            <>
              {isOpen && <StepHow of={of} item={item} />}
              <StepWork of={of} items={items} item={item} />
              <StepPhotos of={of} item={item} />
              {isOpen && <Change of={of} item={item} {...moving} />}
            </>
          )}
        </div>
      </details>
    </li>
  );
}

function LeftOut({ item }: Pick<StepProps, 'of' | 'item'>) {
  const { catalogue } = useApp();
  const actions = useWorkActions();
  const reason = item.records.find(({ skipped }) => skipped)?.skipped?.reason.trim();
  return (
    <>
      <p>{reason ? `Left out: ${reason}` : 'Left out, without a reason given.'}</p>
      <Button label={`Take it up again: ${stepName(item, catalogue)}`} onPress={() => actions.takeUp(item)}>
        Take it up again
      </Button>
    </>
  );
}

interface Moving {
  readonly move: (by: -1 | 1) => void;
  /** Why the last move was refused; empty after one that was not. */
  readonly refused: string;
}

/** Moves a step in the order; a refused move says why. */
function useMoving({ of, items, item, onSay }: Said): Moving {
  const { catalogue } = useApp();
  const actions = useWorkActions();
  const [refused, setRefused] = useState('');
  const name = stepName(item, catalogue);
  const nameOf = (key: string): string => {
    const found = items.find((each) => each.key === key);
    return found ? stepName(found, catalogue) : key;
  };
  const move = (by: -1 | 1): void => {
    const outcome = movedStep(items, item.key, by);
    const words = outcome.ok
      ? ''
      : outcome.why === 'atTheEnd'
        ? `It is the ${by < 0 ? 'first' : 'last'} step already.`
        : `“${nameOf(outcome.earlier)}” must be done before “${nameOf(outcome.later)}”, so they stay in this order.`;
    setRefused(words);
    const held = document.activeElement;
    if (outcome.ok) actions.move(of.block, items, outcome);
    onSay(outcome.ok ? `${name} moved ${by < 0 ? 'earlier' : 'later'}.` : words);
    // A row that is put elsewhere in the page lets go of the focus.
    requestAnimationFrame(() => {
      if (held instanceof HTMLElement && held.isConnected) held.focus({ preventScroll: true });
    });
  };
  return { move, refused };
}

/** Changes to the plan itself: order, leaving out, taking out what was put in. A refused move says why. */
function Change({ of, item, move, refused }: Pick<StepProps, 'of' | 'item'> & Moving) {
  const { catalogue } = useApp();
  const actions = useWorkActions();
  const [skipping, setSkipping] = useState(false);
  const name = stepName(item, catalogue);
  const [record] = item.records;
  return (
    <>
      <div class={css.change}>
        <Button label={`Earlier: ${name}`} onPress={() => move(-1)}>
          ↑
        </Button>
        <Button label={`Later: ${name}`} onPress={() => move(1)}>
          ↓
        </Button>
        {item.added && record ? (
          <Button look="quiet" label={`Take it out: ${name}`} onPress={() => actions.removeStep(record)}>
            Take it out
          </Button>
        ) : (
          <Button
            look="quiet"
            label={`Leave it out: ${name}`}
            expanded={skipping}
            onPress={() => setSkipping(!skipping)}
          >
            Leave it out
          </Button>
        )}
      </div>
      {refused && <p class={css.refused}>{refused}</p>}
      {skipping && (
        <SkipStep
          usual={entry(catalogue.treatments, item.treatment)?.skipWhen ?? ''}
          onSkip={(reason) => actions.skip(of.block, item, reason)}
        />
      )}
    </>
  );
}
