import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { courseOf, type QuarantineFacts, runningOf, WATCHES } from '../../src/core/quarantine.ts';
import handbook from '../handbook/materials-checks.json' with { type: 'json' };
import { id } from '../store/make.ts';

const facts = (fields: Partial<QuarantineFacts> = {}): QuarantineFacts => ({
  id: id(5),
  blockId: id(1),
  begunOn: '2026-10-17',
  reason: 'alive',
  left: null,
  checks: [],
  frozenOn: [],
  hemisphere: 'north',
  ...fields,
});
const quiet = (on: string) => ({ on, freshSigns: false });
const fresh = (on: string) => ({ on, freshSigns: true });

describe('a quarantine that is only watched', () => {
  // Rows quarantine.end.* of the materials handbook: rule made there from common practice.
  const rows = (
    handbook as { id: string; inputs: { arrival?: string; hemisphere?: string }; expected: unknown }[]
  ).filter((row) => row.id.startsWith('quarantine.end.'));
  it.each(rows.map((row) => [row.id, row] as const))('ends as the handbook says: %s', (_, { inputs, expected }) => {
    const begunOn = inputs.arrival ?? '';
    const course = courseOf(facts({ begunOn, hemisphere: inputs.hemisphere === 'south' ? 'south' : 'north' }), begunOn);
    expect(course.endsOn).toBe(expected);
    expect(course.by).toBe('season');
  });

  it('is looked at every 30 days outside the season and every 14 in it, the last time at its end', () => {
    // materials handbook §2.3, common practice.
    const { looks } = courseOf(facts(), '2026-10-17');
    expect(looks.slice(0, 3).map(({ on }) => on)).toEqual(['2026-11-16', '2026-12-16', '2027-01-15']);
    const inSeason = looks.filter(({ on }) => on > '2027-04-20' && on < '2027-09-20').map(({ on }) => Date.parse(on));
    for (const [index, ms] of inSeason.slice(1).entries()) expect(ms - (inSeason[index] ?? 0)).toBe(14 * 86_400_000);
    expect(looks.at(-1)).toMatchObject({ on: '2027-10-17', last: true });
  });

  it('starts again on the day fresh dust is seen', () => {
    const course = courseOf(facts({ checks: [quiet('2026-11-16'), fresh('2026-12-16')] }), '2026-12-16');
    expect(course).toMatchObject({ startedOn: '2026-12-16', restarts: 1, endsOn: '2027-12-16', state: 'running' });
    expect(course.looks.every(({ taken }) => !taken)).toBe(true);
  });

  it('keeps counting its looks over a new start, so that a reminder moves and is not doubled', () => {
    const before = courseOf(facts(), '2026-10-17').looks;
    const after = courseOf(facts({ checks: [quiet('2026-11-16'), fresh('2026-12-20')] }), '2026-12-20').looks;
    expect(before[2]).toMatchObject({ number: 3, on: '2027-01-15' });
    expect(after[0]).toMatchObject({ number: 3, on: '2027-01-19' });
  });

  it('does not count dust on the day it came as a new start', () => {
    expect(courseOf(facts({ checks: [fresh('2026-10-17')] }), '2026-10-18').restarts).toBe(0);
  });

  it('takes a look a day early for the one that was due, but never ends early', () => {
    expect(courseOf(facts({ checks: [quiet('2026-11-15')] }), '2026-11-15').looks[0]?.taken).toBe(true);
    expect(courseOf(facts({ checks: [quiet('2027-10-16')] }), '2027-10-16').state).toBe('running');
    expect(courseOf(facts({ checks: [quiet('2027-10-17')] }), '2027-10-17').state).toBe('over');
  });

  it('is not over by time alone: somebody must look at the end', () => {
    expect(courseOf(facts({ checks: [quiet('2026-11-16')] }), '2029-01-01').state).toBe('running');
  });

  it('has nothing due once the block has left', () => {
    const left = { on: '2026-12-01', early: true, reason: 'Sold as a pattern, buyer told.' };
    expect(courseOf(facts({ left }), '2026-12-02')).toMatchObject({ state: 'left', looks: [] });
  });
});

