import { describe, expect, it } from 'vitest';
import { CARD_MM, refineCard } from '../../src/pixels/card.ts';
import { findCard } from '../../src/pixels/card-find.ts';
import { refineCoin } from '../../src/pixels/coin.ts';
import { applyHomography, type Homography, invertHomography, type Quad } from '../../src/pixels/homography.ts';
import { distanceMm } from '../../src/pixels/scale.ts';
import { scaleFromCard } from '../../src/pixels/scale-card.ts';
import { scaleFromCoin } from '../../src/pixels/scale-coin.ts';
import type { Img, Px } from '../../src/pixels/types.ts';
import { dimmed, type Light, photoOf, seen, view, wood } from './drawn.ts';

const size = { width: 640, height: 480, focalPx: 500 };
const { width, height } = CARD_MM;
const OUTLINE: Quad = [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

/** A printed card lying on wood; `radius` 0 makes it a sharp-cornered tile. */
function cardPhoto(toPx: Homography, radius: number = CARD_MM.cornerRadius, colour: Light = [0.1, 0.2, 0.5]): Img {
  const back = invertHomography(toPx) as Homography;
  const under = wood(2);
  return photoOf(size.width, size.height, (x, y) => {
    const [u, v] = applyHomography(back, [x, y]);
    const du = Math.max(radius - u, u - (width - radius), 0);
    const dv = Math.max(radius - v, v - (height - radius), 0);
    const inside = u > 0 && v > 0 && u < width && v < height && (du === 0 || dv === 0 || Math.hypot(du, dv) < radius);
    if (!inside) return under(x, y);
    if (Math.abs(u - 18) < 5 && Math.abs(v - 20) < 4) return [0.6, 0.5, 0.2];
    return dimmed(colour, 1 + 0.5 * (u / width));
  });
}

const toPx = view(size, 22, 190, 8, [-45, -30])(0);
const truth = seen(toPx, OUTLINE);
const photo = cardPhoto(toPx);
const apart = (a: Px, b: Px): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const worst = (corners: readonly Px[]): number =>
  Math.max(...truth.map((t) => Math.min(...corners.map((c) => apart(c, t)))));

/** How far each tap misses, in pixels. */
const OFF = [
  [5, 4],
  [-4, 5],
  [-6, -5],
  [3, -4],
];

describe('a card in the photo', () => {
  const taps = truth.map(([x, y], i): Px => [x + (OFF[i]?.[0] ?? 0), y + (OFF[i]?.[1] ?? 0)]);

  it('is sharpened from rough taps to a third of a pixel, in the order of the taps', () => {
    const fit = refineCard(photo, taps);
    if (!fit.ok) throw new Error(fit.why);
    fit.corners.forEach((c, i) => {
      expect(apart(c, truth[i] as Px)).toBeLessThan(0.35);
    });
    expect(fit.inliers).toBeGreaterThan(0.9);
  });

  it('then measures distances beside it within half a percent and inside their error', () => {
    const fit = refineCard(photo, taps);
    if (!fit.ok) throw new Error(fit.why);
    const scale = scaleFromCard(fit.corners, fit.sigmaPx, { photo: size });
    if ('why' in scale) throw new Error(scale.why);
    const ends = seen(toPx, [
      [-20, 10],
      [40, 70],
    ]) as [Px, Px];
    const { lengthMm, sigmaMm } = distanceMm(scale, ...ends);
    const true_ = Math.hypot(60, 60);
    expect(Math.abs(lengthMm / true_ - 1)).toBeLessThan(0.005);
    expect(Math.abs(lengthMm - true_)).toBeLessThan(2 * sigmaMm);
    expect(scale.tiltDeg).toBeCloseTo(22, 0);
  });

  it('is found without taps', () => {
    const found = findCard(photo);
    if (!found.ok) throw new Error(found.why);
    expect(worst(found.corners)).toBeLessThan(0.5);
  });

  it('is not seen in bare wood, nor in a tile of its proportions with sharp corners', () => {
    expect(findCard(photoOf(size.width, size.height, wood(2)))).toEqual({ ok: false, why: 'no-edge' });
    expect(findCard(cardPhoto(toPx, 0))).toEqual({ ok: false, why: 'no-edge' });
  });

  it('is refused when a side is hidden, when taps are missing, and when told to stop', () => {
    const hidden = { ...photo, data: photo.data.slice() };
    for (let y = 0; y < size.height; y++)
      for (let x = 0; x < size.width; x++)
        if (
          Math.abs(
            (x - (truth[0] as Px)[0]) * ((truth[3] as Px)[1] - (truth[0] as Px)[1]) -
              (y - (truth[0] as Px)[1]) * ((truth[3] as Px)[0] - (truth[0] as Px)[0]),
          ) <
          40 * apart(truth[0] as Px, truth[3] as Px)
        )
          hidden.data.set([90, 90, 90, 255], (y * size.width + x) * 4);
    expect(refineCard(hidden, taps).ok).toBe(false);
    expect(refineCard(photo, taps.slice(1))).toEqual({ ok: false, why: 'too-few-points' });
    expect(refineCard(photo, taps, { signal: { aborted: true } })).toEqual({ ok: false, why: 'cancelled' });
    expect(findCard(photo, { signal: { aborted: true } })).toEqual({ ok: false, why: 'cancelled' });
  });

  it('comes out the same to the last bit', () => {
    expect(refineCard(photo, taps)).toEqual(refineCard({ ...photo }, taps));
    expect(findCard(photo)).toEqual(findCard({ ...photo }));
  });
});

describe('a coin in the photo', () => {
  const MM = 23.25;
  const coinPhoto = (tilt: number): { photo: Img; toPx: Homography } => {
    const toPx = view(size, tilt, 110, 0)(0);
    const back = invertHomography(toPx) as Homography;
    const under = wood(5);
    return {
      toPx,
      photo: photoOf(size.width, size.height, (x, y) => {
        const r = Math.hypot(...applyHomography(back, [x, y]));
        if (r > MM / 2) return under(x, y);
        if (r > MM / 2 - 1.2) return [0.75, 0.72, 0.6];
        return r > MM / 2 - 1.6 ? [0.3, 0.28, 0.2] : [0.6, 0.57, 0.42];
      }),
    };
  };
  const rim = (toPx: Homography, degrees: number, off: number): Px => {
    const a = (degrees * Math.PI) / 180;
    const [x, y] = applyHomography(toPx, [(MM / 2) * Math.cos(a), (MM / 2) * Math.sin(a)]);
    return [x + off, y - off];
  };

  it.each([0, 20, 30])(
    'gives its diameter within a hundredth when tilted by %i°, and not that of its inner ring',
    (tilt) => {
      const { photo, toPx } = coinPhoto(tilt);
      const fit = refineCoin(photo, [rim(toPx, 10, 3), rim(toPx, 130, -3), rim(toPx, 250, 2)]);
      if (!fit.ok) throw new Error(fit.why);
      // Area of the projected rim, by its own polygon.
      const outline = Array.from({ length: 720 }, (_, i) => rim(toPx, i / 2, 0));
      const area = outline.reduce((s, p, i) => {
        const q = outline[(i + 1) % outline.length] as Px;
        return s + (p[0] * q[1] - q[0] * p[1]) / 2;
      }, 0);
      const meanRadius = Math.sqrt(Math.abs(area) / Math.PI);
      expect(Math.abs(Math.sqrt(fit.ellipse.a * fit.ellipse.b) / meanRadius - 1)).toBeLessThan(0.01);
      const scale = scaleFromCoin(fit.ellipse, MM, size);
      const across = distanceMm(scale, rim(toPx, 0, 0), rim(toPx, 180, 0));
      expect(Math.abs(across.lengthMm / MM - 1)).toBeLessThan(0.02);
    },
  );

  it('needs three taps that are not in a line', () => {
    const { photo } = coinPhoto(0);
    const line: Px[] = [
      [100, 100],
      [200, 100],
      [300, 100],
    ];
    expect(refineCoin(photo, line)).toEqual({ ok: false, why: 'too-few-points' });
    expect(refineCoin(photo, line.slice(1))).toEqual({ ok: false, why: 'too-few-points' });
  });
});
