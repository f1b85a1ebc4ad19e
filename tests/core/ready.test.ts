import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { assess } from '../../src/core/assess.ts';
import { settingOf } from '../../src/core/block.ts';
import { pathOf, planOnPath } from '../../src/core/path.ts';
import { questionsBefore } from '../../src/core/place.ts';
import { readyStanding, rulesFor } from '../../src/core/ready.ts';
import type { Fields, Job, ReadyCheck, WorkStep } from '../../src/core/records.ts';
import { aBlock, aCase, caseOfLot } from '../make.ts';
import { id, make } from '../store/make.ts';

const setting = (fields: Partial<Fields<'block'>> = {}) => settingOf(aBlock(fields), catalogue);
const written = (check: string, outcome: ReadyCheck['outcome'], note = ''): ReadyCheck =>
  make('readyCheck', { id: id(60), blockId: id(1), check, outcome, note, on: '2026-11-28' });
const logged = (treatment: string): Job => make('job', { id: id(61), blockId: id(1), treatment, actualHours: 1 });
const missing = (
  checks: ReadyCheck[],
  jobs: Job[] = [],
  fields: Partial<Fields<'block'>> = {},
  steps: WorkStep[] = [],
) => readyStanding(checks, { jobs, steps }, setting(fields), catalogue).missing.map((one) => one.id);

describe('a block before first use', () => {
  // Trade handbook §6.3: a first hat on scrap; skipped only for fascinator and display pieces (§6.1, T28).
  it('is not ready before a hat was tried on it', () => {
    expect(missing([])).toEqual(['scrapHat']);
    expect(missing([written('scrapHat', 'passed')])).toEqual([]);
    expect(missing([written('scrapHat', 'failed')])).toEqual(['scrapHat']);
  });
  it('takes hours logged on the test block for the test, unless it was said to have failed', () => {
    expect(missing([], [logged('testBlock')])).toEqual([]);
    expect(missing([written('scrapHat', 'failed')], [logged('testBlock')])).toEqual(['scrapHat']);
  });
  it('takes the step done at the bench for the test, though nobody wrote down its minutes', () => {
    const step = make('step', { id: id(62), blockId: id(1), treatment: 'testBlock' });
    expect(missing([], [], {}, [step])).toEqual(['scrapHat']);
    const done = { ...step, done: { at: '2026-11-28T18:00:00Z', offset: '+00:00' } };
    expect(missing([], [], {}, [done])).toEqual([]);
  });
  it('may leave the test out only with a reason', () => {
    expect(missing([written('scrapHat', 'skipped')])).toEqual(['scrapHat']);
    expect(missing([written('scrapHat', 'skipped', 'a display piece')])).toEqual([]);
  });
  it('is not asked what it cannot have', () => {
    const asked = (fields: Partial<Fields<'block'>>) =>
      readyStanding([], { jobs: [], steps: [] }, setting(fields), catalogue).checks.map((one) => one.id);
    expect(missing([], [], { blockType: 'fascinator' })).toEqual([]);
    expect(asked({})).not.toContain('apart');
    expect(asked({ partsFound: 5, partsExpected: 5 })).toContain('apart');
    // No water and no wet felt on sparterie: trade handbook §6.1.
    expect(asked({ materials: ['sparterie'] })).not.toContain('whiteCloth');
    expect(asked({ materials: ['sparterie'] })).not.toContain('scrapHat');
  });
  it('is stored as its kind wants: brims flat, puzzles tied, sparterie boxed', () => {
    const stored = (fields: Partial<Fields<'block'>>) =>
      rulesFor(catalogue.storing, setting(fields)).map(([key]) => key);
    expect(stored({})).toEqual(['air', 'covered']);
    expect(stored({ blockType: 'flatBrim' })).toContain('flat');
    expect(stored({ partsFound: 5 })).toContain('tied');
    expect(stored({ materials: ['sparterie'] })).toContain('boxed');
  });
});

describe('moving a block', () => {
  const running = { state: 'running' as const, endsOn: '2027-10-17' };
  const tried = { missing: [] };
  const untried = readyStanding([], { jobs: [], steps: [] }, setting(), catalogue);
  it('out of a quarantine that runs is asked about, wherever it goes', () => {
    for (const to of ['toDo', 'onTheBench', 'ready', 'letGo', 'lookingAt'] as const) {
      expect(questionsBefore(to, running, tried)).toEqual([{ ask: 'leaveQuarantine', endsOn: '2027-10-17' }]);
    }
    expect(questionsBefore('quarantine', running, tried)).toEqual([]);
  });
  it('out of one that is over is not', () => {
    expect(questionsBefore('onTheBench', { ...running, state: 'over' }, tried)).toEqual([]);
    expect(questionsBefore('onTheBench', undefined, untried)).toEqual([]);
  });
  it('to ready asks for the test, and for both if both are open', () => {
    expect(questionsBefore('ready', undefined, untried)).toEqual([{ ask: 'notTested', missing: ['scrapHat'] }]);
    expect(questionsBefore('ready', running, untried)).toHaveLength(2);
  });
});

describe('a lost cause', () => {
  const lost = assess(caseOfLot('L07'), catalogue);
  it('goes the way of the copy by its verdict, and any other by choice', () => {
    expect(pathOf(aBlock(), lost)).toEqual({ path: 'copy', chosen: false });
    expect(pathOf(aBlock({ path: 'restore' }), lost)).toEqual({ path: 'restore', chosen: true });
    const sound = assess(aCase(), catalogue);
    expect(pathOf(aBlock(), sound).path).toBe('restore');
    expect(pathOf(aBlock({ path: 'copy' }), sound)).toEqual({ path: 'copy', chosen: true });
  });
  it('takes the hours and consumables its price was reckoned with', () => {
    const plan = planOnPath('copy', lost, catalogue, {});
    const cost = Math.round(plan.meanHours * 1400) + plan.consumables;
    expect(cost).toBe(lost.worth.copyCost);
    // Trade handbook §6.1: T01, T02, T03, T30.
    expect(plan.steps.map(({ treatment }) => treatment)).toEqual([
      'recordAsFound',
      'quarantine',
      'dryClean',
      'takeCopy',
    ]);
    expect(plan.hours.m).toBeCloseTo(0.5 + 0.2 + 0.4 + 3.5, 9);
  });
});
