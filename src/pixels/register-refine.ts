import type { Homography } from './homography.ts';
import { quantile, sample } from './sample.ts';
import { solve } from './solve.ts';
import type { Plane } from './types.ts';

/** Places compared; more cost time and add little. */
const MOST_POINTS = 12_000;
const TURNS = 10;

/**
 * Shifts a map between two local-contrast pictures until they match best, by small steps with doubtful places weighed
 * down (repaired cracks, moved cards).
 * @returns the better map, or undefined when the likeness did not rise
 * Source: Gauss–Newton image alignment, B. Lucas and T. Kanade 1981; Geman–McClure weights.
 */
export function refineAlignment(a: Plane, b: Plane, start: Homography): Homography | undefined {
  const points = busyPoints(a);
  // Coordinates of about ±1 keep the equations even.
  const unit = Math.max(a.width, a.height) / 2;
  const before = likeness(a, b, points, start);
  let h = start;
  let best = start;
  let bestLike = before;
  for (let turn = 0; turn < TURNS; turn++) {
    const step = nextStep(a, b, points, h, unit);
    if (!step) break;
    h = step.h;
    const like = likeness(a, b, points, h);
    if (like > bestLike) {
      bestLike = like;
      best = h;
    } else if (turn > 3 && like < bestLike - 0.02) break;
    if (step.moved < 0.01) break;
  }
  return bestLike > before ? best : undefined;
}

function nextStep(
  a: Plane,
  b: Plane,
  points: Int32Array,
  h: Homography,
  unit: number,
): { h: Homography; moved: number } | undefined {
  // Eight slopes and the difference for each place, side by side.
  const table = new Float32Array(points.length * 9);
  let n = 0;
  for (const i of points) {
    const x = (i % a.width) + 0.5;
    const y = Math.floor(i / a.width) + 0.5;
    const w = h[6] * x + h[7] * y + h[8];
    const u = (h[0] * x + h[1] * y + h[2]) / w;
    const v = (h[3] * x + h[4] * y + h[5]) / w;
    if (!(w > 0 && u > 2 && v > 2 && u < b.width - 2 && v < b.height - 2)) continue;
    const sx = (sample(b, u + 1, v) - sample(b, u - 1, v)) / (2 * w);
    const sy = (sample(b, u, v + 1) - sample(b, u, v - 1)) / (2 * w);
    const both = -(sx * u + sy * v);
    const xn = x / unit;
    const yn = y / unit;
    const at = n * 9;
    table[at] = sx * xn;
    table[at + 1] = sx * yn;
    table[at + 2] = sx;
    table[at + 3] = sy * xn;
    table[at + 4] = sy * yn;
    table[at + 5] = sy;
    table[at + 6] = both * xn;
    table[at + 7] = both * yn;
    table[at + 8] = (a.data[i] as number) - sample(b, u, v);
    n++;
  }
  if (n < 200) return undefined;
  const d = weighted(table, n);
  if (!d) return undefined;
  const next: Homography = [
    h[0] + (d[0] as number) / unit,
    h[1] + (d[1] as number) / unit,
    h[2] + (d[2] as number),
    h[3] + (d[3] as number) / unit,
    h[4] + (d[4] as number) / unit,
    h[5] + (d[5] as number),
    h[6] + (d[6] as number) / unit,
    h[7] + (d[7] as number) / unit,
    1,
  ];
  if (!next.every(Number.isFinite)) return undefined;
  let moved = 0;
  for (const [x, y] of [
    [0.2, 0.2],
    [0.8, 0.2],
    [0.2, 0.8],
    [0.8, 0.8],
  ] as const) {
    const px = x * a.width;
    const py = y * a.height;
    const w1 = h[6] * px + h[7] * py + 1;
    const w2 = next[6] * px + next[7] * py + 1;
    moved = Math.max(
      moved,
      Math.abs((h[0] * px + h[1] * py + h[2]) / w1 - (next[0] * px + next[1] * py + next[2]) / w2),
      Math.abs((h[3] * px + h[4] * py + h[5]) / w1 - (next[3] * px + next[4] * py + next[5]) / w2),
    );
  }
  return { h: next, moved };
}

