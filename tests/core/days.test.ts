import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countDays, daysFor, type Evenings, eveningsOf } from '../../src/core/days.ts';
import { type PlanStep, planOf } from '../../src/core/plan.ts';
import { checksOf, titleOf } from '../handbook/checks.ts';

// Calendar of one block by itself: scheduling rules of the trade handbook §6.2. Figures below are counted by hand.

const everyDay = [true, true, true, true, true, true, true];
const evenings = (hours: number, weekdays: readonly boolean[] = everyDay): Evenings => ({ hours, weekdays });
const [MONDAY, WEDNESDAY, FRIDAY, SATURDAY] = [0, 2, 4, 5];
const only = (...days: readonly (number | undefined)[]) => everyDay.map((_, day) => days.includes(day));

/** Days of steps given as [hands-on hours, hours of waiting after]. */
const days = (steps: readonly (readonly [number, number])[], when: Evenings, firstWeekday = 0): number =>
  countDays(
    steps.map(([hands]) => hands),
    steps.map(([, wait]) => wait),
    when,
    firstWeekday,
  );

const step = (treatment: string, hours: number, wait: number): PlanStep => ({
  treatment,
  because: [],
  serves: [],
  amount: null,
  hours: { o: hours, m: hours, p: hours },
  waitHours: { o: wait, m: wait, p: wait },
  consumables: 0,
  after: [],
  essential: false,
});

const check = (id: string) => {
  const row = checksOf('schedule').find((each) => each.id === id);
  if (!row) throw new Error(`No row ${id}.`);
  return row;
};

describe('hands-on work', () => {
  it('takes no day when there is none', () => {
    expect(days([], evenings(2.5))).toBe(0);
  });

  it('fits an evening, or runs over into the next', () => {
    expect(days([[2.5, 0]], evenings(2.5))).toBe(1);
    expect(days([[2.6, 0]], evenings(2.5))).toBe(2);
    expect(
      days(
        [
          [1, 0],
          [1, 0],
          [1, 0],
        ],
        evenings(2.5),
      ),
    ).toBe(2);
  });

  it(titleOf(check('sched.evenings_lb')), () => {
    const row = check('sched.evenings_lb');
    expect(days([[Number(row.inputs.hours), 0]], evenings(Number(row.inputs.evening_h)))).toBe(row.expected);
  });

  it('is done on the chosen weekdays only', () => {
    // Six hours at two an evening on Monday, Wednesday and Friday: the third is a Friday, the fifth day.
    expect(days([[6, 0]], evenings(2, only(MONDAY, WEDNESDAY, FRIDAY)))).toBe(5);
    // One more evening is the Monday after.
    expect(days([[6.5, 0]], evenings(2, only(MONDAY, WEDNESDAY, FRIDAY)))).toBe(8);
  });

  it('begins on the first evening there is, counted from the day one starts', () => {
    expect(days([[1, 0]], evenings(2, only(SATURDAY)), MONDAY)).toBe(6);
    expect(days([[1, 0]], evenings(2, only(SATURDAY)), SATURDAY)).toBe(1);
  });

  it('refuses a week without an evening, and an evening without hours', () => {
    expect(() => days([[1, 0]], evenings(2.5, only()))).toThrow(RangeError);
    expect(() => days([[1, 0]], evenings(0))).toThrow('No evening to work in');
  });

  it('makes such settings workable, since a merged backup may say so', () => {
    expect(eveningsOf({ eveningHours: 0, evenings: only() })).toEqual({ hours: 1, weekdays: everyDay });
    expect(eveningsOf({ eveningHours: 3, evenings: only(MONDAY) })).toEqual({ hours: 3, weekdays: only(MONDAY) });
  });
});

describe('waiting', () => {
  it('runs in nights, whether four hours or twenty-four', () => {
    for (const wait of [4, 12, 24])
      expect(
        days(
          [
            [1, wait],
            [1, 0],
          ],
          evenings(2.5),
        ),
      ).toBe(2);
    expect(
      days(
        [
          [1, 25],
          [1, 0],
        ],
        evenings(2.5),
      ),
    ).toBe(3);
  });

  it('runs on days without an evening too', () => {
    // Glued on Friday, dry on Saturday, worked again on Monday.
    expect(
      days(
        [
          [1, 24],
          [1, 0],
        ],
        evenings(2.5, only(MONDAY, FRIDAY)),
        FRIDAY,
      ),
    ).toBe(4);
  });

  it('counts after the last step: a block is not ready while it dries', () => {
    expect(days([[1, 72]], evenings(2.5))).toBe(4);
  });

  it(titleOf(check('sched.worm_elapsed')), () => {
    const row = check('sched.worm_elapsed');
    const waits = row.inputs.days as readonly number[];
    const all = days(
      waits.map((wait) => [0, 24 * wait] as const),
      evenings(2.5),
    );
    // The row counts days gone by, we the day it is done as well.
    expect(all - 1).toBe(row.expected);
  });

  it(titleOf(check('sched.glue_chain')), () => {
    const row = check('sched.glue_chain');
    const waits = row.inputs.waits_h as readonly number[];
    const all = days(
      waits.map((wait) => [0, wait] as const),
      evenings(2.5),
    );
    expect(24 * (all - 1)).toBe(row.expected);
  });
});

