import { entry } from '../../core/catalogue.ts';
import type { BenchSchedule } from '../../core/schedule/types.ts';
import { blockName } from '../../parts/block-name.ts';
import { ScheduleChart } from '../../parts/schedule-chart.tsx';
import { stepName } from '../../parts/step-name.ts';
import type { BenchWork } from '../../parts/use-bench.ts';
import { dayWords } from '../../text/days.ts';
import { days, hours } from '../../text/format.ts';
import { useApp } from '../../ui/app.ts';
import { to } from '../../ui/route.ts';
import css from './bench.module.css';

/** When all of it is ready, why it cannot be sooner, and block by block until when. */
export function AllOfIt({
  works,
  schedule,
}: {
  readonly works: readonly BenchWork[];
  readonly schedule: BenchSchedule;
}) {
  const { catalogue } = useApp();
  const nameOf = (blockId: string): string => {
    const work = works.find(({ of }) => of.block.id === blockId);
    return work ? blockName(work.of.block, catalogue) : 'A block that is gone';
  };
  const { bound, lastDate } = schedule;
  const busiest = bound.busiest && entry(catalogue.resources, bound.busiest.resource)?.term;
  if (!lastDate) return <p>Nothing is left to do.</p>;
  return (
    <>
      <p>
        <b>{hours(schedule.hours)}</b> of work on {schedule.evenings.length}{' '}
        {schedule.evenings.length === 1 ? 'evening' : 'evenings'}. All of it can be ready on <b>{dayWords(lastDate)}</b>
        , {days(schedule.days)} counting today.
      </p>
      <p class={css.hint}>
        {schedule.days <= bound.days
          ? 'No order of work is sooner'
          : `No order of work takes less than ${days(bound.days)}`}
        {bound.by === 'criticalPath' &&
          bound.criticalPath &&
          `: ${nameOf(bound.criticalPath.blockId)} needs them by itself`}
        {bound.by === 'busiest' && busiest && `: ${busiest} is busy that long`}.
        {schedule.inOrderDays > schedule.days &&
          ` Taken simply as they stand, one evening after the other, it would take ${days(schedule.inOrderDays)}.`}
      </p>
      <ScheduleChart
        schedule={schedule}
        nameOf={nameOf}
        stepName={(blockId, key) => {
          const item = works.find(({ of }) => of.block.id === blockId)?.items.find((one) => one.key === key);
          return item ? stepName(item, catalogue) : key;
        }}
      />
      <ol class={css.ready}>
        {[...schedule.blocks]
          .sort((a, b) => a.ready - b.ready)
          .map(({ blockId, readyDate }) => (
            <li key={blockId}>
              <a href={to('/block/:id', { id: blockId })}>{nameOf(blockId)}</a>
              <span class="figures">{readyDate ? dayWords(readyDate) : 'all done'}</span>
            </li>
          ))}
      </ol>
      <p class={css.hint}>
        Likely hours at your pace, likely waits. Your evenings are in <a href={to('/settings')}>Settings</a>; a file for
        your calendar is under <a href={to('/quarantine')}>what falls due</a>.
      </p>
    </>
  );
}
