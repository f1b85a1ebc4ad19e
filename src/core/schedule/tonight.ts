import { NOTHING } from './calendar.ts';
import type { BenchEvening, BenchSchedule } from './types.ts';

/**
 * What to do this evening, in order; undefined where the schedule has nothing for it (no evening, or everything waits).
 * @param hours how many there are after all, if fewer than planned: what no longer fits is left out, and what fits in part
 * is begun. For more hours than planned, ask for a new schedule with `hoursOn`.
 */
export function tonight(schedule: BenchSchedule, hours = Number.POSITIVE_INFINITY): BenchEvening | undefined {
  const evening = schedule.evenings.find(({ day }) => day === 0);
  if (!evening || hours >= evening.hours) return evening;
  const there = Math.max(0, hours);
  const sittings = evening.sittings.flatMap((one) => {
    const left = there - one.at;
    if (!(left > NOTHING)) return [];
    return left >= one.hours - NOTHING ? [one] : [{ ...one, hours: left, ends: false }];
  });
  return { ...evening, hours: there, used: sittings.reduce((sum, one) => sum + one.hours, 0), sittings };
}
