import type { Plan } from './plan.ts';
import type { Settings } from './records.ts';

/** When the owner's hands are free: hours in an evening, and which weekdays (Monday first). */
export interface Evenings {
  readonly hours: number;
  readonly weekdays: readonly boolean[];
}

/**
 * The evenings of the settings, made such that work can be planned at all: with no weekday ticked every day counts, with no
 * hours an hour does. A merged backup may say so; a plan that cannot be drawn would help nobody.
 */
export const eveningsOf = ({ eveningHours, evenings }: Pick<Settings, 'eveningHours' | 'evenings'>): Evenings => ({
  hours: eveningHours > 0 ? eveningHours : 1,
  weekdays: evenings.includes(true) ? evenings : evenings.map(() => true),
});

/** When a step of one block is worked and until when the block then waits, in whole days from the first evening (day 0). */
export interface DayOfStep {
  readonly treatment: string;
  readonly from: number;
  readonly to: number;
  /** Day on which the block may be worked again. */
  readonly free: number;
}

export interface Days {
  readonly steps: readonly DayOfStep[];
  /** Calendar days from the first evening to the day the last step is done and its wait is over, counting both. */
  readonly total: number;
  /** Evenings on which hands are needed. */
  readonly evenings: number;
}

/** A wait is counted in nights: what is glued tonight is worked tomorrow evening, whether it took 4 hours or 24. */
export const nights = (hours: number): number => Math.ceil(hours / 24 - 1e-9);

/** Where a block is in the calendar: the day, and the hours left of that evening. Changed in place, many times a draw. */
export interface Clock {
  day: number;
  left: number;
}

/** @throws RangeError if there is no evening to work in */
export function checkEvenings({ hours, weekdays }: Evenings): void {
  if (!(hours > 0 && weekdays.includes(true)))
    throw new RangeError('No evening to work in: expected at least one weekday and more than 0 hours.');
}

/**
 * Moves the clock over hands-on work, done only in the owner's evenings.
 * @returns the day the work begins
 */
export function workOn(clock: Clock, hands: number, { hours, weekdays }: Evenings, firstWeekday: number): number {
  if (!(hands > NOTHING)) return clock.day;
  let { day, left } = clock;
  if (left <= NOTHING) {
    day += 1;
    left = hours;
  }
  while (!weekdays[(day + firstWeekday) % 7]) {
    day += 1;
    left = hours;
  }
  const from = day;
  let rest = hands;
  while (rest > left + NOTHING) {
    rest -= left;
    do day += 1;
    while (!weekdays[(day + firstWeekday) % 7]);
    left = hours;
  }
  clock.day = day;
  clock.left = left - rest;
  return from;
}

/** Moves the clock over a wait: it runs day and night, and the evening after it is whole. */
export function waitFor(clock: Clock, hours: number, { hours: evening }: Evenings): void {
  const wait = nights(hours);
  if (wait <= 0) return;
  clock.day += wait;
  clock.left = evening;
}

/**
 * Walks through steps in order and counts days from the first evening, day 0: hands-on work only in the owner's evenings,
 * waits run day and night, a block cannot be worked while it waits.
 * @param hours hands-on hours by step, @param waits hours of waiting after it
 * @param visit hears each step's first day, last day, and the day the block is free again
 * @returns calendar days to the end of the last wait, counting the first; 0 without steps
 * @throws RangeError if there is work and no evening to do it in
 */
export function countDays(
  hours: readonly number[],
  waits: readonly number[],
  evenings: Evenings,
  firstWeekday = 0,
  visit?: (step: number, from: number, to: number, free: number) => void,
): number {
  if (hours.length === 0) return 0;
  checkEvenings(evenings);
  const clock: Clock = { day: 0, left: evenings.hours };
  for (const [step, hands] of hours.entries()) {
    const from = workOn(clock, hands, evenings, firstWeekday);
    const to = clock.day;
    waitFor(clock, waits[step] ?? 0, evenings);
    visit?.(step, from, to, clock.day);
  }
  return clock.day + 1;
}

/** Below this an evening counts as used up and a step as done; hours, far under a minute. */
const NOTHING = 1e-9;

/** Steps in order, as far as days are counted: hands-on hours, and the wait after them. */
export interface StepsInOrder {
  readonly steps: readonly Pick<Plan['steps'][number], 'treatment' | 'hours' | 'waitHours'>[];
}

/**
 * Elapsed days of one block by itself, its steps in the plan's order. Source: scheduling rules of trade handbook §6.2.
 * @param pick which of the three estimates to use
 * @param firstWeekday weekday of day 0, Monday = 0
 */
export function daysFor(plan: StepsInOrder, evenings: Evenings, pick: 'o' | 'm' | 'p' = 'm', firstWeekday = 0): Days {
  const hours = plan.steps.map((step) => step.hours[pick]);
  const waits = plan.steps.map((step) => step.waitHours[pick]);
  const used = new Set<number>();
  const steps: DayOfStep[] = [];
  const total = countDays(hours, waits, evenings, firstWeekday, (step, from, to, free) => {
    const treatment = plan.steps[step]?.treatment ?? '';
    for (let day = from; day <= to; day += 1) if (evenings.weekdays[(day + firstWeekday) % 7]) used.add(day);
    steps.push({ treatment, from, to, free });
  });
  return { steps, total, evenings: used.size };
}
