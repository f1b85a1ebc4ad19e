import { type Bound, boundOf } from './bounds.ts';
import { layOut, type Project } from './project.ts';
import { type Found, runSearch, search } from './search.ts';
import { schedulerOf } from './serial.ts';

export interface SolveOptions {
  /** Orders to try, each made into three schedules. */
  readonly budget?: number;
  readonly seed?: number;
  /** Asked now and then; true ends the search with the best so far. */
  readonly stop?: () => boolean;
}

export interface Solved {
  /** Start of each activity. */
  readonly starts: readonly number[];
  readonly length: number;
  readonly bound: Bound;
  /** Length when the activities are served in the order they are given, as far as what they follow allows. */
  readonly inOrder: number;
  readonly tried: number;
}

/** Orders tried when nobody says how many. */
export const USUAL_BUDGET = 2_500;

/**
 * A short schedule of a project: never longer than that of its activities in order, and never shorter than its bound.
 * Same project, budget and seed, same answer.
 * @throws RangeError for a project that cannot be done at all; see `layOut`
 */
export function solve(project: Project, { budget = USUAL_BUDGET, seed = 1, stop }: SolveOptions = {}): Solved {
  const laidOut = layOut(project);
  const { network } = laidOut;
  const { forward, justify } = schedulerOf(laidOut);
  const bound = boundOf(laidOut);
  const starts = new Int32Array(network.size);
  const inOrder = forward(network.order, starts);
  const space = {
    network,
    evaluate(list: Int32Array): number {
      const length = forward(list, starts);
      return length <= bound.length ? length : justify(list, starts);
    },
  };
  const steps: Generator<Found, Found> = search(space, { budget, seed, goal: bound.length, starts: [network.order] });
  const { list, tried } = runSearch(steps, stop);
  const length = forward(list, starts);
  return { starts: [...starts], length, bound, inOrder, tried };
}