describe('the calendar of a plan', () => {
  it('says for each step from when to when, and when the block is free again', () => {
    const plan = planOf([step('reglue', 3, 24), step('scrapeAndTrue', 1, 0), step('seal', 1, 72)]);
    expect(daysFor(plan, evenings(2.5))).toEqual({
      steps: [
        { treatment: 'reglue', from: 0, to: 1, free: 2 },
        { treatment: 'scrapeAndTrue', from: 2, to: 2, free: 2 },
        { treatment: 'seal', from: 2, to: 2, free: 5 },
      ],
      total: 6,
      evenings: 3,
    });
  });

  it('counts an evening once, however many steps it holds, and a step’s evenings only on weekdays with one', () => {
    const plan = planOf([step('dryClean', 0.5, 0), step('recordAfter', 0.5, 0), step('makePart', 4, 0)]);
    const when = evenings(2.5, only(MONDAY, FRIDAY));
    expect(daysFor(plan, when)).toMatchObject({ total: 5, evenings: 2 });
  });

  it('follows the estimate asked for', () => {
    const wide = planOf([{ ...step('seal', 1, 24), waitHours: { o: 24, m: 72, p: 168 } }]);
    expect(daysFor(wide, evenings(2.5), 'o').total).toBe(2);
    expect(daysFor(wide, evenings(2.5), 'm').total).toBe(4);
    expect(daysFor(wide, evenings(2.5), 'p').total).toBe(8);
  });
});

describe('for any steps and any week', () => {
  const anyStep = fc.tuple(
    fc.nat({ max: 80 }).map((n) => n / 8),
    fc.nat({ max: 300 }),
  );
  const anyWeek = fc
    .tuple(fc.integer({ min: 1, max: 24 }), fc.nat({ max: 126 }), fc.nat({ max: 6 }))
    .map(([quarters, bits, first]) => ({
      when: evenings(
        quarters / 4,
        everyDay.map((_, day) => ((bits + 1) >> day) % 2 === 1),
      ),
      first,
    }));
  const anySteps = fc.array(anyStep, { maxLength: 8 });

  it('a step more, anywhere, never ends the work sooner', () => {
    fc.assert(
      fc.property(anySteps, anyStep, fc.nat(), anyWeek, (steps, more, place, { when, first }) => {
        const at = place % (steps.length + 1);
        const longer = [...steps.slice(0, at), more, ...steps.slice(at)];
        expect(days(longer, when, first)).toBeGreaterThanOrEqual(days(steps, when, first));
      }),
      { numRuns: 500 },
    );
  });

  it('more hours or a longer wait never end it sooner', () => {
    fc.assert(
      fc.property(anySteps, fc.nat(), anyStep, anyWeek, (steps, place, [hours, wait], { when, first }) => {
        const at = place % Math.max(1, steps.length);
        const slower = steps.map(([hands, rest], n) =>
          n === at ? ([hands + hours, rest + wait] as const) : ([hands, rest] as const),
        );
        expect(days(slower, when, first)).toBeGreaterThanOrEqual(days(steps, when, first));
      }),
      { numRuns: 500 },
    );
  });

  it('it takes at least the evenings its hours fill, and the nights its waits run', () => {
    fc.assert(
      fc.property(fc.array(anyStep, { minLength: 1, maxLength: 8 }), anyWeek, (steps, { when, first }) => {
        const hours = steps.reduce((sum, [hands]) => sum + hands, 0);
        const nights = steps.reduce((sum, [, wait]) => sum + Math.ceil(wait / 24), 0);
        const plan = planOf(steps.map(([hands, wait], n) => step(`step ${n}`, hands, wait)));
        const { total, evenings: used } = daysFor(plan, when, 'm', first);
        expect(used).toBeGreaterThanOrEqual(Math.ceil(hours / when.hours - 1e-9));
        expect(total).toBeGreaterThanOrEqual(nights + 1);
        expect(total).toBeGreaterThanOrEqual(used);
      }),
      { numRuns: 500 },
    );
  });
});
