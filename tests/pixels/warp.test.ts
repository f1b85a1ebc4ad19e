import { describe, expect, it } from 'vitest';
import type { Homography } from '../../src/pixels/homography.ts';
import type { Img } from '../../src/pixels/types.ts';
import { warp } from '../../src/pixels/warp.ts';

const IDENTITY: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];
/** A slope of light to the right and another downwards, so that a place can be read off its colour. */
const slope = (width: number, height: number): Img => {
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let i = 0; i < width * height; i++) {
    data[i * 4] = 4 * (i % width);
    data[i * 4 + 1] = 4 * Math.floor(i / width);
  }
  return { data, width, height };
};
const at = (img: Img, x: number, y: number): number[] => [
  ...img.data.slice((y * img.width + x) * 4, (y * img.width + x) * 4 + 4),
];

describe('a photo seen through a map', () => {
  it('is itself through the map that moves nothing', () => {
    const img = slope(20, 12);
    for (const [x, y] of [
      [0, 0],
      [7, 3],
      [18, 10],
    ] as const)
      expect(at(warp(img, IDENTITY, 20, 12), x, y)).toEqual(at(img, x, y));
  });

  it('is read between four pixels', () => {
    const half = warp(slope(20, 12), [1, 0, 0.5, 0, 1, 0.25, 0, 0, 1], 10, 10);
    // 4 × (7 + ½) and 4 × (3 + ¼), by hand.
    expect(at(half, 7, 3)).toEqual([30, 13, 255, 255]);
  });

  it('follows perspective: a place twice as far along is divided by twice the depth', () => {
    const map: Homography = [2, 0, 0, 0, 2, 0, 0.1, 0, 1];
    const seen = warp(slope(60, 40), map, 30, 10);
    // Middle of pixel 9: (19, 11) / 1.95, less the half pixel, times 4.
    const [r = 0, g = 0] = at(seen, 9, 5);
    expect(r).toBe(Math.round(4 * (19 / 1.95 - 0.5)));
    expect(g).toBe(Math.round(4 * (11 / 1.95 - 0.5)));
  });

  it('repeats the edge beyond the border', () => {
    const off = warp(slope(20, 12), [1, 0, -50, 0, 1, 0, 0, 0, 1], 4, 4);
    expect(at(off, 0, 2)).toEqual([0, 8, 255, 255]);
  });
});
