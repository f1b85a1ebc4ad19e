import { quantile } from './sample.ts';
import type { Px } from './types.ts';

export type EdgePoint = { readonly x: number; readonly y: number; readonly strength: number };

/** nx·x + ny·y = c with (nx, ny) of length 1. */
export type Line = { readonly nx: number; readonly ny: number; readonly c: number };

export type LineFit = {
  readonly line: Line;
  /** Profiles with a point on the line, as a share of all. */
  readonly share: number;
  readonly count: number;
  /** Root mean square distance of those points, in pixels. */
  readonly rms: number;
};

const TRIES = 250;
const NEAR_PX = 1.5;

/**
 * The straight line supported by most profiles, by random pairs and then weighted least squares.
 * @param profiles for each profile its edge points; strong edges count for more, but only up to twice the median
 */
export function fitEdgeLine(
  profiles: readonly (readonly EdgePoint[])[],
  random: () => number,
  wide = false,
): LineFit | undefined {
  const seen = profiles.filter((p) => p.length > 0);
  if (seen.length < 8) return undefined;
  const typical = quantile(
    seen.map((p) => (p[0] as EdgePoint).strength),
    0.5,
  );
  const worth = (p: EdgePoint): number => Math.min(1, p.strength / typical);
  const near = wide ? 2 : NEAR_PX;
  let best: Line | undefined;
  let bestScore = 0;
  for (let i = 0; i < TRIES; i++) {
    const a = pick(seen[Math.floor(random() * seen.length)] as readonly EdgePoint[], random);
    const b = pick(seen[Math.floor(random() * seen.length)] as readonly EdgePoint[], random);
    const line = through(a, b);
    if (!line) continue;
    let score = 0;
    for (const profile of seen) {
      let most = 0;
      for (const p of profile) {
        const d = away(line, p) / near;
        if (Math.abs(d) < 1) most = Math.max(most, worth(p) * (1 - d * d));
      }
      score += most;
    }
    if (score > bestScore) {
      bestScore = score;
      best = line;
    }
  }
  if (!best) return undefined;
  let line = best;
  let points: EdgePoint[] = [];
  for (const reach of [near, 1.2, 0.9]) {
    points = [];
    for (const profile of seen) {
      let nearest: EdgePoint | undefined;
      for (const p of profile)
        if (Math.abs(away(line, p)) < reach && worth(p) > 0.15 && (!nearest || p.strength > nearest.strength))
          nearest = p;
      if (nearest) points.push(nearest);
    }
    if (points.length < 6) return undefined;
    line = leastSquaresLine(points, worth);
  }
  let sum = 0;
  for (const p of points) sum += away(line, p) ** 2;
  return { line, share: points.length / profiles.length, count: points.length, rms: Math.sqrt(sum / points.length) };
}

/** Mostly the strongest edge of a profile, now and then another one. */
function pick(points: readonly EdgePoint[], random: () => number): EdgePoint {
  const r = random();
  return points[Math.min(points.length - 1, Math.floor(r * r * points.length))] as EdgePoint;
}

const away = (l: Line, p: EdgePoint): number => l.nx * p.x + l.ny * p.y - l.c;

function through(a: EdgePoint, b: EdgePoint): Line | undefined {
  const n = Math.hypot(b.x - a.x, b.y - a.y);
  if (n < 10) return undefined;
  const nx = -(b.y - a.y) / n;
  const ny = (b.x - a.x) / n;
  return { nx, ny, c: nx * a.x + ny * a.y };
}

/** Orthogonal least squares: the line along the larger axis of the weighted scatter. */
function leastSquaresLine(points: readonly EdgePoint[], weight: (p: EdgePoint) => number): Line {
  let w = 0;
  let x = 0;
  let y = 0;
  for (const p of points) {
    const k = weight(p);
    w += k;
    x += k * p.x;
    y += k * p.y;
  }
  x /= w;
  y /= w;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const p of points) {
    const k = weight(p);
    xx += k * (p.x - x) ** 2;
    xy += k * (p.x - x) * (p.y - y);
    yy += k * (p.y - y) ** 2;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const nx = -Math.sin(angle);
  const ny = Math.cos(angle);
  return { nx, ny, c: nx * x + ny * y };
}

/** Where two lines cross; undefined when they are nearly parallel. */
export function meet(a: Line, b: Line): Px | undefined {
  const det = a.nx * b.ny - a.ny * b.nx;
  if (Math.abs(det) < 0.1) return undefined;
  return [(a.c * b.ny - b.c * a.ny) / det, (a.nx * b.c - b.nx * a.c) / det];
}
