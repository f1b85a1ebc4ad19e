import { describe, expect, it } from 'vitest';
import { minutesWords, momentWords, spanWords, stopWatch, timeWords } from '../../src/text/moments.ts';

const ms = (instant: string): number => Date.parse(instant);
const london = (at: string, now: string): string => momentWords(ms(at), ms(now), 'Europe/London');

// Zone rules and names of times: the IANA database and CLDR as the platform's ICU carries them.
describe('a moment in words', () => {
  it('is today, tomorrow, yesterday or a weekday by the calendar of the place', () => {
    const now = '2026-11-10T21:00:00Z';
    expect(london('2026-11-10T23:59:00Z', now)).toBe('today at 23:59');
    expect(london('2026-11-11T00:00:00Z', now)).toBe('tomorrow at 00:00');
    expect(london('2026-11-09T07:05:00Z', now)).toBe('yesterday at 07:05');
    // 10 November 2026 is a Tuesday.
    expect(london('2026-11-15T20:00:00Z', now)).toBe('Sunday at 20:00');
    expect(london('2026-11-17T20:00:00Z', now)).toBe('Tuesday 17 November at 20:00');
    expect(london('2027-01-01T20:00:00Z', now)).toBe('Friday 1 January 2027 at 20:00');
    expect(momentWords(ms('2026-11-10T23:59:00Z'), ms(now), 'Asia/Tokyo')).toBe('today at 08:59');
  });

  it('names the time where the clocks change before then', () => {
    expect(london('2026-10-25T20:00:00Z', '2026-10-24T20:00:00Z')).toBe('tomorrow at 20:00 (GMT)');
    expect(london('2026-03-29T21:00:00Z', '2026-03-28T21:00:00Z')).toBe('tomorrow at 22:00 (BST)');
    expect(london('2026-10-25T01:30:00Z', '2026-10-25T00:30:00Z')).toBe('today at 01:30 (GMT)');
    expect(timeWords(ms('2026-10-25T00:30:00Z'), 'Europe/London')).toBe('01:30');
  });
});

describe('how long', () => {
  it('is said as one would', () => {
    expect(spanWords(20_000)).toBe('1 min');
    expect(spanWords(-45 * 60_000)).toBe('45 min');
    expect(spanWords(24 * 3_600_000)).toBe('24 h');
    expect(spanWords(14 * 86_400_000)).toBe('14 days');
    expect(minutesWords(34.6)).toBe('35 min');
    expect(minutesWords(59.7)).toBe('1 h');
    expect(minutesWords(125)).toBe('2 h 5 min');
    expect(stopWatch(((2 * 60 + 5) * 60 + 9) * 1000 + 900)).toBe('2:05:09');
    expect(stopWatch(-5)).toBe('0:00:00');
  });
});
