import type { EdgeMap, HoughLine } from './lines.ts';
import { apart } from './scale.ts';
import type { Px } from './types.ts';

/** 1 on an edge pixel that runs along the line with this normal, less for up to two pixels beside it, else 0. */
function markAt(edges: EdgeMap, x: number, y: number, cos: number, sin: number): number {
  let best = 0;
  for (let s = -2; s <= 2; s++) {
    const u = Math.floor(x + s * cos);
    const v = Math.floor(y + s * sin);
    if (u < 0 || v < 0 || u >= edges.width || v >= edges.height) continue;
    const i = v * edges.width + u;
    if (edges.strength[i] === 0) continue;
    // sine of the angle between the two normals
    const off = Math.abs((edges.normalX[i] as number) * sin - (edges.normalY[i] as number) * cos);
    if (off < 0.2) best = Math.max(best, 1 - Math.abs(s) / 4);
  }
  return best;
}

/** Running count of marks along a line; one entry per pixel of length. */
export function marksAlong(edges: EdgeMap, l: HoughLine): Float32Array {
  const reach = Math.ceil(Math.hypot(edges.width, edges.height));
  const sums = new Float32Array(2 * reach + 1);
  for (let t = -reach; t < reach; t++)
    sums[t + reach + 1] =
      (sums[t + reach] as number) + markAt(edges, l.rho * l.cos - t * l.sin, l.rho * l.sin + t * l.cos, l.cos, l.sin);
  return sums;
}

/** Share of marks on the middle of a straight piece that is no known line. */
export function supportBetween(edges: EdgeMap, a: Px, b: Px): number {
  const length = apart(a, b);
  const n = Math.max(4, Math.round(0.8 * length));
  const cos = -(b[1] - a[1]) / length;
  const sin = (b[0] - a[0]) / length;
  let sum = 0;
  for (let k = 0; k < n; k++) {
    const t = 0.1 + (0.8 * (k + 0.5)) / n;
    sum += markAt(edges, a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), cos, sin);
  }
  return sum / n;
}

/** Share of a side's middle (without the round corners) that carries an edge. */
export function supportOf(l: HoughLine, sums: Float32Array, a: Px, b: Px): number {
  const reach = (sums.length - 1) / 2;
  const along = (p: Px): number => -p[0] * l.sin + p[1] * l.cos;
  const from = along(a) + 0.1 * (along(b) - along(a));
  const to = along(a) + 0.9 * (along(b) - along(a));
  const i = Math.round(Math.min(from, to)) + reach;
  const j = Math.round(Math.max(from, to)) + reach;
  if (i < 0 || j >= sums.length || j - i < 4) return 0;
  return ((sums[j] as number) - (sums[i] as number)) / (j - i);
}
