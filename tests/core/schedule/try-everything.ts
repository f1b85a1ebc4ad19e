import type { BenchInput } from '../../../src/core/schedule/types.ts';

/** Where a bench is in an evening: hours of each block's current step done, day from which it is free, clamps on. */
interface Situation {
  readonly step: readonly number[];
  readonly done: readonly number[];
  readonly free: readonly number[];
  /** Days on which clamps that are on come off. */
  readonly holds: readonly number[];
}

/**
 * Fewest days for a bench of one pair of hands, whole hours, the same evening every day, and clamps as the only other
 * scarce thing: by trying, hour by hour, every block that could be worked, and idleness. Breadth first over days, so that
 * the first day by which all is ready is the fewest.
 */
export function fewestDays({ blocks, hours: [evening = 0], capacities: { clamps = 1 } }: BenchInput): number {
  const plans = blocks.map(({ steps }) => steps);
  let tonight: Situation[] = [
    { step: plans.map(() => 0), done: plans.map(() => 0), free: plans.map(() => 0), holds: [] },
  ];
  let best = Number.POSITIVE_INFINITY;
  for (let day = 0; tonight.length > 0 && day < 200; day += 1) {
    const after = new Map<string, Situation>();

    const work = (now: Situation, hour: number): void => {
      if (now.step.every((at, block) => at === plans[block]?.length)) {
        best = Math.min(best, Math.max(day, ...now.free) + 1);
        return;
      }
      if (hour === evening) {
        after.set(JSON.stringify(now), now);
        return;
      }
      // Not to work this hour is not to work any later one this evening: what could begin then can begin now.
      after.set(JSON.stringify(now), now);
      for (const [block, plan] of plans.entries()) {
        const step = plan[now.step[block] as number];
        if (!step || (now.free[block] as number) > day) continue;
        const ends = (now.done[block] as number) + 1 === step.hours;
        const nights = Math.round(step.waitHours / 24);
        const waits = ends && nights > 0 && step.waitResource === 'clamps';
        // One pair of hands: a set used this hour is laid by before the next, unless it stays on.
        const wants = waits || step.handsResources.includes('clamps');
        if (wants && now.holds.length >= clamps) continue;
        const change = (list: readonly number[], value: number): number[] =>
          list.map((one, n) => (n === block ? value : one));
        work(
          {
            step: ends ? change(now.step, (now.step[block] as number) + 1) : now.step,
            done: change(now.done, ends ? 0 : (now.done[block] as number) + 1),
            free: ends ? change(now.free, day + nights) : now.free,
            holds: waits ? [...now.holds, day + nights].sort((a, b) => a - b) : now.holds,
          },
          hour + 1,
        );
      }
    };

    for (const one of tonight) work({ ...one, holds: one.holds.filter((until) => until > day) }, 0);
    tonight = [...after.values()].filter((one) => Math.max(day + 1, ...one.free) + 1 < best);
  }
  return best;
}
