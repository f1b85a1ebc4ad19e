import { type EdgePeak, edgePeaks } from './edge-profile.ts';
import { type Ellipse, fitEllipse, rimAlong } from './ellipse.ts';
import { seededRandom } from './random.ts';
import { quantile } from './sample.ts';
import { type Failed, failed, type Img, type Px, type Running, stopped } from './types.ts';

export type CoinFit = {
  readonly ok: true;
  readonly ellipse: Ellipse;
  /** Share of rays from the middle that meet the rim where the ellipse says. */
  readonly inliers: number;
  /** Tilt of the coin against the view, arccos(b/a); 0 to about 11° can not be told apart. */
  readonly tiltDeg: number;
  /** Standard error of the mean radius in pixels. */
  readonly sigmaPx: number;
};

const RAYS = 96;
/** How far in and out of the tapped circle the rim is looked for, as a share of its radius. */
const REACH = 0.28;
const TRIES = 1500;
/**
 * Support of the rim, as a share of the best ring's: shadows reach less. Trade estimate, from the developers' photos.
 */
const SUPPORT = 0.7;
/** The rim may lie this far outside the best-supported ring. */
const OUTWARD = 1.22;

type Ray = { readonly ux: number; readonly uy: number; readonly peaks: readonly EdgePeak[] };

/**
 * The rim of a round coin from three rough taps on it.
 * @returns the ellipse, or `too-few-points` (taps in a line), `no-edge` (rim not seen), `cancelled`
 * Source: random sampling of five-point conics, Fischler and Bolles 1981; then the outermost well-supported ring.
 */
export function refineCoin(img: Img, taps: readonly Px[], run?: Running): CoinFit | Failed {
  const circle = taps.length === 3 ? circleThrough(taps as readonly [Px, Px, Px]) : undefined;
  if (!circle || !(circle.r > 8)) return failed('too-few-points');
  if (stopped(run, 'coin edges', 0)) return failed('cancelled');
  const rays = castRays(img, circle);
  if (stopped(run, 'coin rim', 0.5)) return failed('cancelled');
  const near = Math.max(1.5, 0.012 * circle.r);
  const typical = quantile(
    rays.flatMap((r) => (r.peaks[0] ? [r.peaks[0].strength] : [])),
    0.5,
  );
  const worth = (p: EdgePeak): number => Math.min(1, p.strength / (0.5 * typical));
  const ring = bestRing(rays, circle, near, worth);
  if (!ring) return failed('no-edge');
  const outer = outermostRing(ring, rays, circle, near, worth);
  let ellipse = outer;
  let share = 0;
  let rms = 0;
  for (const reach of [1.6 * near, near, near]) {
    const points: Px[] = [];
    const weights: number[] = [];
    let sum = 0;
    for (const ray of rays) {
      const rim = rimAlong(ellipse, circle.cx, circle.cy, ray.ux, ray.uy);
      let found: EdgePeak | undefined;
      for (const p of ray.peaks)
        if (Math.abs(circle.r + p.at - rim) < reach && worth(p) > 0.12 && (!found || p.strength > found.strength))
          found = p;
      if (!found) continue;
      const r = circle.r + found.at;
      const off = (r - rim) / reach;
      points.push([circle.cx + ray.ux * r, circle.cy + ray.uy * r]);
      weights.push(worth(found) * (1 - off * off) ** 2);
      sum += (r - rim) ** 2;
    }
    const next = fitEllipse(points, weights, 3);
    if (!next || next.b < 0.5 * next.a) break;
    ellipse = next;
    share = points.length / RAYS;
    rms = Math.sqrt(sum / points.length);
  }
  if (share < 0.4) return failed('no-edge');
  return {
    ok: true,
    ellipse,
    inliers: share,
    tiltDeg: (Math.acos(Math.min(1, ellipse.b / ellipse.a)) * 180) / Math.PI,
    sigmaPx: Math.max(0.15, (2 * rms) / Math.sqrt(share * RAYS)) / share,
  };
}

type Circle = { readonly cx: number; readonly cy: number; readonly r: number };

