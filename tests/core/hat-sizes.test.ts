import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ellipseCircumferenceMm } from '../../src/core/ellipse.ts';
import {
  exactUsSize,
  formatEighths,
  frenchPoints,
  hatSizeRow,
  inchesFromMm,
  mmFromFrenchPoints,
  mmFromInches,
  mmFromUkSize,
  mmFromUsSize,
  traditionalSize,
  ukSize,
  usSize,
} from '../../src/core/hat-sizes.ts';
import { type Reading, stampReadings } from '../../src/core/size-stamps.ts';
import { type CheckRow, checksOf, input, strayOf, titleOf } from '../handbook/checks.ts';
import sizeTable from '../handbook/hat-size-table.json' with { type: 'json' };

const headMm = (row: CheckRow) => input(row, 'circumference_cm') * 10;
const ovalIn = (row: CheckRow) => ({ lengthMm: input(row, 'length_mm'), widthMm: input(row, 'width_mm') });

/** How each kind of row is answered, by the start of its id. */
const ANSWERS: readonly (readonly [string, (row: CheckRow) => number])[] = [
  ['size.us.', (row) => usSize(headMm(row))],
  ['size.uk.', (row) => ukSize(headMm(row))],
  ['size.inch.', (row) => inchesFromMm(headMm(row))],
  ['size.raw.', (row) => exactUsSize(headMm(row))],
  ['size.fr.', (row) => frenchPoints(headMm(row))],
  ['size.step_cm', (row) => mmFromUsSize(input(row, 'step')) / 10],
  ['size.from_us', (row) => mmFromUsSize(input(row, 'us')) / 10],
  ['size.trad_mean', (row) => traditionalSize(ovalIn(row))],
  ['size.from_ellipse', (row) => exactUsSize(ellipseCircumferenceMm(ovalIn(row)))],
  [
    'stamp.',
    (row) => {
      // The handbook spells this one reading in its own way.
      const reading = (row.inputs.reading === 'fr_point' ? 'frenchPoint' : row.inputs.reading) as Reading;
      const found = stampReadings(String(row.inputs.stamp)).find((candidate) => candidate.reading === reading);
      return found?.circumferenceMm ?? Number.NaN;
    },
  ],
];

describe('hat sizes against the handbook', () => {
  it.each(checksOf('hat_size').map((row) => [titleOf(row), row] as const))('%s', (_, row) => {
    const answer = ANSWERS.find(([start]) => row.id.startsWith(start))?.[1];
    expect(answer, `${row.id} has no answer here`).toBeDefined();
    expect(strayOf(row, answer?.(row) ?? Number.NaN)).toBeLessThanOrEqual(1);
  });

  it.each(sizeTable.map((row) => [row.cm, row.confidence, row] as const))(
    'prints the %i cm line of the size table (%s)',
    (cm, _, printed) => {
      const row = hatSizeRow(cm * 10);
      expect(row.inches).toBeCloseTo(printed.inch, 3);
      expect({ cm: row.cm, us: row.us, uk: row.uk, frenchPoints: row.frenchPoints }).toEqual({
        cm: printed.eu,
        us: printed.us,
        uk: printed.uk,
        frenchPoints: printed.french_points,
      });
    },
  );

  it('prints UK like US for an owner whose charts do', () => {
    expect(hatSizeRow(570, 'as-us').uk).toBe(7.125);
    expect(hatSizeRow(570).uk).toBe(7);
    expect(mmFromUkSize(7, 'as-us')).toBe(mmFromUsSize(7));
  });
});

describe('sizes there and back', () => {
  const circumference = fc.double({ min: 100, max: 1000, noNaN: true });

  it('comes back from inches and French points to the same millimetre', () => {
    fc.assert(
      fc.property(circumference, (mm) => {
        expect(mmFromInches(inchesFromMm(mm))).toBeCloseTo(mm, 9);
        expect(mmFromFrenchPoints(frenchPoints(mm))).toBeCloseTo(mm, 9);
      }),
      { numRuns: 500 },
    );
  });

  it('keeps every stamped eighth, on either UK scale, and lands within half a step otherwise', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 40, max: 72 }),
        fc.constantFrom('eighth-below-us' as const, 'as-us' as const),
        circumference,
        (eighths, scale, mm) => {
          expect(usSize(mmFromUsSize(eighths / 8))).toBe(eighths / 8);
          expect(ukSize(mmFromUkSize(eighths / 8, scale), scale)).toBe(eighths / 8);
          expect(Math.abs(mmFromUsSize(usSize(mm)) - mm)).toBeLessThanOrEqual(9.975 / 2 + 0.001);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('never gives a bigger head a smaller size', () => {
    fc.assert(
      fc.property(circumference, fc.double({ min: 0, max: 50, noNaN: true }), (mm, more) => {
        expect(usSize(mm + more)).toBeGreaterThanOrEqual(usSize(mm));
        expect(frenchPoints(mm + more)).toBeGreaterThanOrEqual(frenchPoints(mm));
      }),
      { numRuns: 500 },
    );
  });
});

describe('sizes as the trade writes them', () => {
  it.each([
    [7.125, '7⅛'],
    [6.875, '6⅞'],
    [0.5, '½'],
    [0, '0'],
    [22, '22'],
    [7.9999, '8'],
    [7.3, '7¼'],
    [-0.375, '−⅜'],
    [-0.01, '0'],
  ])('writes %d as %s', (value, text) => expect(formatEighths(value)).toBe(text));
});
