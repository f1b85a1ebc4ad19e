import { describe, expect, it } from 'vitest';
import type { PhotoScale } from '../../src/core/records.ts';
import { scaleBarOf } from '../../src/core/scale-bar.ts';
import { applyHomography, invertHomography } from '../../src/pixels/homography.ts';
import { seen, view } from '../pixels/drawn.ts';

const size = { width: 1600, height: 1200 };
const base: PhotoScale = {
  ...{ kind: 'card', reference: 'bankCard', sizeMm: [85.6, 53.98], taps: [], corners: [], rim: null },
  ...{ sigmaOfWidth: 0.0002, featureAboveMm: 0, version: 1 },
};

describe('the scale bar of a photograph', () => {
  it('is as long on the wood as it says, though the card is seen aslant', () => {
    const toPx = view({ ...size, focalPx: 1230 }, 20, 330, 12)(0);
    const toMm = invertHomography(toPx);
    const card = [
      [-40, -20],
      [45.6, -20],
      [45.6, 33.98],
      [-40, 33.98],
    ] as const;
    for (const corners of [card, [...card.slice(1), card[0]]]) {
      const spots = seen(toPx, corners).map(([x, y]): [number, number] => [x / size.width, y / size.height]);
      const bar = scaleBarOf({ ...base, corners: spots }, size);
      if (!bar || !toMm) throw new Error('No bar.');
      const [a, b] = [bar.from, bar.to].map(([x, y]) => applyHomography(toMm, [x * size.width, y * size.height]));
      expect(Math.hypot((a?.[0] ?? 0) - (b?.[0] ?? 0), (a?.[1] ?? 0) - (b?.[1] ?? 0))).toBeCloseTo(bar.lengthMm, 3);
      expect(bar.lengthMm).toBe(100);
    }
  });

  it('of two points is their length in proportion', () => {
    const corners: [number, number][] = [
      [0.2, 0.5],
      [0.7, 0.5],
    ];
    const bar = scaleBarOf({ ...base, kind: 'twoPoints', reference: null, sizeMm: [200], corners }, size);
    // 200 mm take half the width: 100 mm a quarter.
    expect(bar?.lengthMm).toBe(100);
    expect((bar?.to[0] ?? 0) - (bar?.from[0] ?? 0)).toBeCloseTo(0.25, 6);
  });

  it('is left out where the points make no scale', () => {
    expect(
      scaleBarOf(
        {
          ...base,
          corners: [
            [0.1, 0.1],
            [0.2, 0.2],
            [0.3, 0.3],
            [0.4, 0.4],
          ],
        },
        size,
      ),
    ).toBeNull();
    expect(scaleBarOf({ ...base, kind: 'coin', sizeMm: [23.25] }, size)).toBeNull();
  });
});
