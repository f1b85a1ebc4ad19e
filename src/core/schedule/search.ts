import { type Dice, diceOf } from './dice.ts';
import type { Network } from './network.ts';
import { listByRule, RULES, sampleList } from './rules.ts';

/** Where the search looks: orders of activities, and what each costs. */
export interface SearchSpace {
  readonly network: Network;
  /**
   * Cost of serving the activities in this order, the smaller the better. May leave a better order of equal or smaller
   * cost in the list, none before what it follows.
   */
  evaluate(list: Int32Array): number;
}

export interface SearchOptions {
  /** Orders to try in all; beside the seed the only thing the answer depends on. */
  readonly budget: number;
  readonly seed: number;
  /** No order can cost less: reached, the search is over. */
  readonly goal: number;
  /** Orders to begin with, such as the plain one: the answer costs no more than the best of them. */
  readonly starts: readonly Int32Array[];
}

export interface Found {
  readonly list: Int32Array;
  readonly cost: number;
  /** Orders tried. */
  readonly tried: number;
}

/** Orders kept to breed from. Own choice: of 20 to 80 none was clearly better on small projects. */
const KEPT = 40;
/** Chance that two neighbours in a child's order change places. Source: S. Hartmann 1998 (from memory). */
const SWAP = 0.05;
/** Orders without a better one found, as a multiple of those kept, after which all but the best are drawn anew. */
const STALE = 6;
/** Orders between two chances to stop. */
export const BREATH = 16;

interface Kept {
  list: Int32Array;
  cost: number;
}

/**
 * Looks for a cheap order: all priority rules first, then orders drawn at random in their spirit, then children of two
 * good orders each. After S. Hartmann, "A competitive genetic algorithm for resource-constrained project scheduling",
 * 1998 (from memory). Pauses every {@link BREATH} orders, so that whoever runs it may stop it or let others work; the
 * best so far comes with each pause. Without activities or budget the first start comes back.
 */
export function* search(space: SearchSpace, { budget, seed, goal, starts }: SearchOptions): Generator<Found, Found> {
  const { network } = space;
  const dice = diceOf('order', seed);
  const priorities = Object.values(RULES).map((rule) => rule(network));
  const first = [...starts, ...priorities.map((priority) => listByRule(network, priority))];
  const kept: Kept[] = [];
  let best: Kept = { list: Int32Array.from(starts[0] ?? network.order), cost: Number.POSITIVE_INFINITY };
  let tried = 0;
  let since = 0;
  let drawn = 0;
  const found = (): Found => ({ ...best, tried });

  /** Judges an order and keeps it where it is good enough and not there yet. */
  function consider(list: Int32Array): void {
    const cost = space.evaluate(list);
    tried += 1;
    since += 1;
    if (cost < best.cost) {
      best = { list: Int32Array.from(list), cost };
      since = 0;
    }
    if (kept.some((one) => one.cost === cost && sameList(one.list, list))) return;
    if (kept.length < KEPT) {
      kept.push({ list: Int32Array.from(list), cost });
      return;
    }
    const worst = kept.reduce((most, one) => (one.cost > most.cost ? one : most));
    if (cost > worst.cost) return;
    worst.list.set(list);
    worst.cost = cost;
  }

  const list = new Int32Array(network.size);
  while (tried < Math.max(budget, starts.length) && best.cost > goal) {
    const next = first[tried];
    if (next) list.set(next);
    else if (kept.length < KEPT && drawn < 2 * KEPT) {
      sampleList(network, priorities[drawn % priorities.length] as Float64Array, dice, list);
      drawn += 1;
    } else if (since > STALE * KEPT) {
      // All alike by now: begin again beside the best.
      kept.splice(0, kept.length, { list: Int32Array.from(best.list), cost: best.cost });
      since = 0;
      drawn = 0;
      continue;
    } else {
      child(pick(kept, dice), pick(kept, dice), dice, list);
      swapSome(list, network, dice);
    }
    consider(list);
    if (tried % BREATH === 0) yield found();
  }
  return found();
}

/** The better of two drawn at random. */
function pick(kept: readonly Kept[], dice: Dice): Int32Array {
  const a = kept[Math.floor(dice() * kept.length)] as Kept;
  const b = kept[Math.floor(dice() * kept.length)] as Kept;
  return (a.cost <= b.cost ? a : b).list;
}

function sameList(a: Int32Array, b: Int32Array): boolean {
  for (let at = 0; at < a.length; at += 1) if (a[at] !== b[at]) return false;
  return true;
}

/**
 * Begins and ends like one parent, the stretch between in the order of the other. Two orders in which nothing comes before
 * what it follows give a third.
 */
function child(one: Int32Array, other: Int32Array, dice: Dice, into: Int32Array): void {
  const size = into.length;
  const a = Math.floor(dice() * (size + 1));
  const b = Math.floor(dice() * (size + 1));
  const from = Math.min(a, b);
  const to = Math.max(a, b);
  const taken = new Uint8Array(size);
  let place = 0;
  const take = (list: Int32Array, until: number): void => {
    for (let at = 0; place < until; at += 1) {
      const activity = list[at] as number;
      if (taken[activity] === 1) continue;
      taken[activity] = 1;
      into[place] = activity;
      place += 1;
    }
  };
  take(one, from);
  take(other, to);
  take(one, size);
}

function swapSome(list: Int32Array, { predecessors }: Network, dice: Dice): void {
  for (let at = 0; at + 1 < list.length; at += 1) {
    if (dice() >= SWAP) continue;
    const before = list[at] as number;
    const after = list[at + 1] as number;
    if ((predecessors[after] as Int32Array).includes(before)) continue;
    list[at] = after;
    list[at + 1] = before;
  }
}

/** Runs a search to its end, or until `stop` says so: then the best so far is the answer. */
export function runSearch<T>(steps: Generator<T, T>, stop?: () => boolean): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done || stop?.()) return value;
  }
}