describe('a quarantine after freezing', () => {
  // Trade handbook §6.1 (common practice): fresh dust, freeze twice, 30 days at least; old holes, freeze and watch two weeks.
  it('of a living infestation waits for the second round', () => {
    expect(courseOf(facts({ frozenOn: ['2026-10-27'] }), '2026-10-28').by).toBe('season');
    expect(courseOf(facts({ frozenOn: ['2026-10-27', '2026-11-12'] }), '2026-11-13')).toMatchObject({
      by: 'freezing',
      endsOn: '2026-11-26',
    });
  });
  it('of a living infestation is never under 30 days in all', () => {
    expect(courseOf(facts({ frozenOn: ['2026-10-22', '2026-10-26'] }), '2026-10-27').endsOn).toBe('2026-11-16');
  });
  it('of old holes ends two weeks after one round', () => {
    const course = courseOf(facts({ reason: 'holes', frozenOn: ['2026-10-27'] }), '2026-10-28');
    expect(course).toMatchObject({ by: 'freezing', endsOn: '2026-11-10' });
    expect(course.looks.map(({ on }) => on)).toEqual(['2026-11-10']);
  });
  it('is watched the long way again when fresh dust shows that it has not held', () => {
    const course = courseOf(
      facts({ reason: 'holes', frozenOn: ['2026-10-27'], checks: [fresh('2026-11-05')] }),
      '2026-11-05',
    );
    expect(course).toMatchObject({ by: 'season', startedOn: '2026-11-05', endsOn: '2027-11-05' });
  });
});

describe('a short quarantine', () => {
  it('is not shortened by signs seen after the season is over', () => {
    const course = courseOf(
      facts({ reason: 'pests', begunOn: '2026-09-29', checks: [fresh('2026-10-02')] }),
      '2026-10-02',
    );
    expect(course.endsOn).toBe('2026-10-27');
  });
  // Trade handbook §6.1 (common practice): no signs, damp or unknown source: two weeks, four in the flight season.
  it('of a block without signs is two weeks, four in the flight season', () => {
    expect(courseOf(facts({ reason: 'unknownSource' }), '2026-10-17').endsOn).toBe('2026-10-31');
    expect(courseOf(facts({ reason: 'unknownSource', begunOn: '2026-06-01' }), '2026-06-01').endsOn).toBe('2026-06-29');
  });
  // Materials handbook §3.2: watch a month.
  it('of mould is a month, from the last growth seen', () => {
    expect(courseOf(facts({ reason: 'mould', checks: [fresh('2026-11-01')] }), '2026-11-01').endsOn).toBe('2026-12-01');
  });
  it('for a reason this app does not know is the long one', () => {
    expect(courseOf(facts({ reason: 'somethingNewer' }), '2026-10-17').by).toBe('season');
  });
});

const aDay = fc
  .date({ min: new Date('2024-01-01'), max: new Date('2029-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));
const anyFacts = fc.record({
  begunOn: aDay,
  reason: fc.constantFrom(...WATCHES),
  hemisphere: fc.constantFrom('north' as const, 'south' as const),
  checks: fc.array(fc.record({ on: aDay, freshSigns: fc.boolean() }), { maxLength: 8 }),
  frozenOn: fc.array(aDay, { maxLength: 4 }),
});

describe('any quarantine', () => {
  it('does not mind the order in which looks were written down', () => {
    fc.assert(
      fc.property(anyFacts, aDay, (given, today) => {
        const turned = { ...given, checks: [...given.checks].reverse(), frozenOn: [...given.frozenOn].reverse() };
        expect(courseOf(facts(turned), today)).toEqual(courseOf(facts(given), today));
      }),
    );
  });
  it('never ends sooner because something fresh was seen', () => {
    fc.assert(
      fc.property(anyFacts, aDay, (given, on) => {
        const before = courseOf(facts(given), on);
        const later = given.frozenOn.filter((day) => day < on);
        const without = courseOf(facts({ ...given, frozenOn: later }), on);
        const seen = courseOf(facts({ ...given, frozenOn: later, checks: [...given.checks, fresh(on)] }), on);
        expect(seen.endsOn >= without.endsOn).toBe(true);
        expect(before.endsOn > before.startedOn).toBe(true);
      }),
    );
  });
  it('numbers its looks one by one, in time, the end last', () => {
    fc.assert(
      fc.property(anyFacts, aDay, (given, today) => {
        const { looks, endsOn } = courseOf(facts(given), today);
        expect(looks.at(-1)).toMatchObject({ on: endsOn, last: true });
        for (const [index, look] of looks.slice(1).entries()) {
          expect(look.number).toBe((looks[index]?.number ?? 0) + 1);
          expect(look.on > (looks[index]?.on ?? '')).toBe(true);
        }
      }),
    );
  });
});

describe('the quarantine a block is in', () => {
  it('is the one begun last, and none once that is left', () => {
    const left = { on: '2026-12-01', early: false, reason: '' };
    expect(runningOf([{ left }, { left: null }])).toEqual({ left: null });
    expect(runningOf([{ left: null }, { left }])).toBeUndefined();
    expect(runningOf([])).toBeUndefined();
  });
});
