import { describe, expect, it } from 'vitest';
import { dayIn, minutesAhead, offsetText, wallIn } from '../../../src/core/local-time.ts';
import { blockWait, openWaits, waitFrom, waitOver, waitStand } from '../../../src/core/steps/waits.ts';
import type { WorkItem } from '../../../src/core/steps/work-plan.ts';
import { aStep, aStint } from '../../make.ts';

/*
 * Nights on which clocks change are those of the law: in the Union and the United Kingdom at 01:00 UTC on the last Sundays
 * of March and October (Directive 2000/84/EC), in the United States at 02:00 on the second Sunday of March and the first of
 * November (Energy Policy Act 2005). The zones come from the IANA time zone database as ICU ships it.
 */

const ms = (instant: string): number => Date.parse(instant);
/** `Sun 25 20:00 +00:00`: what the wall shows. */
function wall(at: string | undefined, zone: string): string {
  if (!at) return 'never';
  const { day, hour, minute } = wallIn(ms(at), zone);
  return `${day} ${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')} ${offsetText(ms(at), zone)}`;
}
/** Glue for 24 hours from a moment. */
const glued = (at: string, hours = 24) => waitFrom(ms(at), hours, '+00:00')?.until;

describe('a wait', () => {
  it('ends an hour earlier by the wall when the clocks go back', () => {
    expect(wall('2026-10-24T20:00:00Z', 'Europe/London')).toBe('24 21:00 +01:00');
    expect(wall(glued('2026-10-24T20:00:00Z'), 'Europe/London')).toBe('25 20:00 +00:00');
    expect(wall(glued('2026-11-01T01:30:00Z'), 'America/New_York')).toBe('1 20:30 -05:00');
  });

  it('ends an hour later by the wall when they go forward', () => {
    expect(wall('2026-03-28T21:00:00Z', 'Europe/London')).toBe('28 21:00 +00:00');
    expect(wall(glued('2026-03-28T21:00:00Z'), 'Europe/London')).toBe('29 22:00 +01:00');
    expect(wall(glued('2026-03-28T20:00:00Z'), 'Europe/Berlin')).toBe('29 22:00 +02:00');
  });

  it('that ends in the doubled hour ends in the one it says, told apart by the offset', () => {
    expect(wall(glued('2026-10-24T23:30:00Z', 1), 'Europe/London')).toBe('25 01:30 +01:00');
    expect(wall(glued('2026-10-24T23:30:00Z', 2), 'Europe/London')).toBe('25 01:30 +00:00');
  });

  it('never ends in the hour that is left out', () => {
    expect(wall(glued('2026-03-29T00:30:00Z', 0.5), 'Europe/London')).toBe('29 02:00 +01:00');
  });

  it('that crosses a journey ends at the same moment, shown by the clocks of where one is', () => {
    const until = glued('2026-11-10T20:00:00Z');
    expect(wall(until, 'Europe/London')).toBe('11 20:00 +00:00');
    expect(wall(until, 'Asia/Kathmandu')).toBe('12 01:45 +05:45');
  });

  it('there is none after a step that needs none', () => {
    expect(waitFrom(0, 0, '+00:00')).toBeNull();
    expect(waitFrom(0, Number.NaN, '+00:00')).toBeNull();
  });

  it('runs, is over, or has not begun by a clock that was set back', () => {
    const wait = { since: '2026-11-10T20:00:00Z', until: '2026-11-11T20:00:00Z' };
    expect(waitStand(wait, ms('2026-11-11T19:00:00Z'))).toEqual({ state: 'runs', leftMs: 3_600_000 });
    expect(waitStand(wait, ms('2026-11-11T20:00:00Z'))).toEqual({ state: 'over', sinceMs: 0 });
    expect(waitStand(wait, ms('2026-11-09T20:00:00Z'))).toEqual({ state: 'clockBehind' });
    // Phones agree to seconds: a little behind is not worth a word.
    expect(waitStand(wait, ms('2026-11-10T19:58:00Z')).state).toBe('runs');
  });
});

