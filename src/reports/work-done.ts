import { type Catalogue, entry } from '../core/catalogue.ts';
import type { ReportPart } from '../core/report.ts';
import { clockedHours, doneWithoutJob, type SpentLine, spentOn } from '../core/spent.ts';
import { dayWords } from '../text/days.ts';
import { hours, hoursRange, list, money } from '../text/format.ts';
import { spentWords } from '../text/spent.ts';
import type { BenchCase } from './case.ts';
import { fullColumns, paragraph, section } from './naming.ts';
import type { ReportWishes } from './wishes.ts';

/** One piece of work as it was done. */
export interface WorkRow {
  /** `YYYY-MM-DD`. */
  readonly day: string;
  readonly what: string;
  /** Tools and materials of the treatment, as the catalogue has them. */
  readonly withWhat: string;
  readonly estimate: { readonly likely: number; readonly low: number; readonly high: number } | null;
  readonly spent: number | null;
  readonly note: string;
}

/** Work in the order it was done: hours written down, and steps ticked as done for which nobody wrote hours. */
export function workRows({ jobs, steps, stints }: BenchCase, catalogue: Catalogue): readonly WorkRow[] {
  const treatment = (id: string | null) => entry(catalogue.treatments, id);
  const tools = (id: string | null): string => list(treatment(id)?.tools ?? []);
  const logged = jobs.map((job): WorkRow => {
    const step = steps.find(({ id }) => id === job.stepId);
    return {
      day: (step?.done?.at ?? job.at).slice(0, 10),
      what: treatment(job.treatment)?.term ?? (step?.words || job.treatment),
      withWhat: tools(job.treatment),
      estimate: { likely: job.estimateHours, low: job.lowHours, high: job.highHours },
      spent: job.actualHours,
      note: [job.note, step?.note].filter(Boolean).join('. '),
    };
  });
  const others = doneWithoutJob(steps, jobs).map(
    (step): WorkRow => ({
      day: step.done?.at.slice(0, 10) ?? '',
      what: treatment(step.treatment)?.term ?? (step.words || step.treatment || 'Own step'),
      withWhat: tools(step.treatment),
      estimate: step.hours && { likely: step.hours.m, low: step.hours.o, high: step.hours.p },
      spent: clockedHours(step, stints),
      note: step.note,
    }),
  );
  return [...logged, ...others].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** What was done, with what, and the hours estimated beside the hours it took. */
export function workDone(
  facts: BenchCase,
  rows: readonly WorkRow[],
  wishes: Pick<ReportWishes, 'hours'>,
  catalogue: Catalogue,
): ReportPart[] {
  if (rows.length === 0) return [paragraph('No work was written down.')];
  const both = rows.filter(({ estimate, spent }) => estimate && spent !== null);
  const skipped = facts.steps.flatMap(({ treatment, words, skipped: left }) =>
    left ? [`${entry(catalogue.treatments, treatment)?.term ?? words}: ${left.reason || 'no reason given'}`] : [],
  );
  return [
    fullColumns({
      kind: 'table',
      caption: 'Work in the order it was done',
      head: ['Day', 'Work', 'With', ...(wishes.hours ? ['Estimated', 'Took'] : []), 'Note'],
      rows: rows.map(({ day, what, withWhat, estimate, spent, note }) => [
        dayWords(day),
        what,
        withWhat || '–',
        ...(wishes.hours
          ? [
              estimate ? hoursRange(estimate.low, estimate.high) : '–',
              spent === null ? 'not written down' : hours(spent),
            ]
          : []),
        note,
      ]),
      ...(wishes.hours && both.length > 0
        ? {
            foot: [
              [
                'Together',
                '',
                '',
                hours(total(both.map(({ estimate }) => estimate?.likely ?? 0))),
                hours(total(both.map(({ spent }) => spent ?? 0))),
                '',
              ],
            ],
          }
        : {}),
      numeric: wishes.hours ? [3, 4] : [],
    }),
    ...(wishes.hours && both.length > 0 && both.length < rows.length
      ? [paragraph('Hours are added up where both the estimate and what it took are known.', 'small')]
      : []),
    ...(skipped.length > 0 ? [section('Left out of the work'), { kind: 'list' as const, items: skipped }] : []),
  ];
}

/** What it came to, line by line as the block's own page has it. */
export function costs(facts: BenchCase, wishes: Pick<ReportWishes, 'hours'>, catalogue: Catalogue): ReportPart[] {
  const { block, offers, sale, jobs, steps, stints, expenses, settings } = facts;
  const sums = spentOn({
    ...{ offers, jobs, steps, stints, expenses, sale: sale ?? null, treatments: catalogue.treatments },
    ...{ hourlyRate: settings.hourlyRate, rateCurrency: settings.currency },
  });
  const own = sums.find(({ currency }) => currency === block.currency);
  const elsewhere = sums.filter((sum) => sum !== own);
  const nameOf = ({ what, hours: worked = 0, ...line }: SpentLine): string => {
    if (what === 'hours')
      return wishes.hours
        ? `${hours(worked)} of own work at ${money(settings.hourlyRate, settings.currency)}`
        : 'Own work';
    return `${spentWords({ what, ...line }, catalogue)}${line.from === 'estimate' ? ' (trade estimate)' : ''}`;
  };
  return [
    section('Cost'),
    own
      ? {
          kind: 'table',
          caption: 'What it came to',
          head: ['Line', 'Amount'],
          rows: own.lines.map((line) => [nameOf(line), money(line.amount, own.currency)]),
          foot: [['Together', money(own.total, own.currency)]],
          numeric: [1],
        }
      : paragraph('No price, no purchase and no hours were written down.'),
    ...elsewhere.map(({ currency, lines, total: sum }) =>
      paragraph(
        `Not in the sum, being in another currency: ${list(lines.map((line) => `${nameOf(line)} ${money(line.amount, currency)}`))}${lines.length > 1 ? `, together ${money(sum, currency)}` : ''}.`,
        'small',
      ),
    ),
  ];
}
