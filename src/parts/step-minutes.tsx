import { useState } from 'preact/hooks';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { hoursRange } from '../text/format.ts';
import { minutesWords, momentWords } from '../text/moments.ts';
import { useApp } from '../ui/app.ts';
import { Button } from '../ui/button.tsx';
import { NumberField } from '../ui/field.tsx';
import { zoneHere } from './clock.ts';
import css from './step-work.module.css';
import type { BlockCase } from './use-case.ts';
import { useWorkActions } from './work-actions.ts';

/** Minutes without the timer: what one knows it took. */
export function WriteMinutes({
  of,
  item,
  onWritten,
}: {
  readonly of: BlockCase;
  readonly item: WorkItem;
  readonly onWritten: () => void;
}) {
  const actions = useWorkActions();
  const [minutes, setMinutes] = useState<number | null>(null);
  return (
    <div class={css.write}>
      <NumberField
        label="It took me"
        unit="min"
        step={5}
        max={6000}
        chips={[15, 30, 60, 120]}
        value={minutes}
        onChange={setMinutes}
      />
      <Button
        disabled={!minutes}
        onPress={() => {
          if (!minutes) return;
          actions.writeDown(of.block, item, minutes);
          onWritten();
        }}
      >
        Write it down
      </Button>
    </div>
  );
}

/** What is written down so far, each stretch open to be corrected. */
export function SoFar({ item }: { readonly item: WorkItem }) {
  const { now } = useApp();
  const actions = useWorkActions();
  const said = item.stints.filter(({ minutes }) => minutes !== null);
  if (said.length === 0) return null;
  return (
    <details class={css.stints}>
      <summary class="figures">
        {minutesWords(item.minutes)} so far; likely {hoursRange(item.hours.o, item.hours.p)} in all
      </summary>
      <ul>
        {said.map((stint) => (
          <li key={stint.id}>
            <span class="figures">
              {momentWords(Date.parse(stint.began), now(), zoneHere())}: {minutesWords(stint.minutes ?? 0)}
            </span>
            <Button
              look="quiet"
              label={`Take out ${minutesWords(stint.minutes ?? 0)}`}
              onPress={() => actions.removeStint(stint, item)}
            >
              Take out
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
