import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { floorMinor, hours, type Millimetres, minor, mm, roundMinor } from '../../src/core/units.ts';

describe('numbers that wear their unit', () => {
  it('refuses a fraction of a penny, saying what came and what was expected', () => {
    expect(() => minor(12.5)).toThrow('Money came as 12.5, expected whole minor units.');
    expect(() => minor(Number.NaN)).toThrow('came as NaN');
    expect(() => minor(2 ** 53)).toThrow('expected whole');
  });

  it('refuses hours below nothing and lengths that are no number', () => {
    expect(() => hours(-0.1)).toThrow('Hours came as -0.1');
    expect(() => mm(Number.POSITIVE_INFINITY)).toThrow('Millimetres came as Infinity');
  });

  it('keeps money and millimetres apart when compiling', () => {
    // @ts-expect-error pence are not millimetres
    const width: Millimetres = minor(300);
    expect(width).toBe(300);
  });

  it('rounds halves up and does not let binary noise take a penny', () => {
    expect(roundMinor(2.5)).toBe(3);
    expect(roundMinor(2.4999)).toBe(2);
    expect(roundMinor(-2.5)).toBe(-2);
    expect(0.29 * 100).toBeLessThan(29);
    expect(floorMinor(0.29 * 100)).toBe(29);
    expect(floorMinor(28.999)).toBe(28);
  });

  it('never floors above the amount or rounds further than half a unit', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (amount) => {
        expect(floorMinor(amount) - amount).toBeLessThanOrEqual(1e-6);
        expect(amount - floorMinor(amount)).toBeLessThan(1);
        expect(Math.abs(roundMinor(amount) - amount)).toBeLessThanOrEqual(0.5 + 2e-6);
      }),
      { numRuns: 500 },
    );
  });
});
