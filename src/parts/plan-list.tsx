import { useState } from 'preact/hooks';
import type { ThreePoint } from '../core/catalogue.ts';
import { daysFor, eveningsOf } from '../core/days.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';
import { days, hoursRange, money } from '../text/format.ts';
import { minutesWords } from '../text/moments.ts';
import { Button } from '../ui/button.tsx';
import { to } from '../ui/route.ts';
import { AddStep } from './add-step.tsx';
import { HeldQuestions } from './held-questions.tsx';
import { MoveButton } from './place-field.tsx';
import css from './plan-list.module.css';
import { PlanStepRow } from './plan-step.tsx';
import type { BlockCase } from './use-case.ts';
import { useWork } from './use-work.ts';

/** The work on a block in the order it must be done: each step to be read, done, left out or moved; and steps of one's own. */
export function PlanList({ of }: { readonly of: BlockCase }) {
  const items = useWork(of);
  const [adding, setAdding] = useState(false);
  const [said, setSaid] = useState('');
  const open = items.filter(({ stand }) => stand === 'open');
  const elapsed = daysFor(
    { steps: open.map(({ key, hours, waitHours }) => ({ treatment: key, hours, waitHours })) },
    eveningsOf(of.settings),
  );
  const dayOf = new Map(elapsed.steps.map(({ treatment, from }) => [treatment, from + 1]));
  return (
    <>
      <Sum of={of} items={items} days={elapsed.total} />
      <p class="visually-hidden" role="status">
        {said}
      </p>
      <ol class={css.steps}>
        {items.map((item) => (
          <PlanStepRow
            key={item.key}
            of={of}
            items={items}
            item={item}
            {...(dayOf.has(item.key) ? { day: dayOf.get(item.key) } : {})}
            onSay={setSaid}
          />
        ))}
      </ol>
      <p class={css.add}>
        <Button onPress={() => setAdding(true)}>Put a step in</Button>
      </p>
      <HeldQuestions of={of} items={items} />
      {adding && <AddStep of={of} items={items} onClose={() => setAdding(false)} />}
    </>
  );
}

const hoursLeft = (items: readonly WorkItem[], pick: keyof ThreePoint): number =>
  items.reduce((sum, { hours, minutes }) => sum + Math.max(0, hours[pick] - minutes / 60), 0);

/** What is left, what was worked, and the next place for the block. */
function Sum({
  of,
  items,
  days: total,
}: {
  readonly of: BlockCase;
  readonly items: readonly WorkItem[];
  readonly days: number;
}) {
  const { block } = of;
  const open = items.filter(({ stand }) => stand === 'open');
  const worked = items.reduce((sum, { minutes }) => sum + minutes, 0);
  const consumables = open.reduce((sum, item) => sum + item.consumables, 0);
  const place = (where: 'toDo' | 'ready', label: string) => <MoveButton of={of} place={where} label={label} />;
  if (open.length === 0) {
    return (
      <div class={css.sum}>
        <p>All its steps are done or left out{worked > 0 && <>, {minutesWords(worked)} of work written down</>}.</p>
        {block.place === 'onTheBench' && place('ready', 'Put it with the ready ones')}
      </div>
    );
  }
  return (
    <div class={css.sum}>
      <p>
        <b class="figures">{hoursRange(hoursLeft(open, 'o'), hoursLeft(open, 'p'))}</b> of work{worked > 0 && ' left'}{' '}
        over <b class="figures">{days(total)}</b>, {money(consumables, block.currency)} of consumables.
        {worked > 0 && <> {minutesWords(worked)} written down so far.</>}
      </p>
      <p class={css.adds}>
        From every step at its least to every step at its most, with the steps that protect marks: wider than the
        answer’s hours, which hold 8 times in 10.
      </p>
      {(block.place === 'lookingAt' || block.place === 'letGo') && place('toDo', 'Put it on the list of work to do')}
      {(block.place === 'toDo' || block.place === 'onTheBench') && (
        <a class={css.toBench} href={to('/bench')}>
          Tonight at the bench
        </a>
      )}
    </div>
  );
}
