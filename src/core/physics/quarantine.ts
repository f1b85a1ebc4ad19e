import { dayNumber, daysAfter, isoDateOf, laterOf } from './civil-date.ts';
import { requirePositive, requireRange, requireWhole } from './range.ts';

export type Hemisphere = 'north' | 'south';

/**
 * Emergence season, first and last day as month-day: adults leave the wood then, so then fresh dust shows.
 * SOURCE: own rule around published months (April to September in the north, turned round for the south).
 */
export const EMERGENCE_SEASON = {
  north: { first: '04-01', last: '09-30', crossesNewYear: false },
  south: { first: '10-01', last: '03-31', crossesNewYear: true },
} as const;

/**
 * Least stay, and how often to look. SOURCE: a year in a lidded box is trade advice (looked up as advice, no science); intervals common practice.
 */
export const QUARANTINE_RULE = { leastDays: 365, inSeasonDays: 14, offSeasonDays: 30 } as const;

export interface Season {
  readonly first: string;
  readonly last: string;
}

const seasonStarting = (year: number, hemisphere: Hemisphere): Season => {
  const { first, last, crossesNewYear } = EMERGENCE_SEASON[hemisphere];
  return { first: `${year}-${first}`, last: `${crossesNewYear ? year + 1 : year}-${last}` };
};

/**
 * First whole emergence season on or after a date.
 * @param isoDate `YYYY-MM-DD`, years 1000 to 9990
 * @throws RangeError for no such date
 * SOURCE: {@link EMERGENCE_SEASON}
 */
export function firstWholeSeason(isoDate: string, hemisphere: Hemisphere): Season {
  const year = Number(isoDateOf(dayNumber(isoDate)).slice(0, 4));
  const thisYear = seasonStarting(year, hemisphere);
  return thisYear.first >= isoDate ? thisYear : seasonStarting(year + 1, hemisphere);
}

/** Is the date inside an emergence season? @throws RangeError for no such date */
export function inSeason(isoDate: string, hemisphere: Hemisphere): boolean {
  const monthDay = isoDateOf(dayNumber(isoDate)).slice(5);
  const { first, last, crossesNewYear } = EMERGENCE_SEASON[hemisphere];
  return crossesNewYear ? monthDay >= first || monthDay <= last : monthDay >= first && monthDay <= last;
}

export interface QuarantinePlan {
  /** Arrival, or the last date fresh dust was seen: the clock runs from there. */
  readonly startedOn: string;
  readonly restarts: number;
  readonly season: Season;
  readonly endsOn: string;
  /** Dates to look, the last one being the end itself. */
  readonly checkOn: readonly string[];
}

/**
 * Quarantine of a suspected block: at least 365 days and one whole emergence season, whichever ends later; any fresh dust starts it again.
 * @param arrivedOn `YYYY-MM-DD`, years 1000 to 9990 · freshDustOn dates on or after arrival, any order
 * @throws RangeError for no such date, or dust before arrival
 * SOURCE: {@link QUARANTINE_RULE}, {@link EMERGENCE_SEASON}; the rule is ours. The end says "no sign seen", never "free of worm".
 */
export function quarantinePlan(
  arrivedOn: string,
  hemisphere: Hemisphere,
  freshDustOn: readonly string[] = [],
): QuarantinePlan {
  dayNumber(arrivedOn);
  for (const date of freshDustOn)
    if (dayNumber(date) < dayNumber(arrivedOn))
      throw new RangeError(`freshDustOn: got ${date}, expected a date on or after the arrival ${arrivedOn}.`);
  const startedOn = freshDustOn.reduce(laterOf, arrivedOn);
  const season = firstWholeSeason(startedOn, hemisphere);
  const endsOn = laterOf(daysAfter(startedOn, QUARANTINE_RULE.leastDays), season.last);
  return {
    startedOn,
    restarts: new Set(freshDustOn).size,
    season,
    endsOn,
    checkOn: checkDates(startedOn, endsOn, hemisphere),
  };
}

/**
 * Dates to look: every 14 days in the season, every 30 outside it; a wait that runs into a season is cut so that no 14 days of it go unwatched.
 * @throws RangeError for no such dates
 * SOURCE: {@link QUARANTINE_RULE}, common practice.
 */
export function checkDates(startedOn: string, endsOn: string, hemisphere: Hemisphere): readonly string[] {
  const { inSeasonDays, offSeasonDays } = QUARANTINE_RULE;
  const dates: string[] = [];
  for (let date = startedOn; date < endsOn; ) {
    const seasonal = daysAfter(firstWholeSeason(date, hemisphere).first, inSeasonDays - 1);
    const usual = daysAfter(date, inSeason(date, hemisphere) ? inSeasonDays : offSeasonDays);
    const next = inSeason(date, hemisphere) || usual < seasonal ? usual : seasonal;
    date = next < endsOn ? next : endsOn;
    dates.push(date);
  }
  return dates;
}

/**
 * Chance that an infested block shows nothing for so many summers: (1 − summers/cycle)^larvae, larvae evenly spread over the ages.
 * @param cycleYears above 0 to 30 · larvae whole, 0 or more · summers watched, whole, 1 or more
 * @returns 0 to 1; 0 once every age must have emerged
 * @throws RangeError outside those
 * SOURCE: own model.
 */
export function chanceNoneEmerges(cycleYears: number, larvae: number, summers = 1): number {
  requirePositive('cycleYears', cycleYears, 30);
  requireWhole('larvae', larvae, 0);
  requireWhole('summers', summers, 1);
  return requireRange('share', Math.max(0, 1 - summers / cycleYears), 0, 1) ** larvae;
}

export type QuarantineStanding =
  | {
      readonly kind: 'running';
      readonly daysLeft: number;
      readonly nextCheckOn: string;
      readonly overdue: readonly string[];
    }
  /** One season without a sign is not proof: for a light infestation say "probably clean", or treat. */
  | { readonly kind: 'probably-clean'; readonly overdue: readonly string[] };

/**
 * Where a quarantine stands on a given day.
 * @param checkedOn dates on which the block was looked at and showed nothing
 * @throws RangeError for no such date
 * SOURCE: {@link quarantinePlan}
 */
export function quarantineStanding(
  plan: QuarantinePlan,
  today: string,
  checkedOn: readonly string[],
): QuarantineStanding {
  const day = dayNumber(today);
  const lastChecked = checkedOn.filter((date) => dayNumber(date) <= day).reduce(laterOf, plan.startedOn);
  const overdue = plan.checkOn.filter((date) => date <= today && date > lastChecked);
  if (today >= plan.endsOn && lastChecked >= plan.endsOn) return { kind: 'probably-clean', overdue };
  const nextCheckOn = plan.checkOn.find((date) => date > lastChecked) ?? plan.endsOn;
  return { kind: 'running', daysLeft: Math.max(0, dayNumber(plan.endsOn) - day), nextCheckOn, overdue };
}
