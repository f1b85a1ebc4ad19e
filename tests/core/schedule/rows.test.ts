import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../src/catalogue/index.ts';
import { pertMean } from '../../../src/core/estimate.ts';
import { planOfTreatments } from '../../../src/core/plan.ts';
import { scheduleBench } from '../../../src/core/schedule/bench.ts';
import { benchBlockOf, benchTimeOf } from '../../../src/core/schedule/from-plan.ts';
import type { BenchBlock } from '../../../src/core/schedule/types.ts';
import { treatmentOf } from '../../handbook/as-answers.ts';
import { checksOf, input, titleOf } from '../../handbook/checks.ts';
import lots from '../../handbook/trade-lots.json' with { type: 'json' };
import treatments from '../../handbook/trade-treatments.json' with { type: 'json' };
import { someSettings } from '../../make.ts';
import { aBench, aStep, TODAY } from './any-bench.ts';
import { faultsOf } from './check-bench.ts';

// The schedule rows of the trade handbook, each with its source in its title; `sched.critical` and `sched.freezer_three`
// as a bare project stand in project.test.ts. The handbook counts time that has passed, we days with the first counted:
// its day 30 is our 31st.

const check = (id: string) => {
  const row = checksOf('schedule').find((each) => each.id === `sched.${id}`);
  if (!row) throw new Error(`No row sched.${id}.`);
  return row;
};
const passed = (days: number): number => days - 1;

describe('one block', () => {
  const worm = check('worm_elapsed');
  it(titleOf(worm), () => {
    const [bag, ...waits] = worm.inputs.days as number[];
    const steps = [
      aStep('vacuum and bag', 0.3, (bag ?? 0) * 24),
      ...waits.map((days, n) => aStep(`stage ${n}`, 0.1, days * 24, { waitResource: 'freezer' })),
    ];
    const { days } = scheduleBench(aBench([{ blockId: 'A', steps }], { capacities: { hands: 1, freezer: 1 } }));
    expect(passed(days)).toBe(worm.expected);
  });

  const glue = check('glue_chain');
  it(titleOf(glue), () => {
    const steps = (glue.inputs.waits_h as number[]).map((hours, n) => aStep(`step ${n}`, 0.2, hours));
    expect(passed(scheduleBench(aBench([{ blockId: 'A', steps }])).days) * 24).toBe(glue.expected);
  });

  const hours = check('evenings_lb');
  it(titleOf(hours), () => {
    const steps = [aStep('work', input(hours, 'hours'))];
    const evening = Array.from({ length: 7 }, () => input(hours, 'evening_h'));
    const answer = scheduleBench(aBench([{ blockId: 'A', steps }], { hours: evening }));
    expect(answer.evenings).toHaveLength(Number(hours.expected));
    expect(answer.bound.days).toBe(hours.expected);
  });
});

describe('what is shared', () => {
  const freezer = check('freezer_three');
  it(titleOf(freezer), () => {
    const blocks = Array.from({ length: input(freezer, 'loads') }, (_, n) => ({
      blockId: `load ${n}`,
      steps: [aStep('freeze', 0.2, input(freezer, 'days') * 24, { waitResource: 'freezer' })],
    }));
    const answer = scheduleBench(aBench(blocks, { capacities: { hands: 1, freezer: input(freezer, 'capacity') } }));
    expect(passed(answer.days)).toBe(freezer.expected);
    expect(answer.bound).toMatchObject({ days: answer.days, by: 'busiest', busiest: { resource: 'freezer' } });
  });

  const clamps = check('clamps_two');
  it(titleOf(clamps), () => {
    const blocks = Array.from({ length: input(clamps, 'jobs') }, (_, n) => ({
      blockId: `job ${n}`,
      steps: [
        aStep('glue', 0.3, input(clamps, 'hours'), { handsResources: ['hands', 'clamps'], waitResource: 'clamps' }),
      ],
    }));
    const answer = scheduleBench(aBench(blocks, { capacities: { hands: 1, clamps: input(clamps, 'sets') } }));
    expect(passed(answer.days) * 24).toBe(clamps.expected);
  });
});

/** The handbook's plans of the example lots: its treatments and amounts, mean hours, likely waits, its own order. */
const planned = lots
  .filter(({ id }) => /^L0\d$/.test(id))
  .map(({ id, plan }): BenchBlock => {
    const wanted = plan.map(({ treatment, quantity }) => [
      treatmentOf(treatment),
      { because: [], serves: [], amount: quantity ?? 0, essential: false },
    ]);
    const ours = planOfTreatments(new Map(wanted as never), catalogue);
    const there = new Set(ours.steps.map(({ treatment }) => treatment));
    const { steps } = benchBlockOf(id, ours, catalogue);
    return {
      blockId: id,
      steps: steps.map((step, n) => ({
        ...step,
        hours: pertMean(ours.steps[n]?.hours ?? { o: 0, m: 0, p: 0 }),
        after: [...closure(step.treatment, there)],
      })),
    };
  });

