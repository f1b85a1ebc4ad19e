import type { BenchInput, BenchSchedule, BenchStep } from '../../../src/core/schedule/types.ts';

/*
 * Whether a schedule can be lived: worked out from the question and what the answer says, evening by evening and night by
 * night, with nothing of the code that made it. Times within an evening are compared to a hair.
 */

const HAIR = 1e-6;
const DAY_MS = 86_400_000;
const dayOf = (date: string, today: string): number => (Date.parse(date) - Date.parse(today)) / DAY_MS;
const dateOf = (day: number, today: string): string =>
  new Date(Date.parse(today) + day * DAY_MS).toISOString().slice(0, 10);

function hoursOn(day: number, { today, hours, datesOff, hoursOn: own = {} }: BenchInput): number {
  const date = dateOf(day, today);
  const ownHours = own[date];
  if (ownHours !== undefined) return ownHours;
  return datesOff.includes(date) ? 0 : (hours[(new Date(date).getUTCDay() + 6) % 7] ?? 0);
}

const handsOf = (step: BenchStep): ReadonlySet<string> => new Set(['hands', ...step.handsResources]);

const leftOf = ({ hours, progress }: BenchStep): number =>
  progress?.state === 'begun' ? Math.max(0, hours - progress.hoursDone) : hours;

/** One holding of a resource: from an hour of a day's evening until the beginning of another's, or within one evening. */
interface Holding {
  readonly resource: string;
  readonly day: number;
  readonly at: number;
  readonly until: number;
  readonly untilAt: number;
}

/** Steps of a block still to be worked, with their places, in the order the answer works them: where a plan leaves a choice. */
function asWorked(remaining: readonly BenchStep[], blockId: string, answer: BenchSchedule): [number, BenchStep][] {
  const left = [...remaining.entries()].filter(([, { progress }]) => progress?.state !== 'waiting');
  if (!remaining.some(({ after }) => after)) return left;
  const told = answer.blocks.find((one) => one.blockId === blockId)?.steps ?? [];
  const beginning = (treatment: string): number =>
    answer.evenings
      .flatMap(({ sittings }) => sittings)
      .find((one) => one.blockId === blockId && one.treatment === treatment)?.at ?? 0;
  // Of one evening's steps the one that waits comes last.
  const key = ([n, { treatment }]: [number, BenchStep]): readonly number[] => [
    told[n]?.from ?? 0,
    told[n]?.free ?? 0,
    beginning(treatment),
    n,
  ];
  return left.sort((a, b) => {
    const theirs = key(b);
    return (
      key(a)
        .map((one, at) => one - (theirs[at] ?? 0))
        .find((difference) => difference !== 0) ?? 0
    );
  });
}

