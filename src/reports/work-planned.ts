import { type Catalogue, entry } from '../core/catalogue.ts';
import type { ReportPart } from '../core/report.ts';
import { days, hoursRange, money, opening } from '../text/format.ts';
import type { ReportCase } from './case.ts';
import type { ReportWishes } from './wishes.ts';

/** Cautions of some steps, one item a treatment. */
export const cautionsOf = (steps: readonly { readonly treatment: string }[], catalogue: Catalogue): readonly string[] =>
  steps.flatMap(({ treatment }) => {
    const known = entry(catalogue.treatments, treatment);
    return known && known.cautions.length > 0 ? [`${known.term}: ${known.cautions.join(' ')}`] : [];
  });

/** Hours of waiting as one says them. */
export const waitWords = (waitHours: number): string =>
  waitHours <= 0 ? '–' : waitHours < 36 ? `${waitHours} h` : days(Math.round(waitHours / 24));

/** Recommended work with its cautions before its steps. */
export function workPlanned(
  { assessment, block, settings }: ReportCase,
  wishes: ReportWishes,
  catalogue: Catalogue,
): ReportPart[] {
  const { plan: work, days: elapsed } = assessment;
  const cautions = cautionsOf(work.steps, catalogue);
  return [
    { kind: 'heading', level: 2, text: 'Recommended work' },
    {
      kind: 'paragraph',
      text: [
        wishes.hours && `${opening(hoursRange(work.hours.o, work.hours.p))} of work.`,
        `About ${days(elapsed.total)} with the waits, in evenings of ${settings.eveningHours} h.`,
        wishes.prices && `Consumables about ${money(work.consumables, block.currency)}.`,
        'Hours and days are trade estimates.',
      ]
        .filter(Boolean)
        .join(' '),
    },
    ...(cautions.length > 0
      ? [
          { kind: 'heading' as const, level: 3 as const, text: 'Cautions' },
          { kind: 'list' as const, tone: 'caution' as const, items: cautions },
        ]
      : []),
    {
      kind: 'table',
      caption: 'Steps, in the order they must be done',
      head: ['Step', 'How', ...(wishes.hours ? ['Hours'] : []), 'Then wait'],
      rows: work.steps.map((step) => [
        entry(catalogue.treatments, step.treatment)?.term ?? step.treatment,
        entry(catalogue.treatments, step.treatment)?.how ?? '',
        ...(wishes.hours ? [hoursRange(step.hours.o, step.hours.p)] : []),
        waitWords(step.waitHours.m),
      ]),
      numeric: [],
    },
  ];
}
