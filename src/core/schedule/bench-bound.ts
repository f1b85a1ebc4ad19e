import { energyBound, type Piece } from './bounds.ts';
import type { Calendar } from './calendar.ts';
import type { Placing } from './place.ts';
import type { Tasks } from './tasks.ts';
import type { BenchBound, BenchInput } from './types.ts';

/** Nights of all that must come after each task, or before it: a block waits for one thing at a time. */
function nightsBeyond({ list }: Tasks, next: readonly Int32Array[]): number[] {
  return list.map((_, start) => {
    const seen = new Set([start]);
    let sum = 0;
    for (const task of seen) {
      if (task !== start) sum += list[task]?.nights ?? 0;
      for (const one of next[task] ?? []) seen.add(one);
    }
    return sum;
  });
}

export interface Alone {
  readonly bound: BenchBound;
  /** Day on which each block would be ready if it were the only one; −1 for one with nothing left. */
  readonly ready: readonly number[];
}

/**
 * Least days, counting today: each block as if it were alone, and each resource as if nothing else were scarce. A lower
 * bound, seldom reached by many blocks at once.
 */
export function benchBound(tasks: Tasks, { blocks }: BenchInput, calendar: Calendar, placing: Placing): Alone {
  const { list, running, resources, capacities, network, free } = tasks;
  const before = nightsBeyond(tasks, network.predecessors);
  const behind = nightsBeyond(tasks, network.successors);
  const from = list.map(({ block }, task) => (free[block] ?? 0) + (before[task] ?? 0));
  const to = [...from];
  const ready = blocks.map((_, block) => {
    const own = list.flatMap((task, n) => (task.block === block ? [n] : []));
    if (own.length === 0) return running.some((one) => one.block === block) ? (free[block] ?? 0) : -1;
    if (!tasks.inPlanOrder[block]) {
      const first = free[block] ?? 0;
      const sum = (of: 'hours' | 'nights'): number => own.reduce((all, task) => all + (list[task]?.[of] ?? 0), 0);
      return Math.max(first + sum('nights'), calendar.after(first, sum('hours')));
    }
    placing.run(Int32Array.from(own));
    for (const task of own) {
      from[task] = placing.from[task] as number;
      to[task] = placing.to[task] as number;
    }
    return placing.ready[block] as number;
  });

  let criticalPath: BenchBound['criticalPath'] = null;
  for (const [block, day] of ready.entries()) {
    const blockId = blocks[block]?.blockId ?? '';
    if (day + 1 > (criticalPath?.days ?? 0)) criticalPath = { blockId, days: day + 1 };
  }
  let busiest: BenchBound['busiest'] = null;
  for (const [number, resource] of resources.entries()) {
    const worked = list.flatMap((task, n): Piece[] =>
      task.hands.includes(number)
        ? [{ head: from[n] ?? 0, work: task.hours, tail: task.nights + (behind[n] ?? 0) }]
        : [],
    );
    const waited = [
      ...list.flatMap((task, n): Piece[] =>
        task.wait === number ? [{ head: to[n] ?? 0, work: task.nights, tail: behind[n] ?? 0 }] : [],
      ),
      ...running.flatMap(({ wait, until }): Piece[] => (wait === number ? [{ head: 0, work: until, tail: 0 }] : [])),
    ];
    // The day on which the hours are through, counted from the head's own evening; and the nights, whole.
    const units = capacities[number] as number;
    const days =
      1 +
      Math.max(
        energyBound(worked, units, (hours, head) => calendar.after(head, hours) - head),
        // What already waits may be more than there is room for.
        energyBound(waited, Math.max(units, running.filter(({ wait }) => wait === number).length)),
      );
    if (worked.length + waited.length > 0 && days > (busiest?.days ?? 0)) busiest = { resource, days };
  }
  const chain = criticalPath?.days ?? 0;
  const shared = busiest?.days ?? 0;
  return {
    ready,
    bound: {
      days: Math.max(chain, shared),
      criticalPath,
      busiest,
      by: chain === 0 && shared === 0 ? 'nothing' : chain >= shared ? 'criticalPath' : 'busiest',
    },
  };
}
