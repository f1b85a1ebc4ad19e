import type { Plan } from './plan.ts';

/** When the owner's hands are free: hours in an evening, and which weekdays (Monday first). */
export interface Evenings {
  readonly hours: number;
  readonly weekdays: readonly boolean[];
}

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
const nights = (hours: number): number => Math.ceil(hours / 24 - 1e-9);

/**
 * Elapsed days of one block by itself, its steps in the plan's order: hands-on work only in the owner's evenings, waits
 * run day and night, a block cannot be worked while it waits. Source: scheduling rules of trade handbook §6.2.
 * @param pick which of the three estimates to use
 * @param firstWeekday weekday of day 0, Monday = 0
 * @throws RangeError if the owner has no evening at all and there is work to do
 */
export function daysFor(plan: Plan, evenings: Evenings, pick: 'o' | 'm' | 'p' = 'm', firstWeekday = 0): Days {
  const works = (day: number): boolean => evenings.weekdays[(day + firstWeekday) % 7] ?? false;
  if (plan.steps.length > 0 && !(evenings.hours > 0 && evenings.weekdays.some(Boolean))) {
    throw new RangeError('No evening to work in: expected at least one weekday and more than 0 hours.');
  }
  let day = 0;
  let left = evenings.hours;
  const used = new Set<number>();
  const steps: DayOfStep[] = [];
  const toNextEvening = (): void => {
    while (!works(day)) {
      day += 1;
      left = evenings.hours;
    }
  };
  for (const step of plan.steps) {
    let hands = step.hours[pick];
    if (hands > 0) {
      toNextEvening();
      if (left <= 1e-9) {
        day += 1;
        left = evenings.hours;
        toNextEvening();
      }
    }
    const from = day;
    while (hands > 1e-9) {
      used.add(day);
      const now = Math.min(hands, left);
      hands -= now;
      left -= now;
      if (hands > 1e-9) {
        day += 1;
        left = evenings.hours;
        toNextEvening();
      }
    }
    const to = day;
    const wait = nights(step.waitHours[pick]);
    if (wait > 0) {
      day += wait;
      left = evenings.hours;
    }
    steps.push({ treatment: step.treatment, from, to, free: day });
  }
  return { steps, total: plan.steps.length === 0 ? 0 : day + 1, evenings: used.size };
}