/** What a treatment comes after by the handbook's lists, seen through what is not in the plan. */
function closure(treatment: string, there: ReadonlySet<string>, seen = new Set<string>()): ReadonlySet<string> {
  const row = treatments.find(({ code }) => treatmentOf(code) === treatment);
  const found = new Set<string>();
  for (const before of (row?.after ?? []).map(treatmentOf)) {
    if (seen.has(before)) continue;
    seen.add(before);
    if (there.has(before)) found.add(before);
    else for (const one of closure(before, there, seen)) found.add(one);
  }
  return found;
}

const workshop = benchTimeOf(someSettings(), catalogue);
const bench = (blocks: readonly BenchBlock[]) => ({ today: TODAY, blocks, ...workshop });
const without = (blocks: readonly BenchBlock[], what: 'hours' | 'waitHours'): readonly BenchBlock[] =>
  blocks.map((block) => ({ ...block, steps: block.steps.map((step) => ({ ...step, [what]: 0 })) }));
const pick = (ids: readonly string[]): readonly BenchBlock[] => planned.filter(({ blockId }) => ids.includes(blockId));

describe('the nine blocks of the example sale', () => {
  const answer = scheduleBench(bench(planned));

  it('are planned so that it can be lived', () => {
    expect(planned).toHaveLength(9);
    expect(faultsOf(bench(planned), answer)).toEqual([]);
  });

  const least = check('nine_blocks_lb');
  it(titleOf(least), () => {
    expect(answer.hours).toBeCloseTo(input(least, 'hours'), 3);
    const unhindered = scheduleBench({ ...bench(without(planned, 'waitHours')), capacities: { hands: 1 } });
    expect(unhindered.evenings).toHaveLength(Number(least.expected));
    expect(unhindered.bound.days).toBe(least.expected);
  });

  const elapsed = check('nine_blocks_elapsed_lb');
  it(titleOf(elapsed), () => {
    const idle = scheduleBench({ ...bench(without(planned, 'hours')), capacities: {} });
    expect(passed(idle.days)).toBe(elapsed.expected);
    for (const [id, hours] of Object.entries(elapsed.inputs.waits_h as Record<string, number>))
      expect(idle.blocks.find(({ blockId }) => blockId === id)?.ready, id).toBe(hours / 24);
    expect(passed(answer.bound.days)).toBeGreaterThanOrEqual(Number(elapsed.expected));
  });

  const feasible = check('nine_blocks_feasible');
  it(titleOf(feasible), () => {
    expect(passed(answer.days)).toBeLessThanOrEqual(Number(feasible.expected) + feasible.tolerance);
  });

  const evenings = check('nine_blocks_evenings');
  it(titleOf(evenings), () => {
    expect(answer.evenings.length).toBeGreaterThanOrEqual(Number(least.expected));
    expect(answer.evenings.length).toBeLessThanOrEqual(Number(evenings.expected));
  });
});

describe('the four an expert would carry home', () => {
  const feasible = check('four_blocks_feasible');
  const four = pick(feasible.inputs.lots as string[]);
  const answer = scheduleBench(bench(four));
  it(titleOf(feasible), () => {
    expect(faultsOf(bench(four), answer)).toEqual([]);
    expect(passed(answer.days)).toBeLessThanOrEqual(Number(feasible.expected) + feasible.tolerance);
  });

  const least = check('four_blocks_evenings_lb');
  it(titleOf(least), () => {
    expect(answer.hours).toBeCloseTo(input(least, 'hours'), 3);
    const unhindered = scheduleBench({ ...bench(without(four, 'waitHours')), capacities: { hands: 1 } });
    expect(unhindered.evenings).toHaveLength(Number(least.expected));
  });

  const elapsed = check('four_blocks_elapsed_lb');
  it(titleOf(elapsed), () => {
    expect(passed(scheduleBench({ ...bench(without(four, 'hours')), capacities: {} }).days)).toBe(elapsed.expected);
  });
});

it('no schedule row of the handbook is left out', () => {
  const tested = [
    'worm_elapsed',
    'glue_chain',
    'evenings_lb',
    'freezer_three',
    'critical',
    'clamps_two',
    'nine_blocks_lb',
    'nine_blocks_elapsed_lb',
    'nine_blocks_feasible',
    'nine_blocks_evenings',
    'four_blocks_feasible',
    'four_blocks_evenings_lb',
    'four_blocks_elapsed_lb',
  ];
  expect(
    checksOf('schedule')
      .map(({ id }) => id.replace('sched.', ''))
      .sort(),
  ).toEqual(tested.sort());
});
