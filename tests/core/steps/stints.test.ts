import { describe, expect, it } from 'vitest';
import { doubtAbout, isInDoubt, longestStint, runningStint, spanOf, stopped } from '../../../src/core/steps/stints.ts';
import { aStint } from '../../make.ts';

const ms = (instant: string): number => Date.parse(instant);
const begun = aStint({ began: '2026-11-10T19:00:00Z', ended: null, minutes: null });
/** An evening of two and a half hours. */
const longest = longestStint({ eveningHours: 2.5 });

describe('the timer', () => {
  it('counts the minutes between start and stop', () => {
    expect(stopped(begun, ms('2026-11-10T20:15:00Z'), longest)).toEqual({
      ended: '2026-11-10T20:15:00.000Z',
      minutes: 75,
    });
  });

  it('counts the same minutes on a night on which the clocks change', () => {
    // Begun 00:30 summer time in London on 25 October 2026, stopped 01:30 winter time: two hours passed.
    const late = { began: '2026-10-24T23:30:00Z' };
    expect(stopped(late, ms('2026-10-25T01:30:00Z'), longest).minutes).toBe(120);
  });

  it('books nothing by itself when it was left running over night', () => {
    const left = stopped(begun, ms('2026-11-11T07:00:00Z'), longest);
    expect(left.minutes).toBeNull();
    expect(isInDoubt({ ...begun, ...left })).toBe(true);
  });

  it('books nothing by itself when the clock went back', () => {
    expect(stopped(begun, ms('2026-11-10T18:00:00Z'), longest).minutes).toBeNull();
    // Later than the start, and yet behind what this phone has written meanwhile.
    expect(stopped(begun, ms('2026-11-10T19:20:00Z'), longest, true).minutes).toBeNull();
  });

  it('believes two hours more than the usual evening, and four hours of anyone', () => {
    expect(longestStint({ eveningHours: 1 })).toBe(240);
    expect(longestStint({ eveningHours: 5 })).toBe(420);
    expect(doubtAbout(240, longestStint({ eveningHours: 1 }))).toBeNull();
    expect(doubtAbout(241, longestStint({ eveningHours: 1 }))).toBe('tooLong');
  });

  it('runs on one step at a time: the one begun last counts, another phone’s is asked about', () => {
    const other = aStint({ number: 2, began: '2026-11-10T18:00:00Z', ended: null, minutes: null });
    const { stint, left } = runningStint([other, begun, aStint({ number: 3 })]);
    expect(stint).toBe(begun);
    expect(left).toEqual([other]);
    expect(runningStint([])).toEqual({ stint: undefined, left: [] });
    expect(spanOf(begun, ms('2026-11-10T19:00:30Z'))).toBe(0.5);
  });
});
