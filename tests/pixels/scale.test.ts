import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitEllipse } from '../../src/pixels/ellipse.ts';
import {
  applyHomography,
  fitHomography,
  homographyOfQuads,
  invertHomography,
  type Quad,
} from '../../src/pixels/homography.ts';
import { distanceMm, type Scale, scaleFromTwoPoints } from '../../src/pixels/scale.ts';
import { scaleFromCard } from '../../src/pixels/scale-card.ts';
import { scaleFromCoin } from '../../src/pixels/scale-coin.ts';
import type { Failed, Px } from '../../src/pixels/types.ts';
import { checksOf, input, strayOf, titleOf } from '../handbook/checks.ts';
import { seen, view } from './drawn.ts';

const photo = { width: 1600, height: 1200, focalPx: 1230 };
const CARD: Quad = [
  [0, 0],
  [85.6, 0],
  [85.6, 53.98],
  [0, 53.98],
];
const row = (id: string) => {
  const found = checksOf('photo').find((r) => r.id === id);
  if (!found) throw new Error(`No check row ${id}.`);
  return found;
};
const good = (result: Scale | Failed): Scale => {
  if ('why' in result) throw new Error(result.why);
  return result;
};

describe('millimetres from a card', () => {
  const check = row('photo.homography');

  it(titleOf(check), () => {
    const corners = check.inputs.card_corners_px as unknown as Quad;
    const scale = good(scaleFromCard(corners, 0.3, { photo }));
    const { lengthMm } = distanceMm(scale, check.inputs.p1_px as Px, check.inputs.p2_px as Px);
    expect(strayOf(check, lengthMm)).toBeLessThanOrEqual(1);
  });

  it('reads the same whichever corner was tapped first and whichever way round', () => {
    const corners = seen(view(photo, 25, 330)(0), CARD);
    const ends: [Px, Px] = [
      [300, 400],
      [900, 700],
    ];
    const lengths = [corners, [...corners].reverse()].flatMap((c) =>
      [0, 1, 2, 3].map((k) => {
        const turned = [...c.slice(k), ...c.slice(0, k)] as unknown as Quad;
        return distanceMm(good(scaleFromCard(turned, 0.3, { photo })), ...ends).lengthMm;
      }),
    );
    for (const length of lengths) expect(length).toBeCloseTo(lengths[0] as number, 6);
  });

  it('corrects for a card that lies lower than the surface, by the pinhole camera', () => {
    for (const [tilt, z] of [
      [0, 12],
      [20, 25],
      [30, 40],
      [15, -20],
    ] as const) {
      const at = view(photo, tilt, 330);
      const [a, b] = seen(at(z), [
        [10, 20],
        [70, 45],
      ]) as [Px, Px];
      const corners = seen(at(0), CARD) as unknown as Quad;
      const corrected = distanceMm(good(scaleFromCard(corners, 0.3, { photo, zMm: z, focalPx: photo.focalPx })), a, b);
      expect(corrected.lengthMm).toBeCloseTo(65, 6);
      // With the usual focal length instead of the true one: inside its own error.
      const guessed = distanceMm(good(scaleFromCard(corners, 0.3, { photo, zMm: z })), a, b);
      expect(Math.abs(guessed.lengthMm - 65)).toBeLessThan(2 * guessed.sigmaMm);
    }
  });

  it('overreads by h/(D − h) when the height is not told', () => {
    const check = row('photo.plane_error');
    const [D, h] = [input(check, 'distance_mm'), input(check, 'height_mm')];
    const at = view(photo, 0, D, 0);
    const [a, b] = seen(at(h), [
      [10, 10],
      [60, 10],
    ]) as [Px, Px];
    const scale = good(scaleFromCard(seen(at(0), CARD) as unknown as Quad, 0.3, { photo }));
    const measured = distanceMm(scale, a, b).lengthMm;
    expect(Math.abs(measured / 50 - 1 - (check.expected as number))).toBeLessThan(1e-6);
  });

  it('is less sure farther from the card, with rougher corners and with an unknown height', () => {
    const corners = seen(view(photo, 20, 330)(0), CARD) as unknown as Quad;
    const sigma = (a: Px, options = {}, corner = 0.3) =>
      good(scaleFromCard(corners, corner, { photo, ...options })).sigmaMm(a, [a[0] + 150, a[1]]);
    const near: Px = [820, 640];
    expect(sigma([100, 100])).toBeGreaterThan(sigma(near));
    expect(sigma(near, {}, 1)).toBeGreaterThan(sigma(near));
    expect(sigma(near, { zMm: 30, zSigmaMm: 5 })).toBeGreaterThan(sigma(near, { zMm: 30, zSigmaMm: 0.1 }));
  });

  it('says so when the corners make no card', () => {
    const flat: Quad = [
      [0, 0],
      [100, 0],
      [200, 0],
      [300, 0],
    ];
    expect(scaleFromCard(flat, 0.3, { photo })).toEqual({ ok: false, why: 'no-scale' });
  });
});

