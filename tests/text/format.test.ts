import { describe, expect, it } from 'vitest';
import { between, days, hours, hoursRange, length, measured, money, percent } from '../../src/text/format.ts';

/** Where a line may break: at a space, not at one that does not break (Unicode line breaking, class GL). */
const pieces = (words: string): readonly string[] => words.split(' ');

describe('a number in words', () => {
  it.each([
    length(571, 'mm'),
    length(12, 'inch'),
    length(571, 'inch'),
    hours(0),
    hours(0.4),
    hours(2.25),
    hours(12),
    days(1),
    days(40),
    percent(0.24),
    measured(20, 'pct', 'mm'),
    measured(9, 'perDm2', 'mm'),
    measured(1390, 'g', 'mm'),
  ])('keeps its unit on its line: %s', (words) => {
    expect(pieces(words)).toHaveLength(1);
  });

  it('says the unit of a range once, where both ends have it', () => {
    expect(hoursRange(5.5, 11)).toBe('5½–11\u00a0h');
    expect(hoursRange(0.3, 0.8)).toBe('20–50\u00a0min');
    expect(between(days(1), days(3))).toBe('1–3\u00a0days');
    expect(between(percent(0.13), percent(0.51))).toBe('13–51\u00a0%');
  });

  it('says both units of a range that runs from one into another, and one figure where both ends are the same', () => {
    expect(hoursRange(0.5, 2)).toBe('30\u00a0min–2\u00a0h');
    expect(between(money(500, 'GBP'), money(800, 'GBP'))).toBe('£5–£8');
    expect(hoursRange(2, 2.05)).toBe('2\u00a0h');
  });
});
