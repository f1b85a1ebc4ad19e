import fc from 'fast-check';
import type { Activity, Project } from '../../../src/core/schedule/project.ts';

/** What is wrong with starts for a project, worked out from the problem alone: each unit of time, each pair. */
export function faultsOf({ activities, capacities }: Project, starts: readonly number[]): string[] {
  const faults: string[] = [];
  const endOf = (at: number): number => (starts[at] ?? Number.NaN) + (activities[at]?.duration ?? 0);
  for (const [at, { after }] of activities.entries()) {
    const start = starts[at] ?? Number.NaN;
    if (!(Number.isInteger(start) && start >= 0)) faults.push(`${at} starts at ${start}`);
    for (const before of after) if (endOf(before) > start) faults.push(`${at} starts before ${before} ends`);
  }
  const end = Math.max(0, ...activities.map((_, at) => endOf(at)));
  for (let time = 0; time < end; time += 1) {
    for (const [resource, capacity] of capacities.entries()) {
      const used = activities
        .filter((_, at) => (starts[at] ?? 0) <= time && time < endOf(at))
        .reduce((sum, { demands }) => sum + (demands[resource] ?? 0), 0);
      if (used > capacity) faults.push(`at ${time} resource ${resource} has ${used} of ${capacity} in use`);
    }
  }
  return faults;
}

/** Length of the shortest schedule, by trying every start of every activity. For a handful of short activities. */
export function shortest({ activities, capacities }: Project): number {
  const starts: number[] = [];
  let best = activities.reduce((sum, { duration }) => sum + duration, 0);
  const endOf = (at: number): number => (starts[at] as number) + (activities[at] as Activity).duration;
  const fits = (at: number): boolean =>
    capacities.every((capacity, resource) => {
      for (let time = starts[at] as number; time < endOf(at); time += 1) {
        let used = 0;
        for (let one = 0; one <= at; one += 1)
          if ((starts[one] as number) <= time && time < endOf(one))
            used += (activities[one] as Activity).demands[resource] ?? 0;
        if (used > capacity) return false;
      }
      return true;
    });
  const tryFrom = (at: number, end: number): void => {
    const activity = activities[at];
    if (!activity) {
      best = Math.min(best, end);
      return;
    }
    const first = Math.max(0, ...activity.after.map(endOf));
    for (let start = first; Math.max(end, start + activity.duration) < best; start += 1) {
      starts[at] = start;
      if (fits(at)) tryFrom(at + 1, Math.max(end, endOf(at)));
    }
  };
  tryFrom(0, 0);
  return best;
}

/** Projects of a few activities, each after some of those before it, under one to three resources. */
export const anyProject = (most: number, longest: number): fc.Arbitrary<Project> =>
  fc
    .record({
      capacities: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 3 }),
      raw: fc.array(
        fc.record({
          duration: fc.nat({ max: longest }),
          demands: fc.array(fc.nat({ max: 4 }), { minLength: 3, maxLength: 3 }),
          after: fc.array(fc.nat({ max: 999 }), { maxLength: 2 }),
        }),
        { maxLength: most },
      ),
    })
    .map(({ capacities, raw }) => ({
      capacities,
      activities: raw.map(({ duration, demands, after }, at) => ({
        duration,
        demands: capacities.map((capacity, resource) => Math.min(capacity, demands[resource] ?? 0)),
        after: at === 0 ? [] : [...new Set(after.map((one) => one % at))],
      })),
    }));
