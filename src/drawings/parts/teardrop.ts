import type { Point } from '../shape.ts';
import type { Camera, Space } from '../tools/camera.ts';

/** A teardrop outline, and lines on a surface that stands on one: for the fascinator block and the pressing piece. */

/** Half-length, half-width; `point` says at which end the outline runs out. */
export interface Teardrop {
  long: number;
  wide: number;
  point: 'front' | 'back';
}

export const DEGREE = Math.PI / 180;

/** A point of the outline, shrunk toward the middle of the round end; 0 degrees is the point, 90 the wearer's right. */
export function rim({ long, wide, point }: Teardrop, degrees: number, share = 1, up = 0): Space {
  const angle = degrees * DEGREE;
  const toPoint = long * Math.cos(angle);
  const right = wide * 1.32 * Math.sin(angle) * Math.abs(Math.sin(angle / 2)) ** 1.6;
  const middle = -long * 0.3;
  const forward = (middle + (toPoint - middle) * share) * (point === 'front' ? 1 : -1);
  return [forward, right * share, up];
}

export const around = (see: Camera, shape: Teardrop, share = 1, up = 0, from = 0, to = 360): Point[] => {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / 5));
  return Array.from({ length: pieces + 1 }, (_, k) => see(rim(shape, from + ((to - from) * k) / pieces, share, up)));
};
export const loop = (see: Camera, shape: Teardrop, share = 1, up = 0): Point[] =>
  around(see, shape, share, up).slice(0, -1);

/** Height on the page of a line that runs from left to right, at a given x. */
export const heightAt = (points: readonly Point[], x: number): number => {
  for (let k = 1; k < points.length; k += 1) {
    const [[ax, ay], [bx, by]] = [points[k - 1] as Point, points[k] as Point];
    if ((ax <= x && x <= bx) || (bx <= x && x <= ax)) return bx === ax ? ay : ay + ((by - ay) * (x - ax)) / (bx - ax);
  }
  const [first, last] = [points[0] as Point, points[points.length - 1] as Point];
  return Math.abs(first[0] - x) < Math.abs(last[0] - x) ? first[1] : last[1];
};

/** The area between two lines that run from left to right. */
export const slab = (upper: readonly Point[], lower: readonly Point[], from: number, to: number): Point[] => {
  const xs = Array.from({ length: 25 }, (_, k) => from + ((to - from) * k) / 24);
  return [...xs.map((x): Point => [x, heightAt(upper, x)]), ...xs.reverse().map((x): Point => [x, heightAt(lower, x)])];
};
