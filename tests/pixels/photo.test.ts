import { describe, expect, it } from 'vitest';
import { blur } from '../../src/pixels/gaussian.ts';
import { applyHomography, type Homography, invertHomography } from '../../src/pixels/homography.ts';
import { quality } from '../../src/pixels/quality.ts';
import { register } from '../../src/pixels/register.ts';
import { pathBeyond, shareBeyond, stainShare } from '../../src/pixels/stain.ts';
import type { Img, Px } from '../../src/pixels/types.ts';
import { byteOf, cloud, dimmed, photoOf, wood } from './drawn.ts';

describe('the stained share of an outline', () => {
  const region: Px[] = [
    [20, 20],
    [280, 20],
    [280, 220],
    [20, 220],
  ];
  const grain = wood(8);
  /** A round stain in light that falls off to the right. */
  const stained = (radius: number, strength: number): Img =>
    photoOf(300, 240, (x, y) => {
      const light = dimmed(grain(x, y), 1.15 - (0.35 * x) / 300);
      return Math.hypot(x - 110, y - 120) < radius
        ? [light[0] * strength, light[1] * strength ** 1.3, light[2] * strength ** 1.6]
        : light;
    });
  const clean: Px = [240, 60];
  const spot: Px = [110, 120];

  it.each([30, 55, 80])('is right within two hundredths for a stain of radius %i px, in uneven light', (radius) => {
    const result = stainShare(stained(radius, 0.55), region, clean, spot);
    if (!result.ok) throw new Error(result.why);
    const truth = (Math.PI * radius * radius) / (260 * 200);
    expect(Math.abs(result.share - truth)).toBeLessThan(0.02);
    expect(result.low).toBeLessThanOrEqual(result.share);
    expect(result.high).toBeGreaterThanOrEqual(result.share);
  });

  it('is drawn where it lies: every shaded cell in the stain, and as much of it as is counted', () => {
    const result = stainShare(stained(55, 0.55), region, clean, spot);
    if (!result.ok) throw new Error(result.why);
    const { cells } = result;
    let area = 0;
    for (const [, x = '', y = '', run = ''] of pathBeyond(cells, 0.5).matchAll(/M(\d+) (\d+)h(\d+)v5h-\d+z/g)) {
      area += Number(run) * cells.side;
      for (const end of [Number(x), Number(x) + Number(run)]) {
        expect(Math.hypot(end - 110, Number(y) - 120)).toBeLessThan(55 + 2 * cells.side);
      }
    }
    expect(area / (260 * 200)).toBeCloseTo(result.share, 6);
    // A stricter line counts less, a laxer one more, and between them lies everything.
    const shares = [-10, 0.35, 0.5, 0.65, 10].map((limit) => shareBeyond(cells, limit));
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect([shares[0], shares[4]]).toEqual([1, 0]);
  });

  it('is not given when the two taps look alike, or the outline is too small', () => {
    expect(stainShare(stained(0, 1), region, clean, [240, 120])).toEqual({ ok: false, why: 'too-weak' });
    expect(
      stainShare(
        stained(40, 0.5),
        region.map(([x, y]): Px => [x / 15, y / 15]),
        clean,
        spot,
      ).ok,
    ).toBe(false);
  });
});

