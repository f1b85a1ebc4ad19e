import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Clock,
  formatStamp,
  newClock,
  parseStamp,
  receive,
  resumed,
  TOLERANCE_MS,
  tick,
} from '../../src/core/clock.ts';
import { Stamp } from '../../src/core/records.ts';

const DAY = 86_400_000;
const NOW = Date.UTC(2026, 0, 1);

describe('the clock', () => {
  it('gives stamps of the pattern records are checked against', () => {
    const stamp = formatStamp(tick(newClock('a1b2c3d4'), NOW));
    expect(Stamp.safeParse(stamp).success).toBe(true);
    expect(Number.parseInt(stamp.slice(0, 12), 16)).toBe(NOW);
  });

  it('never gives a stamp twice or an earlier one, whatever the wall clock does', () => {
    const wall = fc.array(
      fc.oneof(fc.integer({ min: -NOW, max: 40 * 365 * DAY }), fc.constant(0), fc.constant(Number.NaN)),
      {
        minLength: 2,
        maxLength: 60,
      },
    );
    fc.assert(
      fc.property(wall, (moves) => {
        let clock = newClock('a1b2c3d4');
        let last = '';
        for (const move of moves) {
          clock = tick(clock, NOW + move);
          const stamp = formatStamp(clock);
          expect(stamp > last).toBe(true);
          last = stamp;
        }
      }),
      { numRuns: 500 },
    );
  });

  it('follows a wall clock set years forward, and stays there when it is set right again', () => {
    const future = tick(newClock('a1b2c3d4'), NOW + 20 * 365 * DAY);
    const back = tick(future, NOW);
    expect(back.ms).toBe(future.ms);
    expect(formatStamp(back) > formatStamp(future)).toBe(true);
  });

  it('moves on by a millisecond when 65,536 edits fall into one', () => {
    let clock = tick(newClock('a1b2c3d4'), NOW);
    for (let i = 0; i < 65_536; i++) clock = tick(clock, NOW);
    expect(clock).toMatchObject({ ms: NOW + 1, counter: 0 });
  });

  it('is later than any stamp it has received, and never says the other device wrote it', () => {
    const readings = fc.record({
      ms: fc.oneof(fc.integer({ min: NOW - DAY, max: NOW + TOLERANCE_MS }), fc.integer({ min: NOW, max: NOW + 2 })),
      counter: fc.constantFrom(0, 1, 2, 0xfffe, 0xffff),
      device: fc.constant('zzzzzzzz'),
    });
    fc.assert(
      fc.property(readings, readings, (mine: Clock, theirs: Clock) => {
        const received = receive({ ...mine, device: 'a1b2c3d4' }, formatStamp(theirs), NOW);
        if (!received.ok) throw new Error('A stamp within tolerance was refused.');
        const stamp = formatStamp(received.clock);
        expect(stamp > formatStamp(theirs) && stamp > formatStamp({ ...mine, device: 'a1b2c3d4' })).toBe(true);
        expect(received.clock.device).toBe('a1b2c3d4');
      }),
      { numRuns: 500 },
    );
  });

  it('refuses a stamp more than five minutes ahead, says by how much, and takes one that is not', () => {
    const clock = tick(newClock('a1b2c3d4'), NOW);
    const stamp = (ahead: number) => formatStamp({ ms: NOW + ahead, counter: 0, device: 'zzzzzzzz' });
    expect(receive(clock, stamp(300_001), NOW)).toEqual({ ok: false, code: 'clock-ahead', aheadMs: 300_001 });
    expect(receive(clock, stamp(300_000), NOW).ok).toBe(true);
  });

  it('carries on from its own storage however far ahead that is, and never behind', () => {
    const written = { ms: NOW + 900 * DAY, counter: 7, device: 'a1b2c3d4' };
    expect(resumed(newClock('a1b2c3d4'), formatStamp(written))).toEqual(written);
    expect(resumed(written, formatStamp({ ...written, counter: 6 }))).toBe(written);
    expect(resumed(written, '')).toBe(written);
  });

  it('reads back what it writes and nothing else', () => {
    const clock = { ms: 2 ** 48 - 1, counter: 0xabc, device: 'a1b2c3d4' };
    expect(parseStamp(formatStamp(clock))).toEqual(clock);
    for (const text of ['', 'now', '0123456789ab-0000-TOOLOUD1', '0123456789ab-0000-a1b2c3d4 ']) {
      expect(parseStamp(text)).toBeNull();
    }
  });
});
