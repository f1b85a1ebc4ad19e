import { CARD_MM } from './card.ts';
import type { Quad } from './homography.ts';
import type { HoughLine } from './lines.ts';
import type { Camera } from './plane-pose.ts';
import type { Px } from './types.ts';

/**
 * The four cards (side b long or short, lying to either side of it) whose sides lie on a, b and c; b joins a and c.
 * Source: single-view geometry of a rectangle. The planes through the lens and each line give the directions: along a
 * and c it is the cut of their planes, along b it is at right angles to that.
 */
export function completed(a: HoughLine, b: HoughLine, c: HoughLine, camera: Camera): Quad[] {
  const along = cross(planeOf(a, camera), planeOf(c, camera));
  const between = cross(planeOf(b, camera), along);
  const p = rayAt(a, b, camera);
  const q = rayAt(c, b, camera);
  const length = Math.hypot(...along);
  if (!p || !q || length < 1e-9) return [];
  const dq = cross(between, q);
  const pq = cross(p, q);
  const s = -(pq[0] * dq[0] + pq[1] * dq[1] + pq[2] * dq[2]) / (dq[0] ** 2 + dq[1] ** 2 + dq[2] ** 2);
  const base = Math.abs(s) * Math.hypot(...between);
  const q3 = add(p, between, s);
  const ratio = CARD_MM.width / CARD_MM.height;
  const quads: Quad[] = [];
  for (const depth of [base * ratio, -base * ratio, base / ratio, -base / ratio]) {
    const far = [p, q3, add(q3, along, depth / length), add(p, along, depth / length)];
    if (far.some((v) => v[2] < 0.05)) continue;
    quads.push(far.map((v) => project(v, camera)) as unknown as Quad);
  }
  return quads;
}

type Vector = readonly [number, number, number];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const add = (a: Vector, b: Vector, times: number): Vector => [
  a[0] + times * b[0],
  a[1] + times * b[1],
  a[2] + times * b[2],
];

/** Normal of the plane through the lens and a line of the picture. */
const planeOf = (l: HoughLine, { focalPx, centreX, centreY }: Camera): Vector => [
  l.cos * focalPx,
  l.sin * focalPx,
  l.cos * centreX + l.sin * centreY - l.rho,
];

/** The ray to where two lines cross. */
function rayAt(a: HoughLine, b: HoughLine, { focalPx, centreX, centreY }: Camera): Vector | undefined {
  const det = a.cos * b.sin - a.sin * b.cos;
  if (Math.abs(det) < 0.2) return undefined;
  const x = (a.rho * b.sin - b.rho * a.sin) / det;
  const y = (a.cos * b.rho - b.cos * a.rho) / det;
  return [(x - centreX) / focalPx, (y - centreY) / focalPx, 1];
}

const project = (v: Vector, { focalPx, centreX, centreY }: Camera): Px => [
  (v[0] / v[2]) * focalPx + centreX,
  (v[1] / v[2]) * focalPx + centreY,
];
