import { answerOf } from './bench-answer.ts';
import { benchBound } from './bench-bound.ts';
import { calendarOf } from './calendar.ts';
import { placingOf } from './place.ts';
import { runSearch, search } from './search.ts';
import { listOf, tasksOf } from './tasks.ts';
import type { BenchInput, BenchSchedule } from './types.ts';

/**
 * Orders tried when nobody says how many, and steps served in all of them: a blink for a bench of ten blocks, and not a
 * second for sixty. Own choice.
 */
export const USUAL_ORDERS = 3_000;
const MOST_SERVED = 800_000;

/**
 * The schedule of many blocks, made bit by bit so that a worker may listen in between; what it yields is the best so far,
 * made up only when asked for, what it returns the answer. All blocks ready in the fewest days; among such schedules the
 * one whose blocks are ready soonest on the whole, then with the fewest evenings. Never later than serving the blocks in
 * their order. Same question, same answer.
 * @throws RangeError for a date that is none or a week without an evening; AppError `schedule-too-long`
 */
export function* scheduling(input: BenchInput): Generator<() => BenchSchedule, () => BenchSchedule> {
  const { blocks, served, seed = 1 } = input;
  const calendar = calendarOf(input);
  const tasks = tasksOf(input, calendar);
  const budget = input.budget ?? Math.min(USUAL_ORDERS, Math.ceil(MOST_SERVED / Math.max(1, tasks.list.length)));
  const placing = placingOf(tasks, calendar);
  const { bound, ready: alone } = benchBound(tasks, input, calendar, placing);

  // More than all blocks' days can add up to, so that the sum decides only between schedules of equal length.
  const late = 1 + blocks.length * (placing.horizon + 1);
  const costOf = (days: number, sum: number, evenings: number): number =>
    days + (sum + evenings / (placing.horizon + 1)) / late;
  const daysOf = (): number =>
    1 + alone.reduce((last, day, block) => (day < 0 ? last : Math.max(last, placing.ready[block] as number)), -1);

  const aloneOf = (task: number): number => alone[tasks.list[task]?.block ?? -1] ?? 0;
  const inOrder = Int32Array.from(tasks.list.keys());
  placing.run(inOrder);
  const inOrderDays = daysOf();
  const space = {
    network: tasks.network,
    evaluate(list: Int32Array): number {
      placing.run(list);
      return costOf(
        daysOf(),
        placing.ready.reduce((sum, day) => sum + day, 0),
        placing.evenings(),
      );
    },
  };
  const goal = costOf(
    bound.days,
    alone.reduce((sum, day) => sum + Math.max(0, day), 0),
    0,
  );
  // Whole blocks, those that are soonest ready by themselves first: good for the sum, if not for the last.
  const soonest = Int32Array.from(inOrder).sort((a, b) => aloneOf(a) - aloneOf(b) || a - b);
  const starts = [inOrder, ...(served ? [listOf(served, tasks, input)] : []), soonest];
  const steps = search(space, { budget, seed, goal, starts });
  const answer = (list: Int32Array) => () =>
    answerOf(list, { input, tasks, calendar, placing, bound, alone, inOrderDays });
  for (;;) {
    const { done, value } = steps.next();
    if (done) return answer(value.list);
    yield answer(value.list);
  }
}

/** The schedule at one go. @param stop asked now and then; true ends the search with the best so far */
export const scheduleBench = (input: BenchInput, stop?: () => boolean): BenchSchedule =>
  runSearch(scheduling(input), stop)();
