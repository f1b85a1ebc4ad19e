import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../src/catalogue/index.ts';
import { assess } from '../../../src/core/assess.ts';
import { scheduleBench } from '../../../src/core/schedule/bench.ts';
import { benchTimeOf } from '../../../src/core/schedule/from-plan.ts';
import { benchBlockFrom } from '../../../src/core/steps/bench-block.ts';
import { workPlan } from '../../../src/core/steps/work-plan.ts';
import { aStep, aStint, caseOfLot, someSettings } from '../../make.ts';

const zone = 'Europe/London';
const facts = caseOfLot('L04');
const assessment = assess(facts, catalogue);

const bench = (given: { steps?: ReturnType<typeof aStep>[]; stints?: ReturnType<typeof aStint>[] }, now: string) =>
  benchBlockFrom(
    facts.block.id,
    workPlan({ path: 'restore', assessment, marks: [], steps: [], stints: [], ...given }, catalogue),
    catalogue,
    { nowMs: Date.parse(now), zone },
  );
const first = assessment.plan.steps.find(({ waitHours }) => waitHours.m > 0)?.treatment ?? '';

describe('a block on the bench', () => {
  it('is scheduled as its plan says while nothing was done', () => {
    expect(bench({}, '2026-11-10T18:00:00Z').steps.map(({ treatment, hours }) => [treatment, hours])).toEqual(
      assessment.plan.steps.map(({ treatment, hours }) => [treatment, hours.m]),
    );
  });

  it('has less to do once worked on, waits until the day its wait ends, and is done after', () => {
    const serves = assessment.plan.steps.find(({ treatment }) => treatment === first)?.serves ?? [];
    const begun = aStep({ treatment: first, serves: [...serves] });
    const stints = [aStint({ minutes: 6 })];
    const named = (block: ReturnType<typeof bench>, key: string) =>
      block.steps.find(({ treatment }) => treatment === key);
    expect(named(bench({ steps: [begun], stints }, '2026-11-10T20:00:00Z'), first)?.progress).toEqual({
      state: 'begun',
      hoursDone: 0.1,
    });
    const wait = { since: '2026-11-10T23:30:00Z', until: '2026-11-12T00:10:00Z', offset: '+00:00' };
    const done = { ...begun, done: { at: wait.since, offset: '+00:00' }, wait };
    expect(named(bench({ steps: [done], stints }, '2026-11-11T20:00:00Z'), begun.id)?.progress).toEqual({
      ...{ state: 'waiting', since: '2026-11-10', until: '2026-11-12' },
    });
    expect(named(bench({ steps: [done], stints }, '2026-11-12T20:00:00Z'), begun.id)?.progress?.state).toBe('done');
  });

  it('fits the schedule of many blocks', () => {
    const block = bench({}, '2026-11-10T18:00:00Z');
    const schedule = scheduleBench({
      ...{ today: '2026-11-10', blocks: [block], ...benchTimeOf(someSettings(), catalogue) },
    });
    expect(schedule.hours).toBeCloseTo(assessment.plan.hours.m);
    expect(schedule.days).toBeGreaterThan(0);
  });
});
