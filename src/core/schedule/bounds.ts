import { heads, tails } from './network.ts';
import type { LaidOut } from './project.ts';

/** Why a schedule cannot be shorter. */
export interface Bound {
  /** Whole units of time. */
  readonly length: number;
  /** Longest chain of activities that follow each other. */
  readonly criticalPath: number;
  /** The resource whose work alone takes longest, and how long; null where none is asked for. */
  readonly busiest: { readonly resource: number; readonly length: number } | null;
}

/** Work on one machine of many units: what must lie before it and after it. */
export interface Piece {
  /** Least time before it can begin. */
  readonly head: number;
  /** Duration × units. */
  readonly work: number;
  /** Least time that passes once it is finished. */
  readonly tail: number;
}

/**
 * Least time for pieces that share `capacity` units: for every choice of what begins no sooner than `head` and leaves at
 * least `tail` after it, head + work ÷ capacity + tail. Valid for any capacity, since the work lies between the two.
 * @param round time that one unit's share takes from a head on; rounded up to whole units of time by default
 */
export function energyBound(
  pieces: readonly Piece[],
  capacity: number,
  round: (time: number, head: number) => number = (time) => Math.ceil(time - 1e-9),
): number {
  const working = pieces.filter(({ work }) => work > 0).sort((a, b) => b.tail - a.tail);
  let most = 0;
  for (const head of new Set(working.map((piece) => piece.head))) {
    let work = 0;
    for (const piece of working) {
      if (piece.head < head) continue;
      work += piece.work;
      most = Math.max(most, head + round(work / capacity, head) + piece.tail);
    }
  }
  return most;
}

export function boundOf({ network, resources, capacities, demands }: LaidOut): Bound {
  const before = heads(network);
  const after = tails(network);
  let criticalPath = 0;
  for (let at = 0; at < network.size; at += 1)
    criticalPath = Math.max(criticalPath, (before[at] as number) + (network.durations[at] as number));
  let busiest: Bound['busiest'] = null;
  for (let resource = 0; resource < resources; resource += 1) {
    const pieces = Array.from(network.durations, (duration, at) => ({
      head: before[at] as number,
      work: duration * (demands[at * resources + resource] as number),
      tail: after[at] as number,
    }));
    const length = energyBound(pieces, capacities[resource] as number);
    if (length > (busiest?.length ?? 0)) busiest = { resource, length };
  }
  return { length: Math.max(criticalPath, busiest?.length ?? 0), criticalPath, busiest };
}
