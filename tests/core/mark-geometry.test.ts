import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  apartPx,
  areaOf,
  awayFromLine,
  fittedSize,
  legsOf,
  lengthPx,
  outlineOf,
  type Spot,
  simplified,
  toPixel,
  toSpot,
  withTap,
} from '../../src/core/mark-geometry.ts';

const size = { width: 1600, height: 1200 };
const share = fc.double({ min: 0, max: 1, noNaN: true });
const spot = fc.tuple(share, share);

describe('spots and pixels', () => {
  it('come back as they went, in a picture of any size', () => {
    fc.assert(
      fc.property(spot, fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 1, max: 9000 }), (at, width, height) => {
        const [x, y] = toSpot(toPixel(at, { width, height }), { width, height });
        expect(x).toBeCloseTo(at[0], 12);
        expect(y).toBeCloseTo(at[1], 12);
      }),
    );
  });

  it('measure along both sides in pixels, not in shares: a picture is no square', () => {
    expect(apartPx([0, 0], [0.3, 0], size)).toBeCloseTo(480, 9);
    expect(apartPx([0, 0], [0, 0.4], size)).toBeCloseTo(480, 9);
    // 3, 4, 5.
    expect(apartPx([0.1, 0.1], [0.1 + 3 / 16, 0.1 + 4 / 12], size)).toBeCloseTo(500, 9);
  });

  it('shrink a large picture to its long side and leave a small one alone', () => {
    expect(fittedSize({ width: 4000, height: 3000 }, 1600)).toEqual(size);
    expect(fittedSize({ width: 3000, height: 4000 }, 1600)).toEqual({ width: 1200, height: 1600 });
    expect(fittedSize({ width: 640, height: 480 }, 1600)).toEqual({ width: 640, height: 480 });
  });
});

describe('one more tap on a line', () => {
  const taps: readonly Spot[] = [
    [0.2, 0.5],
    [0.8, 0.5],
  ];

  it('between two ends makes a corner, not a tail', () => {
    expect(withTap(taps, [0.5, 0.6], size)).toEqual([taps[0], [0.5, 0.6], taps[1]]);
  });

  it('beyond an end makes the line longer there', () => {
    expect(withTap(taps, [0.95, 0.5], size)[2]).toEqual([0.95, 0.5]);
    expect(withTap(taps, [0.05, 0.5], size)[0]).toEqual([0.05, 0.5]);
  });

  it('loses no tap and changes no order of the others', () => {
    fc.assert(
      fc.property(fc.array(spot, { maxLength: 8 }), spot, (before, tap) => {
        const after = withTap(before, tap, size);
        expect(after).toHaveLength(before.length + 1);
        const place = after.indexOf(tap);
        expect([...after.slice(0, place), ...after.slice(place + 1)]).toEqual(before);
      }),
    );
  });
});

describe('a traced path', () => {
  const path: readonly Spot[] = Array.from({ length: 400 }, (_, i) => [0.1 + i / 500, 0.5 + 0.05 * Math.sin(i / 40)]);

  it('is cut at its taps into legs that join and together are the whole of it', () => {
    const taps = [path[0], path[120], path[300], path[399]] as Spot[];
    const legs = legsOf(path, taps, size);
    expect(legs).toHaveLength(3);
    expect(legs.map((leg) => leg[0])).toEqual([path[0], path[120], path[300]]);
    for (const [i, leg] of legs.slice(0, -1).entries()) expect(leg.at(-1)).toEqual(legs[i + 1]?.[0]);
    expect(legs.reduce((sum, leg) => sum + lengthPx(leg, size), 0)).toBeCloseTo(lengthPx(path, size), 6);
  });

  it('made simpler keeps its ends, loses points, and strays nowhere farther than allowed', () => {
    const simple = simplified(path, 0.5, size);
    expect(simple.length).toBeLessThan(path.length / 4);
    expect([simple[0], simple.at(-1)]).toEqual([path[0], path.at(-1)]);
    for (const place of path) expect(awayFromLine(place, simple, size)).toBeLessThanOrEqual(0.5 + 1e-9);
    expect(lengthPx(simple, size) / lengthPx(path, size)).toBeGreaterThan(0.999);
  });
});

describe('an outline', () => {
  it('of two taps is the box they are corners of', () => {
    const box = outlineOf([
      [0.1, 0.2],
      [0.4, 0.6],
    ]);
    expect(areaOf(box.map((corner) => toPixel(corner, size)))).toBeCloseTo(480 * 480, 6);
  });

  it('of one tap is none, of more goes round them', () => {
    expect(outlineOf([[0.1, 0.1]])).toEqual([]);
    const round: Spot[] = Array.from({ length: 360 }, (_, i) => [
      0.5 + (100 * Math.cos((i * Math.PI) / 180)) / size.width,
      0.5 + (100 * Math.sin((i * Math.PI) / 180)) / size.height,
    ]);
    // π·100², less what a polygon of 360 sides cuts off.
    expect(areaOf(outlineOf(round).map((p) => toPixel(p, size)))).toBeCloseTo(31_414, -1);
  });
});
