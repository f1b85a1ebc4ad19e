import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chipGain, patchLab } from '../../src/pixels/chip.ts';
import { colourDifference, type Lab, labOfBytes } from '../../src/pixels/colour.ts';
import rows from '../handbook/materials-checks.json' with { type: 'json' };
import { dimmed, photoOf, wood } from './drawn.ts';

const pairs = rows.filter((row) => row.id.startsWith('de00.pair')) as unknown as {
  id: string;
  inputs: { Lab1: Lab; Lab2: Lab };
  expected: number;
  tolerance: number;
  source: string;
  confidence: string;
}[];

describe('colour difference, against the published test pairs', () => {
  it('has the pairs to check against', () => expect(pairs.length).toBeGreaterThan(10));

  it.each(pairs.map((row) => [`${row.id} — ${row.source} (${row.confidence})`, row] as const))('%s', (_, row) => {
    expect(Math.abs(colourDifference(row.inputs.Lab1, row.inputs.Lab2) - row.expected)).toBeLessThanOrEqual(
      row.tolerance,
    );
  });

  it('is the same both ways and nothing for one colour', () => {
    const lab = fc.tuple(
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: -100, max: 100, noNaN: true }),
      fc.double({ min: -100, max: 100, noNaN: true }),
    );
    fc.assert(
      fc.property(lab, lab, (one, two) => {
        expect(colourDifference(one, two)).toBeCloseTo(colourDifference(two, one), 9);
        expect(colourDifference(one, one)).toBe(0);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe('CIELAB of a pixel', () => {
  // Values for sRGB white, black, primaries and mid grey: from memory, as colour converters print them.
  it.each([
    ['white', [255, 255, 255], [100, 0, 0]],
    ['black', [0, 0, 0], [0, 0, 0]],
    ['red', [255, 0, 0], [53.24, 80.09, 67.2]],
    ['green', [0, 255, 0], [87.73, -86.18, 83.18]],
    ['blue', [0, 0, 255], [32.3, 79.19, -107.86]],
    ['grey', [119, 119, 119], [50.03, 0, 0]],
  ] as const)('knows %s', (_, [r, g, b], [L, A, B]) => {
    const lab = labOfBytes(r, g, b);
    expect(lab[0]).toBeCloseTo(L, 1);
    expect(lab[1]).toBeCloseTo(A, 1);
    expect(lab[2]).toBeCloseTo(B, 1);
  });
});

describe('a grey chip beside the spot', () => {
  const quad = [
    [10, 10],
    [60, 10],
    [60, 60],
    [10, 60],
  ] as const;
  const spot = quad.map(([x, y]) => [x + 70, y] as const);
  const scene = (lamp: readonly [number, number, number], chip = 0.18) =>
    photoOf(150, 70, (x, y) => {
      const under = x < 70 ? ([chip, chip, chip] as const) : wood(3, 0)(x, y);
      return [under[0] * lamp[0], under[1] * lamp[1], under[2] * lamp[2]];
    });

  it('takes a yellow, dim lamp out of the colour of the wood', () => {
    const warm = scene([0.95, 0.62, 0.33]);
    const white = patchLab(scene([1, 1, 1]), spot) as Lab;
    const gain = chipGain(warm, quad, 0.18);
    if (!gain.ok) throw new Error(gain.why);
    expect(colourDifference(patchLab(warm, spot) as Lab, white)).toBeGreaterThan(10);
    expect(colourDifference(patchLab(warm, spot, gain.gain) as Lab, white)).toBeLessThan(1);
  });

  it('refuses a chip that is burnt out, and one too small to tell', () => {
    expect(chipGain(scene([1.3, 1.3, 1.3], 0.88), quad, 0.88)).toEqual({ ok: false, why: 'clipped' });
    expect(
      chipGain(
        scene([1, 1, 1]),
        quad.map(([x, y]) => [x / 20, y / 20] as const),
        0.18,
      ).ok,
    ).toBe(false);
  });

  it('does not change what is already neutral', () => {
    const gain = chipGain(scene([1, 1, 1]), quad, 0.18);
    if (!gain.ok) throw new Error(gain.why);
    for (const g of gain.gain) expect(Math.abs(g - 1)).toBeLessThan(0.02);
    expect(dimmed([1, 1, 1], 0.5)).toEqual([0.5, 0.5, 0.5]);
  });
});
