import { dayNumber, daysAfter, isDay, isoDateOf, laterOf } from './physics/civil-date.ts';
import { FREEZING } from './physics/freezing.ts';
import { checkDates, type Hemisphere, inSeason, quarantinePlan, type Season } from './physics/quarantine.ts';
import type { Quarantine, QuarantineCheck } from './records.ts';

/** What a block is watched for. */
export const WATCHES = ['alive', 'holes', 'mould', 'pests', 'unknownSource'] as const;
export type Watch = (typeof WATCHES)[number];

/**
 * How a watch ends. `season`: a year and one whole flight season, whichever ends later, unless so many rounds of freezing
 * held; then a rest, and no less than `leastDays` in all. `days`: so many, more in the flight season.
 * SOURCE: materials handbook §2.3 and 2.4 (season; rest of one to two weeks, two to three rounds), §3.2 (a month for
 * mould); trade handbook §6.1, three quarantines (common practice): two weeks, four in the season; freeze old holes and
 * watch two weeks; fresh dust: freeze twice, 30 days at least.
 */
export const WATCH_RULES = {
  alive: { ends: 'season', freezing: { rounds: FREEZING.rounds.low, restDays: FREEZING.restDays.high, leastDays: 30 } },
  holes: { ends: 'season', freezing: { rounds: 1, restDays: FREEZING.restDays.high, leastDays: 0 } },
  mould: { ends: 'days', days: 30, inSeasonDays: 30 },
  pests: { ends: 'days', days: 14, inSeasonDays: 28 },
  unknownSource: { ends: 'days', days: 14, inSeasonDays: 28 },
} as const satisfies Record<Watch, WatchRule>;

export type WatchRule =
  | {
      readonly ends: 'season';
      readonly freezing: { readonly rounds: number; readonly restDays: number; readonly leastDays: number };
    }
  | { readonly ends: 'days'; readonly days: number; readonly inSeasonDays: number };

/** The rule of a watch; one this app does not know is watched as holes are, the longest way. */
export const watchRule = (reason: string): WatchRule =>
  Object.hasOwn(WATCH_RULES, reason) ? WATCH_RULES[reason as Watch] : WATCH_RULES.holes;

/** A quarantine with all that decides how long it runs. */
export type QuarantineFacts = Pick<Quarantine, 'id' | 'blockId' | 'begunOn' | 'reason' | 'left'> & {
  readonly checks: readonly Pick<QuarantineCheck, 'on' | 'freshSigns'>[];
  /** Days on which a round of freezing that counts was over. */
  readonly frozenOn: readonly string[];
  readonly hemisphere: Hemisphere;
};

/** A look that was planned: its number counts from the first of the quarantine and stays when the clock starts again. */
export interface Look {
  readonly number: number;
  readonly on: string;
  /** The end of the quarantine. */
  readonly last: boolean;
  readonly taken: boolean;
}

export interface Course {
  /** The day it came, or the last on which something fresh was seen: the clock runs from there. */
  readonly startedOn: string;
  readonly restarts: number;
  /** What brings it to its end. */
  readonly by: 'season' | 'freezing' | 'days';
  readonly endsOn: string;
  /** The flight season that must pass; null where none need. */
  readonly season: Season | null;
  /** Looks from where the clock stands now, the last one being the end. Empty once the block has left. */
  readonly looks: readonly Look[];
  readonly state: 'running' | 'over' | 'left';
  readonly daysLeft: number;
}

interface Turn {
  readonly on: string;
  readonly startedOn: string;
  readonly restarts: number;
  readonly by: Course['by'];
  readonly endsOn: string;
  readonly season: Season | null;
}

