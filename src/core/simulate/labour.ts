import { type Clock, checkEvenings, type Evenings, waitFor, workOn } from '../days.ts';
import { joined } from '../wanted.ts';
import type { Fate, Found, Hidden } from './fate.ts';
import type { Luck } from './luck.ts';
import type { Workshop } from './work.ts';

/** The work in every draw. */
export interface Labour {
  /** Hands-on hours and elapsed days of the whole restoration. */
  readonly hours: Float64Array;
  readonly days: Float64Array;
  /** What is paid for hours and consumables, minor units; the work stops where an essential repair fails. */
  readonly cost: Float64Array;
}

/** Which draws take which step, and how much of it: 1 or 0, and amounts in the treatment's unit, by rank. */
interface Wanted {
  readonly steps: (Uint8Array | undefined)[];
  readonly amounts: (Float64Array | undefined)[];
}

/** Steps and amounts of every draw: those of all plans and of the findings, then what is hidden, then what they bring. */
function wantedIn(found: readonly Found[], hidden: readonly Hidden[], workshop: Workshop, count: number): Wanted {
  const { works, brings } = workshop;
  const steps: Wanted['steps'] = works.map(() => undefined);
  const amounts: Wanted['amounts'] = works.map(() => undefined);
  const stepsOf = (rank: number): Uint8Array => {
    const column = steps[rank] ?? new Uint8Array(count);
    steps[rank] = column;
    return column;
  };
  const amountsOf = (rank: number): Float64Array => {
    const column = amounts[rank] ?? new Float64Array(count);
    amounts[rank] = column;
    return column;
  };

  for (const rank of [...workshop.always, ...found.flatMap(({ hazard }) => hazard.demand.steps)]) {
    if (!steps[rank]) stepsOf(rank).fill(1);
  }
  const base = works.map(() => 0);
  for (const { rank, amount } of found.flatMap(({ hazard }) => hazard.demand.uses)) {
    const unit = works[rank]?.unit;
    if (unit) base[rank] = joined(unit, base[rank] ?? 0, amount);
  }
  for (const [rank, amount] of base.entries()) if (amount > 0) amountsOf(rank).fill(amount);

  for (const { unlooked, grades, where } of hidden) {
    for (const [n, { demand }] of unlooked.atGrade.entries()) {
      const grade = n + 1;
      for (const rank of demand.steps) {
        const column = stepsOf(rank);
        for (const i of where) if (grades[i] === grade) column[i] = 1;
      }
      for (const { rank, amount } of demand.uses) {
        const unit = works[rank]?.unit;
        if (!unit) continue;
        const column = amountsOf(rank);
        for (const i of where) if (grades[i] === grade) column[i] = joined(unit, column[i] as number, amount);
      }
    }
  }
  for (const [rank, brought] of brings.entries()) {
    const bringing = steps[rank];
    if (!bringing) continue;
    for (const { rank: other, amount } of brought) {
      const unit = works[other]?.unit;
      if (!unit) continue;
      const column = amountsOf(other);
      for (let i = 0; i < count; i += 1) {
        if (bringing[i] === 1) column[i] = joined(unit, column[i] as number, amount);
      }
    }
  }
  return { steps, amounts };
}

/**
 * Hours, days and cost of every draw. Step by step over all draws: set-up and rate of one step share their luck, since
 * both are slow on a slow evening; one pace holds for the whole block.
 */
export function labourOf(
  found: readonly Found[],
  hidden: readonly Hidden[],
  { stop }: Pick<Fate, 'stop'>,
  workshop: Workshop,
  owner: { readonly hourlyRate: number; readonly evenings: Evenings },
  luck: Luck,
): Labour {
  const { count } = luck;
  const { works } = workshop;
  const wanted = wantedIn(found, hidden, workshop, count);
  const { evenings, hourlyRate } = owner;
  checkEvenings(evenings);
  const hours = new Float64Array(count);
  const cost = new Float64Array(count);
  // The calendar of every draw: the day it has come to, −1 before its first step, and what is left of that evening.
  const days = new Float64Array(count).fill(-1);
  const left = new Float64Array(count).fill(evenings.hours);
  const clock: Clock = { day: 0, left: 0 };
  const nothing = new Float64Array(count);
  for (const [rank, work] of works.entries()) {
    const here = wanted.steps[rank];
    if (!here) continue;
    const amount = wanted.amounts[rank] ?? nothing;
    const setUp = luck.through(`${work.id} time`, work.setUp);
    const perUnit = work.perUnit ? luck.through(`${work.id} time`, work.perUnit) : nothing;
    const pace = luck.through('pace', workshop.paceTable(work.reference));
    const wait = luck.through(`${work.id} wait`, work.wait);
    const { consumables } = work;
    for (let i = 0; i < count; i += 1) {
      if (here[i] === 0) continue;
      const time = ((setUp[i] as number) + (amount[i] as number) * (perUnit[i] as number)) * (pace[i] as number);
      hours[i] = (hours[i] as number) + time;
      if (rank <= (stop[i] as number)) cost[i] = (cost[i] as number) + (time * hourlyRate + consumables);
      clock.day = Math.max(0, days[i] as number);
      clock.left = left[i] as number;
      workOn(clock, time, evenings, 0);
      waitFor(clock, wait[i] as number, evenings);
      days[i] = clock.day;
      left[i] = clock.left;
    }
  }
  for (let i = 0; i < count; i += 1) days[i] = (days[i] as number) + 1;
  return { hours, days, cost };
}
