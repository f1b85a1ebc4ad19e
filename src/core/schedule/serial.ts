import { reversed } from './network.ts';
import type { LaidOut } from './project.ts';

/** Makes schedules of one project from lists; holds the tables it needs, so that a schedule costs microseconds. */
export interface Scheduler {
  /**
   * Serial generation: takes activities in the order of the list and starts each as soon as what it follows is finished
   * and every resource is free for as long as it takes.
   * @param list all activities, none before what it follows
   * @param starts filled with the start of each activity
   * @returns the time at which all is done
   */
  forward(list: Int32Array, starts: Int32Array): number;
  /**
   * Justification to both sides: every activity as late as the end allows, the last first, then again as soon as it can
   * be. Never makes a schedule longer, and often shorter. Source: V. Valls, F. Ballestín and S. Quintanilla,
   * "Justification and RCPSP", 2005 (from memory).
   * @param list the order of the schedule in `starts`; both are replaced
   * @returns the new time at which all is done
   */
  justify(list: Int32Array, starts: Int32Array): number;
}

/** Sorts a list by rising key, what is equal left as it stands. Nearly sorted lists are the rule, so by insertion. */
function sortBy(list: Int32Array, keys: Int32Array): void {
  for (let i = 1; i < list.length; i += 1) {
    const one = list[i] as number;
    const key = keys[one] as number;
    let j = i - 1;
    while (j >= 0 && (keys[list[j] as number] as number) > key) {
      list[j + 1] = list[j] as number;
      j -= 1;
    }
    list[j + 1] = one;
  }
}

export function schedulerOf(project: LaidOut): Scheduler {
  const { network, resources, capacities, demands, horizon } = project;
  const { size, durations } = network;
  const backwards = reversed(network).predecessors;
  /** What is left of each resource in each unit of time, at `time × resources + r`. */
  const left = new Float64Array((horizon + 1) * resources);
  const keys = new Int32Array(size);
  // An activity that wants nothing need not be looked up in time.
  const wants = Array.from({ length: size }, (_, at) =>
    Int32Array.from(
      Array.from({ length: resources }, (_, r) => r).filter((r) => (demands[at * resources + r] as number) > 0),
    ),
  );

  function build(list: Int32Array, predecessors: readonly Int32Array[], starts: Int32Array): number {
    for (let time = 0, at = 0; time < horizon; time += 1)
      for (let r = 0; r < resources; r += 1, at += 1) left[at] = capacities[r] as number;
    let end = 0;
    for (let n = 0; n < size; n += 1) {
      const activity = list[n] as number;
      const duration = durations[activity] as number;
      const wanted = wants[activity] as Int32Array;
      let start = 0;
      const before = predecessors[activity] as Int32Array;
      for (let i = 0; i < before.length; i += 1) {
        const one = before[i] as number;
        const finish = (starts[one] as number) + (durations[one] as number);
        if (finish > start) start = finish;
      }
      if (wanted.length > 0 && duration > 0) {
        // From the back: the last unit of time that is short moves the start right behind it.
        let time = start + duration - 1;
        while (time >= start) {
          const row = time * resources;
          for (let i = 0; i < wanted.length; i += 1) {
            const r = wanted[i] as number;
            if ((left[row + r] as number) < (demands[activity * resources + r] as number)) {
              start = time + 1;
              time = start + duration;
              break;
            }
          }
          time -= 1;
        }
        for (let i = 0; i < wanted.length; i += 1) {
          const r = wanted[i] as number;
          const demand = demands[activity * resources + r] as number;
          for (let t = start; t < start + duration; t += 1) {
            const at = t * resources + r;
            left[at] = (left[at] as number) - demand;
          }
        }
      }
      starts[activity] = start;
      if (start + duration > end) end = start + duration;
    }
    return end;
  }

  return {
    forward: (list, starts) => build(list, network.predecessors, starts),
    justify(list, starts) {
      // Backwards in time an activity's finish is its start: the latest finish is served first.
      for (let at = 0; at < size; at += 1) keys[at] = -((starts[at] as number) + (durations[at] as number));
      list.reverse();
      sortBy(list, keys);
      build(list, backwards, starts);
      for (let at = 0; at < size; at += 1) keys[at] = -((starts[at] as number) + (durations[at] as number));
      list.reverse();
      sortBy(list, keys);
      return build(list, network.predecessors, starts);
    },
  };
}