function circleThrough([p, q, s]: readonly [Px, Px, Px]): Circle | undefined {
  const ax = q[0] - p[0];
  const ay = q[1] - p[1];
  const bx = s[0] - p[0];
  const by = s[1] - p[1];
  const d = 2 * (ax * by - ay * bx);
  if (Math.abs(d) < 1) return undefined;
  const a2 = ax * ax + ay * ay;
  const b2 = bx * bx + by * by;
  const x = (by * a2 - ay * b2) / d;
  const y = (ax * b2 - bx * a2) / d;
  return { cx: p[0] + x, cy: p[1] + y, r: Math.hypot(x, y) };
}

function castRays(img: Img, { cx, cy, r }: Circle): Ray[] {
  return Array.from({ length: RAYS }, (_, i) => {
    const angle = (2 * Math.PI * i) / RAYS;
    const ux = Math.cos(angle);
    const uy = Math.sin(angle);
    return { ux, uy, peaks: edgePeaks(img, cx + ux * r, cy + uy * r, ux, uy, REACH * r, 1, 6) };
  });
}

/** How well the rays' edges lie on an ellipse, 0 to 1. */
function support(e: Ellipse, rays: readonly Ray[], c: Circle, near: number, worth: (p: EdgePeak) => number): number {
  let sum = 0;
  for (const ray of rays) {
    const rim = rimAlong(e, c.cx, c.cy, ray.ux, ray.uy) - c.r;
    let most = 0;
    for (const p of ray.peaks) {
      const d = (p.at - rim) / near;
      if (d > -1 && d < 1) most = Math.max(most, worth(p) * (1 - d * d));
    }
    sum += most;
  }
  return sum / RAYS;
}

function bestRing(rays: readonly Ray[], c: Circle, near: number, worth: (p: EdgePeak) => number): Ellipse | undefined {
  const seen = rays.filter((r) => r.peaks.length > 0);
  if (seen.length < RAYS / 2) return undefined;
  const random = seededRandom(2325);
  let best: Ellipse | undefined;
  let bestScore = 0;
  for (let i = 0; i < TRIES; i++) {
    // One ray from each fifth of the circle, mostly its strongest edge: five close points make wild ellipses.
    const five: Px[] = [];
    for (let k = 0; k < 5; k++) {
      const ray = seen[Math.floor(((k + random()) / 5) * seen.length)] as Ray;
      const u = random();
      const p = ray.peaks[Math.floor(u * u * ray.peaks.length)] as EdgePeak;
      five.push([c.cx + ray.ux * (c.r + p.at), c.cy + ray.uy * (c.r + p.at)]);
    }
    const e = fitEllipse(five, undefined, 1);
    if (
      !e ||
      e.b < 0.6 * e.a ||
      e.a > 1.35 * c.r ||
      e.b < 0.65 * c.r ||
      Math.hypot(e.cx - c.cx, e.cy - c.cy) > 0.35 * c.r
    )
      continue;
    // Larger rings win ties: the inner edge of a coin's rim is as sharp as the outer.
    const score = support(e, rays, c, near, worth) * Math.sqrt(e.a * e.b);
    if (score > bestScore) {
      bestScore = score;
      best = e;
    }
  }
  return best;
}

/**
 * Grows a ring outwards and keeps the outermost size at which its support peaks and is nearly as good as the best:
 * farther out only the coin's shadow is left, whose edge is soft and seen on one side.
 */
function outermostRing(
  ring: Ellipse,
  rays: readonly Ray[],
  c: Circle,
  near: number,
  worth: (p: EdgePeak) => number,
): Ellipse {
  const sizes: { e: Ellipse; score: number }[] = [];
  for (let grow = 0.96; grow <= OUTWARD; grow += 0.005) {
    const e = { ...ring, a: ring.a * grow, b: ring.b * grow };
    sizes.push({ e, score: support(e, rays, c, near, worth) });
  }
  const best = Math.max(...sizes.map((s) => s.score));
  for (let i = sizes.length - 2; i > 0; i--) {
    const { e, score } = sizes[i] as { e: Ellipse; score: number };
    const inner = (sizes[i - 1] as { score: number }).score;
    const outer = (sizes[i + 1] as { score: number }).score;
    if (score >= SUPPORT * best && score >= inner && score >= outer) return e;
  }
  return ring;
}
