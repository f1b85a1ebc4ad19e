import type { Calendar } from './calendar.ts';
import type { Placing } from './place.ts';
import { nameOf, type Tasks } from './tasks.ts';
import type { BenchBound, BenchEvening, BenchInput, BenchSchedule, ScheduledStep, Sitting } from './types.ts';

/** What an answer is written from. */
export interface Worked {
  readonly input: BenchInput;
  readonly tasks: Tasks;
  readonly calendar: Calendar;
  readonly placing: Placing;
  readonly bound: BenchBound;
  /** Day each block would be ready if alone; −1 where nothing is left of it. */
  readonly alone: readonly number[];
  readonly inOrderDays: number;
}

/** Serves the tasks in an order once more and writes down what came of it. */
export function answerOf(order: Int32Array, worked: Worked): BenchSchedule {
  const { input, tasks, calendar, placing, bound, alone, inOrderDays } = worked;
  const { blocks, today } = input;
  const sat: { readonly task: number; readonly day: number; readonly at: number; readonly hours: number }[] = [];
  placing.run(order, (task, day, at, hours) => sat.push({ task, day, at, hours }));
  const days = 1 + alone.reduce((last, day, block) => (day < 0 ? last : Math.max(last, placing.ready[block] ?? 0)), -1);
  return {
    today,
    blocks: blocks.map(({ blockId }, block) => {
      const ready = (alone[block] ?? -1) < 0 ? -1 : (placing.ready[block] ?? 0);
      return {
        blockId,
        steps: stepsOf(block, worked),
        ready,
        readyDate: ready < 0 ? null : calendar.dateOf(ready),
      };
    }),
    evenings: eveningsOf(sat, worked),
    days,
    lastDate: days === 0 ? null : calendar.dateOf(days - 1),
    bound,
    inOrderDays,
    hours: tasks.list.reduce((sum, { hours }) => sum + hours, 0),
    served: [...order].flatMap((task) => tasks.list[task] ?? []).map((task) => nameOf(task, input)),
  };
}

/** What is left of one block, in its plan's order. */
function stepsOf(block: number, { input, tasks, calendar, placing }: Worked): readonly ScheduledStep[] {
  const { dateOf } = calendar;
  const plan = input.blocks[block]?.steps ?? [];
  const step = (number: number, hours: number, from: number, to: number, free: number, running: boolean) => {
    const { treatment = '', waitResource = null } = plan[number] ?? {};
    const dates = { fromDate: dateOf(from), toDate: dateOf(to), freeDate: dateOf(free) };
    return { number, step: { treatment, hours, from, to, free, ...dates, waitResource, running } };
  };
  const waiting = tasks.running
    .filter((one) => one.block === block)
    .map((one) => step(one.step, 0, one.since, one.since, one.until, true));
  const toDo = tasks.list.flatMap((task, n) => {
    if (task.block !== block) return [];
    return [step(task.step, task.hours, placing.from[n] ?? 0, placing.to[n] ?? 0, placing.free[n] ?? 0, false)];
  });
  return [...waiting, ...toDo].sort((a, b) => a.number - b.number).map((each) => each.step);
}

type Sat = { readonly task: number; readonly day: number; readonly at: number; readonly hours: number };

/** Sittings by evening, in the order they are taken. */
function eveningsOf(sat: readonly Sat[], { input, tasks, calendar }: Worked): readonly BenchEvening[] {
  const first = new Map<number, Sat>();
  const last = new Map<number, Sat>();
  const byDay = new Map<number, Sat[]>();
  for (const one of sat) {
    if (!first.has(one.task)) first.set(one.task, one);
    last.set(one.task, one);
    byDay.set(one.day, [...(byDay.get(one.day) ?? []), one]);
  }
  const sitting = (one: Sat): Sitting => {
    const { block = -1, step = -1 } = tasks.list[one.task] ?? {};
    const { blockId = '', steps = [] } = input.blocks[block] ?? {};
    const { at, hours, task } = one;
    const treatment = steps[step]?.treatment ?? '';
    return { blockId, treatment, hours, at, begins: first.get(task) === one, ends: last.get(task) === one };
  };
  return [...byDay]
    .sort(([a], [b]) => a - b)
    .map(([day, there]) => ({
      day,
      date: calendar.dateOf(day),
      hours: calendar.hoursOn(day),
      used: there.reduce((sum, { hours }) => sum + hours, 0),
      sittings: there.sort((a, b) => a.at - b.at || a.task - b.task).map(sitting),
    }));
}
