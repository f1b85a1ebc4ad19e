import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysFor } from '../../../src/core/days.ts';
import { planOf } from '../../../src/core/plan.ts';
import { scheduleBench } from '../../../src/core/schedule/bench.ts';
import { anyBench, everyEvening } from './any-bench.ts';
import { faultsOf } from './check-bench.ts';
import { fewestDays } from './try-everything.ts';

/** Quick by itself; on a machine with much else to do it is the machine that takes long. */
const PATIENT = { timeout: 60_000 };

// The bench of many blocks, whatever lies on it. `faultsOf` and `fewestDays` know nothing of the code under test.

describe('any bench', PATIENT, () => {
  it('can be lived: hands, places, waits, evenings, dates', () => {
    fc.assert(
      fc.property(anyBench(), (input) => {
        expect(faultsOf(input, scheduleBench(input))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('is never later than in order, nor sooner than its bound', () => {
    fc.assert(
      fc.property(anyBench(), (input) => {
        const { days, inOrderDays, bound } = scheduleBench(input);
        expect(days).toBeLessThanOrEqual(inOrderDays);
        expect(bound.days).toBeLessThanOrEqual(days);
        expect(bound.days).toBe(Math.max(bound.criticalPath?.days ?? 0, bound.busiest?.days ?? 0));
      }),
      { numRuns: 60 },
    );
  });

  it('gets the same answer to the same question, and lists each step left once', () => {
    fc.assert(
      fc.property(anyBench(), fc.nat(), (input, seed) => {
        const answer = scheduleBench({ ...input, seed });
        expect(scheduleBench(structuredClone({ ...input, seed }))).toEqual(answer);
        const told = answer.blocks.flatMap(({ blockId, steps }) =>
          steps.filter(({ running }) => !running).map(({ treatment }) => `${blockId} ${treatment}`),
        );
        expect([...answer.served].sort()).toEqual(told.sort());
      }),
      { numRuns: 25 },
    );
  });

  it('given an earlier order is never later than that order was', () => {
    fc.assert(
      fc.property(anyBench(), fc.nat(), (input, seed) => {
        const before = scheduleBench({ ...input, seed });
        expect(scheduleBench({ ...input, budget: 3, served: before.served }).days).toBeLessThanOrEqual(before.days);
      }),
      { numRuns: 25 },
    );
  });

  it('ended at once is still a schedule', () => {
    fc.assert(
      fc.property(anyBench(), (input) => {
        expect(
          faultsOf(
            input,
            scheduleBench({ ...input, budget: 9_999 }, () => true),
          ),
        ).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});

describe('one block by itself', PATIENT, () => {
  it('takes the days and evenings that its own plan says, whatever the week', () => {
    const alone = anyBench({ blocks: 1, steps: 8, progress: false, choice: false });
    fc.assert(
      fc.property(alone, fc.integer({ min: 1, max: 16 }), fc.nat({ max: 126 }), (input, quarters, bits) => {
        const weekdays = everyEvening(1).map((_, day) => ((bits + 1) >> day) % 2 === 1);
        const steps = input.blocks.flatMap((block) => block.steps);
        const plan = planOf(
          steps.map(({ treatment, hours, waitHours }) => ({
            treatment,
            because: [],
            serves: [],
            amount: null,
            hours: { o: hours, m: hours, p: hours },
            waitHours: { o: waitHours, m: waitHours, p: waitHours },
            consumables: 0,
            after: [],
            essential: false,
          })),
        );
        const days = daysFor(plan, { hours: quarters / 4, weekdays });
        const answer = scheduleBench({
          ...input,
          hours: weekdays.map((there) => (there ? quarters / 4 : 0)),
          datesOff: [],
          hoursOn: {},
        });
        expect(answer.days).toBe(days.total);
        expect(answer.bound.days).toBe(days.total);
        const told = answer.blocks.flatMap((block) => block.steps);
        expect(told.map(({ treatment, from, to, free }) => ({ treatment, from, to, free }))).toEqual(days.steps);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a small bench of whole hours', PATIENT, () => {
  const step = fc.record({
    hours: fc.integer({ min: 1, max: 2 }),
    nights: fc.nat({ max: 2 }),
    clamps: fc.boolean(),
    handsClamps: fc.boolean(),
  });
  const bench = fc.record({
    plans: fc.array(fc.array(step, { minLength: 1, maxLength: 2 }), { minLength: 2, maxLength: 3 }),
    evening: fc.integer({ min: 1, max: 2 }),
    clamps: fc.integer({ min: 1, max: 2 }),
  });
  type Small = typeof bench extends fc.Arbitrary<infer T> ? T : never;
  const inputOf = ({ plans, evening, clamps }: Small, units = clamps) => ({
    today: '2026-11-30',
    blocks: plans.map((plan, block) => ({
      blockId: `block ${block}`,
      steps: plan.map((one, n) => ({
        treatment: `step ${n}`,
        hours: one.hours,
        waitHours: one.nights * 24,
        handsResources: one.handsClamps ? ['hands', 'clamps'] : ['hands'],
        waitResource: one.clamps ? 'clamps' : null,
      })),
    })),
    hours: everyEvening(evening),
    datesOff: [],
    capacities: { hands: 1, clamps: units },
    budget: 150,
  });

  it('is never sooner than any way of spending the hours, and nearly always as soon as the best', () => {
    let same = 0;
    let all = 0;
    fc.assert(
      fc.property(bench, (small) => {
        const input = inputOf(small);
        const best = fewestDays(input);
        const { days, bound } = scheduleBench(input);
        expect(bound.days).toBeLessThanOrEqual(best);
        expect(days).toBeGreaterThanOrEqual(best);
        all += 1;
        if (days === best) same += 1;
      }),
      { numRuns: 30, seed: 11 },
    );
    expect(same / all).toBeGreaterThanOrEqual(0.9);
  });

  it('is never later with a clamp set or an hour more', () => {
    fc.assert(
      fc.property(bench, (small) => {
        const { days } = scheduleBench(inputOf(small));
        expect(scheduleBench(inputOf(small, small.clamps + 1)).days).toBeLessThanOrEqual(days);
        expect(scheduleBench(inputOf({ ...small, evening: small.evening + 1 })).days).toBeLessThanOrEqual(days);
      }),
      { numRuns: 30, seed: 11 },
    );
  });
});
