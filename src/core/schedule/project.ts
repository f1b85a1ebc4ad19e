import { type Network, networkOf } from './network.ts';

/** One activity: whole units of time, units of each resource held all the while, and what must be finished before. */
export interface Activity {
  readonly duration: number;
  /** By resource, in the project's order; none beyond the list. */
  readonly demands: readonly number[];
  readonly after: readonly number[];
}

/**
 * A project under scarce resources: activities are never broken off, resources come back when an activity ends. In
 * operations research the resource-constrained project scheduling problem, for which the shortest schedule is hard to find.
 */
export interface Project {
  readonly activities: readonly Activity[];
  /** Units of each resource. */
  readonly capacities: readonly number[];
}

/** A project laid out for the sums: demands as one flat table. */
export interface LaidOut {
  readonly network: Network;
  readonly resources: number;
  readonly capacities: Float64Array;
  /** Demand of activity `i` for resource `r` at `i × resources + r`. */
  readonly demands: Float64Array;
  /** Time in which all is surely done: one after the other. */
  readonly horizon: number;
}

/**
 * @throws RangeError for a duration that is not a whole number from 0, a demand below 0 or above what there is, or
 * activities that wait for each other
 */
export function layOut({ activities, capacities }: Project): LaidOut {
  const resources = capacities.length;
  const demands = new Float64Array(activities.length * resources);
  for (const [at, { duration, demands: wanted }] of activities.entries()) {
    if (!Number.isInteger(duration) || duration < 0)
      throw new RangeError(`Duration of activity ${at}: got ${duration}, expected a whole number from 0.`);
    for (let r = 0; r < resources; r += 1) {
      const demand = wanted[r] ?? 0;
      const most = capacities[r] as number;
      if (!(demand >= 0 && demand <= most))
        throw new RangeError(`Activity ${at} wants ${demand} of resource ${r}, expected 0 to ${most}.`);
      demands[at * resources + r] = demand;
    }
  }
  return {
    network: networkOf(
      activities.map(({ after }) => after),
      activities.map(({ duration }) => duration),
      activities.map(
        ({ duration, demands: wanted }) =>
          duration * capacities.reduce((sum, most, r) => sum + (most > 0 ? (wanted[r] ?? 0) / most : 0), 0),
      ),
    ),
    resources,
    capacities: Float64Array.from(capacities),
    demands,
    horizon: activities.reduce((sum, { duration }) => sum + duration, 0),
  };
}
