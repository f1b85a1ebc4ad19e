import type { HoleAsks, Physics } from '../catalogue.ts';
import { parseStamp } from '../clock.ts';
import { eggsIn } from '../physics/beetle-dryness.ts';
import { type BorerRanking, type HoleClues, rankBorers } from '../physics/borer-ranking.ts';
import type { CautionId } from '../physics/cautions.ts';
import { dayNumber, isoDateOf } from '../physics/civil-date.ts';
import { BORERS, type BorerId } from '../physics/insects.ts';
import { chanceNoneEmerges, type Hemisphere, type QuarantinePlan, quarantinePlan } from '../physics/quarantine.ts';
import type { Span } from '../physics/sourced.ts';
import type { HatBlock } from '../records.ts';
import { type Activity, activityOf, cluesOf } from './borers.ts';
import type { Outcome } from './outcome.ts';
import type { Subject } from './subject.ts';
import { SOURCES } from './usual.ts';

export interface QuarantineQuestion {
  /** `YYYY-MM-DD`: the day it came, or may come today. */
  readonly arrivedOn: string;
  readonly hemisphere: Hemisphere;
  readonly today: string;
  readonly relativeHumidityPct: number;
  /** Days on or after arrival on which new dust was seen. */
  readonly freshDustOn: readonly string[];
  readonly activity: Activity;
  readonly clues: HoleClues;
}

export interface QuarantineAnswer {
  readonly question: QuarantineQuestion;
  /** Until when, if nothing is done but watch. */
  readonly plan: QuarantinePlan;
  /** Days to look at it that are still to come, the end last. */
  readonly checksAhead: readonly string[];
  /** The insect whose years the chance is reckoned with: the likeliest that can come back. */
  readonly borer: BorerId;
  /** Chance that one summer shows nothing although larvae are in it; low and high from the years they may take. */
  readonly missed: readonly (Span & { readonly likely: number; readonly larvae: number; readonly years: number })[];
  readonly eggs: ReturnType<typeof eggsIn>;
}

/** Years furniture beetle usually takes, and larvae in a light and a heavier infestation. SOURCE: materials handbook §2.3, own model. */
export const PLANNING = { years: 3, larvae: [3, 8] } as const;

/** The likeliest insect that can attack dry wood again and has a known cycle; furniture beetle when none is left in the ranking. */
function returningBorer({ ranked }: BorerRanking): BorerId {
  for (const { suspect } of ranked) {
    if (suspect === 'toolHoles') continue;
    const { returnsToDryWood, cycleYears } = BORERS[suspect];
    if (cycleYears && (returnsToDryWood === 'yes' || returnsToDryWood === 'if damp')) return suspect;
  }
  return 'furnitureBeetle';
}

/** Chance that so many larvae of that insect all stay inside for one summer. SOURCE: {@link chanceNoneEmerges} */
export function missedBy(borer: BorerId, larvae: number): QuarantineAnswer['missed'][number] {
  const { low, high } = BORERS[borer].cycleYears ?? { low: PLANNING.years, high: PLANNING.years };
  const years = Math.min(high, Math.max(low, PLANNING.years));
  return {
    low: chanceNoneEmerges(low, larvae),
    likely: chanceNoneEmerges(years, larvae),
    high: chanceNoneEmerges(high, larvae),
    larvae,
    years,
  };
}

/**
 * Until when a suspect is kept apart if it is only watched, when to look, and what one quiet summer is worth. Never says
 * that a block is free of worm.
 * @throws RangeError for no such dates, dust before arrival, or a hole outside 0 to 40 mm
 * SOURCE: quarantine.ts of the physics; which years the chance is reckoned with is our choice.
 */
export function quarantineAnswer(question: QuarantineQuestion): QuarantineAnswer {
  const { arrivedOn, hemisphere, freshDustOn, today, clues, relativeHumidityPct } = question;
  const plan = quarantinePlan(arrivedOn, hemisphere, freshDustOn);
  const borer = returningBorer(rankBorers(clues));
  return {
    question,
    plan,
    checksAhead: plan.checkOn.filter((date) => date >= today),
    borer,
    missed: PLANNING.larvae.map((larvae) => missedBy(borer, larvae)),
    eggs: eggsIn(relativeHumidityPct),
  };
}

const DAY_MS = 86_400_000;

/**
 * Day a block went into quarantine, from the stamp of its place; null when it is not there, or nobody put it there on
 * purpose. Universal time, so it may be a day off; never later than today.
 */
export function quarantinedOn({ place, stamps }: Pick<HatBlock, 'place' | 'stamps'>, today: string): string | null {
  const put = place === 'quarantine' && Object.hasOwn(stamps, 'place') ? parseStamp(stamps.place ?? '') : null;
  return put && isoDateOf(Math.min(Math.floor(put.ms / DAY_MS), dayNumber(today)));
}

/** What goes with watching, and with the treatment that shortens it. */
export const QUARANTINE_CAUTIONS = ['freezeRefused', 'noOven', 'insecticide'] as const satisfies readonly CautionId[];

export const sourcesOfQuarantine = (borer: BorerId) => [
  SOURCES.season,
  SOURCES.missing,
  { ...BORERS[borer], source: `${BORERS[borer].name}: ${BORERS[borer].source}` },
  SOURCES.eggs,
];

/** Advice on holes: from the quarantine that runs, or from the day the block was put there, or from today. */
export function quarantineOutcome(
  subject: Subject,
  { from }: Extract<Physics, { from: HoleAsks }>,
): Outcome<QuarantineAnswer> {
  const { climate, today, block, apart } = subject;
  const since = apart?.begunOn ?? quarantinedOn(block, today);
  const answer = quarantineAnswer({
    arrivedOn: since ?? today,
    hemisphere: climate.hemisphere,
    today,
    relativeHumidityPct: climate.room.relativeHumidityPct,
    freshDustOn: apart?.freshOn.filter((day) => day >= apart.begunOn) ?? [],
    activity: activityOf(subject, from),
    clues: cluesOf(subject, from),
  });
  return {
    answer,
    needs: [],
    assumed: [
      ...(since === null ? ([{ code: 'arrival', on: today }] as const) : []),
      ...(climate.assumed.includes('hemisphere') ? ([{ code: 'hemisphere', half: climate.hemisphere }] as const) : []),
    ],
    cautions: QUARANTINE_CAUTIONS,
    sources: sourcesOfQuarantine(answer.borer),
  };
}
