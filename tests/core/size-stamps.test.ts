import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatEighths } from '../../src/core/hat-sizes.ts';
import { readingsAgainstTape, stampReadings } from '../../src/core/size-stamps.ts';

const readings = (text: string) => stampReadings(text).map(({ reading, value }) => `${reading} ${value}`);

describe('what a size stamp can mean', () => {
  it.each([
    ['22½', ['inch 22.5']],
    ['22 1/2', ['inch 22.5']],
    ['22-1/2', ['inch 22.5']],
    ['22 1⁄2', ['inch 22.5']],
    ['22.5', ['inch 22.5']],
    ['22,5', ['inch 22.5']],
    [' 21¼ ', ['inch 21.25']],
    ['57', ['cm 57']],
    ['57,5', ['cm 57.5']],
    ['7⅛', ['us 7.125', 'uk 7.125']],
    ['7 1/8', ['us 7.125', 'uk 7.125']],
    ['7.12', ['us 7.125', 'uk 7.125']],
    ['6.88', ['us 6.875', 'uk 6.875']],
    ['6 ⅞', ['us 6.875', 'uk 6.875']],
    ['7', ['us 7', 'uk 7', 'frenchPoint 7']],
    ['7½', ['us 7.5', 'uk 7.5', 'frenchPoint 7.5']],
    ['5', ['frenchPoint 5']],
    ['3½', ['frenchPoint 3.5']],
    ['½', ['frenchPoint 0.5']],
    ['0', ['frenchPoint 0']],
    ['9½', ['frenchPoint 9.5']],
    ['5¾', ['us 5.75', 'uk 5.75']],
    ['26', ['inch 26']],
    ['47', ['cm 47']],
    ['68', ['cm 68']],
  ])('reads “%s” as %j', (text, expected) => expect(readings(text)).toEqual(expected));

  it.each([
    ['22½"', ['inch 22.5']],
    ['22½ in', ['inch 22.5']],
    ['57cm', ['cm 57']],
    ['7⅛ US', ['us 7.125']],
    ['UK 7', ['uk 7']],
    ['7 points', ['frenchPoint 7']],
  ])('lets a unit beside the number settle it: “%s” is %j', (text, expected) =>
    expect(readings(text)).toEqual(expected),
  );

  it.each([
    '',
    ' ',
    'B 207',
    '14',
    '18⅞',
    '26⅛',
    '46',
    '69',
    '22.3',
    '7.1',
    '22 3/2',
    '7 1/3',
    '7 0/8',
    '-7',
    '570',
    '1e1',
    '½½',
    'cm',
    '57 in',
    '30 cm',
    '7⅛⅛',
    '22 ½ ½',
    'NaN',
    '٧',
  ])('reads nothing into “%s”', (text) => expect(stampReadings(text)).toEqual([]));

  it('moves the UK reading with the owner’s scale', () => {
    const uk = (scale: 'as-us' | 'eighth-below-us') =>
      stampReadings('7⅛', scale).find(({ reading }) => reading === 'uk')?.circumferenceMm;
    expect(uk('as-us')).toBeCloseTo(568.55, 2);
    expect(uk('eighth-below-us')).toBeCloseTo(578.52, 2);
  });

  it('reads every stamp of the trade in each spelling alike', () => {
    fc.assert(
      fc.property(fc.integer({ min: 19 * 8, max: 26 * 8 }), (eighths) => {
        const value = eighths / 8;
        const [whole, part] = [Math.floor(value), eighths % 8];
        const spellings = [formatEighths(value), String(value), part ? `${whole} ${part}/8` : `${whole}`];
        for (const text of spellings) expect(readings(text)).toContain(`inch ${value}`);
      }),
      { numRuns: 500 },
    );
  });

  it('never fails on what a worn stamp may look like', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 12 }),
        fc.double({ min: 400, max: 700, noNaN: true }),
        (text, tape) => {
          for (const { circumferenceMm } of readingsAgainstTape(text, tape)) {
            // No scale of the trade reaches beyond these.
            expect(circumferenceMm).toBeGreaterThanOrEqual(458);
            expect(circumferenceMm).toBeLessThanOrEqual(689);
          }
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('a stamp held against the tape', () => {
  it('takes “7” at 571 mm for a UK size first (handbook demo, the pans)', () => {
    const ranked = readingsAgainstTape('7', 571);
    expect(ranked.map(({ reading }) => reading)).toEqual(['uk', 'us', 'frenchPoint']);
    expect(ranked[0]?.differenceMm).toBeCloseTo(2.45, 2);
    expect(ranked[0]?.label).toBe('UK 7');
  });

  it('takes “7” at 610 mm for French points', () => {
    expect(readingsAgainstTape('7', 610)[0]).toMatchObject({
      reading: 'frenchPoint',
      differenceMm: 0,
      label: '7 French points',
    });
  });

  it('shows a block that has shrunk as a negative difference: 556 mm under a stamp of 22 in', () => {
    expect(readingsAgainstTape('22', 556)[0]?.differenceMm).toBeCloseTo(-2.8, 9);
  });

  it('ranks the readings by how near they come, whatever the tape says', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('7', '6½', '7⅛', '8', '5¾', '57', '22½'),
        fc.double({ min: 400, max: 700, noNaN: true }),
        (text, tape) => {
          const misses = readingsAgainstTape(text, tape).map(({ differenceMm }) => Math.abs(differenceMm));
          expect(misses).toEqual([...misses].sort((a, b) => a - b));
          expect(misses).toHaveLength(stampReadings(text).length);
        },
      ),
      { numRuns: 500 },
    );
  });
});