export function faultsOf(input: BenchInput, answer: BenchSchedule): string[] {
  const faults: string[] = [];
  const claim = (holds: boolean, fault: string): void => {
    if (!holds) faults.push(fault);
  };
  const holdings: Holding[] = [];
  const runningBy = new Map<string, number>();
  let last = -1;

  for (const [index, { blockId, steps }] of input.blocks.entries()) {
    const block = answer.blocks[index];
    claim(block?.blockId === blockId, `${blockId} is not where it was asked for`);
    let ready = -1;
    let free = { day: 0, at: 0 };
    const seen = new Set<string>();
    const remaining = steps.filter(({ progress }) => progress?.state !== 'done' && progress?.state !== 'skipped');
    claim(block?.steps.length === remaining.length, `${blockId} has other steps than are left`);
    for (const [n, step] of remaining.entries()) {
      if (step.progress?.state !== 'waiting') continue;
      const until = Math.max(0, dayOf(step.progress.until, input.today));
      const told = block?.steps[n];
      claim(told?.running === true && told.free === until, `${blockId} ${step.treatment} runs, but is not said to`);
      free = { day: Math.max(free.day, until), at: 0 };
      ready = Math.max(ready, until);
      if (step.waitResource === null) continue;
      holdings.push({ resource: step.waitResource, day: -1, at: 0, until, untilAt: 0 });
      runningBy.set(step.waitResource, (runningBy.get(step.waitResource) ?? 0) + 1);
    }
    for (const [n, step] of asWorked(remaining, blockId, answer)) {
      const told = block?.steps[n];
      const name = `${blockId} ${step.treatment}`;
      if (!told || told.treatment !== step.treatment) {
        faults.push(`${name} is not told of`);
        continue;
      }
      const sat = answer.evenings.flatMap(({ day, sittings }) =>
        sittings
          .filter((one) => one.blockId === blockId && one.treatment === step.treatment)
          .map((one) => ({ ...one, day })),
      );
      const sum = sat.reduce((all, one) => all + one.hours, 0);
      for (const before of step.after ?? [])
        claim(
          seen.has(before) || !remaining.some((one) => one.treatment === before && one.progress?.state !== 'waiting'),
          `${name} is worked before ${before}`,
        );
      seen.add(step.treatment);
      claim(Math.abs(sum - leftOf(step)) < HAIR, `${name} is given ${sum} h of ${leftOf(step)}`);
      claim(
        sat.every(({ hours }) => hours > 0),
        `${name} has a sitting of nothing`,
      );
      claim(
        sat.every(({ begins, ends }, at) => begins === (at === 0) && ends === (at === sat.length - 1)),
        `${name} begins or ends where it does not`,
      );
      const first = sat[0] ?? { day: told.from, at: told.from === free.day ? free.at : 0 };
      const final = sat.at(-1);
      claim(told.from === first.day && told.to === (final?.day ?? told.from), `${name} says other days than it sits`);
      claim(
        first.day > free.day || (first.day === free.day && first.at >= free.at - HAIR),
        `${name} begins on day ${first.day} at ${first.at}, its block is free on ${free.day} at ${free.at}`,
      );
      let end = free;
      for (const one of sat) {
        claim(
          one.day > end.day || (one.day === end.day && one.at >= end.at - HAIR),
          `${name} is worked twice at once on day ${one.day}`,
        );
        claim(one.at + one.hours <= hoursOn(one.day, input) + HAIR, `${name} runs over the evening of day ${one.day}`);
        end = { day: one.day, at: one.at + one.hours };
        for (const resource of handsOf(step))
          holdings.push({ resource, day: one.day, at: one.at, until: one.day, untilAt: end.at });
      }
      const nights = Math.ceil(step.waitHours / 24 - HAIR);
      claim(
        told.free === told.to + nights,
        `${name} is free on day ${told.free} after ${nights} nights from ${told.to}`,
      );
      if (nights > 0 && step.waitResource !== null)
        holdings.push({
          resource: step.waitResource,
          day: told.to,
          at: final ? final.at + final.hours : first.at,
          until: told.free,
          untilAt: 0,
        });
      free = nights > 0 || sat.length === 0 ? { day: told.free, at: nights > 0 ? 0 : free.at } : end;
      ready = Math.max(ready, told.free);
      for (const [day, date] of [
        [told.from, told.fromDate],
        [told.to, told.toDate],
        [told.free, told.freeDate],
      ] as const)
        claim(dateOf(day, input.today) === date, `${name} calls day ${day} ${date}`);
    }
    claim(block?.ready === ready, `${blockId} is ready on day ${ready}, not ${block?.ready}`);
    claim(block?.readyDate === (ready < 0 ? null : dateOf(ready, input.today)), `${blockId} has a wrong date`);
    last = Math.max(last, ready);
  }

  // Where anything is taken up is where there could be too much of it: in an evening, and in the night after it.
  for (const { resource, day, at } of holdings) {
    const units = Math.max(1, input.capacities[resource] ?? (resource === 'hands' ? 1 : Number.POSITIVE_INFINITY));
    const most = Math.max(units, runningBy.get(resource) ?? 0);
    const now = holdings.filter(
      (one) =>
        one.resource === resource &&
        (one.day < day || (one.day === day && one.at <= at + HAIR)) &&
        (one.until > day || (one.until === day && one.untilAt > at + HAIR)),
    );
    claim(now.length <= most, `${now.length} of ${most} ${resource} are in use on day ${day} at ${at}`);
    const tonight = holdings.filter((one) => one.resource === resource && one.day <= day && one.until > day);
    claim(tonight.length <= most, `${tonight.length} of ${most} ${resource} wait in the night after day ${day}`);
  }

  for (const { day, date, hours, used, sittings } of answer.evenings) {
    claim(dateOf(day, input.today) === date, `day ${day} is called ${date}`);
    claim(Math.abs(hours - hoursOn(day, input)) < HAIR && hours > 0, `the evening of day ${day} has ${hours} h`);
    claim(Math.abs(used - sittings.reduce((sum, one) => sum + one.hours, 0)) < HAIR, `day ${day} uses ${used} h`);
    claim(
      sittings.every((one, n) => n === 0 || (sittings[n - 1]?.at ?? 0) <= one.at),
      `sittings of day ${day} are not in order`,
    );
  }
  claim(answer.days === last + 1, `it ends on day ${last}, and is said to take ${answer.days}`);
  claim(answer.lastDate === (last < 0 ? null : dateOf(last, input.today)), `the last date is ${answer.lastDate}`);
  return faults;
}
