import type { Point } from '../shape.ts';

/** Writes, joins and reads SVG path data. Only M, L, C, A and Z are written; numbers are rounded to a tenth of a unit. */

const short = (value: number): string => String(Math.round(value * 10) / 10);
const pair = ([x, y]: Point): string => `${short(x)} ${short(y)}`;

export const linePath = (points: readonly Point[]): string =>
  points.map((point, index) => `${index === 0 ? 'M' : 'L'}${pair(point)}`).join('');

export const closedPath = (points: readonly Point[]): string => `${linePath(points)}Z`;

/** Compound path: with the even-odd rule every further path is a hole in the first. */
export const without = (...paths: readonly string[]): string => paths.join('');

export const ovalPath = ([x, y]: Point, halfWidth: number, halfHeight: number): string =>
  `M${pair([x - halfWidth, y])}A${short(halfWidth)} ${short(halfHeight)} 0 1 1 ${pair([x + halfWidth, y])}` +
  `A${short(halfWidth)} ${short(halfHeight)} 0 1 1 ${pair([x - halfWidth, y])}Z`;

const lerp = (a: Point, b: Point, t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];

/**
 * Points along a Catmull-Rom spline through the given ones: the curve a bent spline of wood would take.
 * @param step how many pieces between two given points
 */
export function curveThrough(points: readonly Point[], { closed = false, step = 10 } = {}): Point[] {
  const count = points.length;
  const at = (index: number): Point => {
    const last = count - 1;
    const wrapped = closed ? (index + count) % count : Math.min(Math.max(index, 0), last);
    return points[wrapped] as Point;
  };
  const pieces = closed ? count : count - 1;
  const curve: Point[] = [];
  for (let piece = 0; piece < pieces; piece += 1) {
    const [before, start, end, after] = [at(piece - 1), at(piece), at(piece + 1), at(piece + 2)];
    for (let k = 0; k < step; k += 1) {
      const t = k / step;
      const along = (axis: 0 | 1): number => {
        const [p, q, r, s] = [before[axis], start[axis], end[axis], after[axis]];
        return 0.5 * (2 * q + (r - p) * t + (2 * p - 5 * q + 4 * r - s) * t * t + (3 * q - p - 3 * r + s) * t * t * t);
      };
      curve.push([along(0), along(1)]);
    }
  }
  if (!closed) curve.push(at(count - 1));
  return curve;
}

/** Smooth open or closed path through points, as cubic pieces (the Bézier form of the same spline). */
export function smoothPath(points: readonly Point[], closed = false): string {
  const count = points.length;
  const at = (index: number): Point =>
    points[closed ? (index + count) % count : Math.min(Math.max(index, 0), count - 1)] as Point;
  let d = `M${pair(at(0))}`;
  for (let piece = 0; piece < (closed ? count : count - 1); piece += 1) {
    const [before, start, end, after] = [at(piece - 1), at(piece), at(piece + 1), at(piece + 2)];
    const lead: Point = [start[0] + (end[0] - before[0]) / 6, start[1] + (end[1] - before[1]) / 6];
    const trail: Point = [end[0] - (after[0] - start[0]) / 6, end[1] - (after[1] - start[1]) / 6];
    d += `C${pair(lead)} ${pair(trail)} ${pair(end)}`;
  }
  return closed ? `${d}Z` : d;
}

/** Distance from a point to the stretch between two others. */
function distanceToLine([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square));
  const ex = x - ax - t * dx;
  const ey = y - ay - t * dy;
  return Math.sqrt(ex * ex + ey * ey);
}

/**
 * Drops points that lie within `tolerance` units of the line through their neighbours (Douglas and Peucker 1973), so
 * that a report with many figures stays small.
 */
