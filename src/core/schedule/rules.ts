import type { Dice } from './dice.ts';
import { heads, type Network, tails } from './network.ts';

/**
 * Priority of every activity, the smaller the sooner. The classical rules of project scheduling, as surveyed by
 * R. Kolisch (from memory): each is good on some projects and poor on others, so that all are tried.
 */
export type PriorityRule = (network: Network) => Float64Array;

/** Sum over an activity and all that follow it, each once. */
function withFollowers({ size, successors, order }: Network, value: (activity: number) => number): Float64Array {
  const sums = new Float64Array(size);
  const seen = new Int32Array(size).fill(-1);
  const stack: number[] = [];
  for (const start of order) {
    stack.push(start);
    seen[start] = start;
    while (stack.length > 0) {
      const activity = stack.pop() as number;
      sums[start] = (sums[start] as number) + value(activity);
      for (const next of successors[activity] as Int32Array) {
        if (seen[next] === start) continue;
        seen[next] = start;
        stack.push(next);
      }
    }
  }
  return sums;
}

const negative = (values: Float64Array): Float64Array => values.map((value) => -value);

export const RULES = {
  /** Latest finish time: the longest path still to come first. */
  latestFinish: (network) => negative(tails(network)),
  latestStart: (network) => negative(tails(network).map((tail, at) => tail + (network.durations[at] as number))),
  /** Least slack between earliest and latest start, scarcity left out. */
  leastSlack: (network) => {
    const before = heads(network);
    return negative(
      tails(network).map((tail, at) => tail + (network.durations[at] as number) + (before[at] as number)),
    );
  },
  mostFollowers: (network) => negative(withFollowers(network, () => 1)),
  /** Greatest rank positional weight: its own duration and that of what follows at once. */
  greatestWeight: ({ durations, successors }) =>
    durations.map(
      (own, at) => -(own + (successors[at] as Int32Array).reduce((sum, next) => sum + (durations[next] as number), 0)),
    ),
  /** Most work on scarce resources in it and behind it. */
  mostLoad: (network) => negative(withFollowers(network, (at) => network.loads[at] as number)),
  shortestFirst: ({ durations }) => Float64Array.from(durations),
} as const satisfies Record<string, PriorityRule>;

/** Runs through what is open, always taking the one `choose` points at; fills `list` so that all follow what they must. */
function listBy(
  { size, predecessors, successors }: Network,
  list: Int32Array,
  choose: (open: Int32Array, count: number) => number,
): void {
  const missing = Int32Array.from(predecessors, (before) => before.length);
  const open = new Int32Array(size);
  let count = 0;
  for (let at = 0; at < size; at += 1) if (missing[at] === 0) open[count++] = at;
  for (let place = 0; place < size; place += 1) {
    const which = choose(open, count);
    const activity = open[which] as number;
    list[place] = activity;
    // Kept in order, so that ties always fall the same way.
    open.copyWithin(which, which + 1, count);
    count -= 1;
    for (const next of successors[activity] as Int32Array) {
      missing[next] = (missing[next] as number) - 1;
      if (missing[next] === 0) open[count++] = next;
    }
  }
}

/** The activities by priority, none before what it must follow. Ties by number of the activity. */
export function listByRule(network: Network, priority: Float64Array): Int32Array {
  const list = new Int32Array(network.size);
  listBy(network, list, (open, count) => {
    let best = 0;
    for (let i = 1; i < count; i += 1) {
      const by = (priority[open[i] as number] as number) - (priority[open[best] as number] as number);
      if (by < 0 || (by === 0 && (open[i] as number) < (open[best] as number))) best = i;
    }
    return best;
  });
  return list;
}

/**
 * A list drawn at random where what a rule puts first is likelier to come first: chance in proportion to the regret of
 * leaving it, (worst − own + 1), the scale being the spread of the open ones. After A. Drexl (from memory).
 */
export function sampleList(network: Network, priority: Float64Array, dice: Dice, list: Int32Array): void {
  listBy(network, list, (open, count) => {
    if (count === 1) return 0;
    let worst = -Infinity;
    let best = Infinity;
    for (let i = 0; i < count; i += 1) {
      const own = priority[open[i] as number] as number;
      if (own > worst) worst = own;
      if (own < best) best = own;
    }
    // With the spread as unit, the best is some dozen times likelier than the worst, whatever the rule counts in.
    const unit = (worst - best) / SHARPNESS || 1;
    let total = 0;
    for (let i = 0; i < count; i += 1) total += (worst - (priority[open[i] as number] as number)) / unit + 1;
    let left = dice() * total;
    for (let i = 0; i < count; i += 1) {
      left -= (worst - (priority[open[i] as number] as number)) / unit + 1;
      if (left <= 0) return i;
    }
    return count - 1;
  });
}

/** How much likelier the first by a rule is than the last when a list is drawn. Own choice; 6 to 20 do alike. */
const SHARPNESS = 12;
