import { describe, expect, it } from 'vitest';
import {
  lengthWithDoubt,
  measuredBehind,
  measuredWords,
  plusMinus,
  rounded,
  shareInWords,
} from '../../src/text/measured.ts';

describe('a value with its doubt', () => {
  it.each([
    // Two standard errors to one digit, or one and a half below two; the value to the same place.
    [42.4, 1.0, '42 ± 2 mm'],
    [61.7, 1.4, '62 ± 3 mm'],
    [42.44, 0.7, '42.4 ± 1.5 mm'],
    [0.83, 0.08, '0.83 ± 0.15 mm'],
    [154.9, 12, '150 ± 30 mm'],
    [1.94, 0.02, '1.94 ± 0.04 mm'],
  ])('%s mm with a standard error of %s reads %s', (value, sigma, words) => {
    expect(plusMinus(value, sigma, 'mm')).toBe(words);
  });

  it('never states less than four fifths of two standard errors', () => {
    for (let sigma = 0.01; sigma < 50; sigma *= 1.07) {
      const stated = Number(plusMinus(1000, sigma, '').split(' ± ')[1]);
      expect(stated, `sigma ${sigma}`).toBeGreaterThanOrEqual(0.8 * 2 * sigma);
      expect(stated, `sigma ${sigma}`).toBeLessThanOrEqual(1.6 * 2 * sigma);
    }
  });

  it('is the same number in the finding as on the screen', () => {
    for (const [value, sigma] of [
      [42.44, 0.7],
      [154.9, 12],
      [0.83, 0.08],
    ] as const)
      expect(String(rounded(value, sigma))).toBe(plusMinus(value, sigma, 'mm').split(' ')[0]);
  });

  it('comes in inches where the owner works in inches', () => {
    // 25.4 mm to the inch.
    expect(lengthWithDoubt(76.2, 1.27, 'inch')).toBe('3 ± 0.1 in'.replace('3 ', '3.0 '));
  });
});

describe('a length without millimetres', () => {
  it('is a share of something everybody can see', () => {
    expect(shareInWords(0.49)).toBe('about half of');
    expect(shareInWords(0.32)).toBe('about a third of');
    expect(shareInWords(0.02)).toBe('less than a tenth of');
    expect(shareInWords(1)).toBe('as long as');
    expect(shareInWords(1.6)).toBe('about 1.6 times');
  });
});

describe('measured answers', () => {
  const measured = {
    values: [{ what: 'lengthMm', value: 42.4, sigma: 1.0, unit: 'mm' as const }],
    method: 'crackPath',
    version: 1,
    inputs: {},
  };
  const marks = [{ findingId: 'a', measured }];

  it('say so as long as nobody has typed another', () => {
    expect(measuredBehind(marks, 'a', 'lengthMm', 42)?.value).toBe(42.4);
    expect(measuredBehind(marks, 'a', 'lengthMm', 45)).toBeUndefined();
    expect(measuredBehind(marks, 'b', 'lengthMm', 42)).toBeUndefined();
    expect(measuredBehind(marks, 'a', 'widthMm', 42)).toBeUndefined();
  });

  it('stand in the report with their doubt', () => {
    expect(measuredWords(measured, 'mm')).toBe('length 42 ± 2 mm');
  });
});