describe('before and after', () => {
  const size = { width: 560, height: 420 };
  const clouds = [1, 2, 3].map(cloud);
  /** A grained, blotched face, wide enough for both views. */
  const face = (u: number, v: number): number =>
    0.4 *
    (1 +
      0.25 * (clouds[0]?.(u / 4, v / 60) ?? 0) +
      0.2 * (clouds[1]?.(u / 14, v / 14) ?? 0) +
      0.25 * (clouds[2]?.(u / 60, v / 60) ?? 0));
  const toAfter: Homography = [0.94, 0.12, 10, -0.09, 1.02, 22, 0.0001, -0.00012, 1];
  const back = invertHomography(toAfter) as Homography;
  const before = photoOf(size.width, size.height, (x, y) => [face(x, y), 0.8 * face(x, y), 0.5 * face(x, y)]);
  // Another lamp, and a repair: a patch that is not there any more.
  const after = photoOf(
    size.width,
    size.height,
    (x, y) => {
      const [u, v] = applyHomography(back, [x, y]);
      const light = Math.hypot(u - 250, v - 200) < 35 ? 0.5 : face(u, v);
      const lamp = 0.7 + (0.4 * x) / size.width;
      return [lamp * light, 0.9 * lamp * light, 0.7 * lamp * light];
    },
    { seed: 11 },
  );
  const worstOff = (h: Homography): number => {
    let worst = 0;
    for (const x of [60, 280, 480])
      for (const y of [60, 210, 360]) {
        const [p, q] = [applyHomography(h, [x, y]), applyHomography(toAfter, [x, y])];
        worst = Math.max(worst, Math.hypot(p[0] - q[0], p[1] - q[1]));
      }
    return worst;
  };

  it('are lined up to a quarter of a pixel in other light, past a repair, without taps', () => {
    const result = register(before, after);
    if (!result.ok) throw new Error(result.why);
    expect(worstOff(result.H)).toBeLessThan(0.25);
    expect(result.agreement).toBeGreaterThan(0.5);
    expect(result.overlap).toBeGreaterThan(0.7);
  });

  it('are lined up from four taps 5 px off', () => {
    const taps = (
      [
        [60, 60],
        [500, 70],
        [480, 350],
        [70, 340],
      ] as const
    ).map((p, i): [Px, Px] => {
      const q = applyHomography(toAfter, p);
      return [p, [q[0] + (i % 2 === 0 ? 4 : -3), q[1] + (i < 2 ? 3 : -4)]];
    });
    const result = register(before, after, taps);
    if (!result.ok) throw new Error(result.why);
    expect(worstOff(result.H)).toBeLessThan(0.25);
    expect(register(before, after, taps)).toEqual(result);
  });

  it('are not called lined up when they show different things', () => {
    const other = cloud(77);
    const elsewhere = photoOf(size.width, size.height, (x, y) => {
      const l = 0.4 + 0.15 * other(x / 12, y / 12);
      return [l, l, l];
    });
    expect(register(before, elsewhere).ok).toBe(false);
    expect(register(before, after, undefined, { signal: { aborted: true } })).toEqual({ ok: false, why: 'cancelled' });
  });
});

describe('advice to take a photo again', () => {
  const spots = cloud(21);
  const fine = wood(12);
  const scene = (x: number, y: number) => dimmed(fine(x, y), spots(x / 9, y / 9) > 0.55 ? 0.4 : 1);
  const sharp = photoOf(700, 520, scene, { lens: 0.6 });

  /** The same scene after the light of a pixel has been spread out by `spread`. */
  const spoilt = (spread: (plane: Float32Array) => Float32Array): Img => {
    const data = sharp.data.slice();
    for (const c of [0, 1, 2]) {
      const plane = Float32Array.from({ length: 700 * 520 }, (_, i) => {
        const [x, y] = [i % 700, Math.floor(i / 700)];
        return scene(x + 0.5, y + 0.5)[c] as number;
      });
      spread(plane).forEach((v, i) => {
        data[i * 4 + c] = byteOf(v);
      });
    }
    return { ...sharp, data };
  };

  it('is not given for a sharp one', () => expect(quality(sharp)).toEqual({ verdict: 'ok', reasons: [] }));

  it('is given for one out of focus', () => {
    const soft = spoilt((data) => blur({ data, width: 700, height: 520 }, 3).data);
    expect(quality(soft)).toEqual({ verdict: 'retake', reasons: ['soft'] });
  });

  it('is given for a shaken one', () => {
    const shaken = spoilt((plane) =>
      plane.map((_, i) => {
        let sum = 0;
        for (let k = -5; k <= 5; k++) sum += plane[Math.min(plane.length - 1, Math.max(0, i + k))] as number;
        return sum / 11;
      }),
    );
    expect(quality(shaken).verdict).toBe('retake');
  });

  it('is given for a dark and for a burnt-out one', () => {
    const scaled = (factor: number): Img => ({
      ...sharp,
      data: sharp.data.map((v, i) => (i % 4 === 3 ? 255 : v * factor)),
    });
    expect(quality(scaled(0.15)).reasons).toContain('dark');
    expect(quality(scaled(2.5)).reasons).toContain('clipped');
  });
});