/** Least squares over a table of eight slopes and a difference, large differences weighed down. */
function weighted(table: Float32Array, n: number): number[] | undefined {
  const some = new Float32Array(Math.ceil(n / 5));
  for (let k = 0; k < some.length; k++) some[k] = Math.abs(table[k * 45 + 8] as number);
  const spread = 1.4826 * quantile(some, 0.5) + 1e-6;
  const sums = new Float64Array(72);
  for (let k = 0; k < n; k++) {
    const at = k * 9;
    const r = (table[at + 8] as number) / (2 * spread);
    const w = 1 / (1 + r * r) ** 2;
    for (let i = 0; i < 8; i++) {
      const wi = w * (table[at + i] as number);
      for (let j = i; j < 9; j++) sums[i * 9 + j] = (sums[i * 9 + j] as number) + wi * (table[at + j] as number);
    }
  }
  const rows = Array.from({ length: 8 }, (_, i) =>
    Array.from({ length: 8 }, (_, j) => (j < i ? (sums[j * 9 + i] as number) : (sums[i * 9 + j] as number))),
  );
  return solve(
    rows,
    rows.map((_, i) => sums[i * 9 + 8] as number),
  );
}

/** The pixel with the strongest slope of each small square: flat places tell nothing about position. */
function busyPoints(a: Plane): Int32Array {
  const cell = Math.max(2, Math.ceil(Math.sqrt((a.width * a.height) / MOST_POINTS)));
  const columns = Math.floor((a.width - 4) / cell);
  const rows = Math.floor((a.height - 4) / cell);
  const out = new Int32Array(columns * rows);
  let n = 0;
  for (let cy = 0; cy < rows; cy++)
    for (let cx = 0; cx < columns; cx++) {
      let most = 0.01;
      let at = -1;
      for (let y = 2 + cy * cell; y < 2 + (cy + 1) * cell; y++)
        for (let i = y * a.width + 2 + cx * cell, end = i + cell; i < end; i++) {
          const dx = (a.data[i + 1] as number) - (a.data[i - 1] as number);
          const dy = (a.data[i + a.width] as number) - (a.data[i - a.width] as number);
          const m = dx * dx + dy * dy;
          if (m > most) {
            most = m;
            at = i;
          }
        }
      if (at >= 0) out[n++] = at;
    }
  return out.subarray(0, n);
}

/** Correlation of two local-contrast pictures over the compared places; doubtful ones count less through a cap. */
function likeness(a: Plane, b: Plane, points: Int32Array, h: Homography): number {
  let aa = 0;
  let bb = 0;
  let ab = 0;
  let n = 0;
  for (const i of points) {
    const x = (i % a.width) + 0.5;
    const y = Math.floor(i / a.width) + 0.5;
    const w = h[6] * x + h[7] * y + h[8];
    const u = (h[0] * x + h[1] * y + h[2]) / w;
    const v = (h[3] * x + h[4] * y + h[5]) / w;
    if (!(w > 0 && u > 2 && v > 2 && u < b.width - 2 && v < b.height - 2)) continue;
    const p = Math.max(-2, Math.min(2, a.data[i] as number));
    const q = Math.max(-2, Math.min(2, sample(b, u, v)));
    aa += p * p;
    bb += q * q;
    ab += p * q;
    n++;
  }
  return n < 200 ? -1 : ab / Math.sqrt(aa * bb + 1e-12);
}

/** How alike two lined-up pictures are, and how much of the first the second shows. */
export function alignmentOf(a: Plane, b: Plane, h: Homography): { correlation: number; overlap: number } {
  const points = busyPoints(a);
  let inside = 0;
  let all = 0;
  for (let y = 4; y < a.height; y += 8)
    for (let x = 4; x < a.width; x += 8) {
      const w = h[6] * x + h[7] * y + h[8];
      const u = (h[0] * x + h[1] * y + h[2]) / w;
      const v = (h[3] * x + h[4] * y + h[5]) / w;
      all++;
      if (w > 0 && u >= 0 && v >= 0 && u < b.width && v < b.height) inside++;
    }
  return { correlation: likeness(a, b, points, h), overlap: inside / all };
}
