import { blur } from './gaussian.ts';
import { quantile } from './sample.ts';
import type { Rgb } from './shrink.ts';

/** Edge pixels: how strong (0 = none, to 1) and the unit normal, the way the tone changes. */
export type EdgeMap = {
  readonly width: number;
  readonly height: number;
  readonly strength: Float32Array;
  readonly normalX: Float32Array;
  readonly normalY: Float32Array;
};

/** Thin edges of the strongest of three channels; strength is capped so that one bold edge does not outvote many. */
export function edgeMap(planes: Rgb): EdgeMap {
  const { width, height } = planes[0];
  const n = width * height;
  const gx = new Float32Array(n);
  const gy = new Float32Array(n);
  const size = new Float32Array(n);
  for (const plane of planes) {
    const { data } = blur(plane, 0.8);
    for (let y = 1; y < height - 1; y++)
      for (let x = 1; x < width - 1; x++) {
        const i = y * width + x;
        const dx = (data[i + 1] as number) - (data[i - 1] as number);
        const dy = (data[i + width] as number) - (data[i - width] as number);
        const m = dx * dx + dy * dy;
        if (m <= (size[i] as number)) continue;
        size[i] = m;
        gx[i] = dx;
        gy[i] = dy;
      }
  }
  for (let i = 0; i < n; i++) size[i] = Math.sqrt(size[i] as number);
  const strong = Math.max(0.02, quantile(every(size, 7), 0.95));
  const weak = Math.max(0.008, 0.12 * strong);
  const strength = new Float32Array(n);
  for (let y = 2; y < height - 2; y++)
    for (let x = 2; x < width - 2; x++) {
      const i = y * width + x;
      const m = size[i] as number;
      if (m < weak) continue;
      const flat = Math.abs(gx[i] as number) > Math.abs(gy[i] as number);
      const slope = flat ? (gy[i] as number) / (gx[i] as number) : (gx[i] as number) / (gy[i] as number);
      // Kept only where it is the strongest along its own gradient.
      const step = flat
        ? 1 + (slope > 0.414 ? width : slope < -0.414 ? -width : 0)
        : width + (slope > 0.414 ? 1 : slope < -0.414 ? -1 : 0);
      if (m < (size[i - step] as number) || m <= (size[i + step] as number)) continue;
      strength[i] = Math.min(1, m / strong);
      gx[i] = (gx[i] as number) / m;
      gy[i] = (gy[i] as number) / m;
    }
  return { width, height, strength, normalX: gx, normalY: gy };
}

function every(values: Float32Array, stride: number): Float32Array {
  return Float32Array.from({ length: Math.ceil(values.length / stride) }, (_, i) => values[i * stride] as number);
}

/** x·cos + y·sin = rho in pixel centres of the small picture. */
export type HoughLine = { readonly cos: number; readonly sin: number; readonly rho: number; readonly votes: number };

const ANGLES = 180;
/** Votes go to angles this near to the edge's own, in steps of one degree. */
const SPREAD = 3;

/** Wood grain fills one direction with long lines; no sector of this many degrees may keep more than PER_SECTOR. */
const SECTOR = 12;
const PER_SECTOR = 9;

/**
 * The straight lines most edge pixels lie on, strongest first.
 * Source: Hough transform with gradient directions, Duda and Hart 1972, O'Gorman and Clowes 1976.
 */
export function houghLines(edges: EdgeMap, most: number): HoughLine[] {
  const { width, height, strength, normalX, normalY } = edges;
  const offset = Math.ceil(Math.hypot(width, height));
  const rhos = 2 * offset + 1;
  const votes = new Float32Array(ANGLES * rhos);
  const cos = Float64Array.from({ length: ANGLES }, (_, a) => Math.cos((a * Math.PI) / ANGLES));
  const sin = Float64Array.from({ length: ANGLES }, (_, a) => Math.sin((a * Math.PI) / ANGLES));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      const s = strength[i] as number;
      if (s === 0) continue;
      const centre = Math.round((Math.atan2(normalY[i] as number, normalX[i] as number) * ANGLES) / Math.PI);
      for (let d = -SPREAD; d <= SPREAD; d++) {
        const a = (centre + d + 2 * ANGLES) % ANGLES;
        const rho = (x + 0.5) * (cos[a] as number) + (y + 0.5) * (sin[a] as number) + offset;
        const k = Math.floor(rho);
        const part = rho - k;
        const w = Math.sqrt(s) * (1 - Math.abs(d) / (SPREAD + 1));
        const at = a * rhos + k;
        votes[at] = (votes[at] as number) + w * (1 - part);
        votes[at + 1] = (votes[at + 1] as number) + w * part;
      }
    }
  const peaks: { a: number; k: number; v: number }[] = [];
  const least = 0.02 * Math.max(width, height);
  for (let a = 0; a < ANGLES; a++)
    for (let k = 1; k < rhos - 1; k++) {
      const v = votes[a * rhos + k] as number;
      if (v < least || v < (votes[a * rhos + k - 1] as number) || v <= (votes[a * rhos + k + 1] as number)) continue;
      peaks.push({ a, k, v });
    }
  peaks.sort((p, q) => q.v - p.v || p.a - q.a || p.k - q.k);
  const kept: HoughLine[] = [];
  const perSector = new Uint8Array(ANGLES / SECTOR);
  const taken: { a: number; rho: number }[] = [];
  for (const { a, k, v } of peaks) {
    if (kept.length >= most) break;
    const rho = k - offset;
    const near = taken.some((t) => {
      const da = Math.abs(t.a - a);
      return da <= 3 ? Math.abs(t.rho - rho) <= 4 : ANGLES - da <= 3 && Math.abs(t.rho + rho) <= 4;
    });
    const sector = Math.floor(a / SECTOR);
    if (near || (perSector[sector] as number) >= PER_SECTOR) continue;
    perSector[sector] = (perSector[sector] as number) + 1;
    taken.push({ a, rho });
    kept.push({ cos: cos[a] as number, sin: sin[a] as number, rho, votes: v });
  }
  return kept;
}
