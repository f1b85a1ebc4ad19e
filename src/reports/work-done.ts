import { type Catalogue, entry } from '../core/catalogue.ts';
import type { ReportPart } from '../core/report.ts';
import { dayWords } from '../text/days.ts';
import { hours, hoursRange, list, money } from '../text/format.ts';
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
  const others = steps
    .filter(({ id, done }) => done && !jobs.some(({ stepId }) => stepId === id))
    .filter(({ treatment: id, added }) => added || !jobs.some((job) => !job.stepId && job.treatment === id))
    .map((step): WorkRow => {
      const minutes = stints.filter(({ stepId }) => stepId === step.id).flatMap((stint) => stint.minutes ?? []);
      return {
        day: step.done?.at.slice(0, 10) ?? '',
        what: treatment(step.treatment)?.term ?? (step.words || step.treatment || 'Own step'),
        withWhat: tools(step.treatment),
        estimate: step.hours && { likely: step.hours.m, low: step.hours.o, high: step.hours.p },
        spent: minutes.length > 0 ? minutes.reduce((sum, each) => sum + each, 0) / 60 : null,
        note: step.note,
      };
    });
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

/** What it came to: the price, what was bought for it, and the owner's own hours at their rate. */
export function costs(
  { block, offers, expenses, settings }: BenchCase,
  rows: readonly WorkRow[],
  wishes: Pick<ReportWishes, 'hours'>,
  catalogue: Catalogue,
): ReportPart[] {
  const { currency } = block;
  const paid = offers.filter(({ what, currency: of }) => what === 'paid' && of === currency).at(-1);
  const spent = total(rows.flatMap(({ spent: each }) => each ?? []));
  const lines: (readonly [string, number])[] = [
    ...(paid ? [['Paid for the block', paid.amount] as const] : []),
    ...(paid?.fees ? [['On top of it, by the terms of the sale', paid.fees] as const] : []),
    ...expenses
      .filter((expense) => expense.currency === currency)
      .map(({ what, treatment, amount }) => {
        const use = entry(catalogue.treatments, treatment)?.term;
        return [[what, use && `for ${use}`].filter(Boolean).join(', ') || 'Bought for it', amount] as const;
      }),
    ...(spent > 0 && settings.currency === currency
      ? [
          [
            wishes.hours ? `${hours(spent)} of own work at ${money(settings.hourlyRate, currency)}` : 'Own work',
            Math.round(spent * settings.hourlyRate),
          ] as const,
        ]
      : []),
  ];
  const elsewhere = expenses.filter((expense) => expense.currency !== currency);
  return [
    section('Cost'),
    lines.length === 0
      ? paragraph('No price, no purchase and no hours were written down.')
      : {
          kind: 'table',
          caption: 'What it came to',
          head: ['Line', 'Amount'],
          rows: lines.map(([line, amount]) => [line, money(amount, currency)]),
          foot: [['Together', money(total(lines.map(([, amount]) => amount)), currency)]],
          numeric: [1],
        },
    ...(elsewhere.length > 0
      ? [
          paragraph(
            `Not in the sum, being in another currency: ${list(elsewhere.map(({ what, amount, currency: of }) => `${what} ${money(amount, of)}`))}.`,
            'small',
          ),
        ]
      : []),
  ];
}
