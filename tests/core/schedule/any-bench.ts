import fc from 'fast-check';
import type { BenchBlock, BenchInput, BenchStep, StepProgress } from '../../../src/core/schedule/types.ts';

/** A Monday. */
export const TODAY = '2026-11-30';
export const everyEvening = (hours: number): number[] => Array.from({ length: 7 }, () => hours);

export const aStep = (treatment: string, hours: number, waitHours = 0, more: Partial<BenchStep> = {}): BenchStep => ({
  treatment,
  hours,
  waitHours,
  handsResources: ['hands'],
  waitResource: null,
  ...more,
});

export const aBench = (blocks: readonly BenchBlock[], more: Partial<BenchInput> = {}): BenchInput => ({
  today: TODAY,
  blocks,
  hours: everyEvening(2.5),
  datesOff: [],
  capacities: { hands: 1 },
  ...more,
});

const dateAfter = (days: number): string => new Date(Date.parse(TODAY) + days * 86_400_000).toISOString().slice(0, 10);

const anyProgress: fc.Arbitrary<StepProgress | undefined> = fc.oneof(
  { weight: 12, arbitrary: fc.constant(undefined) },
  { weight: 1, arbitrary: fc.constant({ state: 'done' as const }) },
  { weight: 1, arbitrary: fc.constant({ state: 'skipped' as const }) },
  { weight: 1, arbitrary: fc.nat({ max: 60 }).map((n) => ({ state: 'begun' as const, hoursDone: n / 10 })) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.nat({ max: 9 }), fc.integer({ min: -2, max: 20 }))
      .map(([ago, until]) => ({ state: 'waiting' as const, since: dateAfter(-ago), until: dateAfter(until) })),
  },
);

const RESOURCES = ['bench', 'clamps', 'freezer', 'rack'] as const;

const anyStep = (progress: boolean): fc.Arbitrary<Omit<BenchStep, 'treatment'>> =>
  fc
    .record({
      tenths: fc.nat({ max: 60 }),
      waitHours: fc.oneof(fc.constant(0), fc.nat({ max: 200 })),
      hands: fc.subarray([...RESOURCES], { maxLength: 2 }),
      waitResource: fc.option(fc.constantFrom(...RESOURCES)),
      come: progress ? anyProgress : fc.constant(undefined),
    })
    .map(({ tenths, waitHours, hands, waitResource, come }) => ({
      hours: tenths / 10,
      waitHours,
      handsResources: ['hands', ...hands],
      waitResource,
      ...(come ? { progress: come } : {}),
    }));

export interface Extent {
  readonly blocks?: number;
  readonly steps?: number;
  readonly progress?: boolean;
  /** Whether some plans leave a choice of what to do next. */
  readonly choice?: boolean;
}

/** Any bench: blocks whose steps take up what is scarce, in any week, some of it done, some of it waiting. */
export const anyBench = ({
  blocks = 5,
  steps = 5,
  progress = true,
  choice = true,
}: Extent = {}): fc.Arbitrary<BenchInput> =>
  fc
    .record({
      plans: fc.array(fc.array(anyStep(progress), { maxLength: steps }), { maxLength: blocks }),
      week: fc.array(fc.nat({ max: 12 }), { minLength: 7, maxLength: 7 }),
      sure: fc.nat({ max: 6 }),
      off: fc.array(fc.nat({ max: 40 }), { maxLength: 6 }),
      own: fc.array(fc.tuple(fc.nat({ max: 20 }), fc.nat({ max: 8 })), { maxLength: 3 }),
      units: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 4, maxLength: 4 }),
      hands: fc.constantFrom(1, 1, 1, 2, 3),
      free: choice ? fc.nat({ max: 31 }) : fc.constant(0),
    })
    .map(({ plans, week, sure, off, own, units, hands, free }) => ({
      today: TODAY,
      blocks: plans.map((plan, block) => ({
        blockId: `block ${block}`,
        steps: plan.map((step, n) => ({
          ...step,
          treatment: `step ${n}`,
          // In some blocks each step follows only the one two before it; when nothing is worked no one can see the order.
          ...((free >> block) % 2 === 1
            ? {
                after: n >= 2 ? [`step ${n - 2}`] : [],
                hours: Math.max(0.1, step.hours),
                ...(step.progress?.state === 'begun' ? { progress: { state: 'begun' as const, hoursDone: 0.05 } } : {}),
              }
            : {}),
        })),
      })),
      hours: week.map((quarters, day) => (day === sure ? Math.max(1, quarters) : quarters) / 4),
      datesOff: off.map(dateAfter),
      hoursOn: Object.fromEntries(own.map(([day, halves]) => [dateAfter(day), halves / 2])),
      capacities: { hands, ...Object.fromEntries(RESOURCES.map((name, n) => [name, units[n] ?? 1])) },
      budget: 40,
    }));
