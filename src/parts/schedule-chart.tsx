import type { BenchSchedule, ScheduledStep } from '../core/schedule/types.ts';
import { dayWords } from '../text/days.ts';
import css from './schedule-chart.module.css';

interface Props {
  readonly schedule: BenchSchedule;
  readonly nameOf: (blockId: string) => string;
  /** What a step of a block is called, by its key in the schedule. */
  readonly stepName: (blockId: string, key: string) => string;
}

const WEEK = 7;
/** More marks than this under a phone's width run into each other. */
const MOST_MARKS = 5;

const dated = (today: string, day: number): string => {
  const at = new Date(`${today}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() + day);
  return at.toISOString().slice(0, 10);
};

const shortDay = (date: string): string =>
  new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' }).format(
    new Date(`${date}T00:00:00Z`),
  );

/** Days under the chart that carry a date: whole weeks from today, as many as fit. */
export function markedDays(days: number): readonly number[] {
  const weeks = Math.max(1, Math.ceil(days / WEEK / MOST_MARKS));
  return Array.from({ length: Math.floor((days - 1) / (weeks * WEEK)) + 1 }, (_, n) => n * weeks * WEEK);
}

/**
 * When each block is worked and when it waits: a row a block, solid on the evenings at the bench, hatched while it dries,
 * freezes or is watched. The same in words for whoever does not see it.
 */
export function ScheduleChart({ schedule, nameOf, stepName }: Props) {
  const { today, days } = schedule;
  const blocks = schedule.blocks.filter(({ steps }) => steps.length > 0).sort((a, b) => a.ready - b.ready);
  if (days < 1 || blocks.length === 0) return null;
  const at = (day: number): string => `${(100 * Math.max(0, Math.min(day, days))) / days}%`;
  const span = (from: number, to: number) => ({
    insetInlineStart: at(from),
    inlineSize: `${(100 * (Math.min(to, days) - Math.max(0, from))) / days}%`,
  });
  return (
    <figure class={css.chart}>
      <div aria-hidden="true">
        {blocks.map(({ blockId, steps, ready }) => (
          <div key={blockId} class={css.row}>
            <span class={css.name}>{nameOf(blockId)}</span>
            <span class={css.track}>
              {steps.map((step) => (
                <Bars key={step.treatment} step={step} span={span} />
              ))}
              <span class={css.ready} style={{ insetInlineStart: at(ready + 1) }} />
            </span>
          </div>
        ))}
        <div class={css.scale}>
          {markedDays(days).map((day) => (
            <span key={day} style={{ insetInlineStart: at(day) }}>
              {day === 0 ? 'today' : shortDay(dated(today, day))}
            </span>
          ))}
        </div>
      </div>
      <figcaption class={css.key}>
        <span class={css.work} /> at the bench <span class={css.wait} /> waiting <span class={css.end} /> ready
      </figcaption>
      <details>
        <summary>The same in words</summary>
        {blocks.map(({ blockId, steps }) => (
          <div key={blockId}>
            <p>
              <b>{nameOf(blockId)}</b>
            </p>
            <ul>
              {steps.map((step) => (
                <li key={step.treatment}>
                  {stepName(blockId, step.treatment)}: {inWords(step)}
                </li>
              ))}
            </ul>
          </div>
        ))}
      </details>
    </figure>
  );
}

function Bars({
  step,
  span,
}: {
  readonly step: ScheduledStep;
  readonly span: (from: number, to: number) => Record<string, string>;
}) {
  const { from, to, free, running } = step;
  const waitsFrom = running ? 0 : to + 1;
  return (
    <>
      {!running && <span class={css.work} style={span(from, to + 1)} />}
      {free > waitsFrom && <span class={css.wait} style={span(waitsFrom, free)} />}
    </>
  );
}

function inWords({ from, to, free, fromDate, toDate, freeDate, running }: ScheduledStep): string {
  if (running) return `waits until ${dayWords(freeDate)}`;
  const work = from === to ? dayWords(fromDate) : `${dayWords(fromDate)} to ${dayWords(toDate)}`;
  return free > to ? `${work}, then waits until ${dayWords(freeDate)}` : work;
}
