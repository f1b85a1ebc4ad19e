import { AppError } from '../errors.ts';
import { type Calendar, MOST_DAYS, NOTHING } from './calendar.ts';
import type { Tasks } from './tasks.ts';

/** Hears every sitting: which task, on which day, how many hours into the evening, for how long. */
export type OnSitting = (task: number, day: number, at: number, hours: number) => void;

/** Where an order of tasks puts everything; the arrays are filled anew by each run. */
export interface Placing {
  /** By task: first and last day of the work, and the day its block is free again. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly free: Int32Array;
  /** By block: the day it is ready. */
  readonly ready: Int32Array;
  /** Days no order can exceed. */
  readonly horizon: number;
  /** Evenings on which the last run has someone at work. */
  evenings(): number;
  /** Serves the tasks in this order, each as early as hands, resources and its block allow. */
  run(list: Int32Array, onSitting?: OnSitting): void;
}

/**
 * The bench in time. An evening is worked from its beginning without gaps, by each pair of hands; work that does not fit is
 * continued the next evening there is room, and holds nothing in between. A wait runs from the evening it begins through
 * whole nights and holds one unit of its resource; what another step of that evening uses must be there besides. A block
 * is never worked while it waits. One block by itself takes the days of `countDays` in `days.ts`.
 * Source: scheduling rules of trade handbook §6.2.
 */
