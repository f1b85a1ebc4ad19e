import { applyHomography, type Homography, invertHomography } from '../../src/pixels/homography.ts';
import type { Img, Px } from '../../src/pixels/types.ts';
import { cloud, dimmed, type Light, photoOf, view, wood } from '../pixels/drawn.ts';

/*
 * One wooden face photographed before and after its check was filled, from two places and in two lights, drawn in code:
 * where each place of the one lies in the other is known.
 */

export const LOOK = { width: 960, height: 720 } as const;
const CAMERA = { ...LOOK, focalPx: 740 };

const toBefore = view(CAMERA, 5, 330, 3)(0);
const toLater = view(CAMERA, 11, 345, 9, [9, -6])(0);
const fromBefore = mustInvert(toBefore);
const fromLater = mustInvert(toLater);

function mustInvert(h: Homography): Homography {
  const back = invertHomography(h);
  if (!back) throw new Error('A drawn camera looks along the face.');
  return back;
}

/** Where a place of the before photograph lies in the after one, both in pixels. */
export const truth = (p: Px): Px => applyHomography(toLater, applyHomography(fromBefore, p));

const grain = wood(31, 1.3);
const spots = cloud(5);
const knots = cloud(9);

function face([x, y]: Px, filled: boolean): Light {
  const light = grain(3 * x + 600, 3 * y + 600);
  const dark = spots(x / 5, y / 5) > 0.6 ? 0.5 : knots(x / 23, y / 17) > 0.45 ? 0.8 : 1;
  const away = Math.abs(x - 12 * Math.sin(y / 19));
  const check = away < 1.1 && Math.abs(y) < 70 ? (filled ? 0.85 : 0.12) : 1;
  return dimmed(light, dark * check);
}

export const beforeLook = (): Img =>
  photoOf(LOOK.width, LOOK.height, (x, y) => face(applyHomography(fromBefore, [x, y]), false), { seed: 3 });
export const afterLook = (): Img =>
  photoOf(LOOK.width, LOOK.height, (x, y) => dimmed(face(applyHomography(fromLater, [x, y]), true), 0.8 + x / 4000), {
    seed: 4,
  });

/** Greatest distance, in pixels, between where a map in shares takes the corners and where they are. */
export function worstCornerPx(h: readonly number[]): number {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, i = 0, k = 1] = h;
  const off = [
    [0, 0],
    [1, 0],
    [0, 1],
    [1, 1],
  ].map(([x = 0, y = 0]) => {
    const w = g * x + i * y + k;
    const [tx, ty] = truth([x * LOOK.width, y * LOOK.height]);
    return Math.hypot(((a * x + b * y + c) / w) * LOOK.width - tx, ((d * x + e * y + f) / w) * LOOK.height - ty);
  });
  return Math.max(...off);
}