describe('millimetres from a coin', () => {
  it(titleOf(row('photo.tilt_from_coin')), () => {
    const check = row('photo.tilt_from_coin');
    const a = input(check, 'major_px') / 2;
    const b = input(check, 'minor_px') / 2;
    const scale = scaleFromCoin({ cx: 500, cy: 500, a, b, theta: 0.4 }, 23.25, photo);
    expect(strayOf(check, scale.tiltDeg as number)).toBeLessThanOrEqual(1);
  });

  it('undoes the shrinking along the tilt', () => {
    const scale = scaleFromCoin({ cx: 500, cy: 500, a: 105, b: 99, theta: Math.PI / 2 }, 24, photo);
    const along = distanceMm(scale, [450, 500], [550, 500]).lengthMm;
    const across = distanceMm(scale, [500, 450], [500, 550]).lengthMm;
    expect(along / across).toBeCloseTo(105 / 99, 9);
    expect(across).toBeCloseTo((100 * 24) / 210, 9);
  });

  it('grows its error with the distance from the coin', () => {
    const scale = scaleFromCoin({ cx: 500, cy: 500, a: 105, b: 99, theta: 0 }, 24, photo);
    expect(scale.sigmaMm([500, 900], [600, 900])).toBeGreaterThan(2 * scale.sigmaMm([450, 500], [550, 500]));
  });
});

describe('two points a known distance apart', () => {
  it('carries the handbook’s error of both tapped ends', () => {
    const check = row('photo.scale_sd');
    const scale = scaleFromTwoPoints([0, 0], [input(check, 'px_ref'), 0], 85.6);
    const { lengthMm, sigmaMm } = distanceMm(scale as NonNullable<typeof scale>, [0, 0], [input(check, 'px_len'), 0]);
    expect(lengthMm).toBeCloseTo(input(check, 'length_mm'), 2);
    // The row counts taps of 1 px and no tilt; ours are 0.7 px and the unseen tilt comes on top.
    expect(sigmaMm).toBeGreaterThan(0.7 * (check.expected as number));
  });

  it('refuses points too near to each other', () => {
    expect(scaleFromTwoPoints([0, 0], [5, 0], 10)).toBeUndefined();
    expect(scaleFromTwoPoints([0, 0], [100, 0], 0)).toBeUndefined();
  });
});

describe('the geometry underneath', () => {
  const coordinate = fc.double({ min: 100, max: 900, noNaN: true });

  it('finds a homography again from noisy-free pairs, and its way back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        coordinate,
        coordinate,
        (tilt, turn, x, y) => {
          const h = view(photo, tilt, 300, turn)(0);
          const from: Px[] = [...CARD, [40, 20], [20, 50]];
          const fitted = fitHomography(from, seen(h, from));
          const back = fitted && invertHomography(fitted);
          if (!fitted || !back) throw new Error('no homography');
          const p: Px = [x / 10, y / 10];
          const q = applyHomography(fitted, p);
          expect(q[0]).toBeCloseTo(applyHomography(h, p)[0], 4);
          expect(applyHomography(back, q)[0]).toBeCloseTo(p[0], 6);
          expect(applyHomography(back, q)[1]).toBeCloseTo(p[1], 6);
        },
      ),
      { seed: 2, numRuns: 50 },
    );
  });

  it('does not invent one for corners on a line', () => {
    const line: Quad = [
      [0, 0],
      [1, 1],
      [2, 2],
      [3, 3],
    ];
    expect(homographyOfQuads(line, CARD)).toBeUndefined();
  });

  it('fits the ellipse that points lie on', () => {
    const e = { cx: 300, cy: 200, a: 105, b: 99, theta: 0.7 };
    const points = Array.from({ length: 40 }, (_, i): Px => {
      const t = (i * 2 * Math.PI) / 40;
      const [u, v] = [e.a * Math.cos(t), e.b * Math.sin(t)];
      return [
        e.cx + u * Math.cos(e.theta) - v * Math.sin(e.theta),
        e.cy + u * Math.sin(e.theta) + v * Math.cos(e.theta),
      ];
    });
    const fit = fitEllipse(points);
    expect(fit?.a).toBeCloseTo(e.a, 6);
    expect(fit?.b).toBeCloseTo(e.b, 6);
    expect(fit?.cx).toBeCloseTo(e.cx, 6);
    expect((((fit?.theta as number) - e.theta + 10 * Math.PI) % Math.PI) - 0).toBeCloseTo(0, 6);
  });
});
