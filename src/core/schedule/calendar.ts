import { AppError } from '../errors.ts';
import { dayNumber, isoDateOf } from '../physics/civil-date.ts';
import type { BenchInput } from './types.ts';

/** Evenings from day 0 on: hours of one pair of hands by day. */
export interface Calendar {
  /** Hours on a day, 0 where there is no evening. */
  hoursOn(day: number): number;
  /** First day from `day` on with an evening. */
  next(day: number): number;
  /** First day by which so many hours have passed since the beginning of `day`; that day itself for none. */
  after(day: number, hours: number): number;
  dateOf(day: number): string;
  dayOf(date: string): number;
}

/** Below this an evening counts as used up and a step as done; hours, far under a minute. As in `days.ts`. */
export const NOTHING = 1e-9;

/** A schedule longer than this, a hundred years, is no plan but a damaged figure. Own choice. */
export const MOST_DAYS = 36_525;

/** Monday is 0. 1 January 1970, day 0 of the civil dates, was a Thursday. */
const weekdayOf = (dayNumberOfDate: number): number => (((dayNumberOfDate + 3) % 7) + 7) % 7;

const workable = (hours: number | undefined): number => (hours !== undefined && hours > NOTHING ? hours : 0);

/**
 * @throws RangeError for a date that is none, or when no weekday has an evening; AppError when it looks further ahead than
 * {@link MOST_DAYS}
 */
export function calendarOf({
  today,
  hours,
  datesOff,
  hoursOn = {},
}: Omit<BenchInput, 'blocks' | 'capacities'>): Calendar {
  const first = dayNumber(today);
  const week = Array.from({ length: 7 }, (_, weekday) => workable(hours[weekday]));
  if (!week.some((each) => each > 0))
    throw new RangeError('No evening to work in: expected at least one weekday with more than 0 hours.');
  const off = new Set(datesOff);
  const own = new Map(Object.entries(hoursOn));
  /** Hours of each day as far as anyone has asked, and their sum before it. */
  const known: number[] = [];
  const sums: number[] = [0];

  function reach(day: number): void {
    if (day > MOST_DAYS) throw new AppError('schedule-too-long');
    while (known.length <= day) {
      const at = known.length;
      // Only named dates need a name made for them.
      const date = off.size > 0 || own.size > 0 ? isoDateOf(first + at) : '';
      const usual = off.has(date) ? 0 : (week[weekdayOf(first + at)] as number);
      const there = own.has(date) ? workable(own.get(date)) : usual;
      known.push(there);
      sums.push((sums[at] as number) + there);
    }
  }

  const hoursOnDay = (day: number): number => {
    if (day >= known.length) reach(day);
    return known[day] as number;
  };
  return {
    hoursOn: hoursOnDay,
    next(day) {
      let at = day;
      while (hoursOnDay(at) === 0) at += 1;
      return at;
    },
    after(day, needed) {
      if (!(needed > NOTHING)) return day;
      reach(day);
      const until = (sums[day] as number) + needed - NOTHING;
      let at = day;
      while ((sums[at + 1] as number) < until) {
        at += 1;
        reach(at);
      }
      return at;
    },
    dateOf: (day) => isoDateOf(first + day),
    dayOf: (date) => dayNumber(date) - first,
  };
}