export function thinned(points: readonly Point[], tolerance = 0.07): Point[] {
  const keep = new Uint8Array(points.length);
  const stretches: number[] = [0, points.length - 1];
  while (stretches.length > 0) {
    const to = stretches.pop() as number;
    const from = stretches.pop() as number;
    keep[from] = 1;
    keep[to] = 1;
    let farthest = tolerance;
    let split = 0;
    for (let k = from + 1; k < to; k += 1) {
      const distance = distanceToLine(points[k] as Point, points[from] as Point, points[to] as Point);
      if (distance > farthest) [farthest, split] = [distance, k];
    }
    if (split > 0) stretches.push(from, split, split, to);
  }
  return points.filter((_, k) => keep[k] === 1);
}

/**
 * A path as closed or open polygons, curves cut into short chords.
 * Reads what this folder writes: absolute M, L, C, Z, and half-turn A as made by `ovalPath`.
 */
export function polygonsOf(d: string): Point[][] {
  const polygons: Point[][] = [];
  let current: Point[] = [];
  for (const [, letter, body] of d.matchAll(/([MLCAZ])([^MLCAZ]*)/g)) {
    const numbers = (body ?? '').match(/-?[\d.]+/g)?.map(Number) ?? [];
    const value = (index: number): number => numbers[index] as number;
    const from = current[current.length - 1];
    if (letter === 'M') {
      current = [[value(0), value(1)]];
      polygons.push(current);
    } else if (letter === 'L') {
      current.push([value(0), value(1)]);
    } else if (letter === 'C' && from) {
      const [c1, c2, end]: Point[] = [
        [value(0), value(1)],
        [value(2), value(3)],
        [value(4), value(5)],
      ];
      for (let k = 1; k <= 8; k += 1) {
        const t = k / 8;
        const [p, q, r] = [
          lerp(from, c1 as Point, t),
          lerp(c1 as Point, c2 as Point, t),
          lerp(c2 as Point, end as Point, t),
        ];
        current.push(lerp(lerp(p, q, t), lerp(q, r, t), t));
      }
    } else if (letter === 'A' && from) {
      const end: Point = [value(5), value(6)];
      const centre = lerp(from, end, 0.5);
      const start = Math.atan2((from[1] - centre[1]) / value(1), (from[0] - centre[0]) / value(0));
      for (let k = 1; k <= 18; k += 1) {
        const turn = start + (Math.PI * k) / 18;
        current.push([centre[0] + value(0) * Math.cos(turn), centre[1] + value(1) * Math.sin(turn)]);
      }
    }
  }
  return polygons;
}

/**
 * The part of a polygon on the positive side of a straight cut (Sutherland and Hodgman 1974).
 * @param side signed distance to the cut, in any unit; it must be linear
 */
export function cutBy(polygon: readonly Point[], side: (point: Point) => number): Point[] {
  return polygon.flatMap((point, index) => {
    const next = polygon[(index + 1) % polygon.length] as Point;
    const [here, there] = [side(point), side(next)];
    const crossing = here > 0 !== there > 0 ? [lerp(point, next, here / (here - there))] : [];
    return here > 0 ? [point, ...crossing] : crossing;
  });
}

/** Whether a point lies inside by the even-odd rule. */
export function isInside(polygons: readonly (readonly Point[])[], [x, y]: Point): boolean {
  let inside = false;
  for (const polygon of polygons) {
    polygon.forEach(([ax, ay], index) => {
      const [bx, by] = polygon[(index + 1) % polygon.length] as Point;
      if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) inside = !inside;
    });
  }
  return inside;
}

/** Area by the shoelace rule; a polygon that lies in an odd number of others is a hole in them. */
export function areaOf(polygons: readonly (readonly Point[])[]): number {
  return polygons.reduce((sum, polygon) => {
    const first = polygon[0] as Point;
    const around = polygons.filter((other) => other !== polygon && isInside([other], first)).length;
    const twice = polygon.reduce((total, [ax, ay], index) => {
      const [bx, by] = polygon[(index + 1) % polygon.length] as Point;
      return total + ax * by - bx * ay;
    }, 0);
    return sum + (around % 2 === 1 ? -1 : 1) * Math.abs(twice / 2);
  }, 0);
}
