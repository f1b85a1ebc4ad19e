/**
 * Things to do and what must come before what: all that priority rules and the search need to know of a project, whether
 * its time runs in whole units or in a milliner's evenings. Activities are numbered from 0.
 */
export interface Network {
  readonly size: number;
  /** In any one unit; the bench's are in days. */
  readonly durations: Float64Array;
  /** How much of what there is an activity takes: Σ over resources of demand ÷ capacity, times its duration. */
  readonly loads: Float64Array;
  readonly predecessors: readonly Int32Array[];
  readonly successors: readonly Int32Array[];
  /** An order in which every activity follows its predecessors; among what could be next, the smaller number first. */
  readonly order: Int32Array;
}

/**
 * @param after by activity, the activities that must be finished before it begins; repeats do no harm
 * @throws RangeError for an activity that is not there, or that waits for itself by way of others
 */
export function networkOf(
  after: readonly (readonly number[])[],
  durations: readonly number[],
  loads: readonly number[],
): Network {
  const size = after.length;
  const followers: number[][] = after.map(() => []);
  const predecessors = after.map((before, activity) => {
    const once = [...new Set(before)];
    for (const one of once) {
      if (!Number.isInteger(one) || one < 0 || one >= size)
        throw new RangeError(`Activity ${activity} comes after ${one}, expected one of 0 to ${size - 1}.`);
      followers[one]?.push(activity);
    }
    return Int32Array.from(once);
  });
  const successors = followers.map((each) => Int32Array.from(each));
  return {
    size,
    durations: Float64Array.from(durations),
    loads: Float64Array.from(loads),
    predecessors,
    successors,
    order: topological(predecessors, successors),
  };
}

function topological(predecessors: readonly Int32Array[], successors: readonly Int32Array[]): Int32Array {
  const open = predecessors.map((before) => before.length);
  const order = new Int32Array(open.length);
  const next = open.flatMap((count, activity) => (count === 0 ? [activity] : []));
  let placed = 0;
  while (next.length > 0) {
    let least = 0;
    for (let i = 1; i < next.length; i += 1) if ((next[i] as number) < (next[least] as number)) least = i;
    const [activity = 0] = next.splice(least, 1);
    order[placed] = activity;
    placed += 1;
    for (const follower of successors[activity] ?? []) {
      open[follower] = (open[follower] as number) - 1;
      if (open[follower] === 0) next.push(follower);
    }
  }
  if (placed < open.length) throw new RangeError('Activities wait for each other in a circle.');
  return order;
}

/** The same work with time running backwards: what came after now comes before. */
export const reversed = (network: Network): Network => ({
  ...network,
  predecessors: network.successors,
  successors: network.predecessors,
  order: Int32Array.from(network.order).reverse(),
});

/** Longest path of work that must lie before each activity begins: its earliest start if nothing were scarce. */
export function heads({ size, durations, predecessors, order }: Network): Float64Array {
  const earliest = new Float64Array(size);
  for (const activity of order) {
    for (const before of predecessors[activity] as Int32Array)
      earliest[activity] = Math.max(
        earliest[activity] as number,
        (earliest[before] as number) + (durations[before] as number),
      );
  }
  return earliest;
}

/** Longest path of work that must follow each activity once it is finished. */
export const tails = (network: Network): Float64Array => heads(reversed(network));