describe('days and offsets', () => {
  it('are those of the place', () => {
    // Half past eleven in the evening in New York is the next day in Auckland.
    expect(dayIn(ms('2026-11-11T04:30:00Z'), 'America/New_York')).toBe('2026-11-10');
    expect(dayIn(ms('2026-11-11T04:30:00Z'), 'Pacific/Auckland')).toBe('2026-11-11');
    expect(dayIn(ms('2026-11-11T00:00:00Z'), 'UTC')).toBe('2026-11-11');
  });

  it('know zones with half hours and quarters, and daylight time of half an hour', () => {
    expect(offsetText(ms('2026-07-01T00:00:00Z'), 'Asia/Kathmandu')).toBe('+05:45');
    expect(offsetText(ms('2026-07-01T00:00:00Z'), 'America/St_Johns')).toBe('-02:30');
    // Lord Howe Island puts its clocks forward by thirty minutes.
    expect(minutesAhead(ms('2026-01-15T00:00:00Z'), 'Australia/Lord_Howe')).toBe(660);
    expect(minutesAhead(ms('2026-07-15T00:00:00Z'), 'Australia/Lord_Howe')).toBe(630);
  });

  it('refuse a zone there is not', () => {
    expect(() => dayIn(0, 'Europe/Averley')).toThrow(RangeError);
  });
});

describe('what a block waits for', () => {
  const item = (fields: Partial<WorkItem>): WorkItem => ({
    ...{ key: 'x', records: [], treatment: 'reglue', words: '', added: false, serves: [], because: [], amount: null },
    ...{ hours: { o: 1, m: 1, p: 1 }, waitHours: { o: 0, m: 0, p: 0 }, consumables: 0, essential: false },
    ...{ calledFor: true, position: 1, after: [], stand: 'open', stints: [], minutes: 0, ...fields },
  });
  const done = (number: number, from: string, until: string): WorkItem =>
    item({
      key: `${number}`,
      stand: 'done',
      records: [
        aStep({ number, done: { at: from, offset: '+00:00' }, wait: { since: from, until, offset: '+00:00' } }),
      ],
    });
  const glue = done(1, '2026-11-10T20:00:00Z', '2026-11-11T20:00:00Z');
  const next = item({ key: 'next' });

  it('is the wait that ends last', () => {
    const damp = done(2, '2026-11-10T20:30:00Z', '2026-11-17T20:30:00Z');
    expect(blockWait([glue, damp, next], ms('2026-11-11T10:00:00Z'))?.item.key).toBe('2');
    expect(blockWait([glue, damp, next], ms('2026-11-18T10:00:00Z'))).toBeUndefined();
  });

  it('is over once it has ended, and says which step may now be taken', () => {
    expect(waitOver([glue, next], ms('2026-11-11T19:59:00Z'))).toBeUndefined();
    expect(waitOver([glue, next], ms('2026-11-11T20:01:00Z'))?.next?.key).toBe('next');
    expect(waitOver([glue], ms('2026-11-11T20:01:00Z'))).toMatchObject({ next: undefined });
  });

  it('is no longer told once the block was worked on', () => {
    const now = ms('2026-11-11T21:00:00Z');
    const worked = item({ key: 'next', stints: [aStint({ began: '2026-11-11T20:30:00Z' })] });
    expect(waitOver([glue, worked], now)).toBeUndefined();
    const left = item({
      stand: 'skipped',
      records: [aStep({ number: 3, skipped: { at: '2026-11-11T20:30:00Z', reason: '' } })],
    });
    expect(waitOver([glue, left, next], now)).toBeUndefined();
  });

  it('is on the list of what falls due until the block is worked on again', () => {
    const at = '2026-11-10T20:00:00Z';
    const wait = { since: at, until: '2026-11-11T20:00:00Z', offset: '+00:00' };
    const glued = aStep({ number: 1, treatment: 'reglue', done: { at, offset: '+00:00' }, wait });
    const listed = { id: glued.id, blockId: glued.blockId, treatment: 'reglue', words: '', until: wait.until };
    expect(openWaits([glued], [])).toEqual([listed]);
    // The timer that ended with the step began before it.
    expect(openWaits([glued], [aStint({ began: '2026-11-10T19:00:00Z' })])).toEqual([listed]);
    expect(openWaits([glued], [aStint({ began: '2026-11-11T20:30:00Z' })])).toEqual([]);
    const filled = aStep({ number: 2, treatment: 'fillLoss', done: { at: '2026-11-11T21:00:00Z', offset: '+00:00' } });
    expect(openWaits([glued, filled], [])).toEqual([]);
    expect(openWaits([{ ...glued, done: null }], [])).toEqual([]);
  });
});
