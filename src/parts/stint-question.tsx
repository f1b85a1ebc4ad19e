import { useState } from 'preact/hooks';
import type { Stint } from '../core/records.ts';
import { spanOf } from '../core/steps/stints.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { minutesWords, momentWords } from '../text/moments.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { NumberField } from '../ui/field.tsx';
import { useNow, zoneHere } from './clock.ts';
import css from './step-work.module.css';
import { useWorkActions } from './work-actions.ts';

/** A span of the timer nobody would believe: left running, or the clock was set. Asked about, never booked by itself. */
export function StintQuestion({ stint, item }: { readonly stint: Stint; readonly item: WorkItem }) {
  const { now } = useApp();
  useNow();
  const actions = useWorkActions();
  const [minutes, setMinutes] = useState<number | null>(null);
  const zone = zoneHere();
  const nowMs = now();
  const endMs = stint.ended === null ? nowMs : Date.parse(stint.ended);
  const span = spanOf(stint, endMs);
  const likely = Math.max(5, Math.round((item.hours.m * 60) / 5) * 5);
  return (
    <div class={css.question}>
      <p>
        {span < 0 ? (
          <>
            The phone’s clock was set back: this timer began at a time that is still to come,{' '}
            {momentWords(Date.parse(stint.began), nowMs, zone)}.
          </>
        ) : stint.ended === null ? (
          <>
            The timer runs since {momentWords(Date.parse(stint.began), nowMs, zone)}, {minutesWords(span)} by now.
          </>
        ) : (
          <>
            The timer ran from {momentWords(Date.parse(stint.began), nowMs, zone)} for {minutesWords(span)}.
          </>
        )}{' '}
        How long did you work?
      </p>
      <NumberField
        label="Minutes of work"
        unit="min"
        step={5}
        max={6000}
        chips={[...new Set([30, likely, 120])].sort((a, b) => a - b)}
        value={minutes}
        onChange={setMinutes}
      />
      <div class={css.buttons}>
        <Button
          disabled={minutes === null}
          onPress={() => minutes !== null && actions.sayMinutes(stint, minutes, item)}
        >
          Count these
        </Button>
        {span > 0 && (
          <Button look="quiet" onPress={() => actions.sayMinutes(stint, Math.round(span), item)}>
            All of it
          </Button>
        )}
        <Button look="quiet" onPress={() => actions.removeStint(stint, item)}>
          None of it
        </Button>
      </div>
    </div>
  );
}
