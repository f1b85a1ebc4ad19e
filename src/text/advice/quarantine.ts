import type { QuarantineAnswer } from '../../core/advice/quarantine.ts';
import { BORERS } from '../../core/physics/insects.ts';
import { daySpan, dayWords } from '../days.ts';
import { pct, shares, tidy } from './figures.ts';
import type { AdviceWords } from './words.ts';

const eggWords: Readonly<Record<QuarantineAnswer['eggs'], string>> = {
  'do not hatch': 'eggs of furniture beetle do not hatch',
  'some hatch': 'some eggs of furniture beetle hatch',
  'hatch well': 'eggs of furniture beetle hatch well: dry it out',
};

/** How long apart, when to look, and what one quiet summer is worth. Never “free of worm”. */
export function quarantineWords({ question, plan, checksAhead, borer, missed, eggs }: QuarantineAnswer): AdviceWords {
  const { name } = BORERS[borer];
  const { activity, relativeHumidityPct } = question;
  const over = checksAhead.length === 0;
  return {
    title: over ? `Watched until ${dayWords(plan.endsOn)}` : `Only watched: apart until ${dayWords(plan.endsOn)}`,
    tone: activity === 'active' ? 'stop' : 'care',
    lead: [
      activity === 'active' && 'Alive: freeze it or have it treated rather than wait, and watch it after.',
      'A year and one whole flight season, whichever ends later, in a lidded clear box on white paper. Any fresh dust starts it again.',
    ]
      .filter(Boolean)
      .join(' '),
    facts: [
      ['From', dayWords(plan.startedOn)],
      ['Flight season', daySpan(plan.season.first, plan.season.last)],
      ['To', dayWords(plan.endsOn)],
      ...(checksAhead[0] ? [['Look next on', dayWords(checksAhead[0])] as const] : []),
      ...missed.map(
        ({ larvae, likely, low, high }) =>
          [
            `Chance that ${larvae} larvae show nothing in one summer`,
            `${pct(likely * 100, 0)} (${shares(low, high)})`,
          ] as const,
      ),
    ],
    points: [
      `One quiet summer is not proof. Reckoned for ${name}, which takes ${yearsOf(borer)}; ${tidy(missed[0]?.years ?? 0, 2)} years taken as usual.`,
      'At the end say “no sign seen, probably clean”. Nobody can say that it is free of worm.',
      `In air at ${pct(relativeHumidityPct, 0)} ${eggWords[eggs]}.`,
    ],
    ...(over ? {} : { list: { title: `Look ${checksAhead.length} times`, items: checksAhead.map(dayWords) } }),
  };
}

function yearsOf(borer: QuarantineAnswer['borer']): string {
  const cycle = BORERS[borer].cycleYears;
  if (!cycle) return 'an unknown time';
  return cycle.low === cycle.high
    ? `about ${tidy(cycle.low, 2)} year${cycle.low === 1 ? '' : 's'}`
    : `${tidy(cycle.low, 2)} to ${tidy(cycle.high, 2)} years`;
}
