import { blur } from './gaussian.ts';
import { luminance } from './linear-light.ts';
import { cut } from './ridge.ts';
import { sample } from './sample.ts';
import type { Img, Plane, Px } from './types.ts';

/** Farthest a path point is moved across the crack, in pixels. */
const REACH = 1.5;

/** Moves pixel-bound path points across the path to the darkest spot of a lightly blurred image. */
export function centreOnDark(img: Img, path: readonly (readonly [number, number])[]): Px[] {
  const { plane, left, top } = softened(img, path);
  return path.map(([px, py], i) => {
    const before = path[Math.max(0, i - 3)] as Px;
    const after = path[Math.min(path.length - 1, i + 3)] as Px;
    const dx = after[0] - before[0];
    const dy = after[1] - before[1];
    const n = Math.hypot(dx, dy) || 1;
    const x = px + 0.5 - left;
    const y = py + 0.5 - top;
    let best = 0;
    let darkest = Number.POSITIVE_INFINITY;
    for (let s = -REACH; s <= REACH; s += 0.25) {
      const v = sample(plane, x - (s * dy) / n, y + (s * dx) / n);
      if (v < darkest) {
        darkest = v;
        best = s;
      }
    }
    return [px + 0.5 - (best * dy) / n, py + 0.5 + (best * dx) / n];
  });
}

/** The photo round a path, blurred by 0.8 px: noise gone, hairlines still there. */
function softened(img: Img, path: readonly Px[]): { plane: Plane; left: number; top: number } {
  let left = img.width;
  let top = img.height;
  let right = 0;
  let bottom = 0;
  for (const [x, y] of path) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  left = Math.max(0, Math.floor(left) - 8);
  top = Math.max(0, Math.floor(top) - 8);
  right = Math.min(img.width, Math.ceil(right) + 9);
  bottom = Math.min(img.height, Math.ceil(bottom) + 9);
  return { plane: blur(cut(luminance(img), left, top, right, bottom), 0.8), left, top };
}

/** Moving averages over 9, then 5 points; the ends stay where they are. */
export function smooth(path: readonly Px[]): Px[] {
  return average(average(path, 4), 2);
}

function average(path: readonly Px[], reach: number): Px[] {
  return path.map((_, i) => {
    const r = Math.min(reach, i, path.length - 1 - i);
    let x = 0;
    let y = 0;
    for (let k = i - r; k <= i + r; k++) {
      x += (path[k] as Px)[0];
      y += (path[k] as Px)[1];
    }
    return [x / (2 * r + 1), y / (2 * r + 1)];
  });
}
