import { nights } from '../days.ts';
import { type Calendar, NOTHING } from './calendar.ts';
import { type Network, networkOf } from './network.ts';
import { listByRule } from './rules.ts';
import type { BenchInput, BenchStep } from './types.ts';

/** A step still to be done. */
export interface Task {
  /** Place of its block, and of the step in the block's plan. */
  readonly block: number;
  readonly step: number;
  /** Hands-on hours left. */
  readonly hours: number;
  readonly nights: number;
  /** Held while it is worked, as numbers of `Tasks.resources`; the hands come first. */
  readonly hands: readonly number[];
  /** Held by the wait; −1 for none that is scarce. */
  readonly wait: number;
}

/** A wait that was running when the schedule was made: holds its resource until the morning of `until`. */
export interface Running {
  readonly block: number;
  readonly step: number;
  readonly since: number;
  readonly until: number;
  readonly wait: number;
}

export interface Tasks {
  readonly list: readonly Task[];
  readonly running: readonly Running[];
  /** Day on which each block may first be worked. */
  readonly free: readonly number[];
  /** Whether a block's tasks may only be done in the order they stand. */
  readonly inPlanOrder: readonly boolean[];
  /** Scarce resources that are used at all, the hands first; and their units. */
  readonly resources: readonly string[];
  readonly capacities: readonly number[];
  /** What must be done before what; tasks of different blocks never wait for each other. */
  readonly network: Network;
}

export const HANDS = 'hands';

const leftOf = ({ hours, progress }: BenchStep): number => {
  const left = progress?.state === 'begun' ? hours - progress.hoursDone : hours;
  return left > NOTHING ? left : 0;
};

/** Units there are: at least one, since a plan that cannot be drawn would help nobody. */
const units = (capacity: number): number => Math.max(1, Math.floor(capacity));

/** Tasks that must be finished before a step: the one before it, or what it names, seen through what needs no doing any more. */
function precedents(steps: readonly BenchStep[], step: number, taskOf: ReadonlyMap<number, number>): number[] {
  if (!steps.some(({ after }) => after)) return [...taskOf.values()].slice(-1);
  const found = new Set<number>();
  const seen = new Set<number>();
  const walk = (current: number): void => {
    const named = steps[current]?.after;
    for (const [before, { treatment }] of steps.slice(0, current).entries()) {
      if (seen.has(before) || (named && !named.includes(treatment))) continue;
      seen.add(before);
      const task = taskOf.get(before);
      if (task === undefined) walk(before);
      else found.add(task);
    }
  };
  walk(step);
  return [...found];
}

/** What is left to do, and what already waits, as numbers. */
export function tasksOf({ blocks, capacities, hours }: BenchInput, calendar: Calendar): Tasks {
  const resources = [HANDS];
  const counts = [units(capacities[HANDS] ?? 1)];
  const numberOf = (resource: string): number => {
    const known = resources.indexOf(resource);
    if (known >= 0 || !Object.hasOwn(capacities, resource)) return known;
    counts.push(units(capacities[resource] ?? 1));
    return resources.push(resource) - 1;
  };
  const list: Task[] = [];
  const running: Running[] = [];
  const after: number[][] = [];
  const free = blocks.map(() => 0);
  for (const [block, { steps }] of blocks.entries()) {
    const taskOf = new Map<number, number>();
    for (const [step, one] of steps.entries()) {
      const { progress, waitResource } = one;
      if (progress?.state === 'done' || progress?.state === 'skipped') continue;
      const wait = waitResource === null ? -1 : numberOf(waitResource);
      if (progress?.state === 'waiting') {
        const until = Math.max(0, calendar.dayOf(progress.until));
        running.push({ block, step, since: Math.min(0, calendar.dayOf(progress.since)), until, wait });
        free[block] = Math.max(free[block] ?? 0, until);
        continue;
      }
      const hands = [0, ...one.handsResources.map(numberOf).filter((each) => each > 0)];
      list.push({
        block,
        step,
        hours: leftOf(one),
        nights: Math.max(0, nights(one.waitHours)),
        hands: [...new Set(hands)],
        wait,
      });
      after.push(precedents(steps, step, taskOf));
      taskOf.set(step, list.length - 1);
    }
  }
  // What the priority rules weigh: days, a week's hours spread over its seven days.
  const aDay = hours.reduce((sum, each) => sum + Math.max(0, each), 0) / 7;
  const share = (resource: number): number => (resource < 0 ? 0 : 1 / (counts[resource] ?? 1));
  const network = networkOf(
    after,
    list.map((task) => task.hours / aDay + task.nights),
    list.map((task) => (task.hours / aDay) * share(0) + task.nights * share(task.wait)),
  );
  const inPlanOrder = blocks.map(({ steps }) => !steps.some((step) => step.after));
  return { list, running, free, inPlanOrder, resources, capacities: counts, network };
}

/** Name of a task that stays the same when other steps and blocks come and go. */
export function nameOf({ block, step }: Task, { blocks }: Pick<BenchInput, 'blocks'>): string {
  const { blockId = '', steps = [] } = blocks[block] ?? {};
  return `${blockId} ${steps[step]?.treatment ?? ''}`;
}

/** The tasks in the order of an earlier schedule, as far as what must come first still allows; what is new comes last. */
export function listOf(served: readonly string[], { list, network }: Tasks, input: BenchInput): Int32Array {
  const places = new Map(served.map((name, place) => [name, place]));
  const ranks = list.map((task, n) => places.get(nameOf(task, input)) ?? served.length + n);
  return listByRule(network, Float64Array.from(ranks));
}