/** Where the clock stands from a day on: what was seen and frozen up to it decides. */
function turnAt(on: string, { begunOn, reason, hemisphere, checks, frozenOn }: QuarantineFacts): Turn {
  const fresh = checks.filter((check) => check.freshSigns && check.on > begunOn && check.on <= on);
  const starts = [...new Set([begunOn, ...fresh.map((check) => check.on)])];
  const startedOn = starts.reduce(laterOf, begunOn);
  const restarts = starts.length - 1;
  const rule = watchRule(reason);
  if (rule.ends === 'days') {
    // The latest of all starts' ends: signs in October must not undo the four weeks begun in September.
    const endsOn = starts
      .map((day) => daysAfter(day, inSeason(day, hemisphere) ? rule.inSeasonDays : rule.days))
      .reduce(laterOf, begunOn);
    return { on, startedOn, restarts, by: 'days', endsOn, season: null };
  }
  // What was frozen before the last fresh sign has not held.
  const held = frozenOn.filter((day) => day > startedOn && day <= on).sort();
  const { rounds, restDays, leastDays } = rule.freezing;
  const lastRound = held.at(-1);
  if (held.length >= rounds && lastRound !== undefined) {
    const endsOn = laterOf(daysAfter(lastRound, restDays), daysAfter(startedOn, leastDays));
    return { on, startedOn, restarts, by: 'freezing', endsOn, season: null };
  }
  const { endsOn, season } = quarantinePlan(startedOn, hemisphere);
  return { on, startedOn, restarts, by: 'season', endsOn, season };
}

/** Every day on which the clock may have been set anew, oldest first. */
function turnsOf(facts: QuarantineFacts): readonly Turn[] {
  const days = [...facts.checks.filter(({ freshSigns }) => freshSigns).map(({ on }) => on), ...facts.frozenOn];
  const later = [...new Set(days.filter((day) => day > facts.begunOn))].sort();
  return [facts.begunOn, ...later]
    .map((day) => turnAt(day, facts))
    .filter((turn, index, all) => {
      const before = all[index - 1];
      return !before || before.startedOn !== turn.startedOn || before.endsOn !== turn.endsOn || before.by !== turn.by;
    });
}

/**
 * Whether a planned look was taken: somebody looked on the day or later, or earlier but nearer to it than to the one
 * before; the last one not before its day. SOURCE: our own rule, so that a look on Saturday serves for Sunday.
 */
function isTaken(on: string, before: string, last: boolean, checks: readonly string[]): boolean {
  const from = last ? on : isoDateOf(Math.ceil((dayNumber(before) + dayNumber(on)) / 2));
  return checks.some((day) => day >= from);
}

/**
 * How a quarantine stands on a day: until when, when to look, whether the clock was started again. A fresh sign starts
 * it anew and makes freezing before it void. Never says that a block is free of worm.
 * Looks or freezing dated before the quarantine began do not count; pure, and no stored record makes it throw.
 * SOURCE: {@link WATCH_RULES}; dates of looks from `checkDates` of the physics (materials handbook §2.3).
 */
export function courseOf(facts: QuarantineFacts, today: string): Course {
  const { begunOn, checks, hemisphere, left } = facts;
  const turns = turnsOf(facts);
  const now = turns.at(-1) ?? turnAt(begunOn, facts);
  // Numbers go on over a new start, so that a reminder of the third look moves and is not a stranger.
  const before = turns.slice(0, -1).reduce((count, turn, index) => {
    const next = turns[index + 1]?.on ?? turn.endsOn;
    return count + checkDates(turn.on, turn.endsOn, hemisphere).filter((day) => day <= next).length;
  }, 0);
  const looked = checks.map(({ on }) => on).filter((day) => day >= begunOn && day <= today && day > now.on);
  const days = checkDates(now.on, now.endsOn, hemisphere);
  const looks = days.map((on, index): Look => {
    const last = index === days.length - 1;
    return { number: before + index + 1, on, last, taken: isTaken(on, days[index - 1] ?? now.on, last, looked) };
  });
  const over = looks.at(-1)?.taken ?? true;
  const { startedOn, restarts, by, endsOn, season } = now;
  return {
    ...{ startedOn, restarts, by, endsOn, season },
    looks: left ? [] : looks,
    state: left ? 'left' : over ? 'over' : 'running',
    daysLeft: Math.max(0, isDay(today) ? dayNumber(endsOn) - dayNumber(today) : 0),
  };
}

/** The quarantine a block is in: the one begun last, unless it has been left. */
export const runningOf = <Q extends Pick<Quarantine, 'left'>>(quarantines: readonly Q[]): Q | undefined => {
  const last = quarantines.at(-1);
  return last && last.left === null ? last : undefined;
};