export function placingOf(tasks: Tasks, calendar: Calendar): Placing {
  const { list: all, capacities, running, free: firstFree } = tasks;
  const resources = capacities.length;
  const horizon = horizonOf(tasks, calendar);
  // More pairs of hands than blocks have nothing to hold.
  const hands = Math.min(capacities[0] as number, Math.max(1, firstFree.length));
  const hours = Float64Array.from({ length: horizon }, (_, day) => calendar.hoursOn(day));
  /** Units of a resource that wait through the night after a day, at `day × resources + resource`. */
  const asleep = new Int32Array(horizon * resources);
  /** Hours into the evening until which each unit is worked with; those in use come first. */
  const busy = new Float64Array(horizon * resources * hands);
  let used = horizon;

  const from = new Int32Array(all.length);
  const to = new Int32Array(all.length);
  const free = new Int32Array(all.length);
  const ready = new Int32Array(firstFree.length);
  /** Hours into the evening of `ready` at which a block may be worked. */
  const readyAt = new Float64Array(firstFree.length);
  // Of the task being placed; overwritten by the next.
  let pieces = 0;
  const pieceDay: number[] = [];
  const pieceAt: number[] = [];
  const pieceHours: number[] = [];

  const usable = (day: number, resource: number): number =>
    Math.min(hands, (capacities[resource] as number) - (asleep[day * resources + resource] as number));

  /** Hours into the evening from which a task may be worked on a day, all it needs at hand; infinite if not at all. */
  function earliest(day: number, at: number, needs: readonly number[]): number {
    let start = at;
    for (const resource of needs) {
      const row = (day * resources + resource) * hands;
      let soonest = Number.POSITIVE_INFINITY;
      for (let unit = 0, count = usable(day, resource); unit < count; unit += 1)
        soonest = Math.min(soonest, busy[row + unit] as number);
      if (soonest > start) start = soonest;
    }
    return start;
  }

  /** Marks one unit of a resource as worked with: the one that leaves the smallest gap. */
  function occupy(day: number, resource: number, start: number, end: number): void {
    const row = (day * resources + resource) * hands;
    let best = -1;
    for (let unit = 0, count = usable(day, resource); unit < count; unit += 1) {
      const until = busy[row + unit] as number;
      if (until > start + NOTHING) continue;
      if (best < 0 || until > (busy[row + best] as number)) best = unit;
    }
    if (best < 0) throw new Error(`No unit of resource ${resource} on day ${day}, expected one after looking.`);
    busy[row + best] = end;
  }

  /** The unit worked with until shortly before an hour, of those in use on a day; −1 for none. Laid by, it may wait. */
  function laidBy(day: number, resource: number, at: number): number {
    const row = (day * resources + resource) * hands;
    let best = -1;
    for (let unit = 0; unit < hands; unit += 1) {
      const until = busy[row + unit] as number;
      if (until > 0 && until <= at + NOTHING && (best < 0 || until > (busy[row + best] as number))) best = unit;
    }
    return best;
  }

  /**
   * Last night in which a wait would find its resource taken; −1 if it finds it free throughout. In the first evening it
   * begins at an hour and may have what was used before.
   */
  function taken(resource: number, first: number, count: number, at: number): number {
    const most = capacities[resource] as number;
    for (let night = first + count - 1; night >= first; night -= 1) {
      const row = night * resources + resource;
      let there = asleep[row] as number;
      for (let unit = 0; unit < hands; unit += 1) if ((busy[row * hands + unit] as number) > 0) there += 1;
      if (there >= most && !(night === first && there === most && laidBy(first, resource, at) >= 0)) return night;
    }
    return -1;
  }

  /** Lets one unit wait through the nights from a day on, one laid by that evening before a fresh one. */
  function fallAsleep(resource: number, first: number, count: number, at: number): void {
    for (let night = first; night < first + count; night += 1) {
      const row = night * resources + resource;
      asleep[row] = (asleep[row] as number) + 1;
    }
    const unit = laidBy(first, resource, at);
    if (unit < 0) return;
    const row = (first * resources + resource) * hands;
    let end = hands - 1;
    while ((busy[row + end] as number) === 0) end -= 1;
    busy[row + unit] = busy[row + end] as number;
    busy[row + end] = 0;
  }

  /** Lays a task's hours into evenings from a day on; answers the last day, its hours in the piece lists. */
  function lay(first: number, at: number, needed: number, needs: readonly number[]): number {
    pieces = 0;
    let rest = needed;
    let day = first;
    for (let begin = at; ; day += 1, begin = 0) {
      // Rather a fault than a search without end.
      if (day >= horizon) throw new Error(`Day ${day} is beyond the ${horizon} that are surely enough.`);
      const there = hours[day] as number;
      if (there === 0) continue;
      const start = earliest(day, begin, needs);
      const left = there - start;
      if (!(left > NOTHING)) continue;
      const last = rest <= left + NOTHING;
      pieceDay[pieces] = day;
      pieceAt[pieces] = start;
      pieceHours[pieces] = last ? rest : left;
      pieces += 1;
      if (last) return day;
      rest -= left;
    }
  }

  function place(task: number, onSitting: OnSitting | undefined): void {
    const { block, hours: needed, nights, hands: needs, wait } = all[task] as (typeof all)[number];
    const scarce = wait >= 0 && nights > 0;
    // What it is worked with waits with it: from the beginning of its last sitting.
    const keeps = scarce && needs.includes(wait);
    let first = ready[block] as number;
    let at = readyAt[block] as number;
    let last = first;
    let end = at;
    for (;;) {
      if (needed > 0) {
        last = lay(first, at, needed, needs);
        end = (pieceAt[pieces - 1] as number) + (pieceHours[pieces - 1] as number);
      } else {
        last = first;
        end = at;
      }
      const heldFrom = keeps && needed > 0 ? (pieceAt[pieces - 1] as number) : end;
      const night = scarce ? taken(wait, last, nights, heldFrom) : -1;
      if (night < 0) {
        if (scarce) fallAsleep(wait, last, nights, heldFrom);
        break;
      }
      // A step within one evening must wait that night out; a longer one is tried from its next evening.
      const begun = needed > 0 ? (pieceDay[0] as number) : last;
      first = begun === last ? night + 1 : begun + 1;
      at = 0;
    }
    from[task] = needed > 0 ? (pieceDay[0] as number) : last;
    to[task] = last;
    for (let n = 0; needed > 0 && n < pieces; n += 1) {
      const day = pieceDay[n] as number;
      const start = pieceAt[n] as number;
      for (const resource of needs)
        if (!(keeps && resource === wait && n === pieces - 1))
          occupy(day, resource, start, start + (pieceHours[n] as number));
      onSitting?.(task, day, start, pieceHours[n] as number);
    }
    const until = last + nights;
    free[task] = until;
    ready[block] = until;
    readyAt[block] = nights > 0 ? 0 : end;
    if (until >= used) used = until + 1;
  }

  return {
    from,
    to,
    free,
    ready,
    horizon,
    evenings() {
      let count = 0;
      for (let day = 0; day < used; day += 1) if ((busy[day * resources * hands] as number) > 0) count += 1;
      return count;
    },
    run(list, onSitting) {
      asleep.fill(0, 0, used * resources);
      busy.fill(0, 0, used * resources * hands);
      used = 1;
      for (const { until, wait } of running) {
        if (until > used) used = until;
        if (wait < 0) continue;
        for (let night = 0; night < until; night += 1) {
          const row = night * resources + wait;
          asleep[row] = (asleep[row] as number) + 1;
        }
      }
      ready.set(firstFree);
      readyAt.fill(0);
      for (let n = 0; n < list.length; n += 1) place(list[n] as number, onSitting);
    },
  };
}

/** Days that are surely enough: everything that runs is over, then one step after the other. @throws AppError `schedule-too-long` */
function horizonOf({ list, running }: Tasks, calendar: Calendar): number {
  let day = running.reduce((last, { until }) => Math.max(last, until), 0) + 1;
  for (const { hours, nights } of list) {
    day = calendar.after(calendar.next(day), hours) + nights + 1;
    if (!(day < MOST_DAYS)) throw new AppError('schedule-too-long');
  }
  return day + 2;
}
