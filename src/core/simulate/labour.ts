import { countDays, type Evenings } from '../days.ts';
import { joined } from '../plan.ts';
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
  const hours = new Float64Array(count);
  const cost = new Float64Array(count);
  const taken: { readonly here: Uint8Array; readonly time: Float64Array; readonly wait: Float64Array }[] = [];
  const nothing = new Float64Array(count);
  for (const [rank, work] of works.entries()) {
    const here = wanted.steps[rank];
    if (!here) continue;
    const amount = wanted.amounts[rank] ?? nothing;
    const setUp = luck.through(`${work.id} time`, work.setUp);
    const perUnit = work.perUnit ? luck.through(`${work.id} time`, work.perUnit) : nothing;
    const pace = luck.through('pace', workshop.paceTable(work.reference));
    const { consumables } = work;
    const time = new Float64Array(count);
    for (let i = 0; i < count; i += 1) {
      if (here[i] === 0) continue;
      const own = ((setUp[i] as number) + (amount[i] as number) * (perUnit[i] as number)) * (pace[i] as number);
      time[i] = own;
      hours[i] = (hours[i] as number) + own;
      if (rank <= (stop[i] as number)) cost[i] = (cost[i] as number) + (own * owner.hourlyRate + consumables);
    }
    taken.push({ here, time, wait: luck.through(`${work.id} wait`, work.wait) });
  }

  const days = new Float64Array(count);
  const stepHours = new Float64Array(taken.length);
  const stepWaits = new Float64Array(taken.length);
  for (let i = 0; i < count; i += 1) {
    let steps = 0;
    for (const { here, time, wait } of taken) {
      if (here[i] === 0) continue;
      stepHours[steps] = time[i] as number;
      stepWaits[steps] = wait[i] as number;
      steps += 1;
    }
    days[i] = countDays(stepHours, stepWaits, steps, owner.evenings);
  }
  return { hours, days, cost };
}
