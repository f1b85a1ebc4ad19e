import { LeastSquares, solve } from './solve.ts';
import type { Px } from './types.ts';

/** A plane seen in perspective: nine numbers, row by row, the last one 1. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];
export type Quad = readonly [Px, Px, Px, Px];

export const IDENTITY: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Where a homography takes a point. */
export function applyHomography(h: Homography, p: Px): Px {
  const w = h[6] * p[0] + h[7] * p[1] + h[8];
  return [(h[0] * p[0] + h[1] * p[1] + h[2]) / w, (h[3] * p[0] + h[4] * p[1] + h[5]) / w];
}

/**
 * The homography that takes four points onto four others; undefined when three of them lie on a line.
 * Source: direct linear transform, Hartley and Zisserman, Multiple View Geometry, 2nd ed., section 4.1.
 */
export function homographyOfQuads(from: Quad, to: Quad): Homography | undefined {
  const a: number[][] = [];
  const b: number[] = [];
  for (let i = 0; i < 4; i++) {
    const [x, y] = from[i] as Px;
    const [u, v] = to[i] as Px;
    a.push([x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]);
    b.push(u, v);
  }
  return closed(solve(a, b));
}

/**
 * Least-squares homography of four or more pairs, each with a weight. Points are first brought to mean 0, distance √2.
 */
export function fitHomography(
  from: readonly Px[],
  to: readonly Px[],
  weights?: ArrayLike<number>,
): Homography | undefined {
  if (from.length < 4) return undefined;
  const nf = normaliser(from);
  const nt = normaliser(to);
  const system = new LeastSquares(8);
  for (let i = 0; i < from.length; i++) {
    const [x, y] = applyHomography(nf, from[i] as Px);
    const [u, v] = applyHomography(nt, to[i] as Px);
    const w = weights ? (weights[i] as number) : 1;
    system.add([x, y, 1, 0, 0, 0, -u * x, -u * y], u, w);
    system.add([0, 0, 0, x, y, 1, -v * x, -v * y], v, w);
  }
  const h = closed(system.solve());
  const back = invertHomography(nt);
  return h && back && scaledTo1(compose(back, compose(h, nf)));
}

function normaliser(points: readonly Px[]): Homography {
  let mx = 0;
  let my = 0;
  for (const p of points) {
    mx += p[0] / points.length;
    my += p[1] / points.length;
  }
  let spread = 0;
  for (const p of points) spread += Math.hypot(p[0] - mx, p[1] - my) / points.length;
  const s = spread > 0 ? Math.SQRT2 / spread : 1;
  return [s, 0, -s * mx, 0, s, -s * my, 0, 0, 1];
}

const closed = (h: number[] | undefined): Homography | undefined =>
  h?.every(Number.isFinite) ? ([...h, 1] as unknown as Homography) : undefined;

export function scaledTo1(h: Homography): Homography | undefined {
  const w = h[8];
  return Math.abs(w) > 1e-14 ? (h.map((v) => v / w) as unknown as Homography) : undefined;
}

/** first b, then a */
export function compose(a: Homography, b: Homography): Homography {
  const out: number[] = [];
  for (let r = 0; r < 9; r += 3)
    for (let c = 0; c < 3; c++)
      out.push(
        (a[r] as number) * (b[c] as number) +
          (a[r + 1] as number) * (b[c + 3] as number) +
          (a[r + 2] as number) * (b[c + 6] as number),
      );
  return out as unknown as Homography;
}

/** The way back; undefined for a plane seen edge-on. */
export function invertHomography([a, b, c, d, e, f, g, h, i]: Homography): Homography | undefined {
  const A = e * i - f * h;
  const B = f * g - d * i;
  const C = d * h - e * g;
  const det = a * A + b * B + c * C;
  if (!(Math.abs(det) > 1e-18)) return undefined;
  return [
    A / det,
    (c * h - b * i) / det,
    (b * f - c * e) / det,
    B / det,
    (a * i - c * g) / det,
    (c * d - a * f) / det,
    C / det,
    (b * g - a * h) / det,
    (a * e - b * d) / det,
  ];
}
