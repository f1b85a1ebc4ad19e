import { blur } from './gaussian.ts';
import { seededRandom } from './random.ts';
import type { Plane } from './types.ts';

/** A corner that can be found again in another photo, and 256 comparisons that describe it. */
export type Feature = { readonly x: number; readonly y: number; readonly bits: Int32Array };

/** Half the width of a described patch. */
const PATCH = 15;
const WORDS = 8;
const PAIRS = comparisons();

/** 256 pairs of places round a corner, normally spread, the same in each run. */
function comparisons(): Float32Array {
  const random = seededRandom(256);
  const gauss = (): number => {
    const r = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    return Math.max(-PATCH + 2, Math.min(PATCH - 2, r * (PATCH / 2.5)));
  };
  return Float32Array.from({ length: WORDS * 32 * 4 }, gauss);
}

/**
 * Corners spread over the picture with their descriptions, turned so that a rotated photo gives the same bits.
 * @param most how many to keep; the picture is cut in squares and each gives its share
 * Source: J. Shi and C. Tomasi 1994 (corners); E. Rublee and others 2011 (oriented binary features).
 */
export function featuresOf(plane: Plane, most: number): Feature[] {
  const corners = spreadCorners(plane, most);
  const soft = blur(plane, 1.6);
  return corners.map(([x, y]) => describe(soft, x, y));
}

function spreadCorners(plane: Plane, most: number): [number, number][] {
  const { width, height, data } = plane;
  const n = width * height;
  const xx = new Float32Array(n);
  const xy = new Float32Array(n);
  const yy = new Float32Array(n);
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x;
      const dx = (data[i + 1] as number) - (data[i - 1] as number);
      const dy = (data[i + width] as number) - (data[i - width] as number);
      xx[i] = dx * dx;
      xy[i] = dx * dy;
      yy[i] = dy * dy;
    }
  const a = blur({ data: xx, width, height }, 1.5).data;
  const b = blur({ data: xy, width, height }, 1.5).data;
  const c = blur({ data: yy, width, height }, 1.5).data;
  const score = a.map(
    (v, i) => (v + (c[i] as number)) / 2 - Math.sqrt(((v - (c[i] as number)) / 2) ** 2 + (b[i] as number) ** 2),
  );
  const cell = Math.max(16, Math.sqrt((2 * n) / most));
  const columns = Math.ceil(width / cell);
  const cells: [number, number, number][][] = Array.from({ length: columns * Math.ceil(height / cell) }, () => []);
  const rim = PATCH + 3;
  for (let y = rim; y < height - rim; y++)
    for (let x = rim; x < width - rim; x++) {
      const i = y * width + x;
      const s = score[i] as number;
      if (s < 1e-4) continue;
      let peak = true;
      for (let v = -2; v <= 2 && peak; v++)
        for (let u = -2; u <= 2; u++) {
          const other = score[i + v * width + u] as number;
          if (other > s || (other === s && (v < 0 || (v === 0 && u < 0)))) {
            peak = false;
            break;
          }
        }
      if (peak)
        (cells[Math.floor(y / cell) * columns + Math.floor(x / cell)] as [number, number, number][]).push([s, x, y]);
    }
  const perCell = Math.max(2, Math.ceil((1.6 * most) / cells.length));
  return cells
    .flatMap((found) => found.sort((p, q) => q[0] - p[0]).slice(0, perCell))
    .sort((p, q) => q[0] - p[0])
    .slice(0, most)
    .map(([, x, y]) => [x, y]);
}

function describe(soft: Plane, x: number, y: number): Feature {
  const { data, width } = soft;
  const at = y * width + x;
  // Direction from the corner to the centre of brightness of its round patch.
  let mx = 0;
  let my = 0;
  for (let v = -PATCH; v <= PATCH; v++)
    for (let u = -PATCH; u <= PATCH; u++) {
      if (u * u + v * v > PATCH * PATCH) continue;
      const value = data[at + v * width + u] as number;
      mx += u * value;
      my += v * value;
    }
  const length = Math.hypot(mx, my) || 1;
  const c = mx / length;
  const s = my / length;
  const bits = new Int32Array(WORDS);
  for (let k = 0; k < WORDS * 32; k++) {
    const p = k * 4;
    const one = turned(PAIRS[p] as number, PAIRS[p + 1] as number, c, s, width);
    const two = turned(PAIRS[p + 2] as number, PAIRS[p + 3] as number, c, s, width);
    if ((data[at + one] as number) < (data[at + two] as number))
      bits[k >> 5] = (bits[k >> 5] as number) | (1 << (k & 31));
  }
  return { x: x + 0.5, y: y + 0.5, bits };
}

const turned = (u: number, v: number, c: number, s: number, width: number): number =>
  Math.round(s * u + c * v) * width + Math.round(c * u - s * v);

/** How many of the 256 comparisons differ. */
export function bitsApart(a: Int32Array, b: Int32Array): number {
  let sum = 0;
  for (let i = 0; i < WORDS; i++) {
    let v = (a[i] as number) ^ (b[i] as number);
    v -= (v >>> 1) & 0x55555555;
    v = (v & 0x33333333) + ((v >>> 2) & 0x33333333);
    sum += Math.imul((v + (v >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
  }
  return sum;
}

/** Pairs that choose each other and are clearly better than the next best. */
export function matches(a: readonly Feature[], b: readonly Feature[], ratio: number): [number, number][] {
  const backDistance = new Int32Array(b.length).fill(1000);
  const back = new Int32Array(b.length).fill(-1);
  const forth = new Int32Array(a.length).fill(-1);
  for (let i = 0; i < a.length; i++) {
    let best = 1000;
    let second = 1000;
    for (let j = 0; j < b.length; j++) {
      const d = bitsApart((a[i] as Feature).bits, (b[j] as Feature).bits);
      if (d < (backDistance[j] as number)) {
        backDistance[j] = d;
        back[j] = i;
      }
      if (d < best) {
        // A neighbour found at another scale is no rival.
        if ((forth[i] as number) < 0 || !near(b[j] as Feature, b[forth[i] as number] as Feature)) second = best;
        best = d;
        forth[i] = j;
      } else if (d < second && !near(b[j] as Feature, b[forth[i] as number] as Feature)) second = d;
    }
    if (best > ratio * second || best > 90) forth[i] = -1;
  }
  const out: [number, number][] = [];
  for (let i = 0; i < a.length; i++)
    if ((forth[i] as number) >= 0 && (back[forth[i] as number] as number) === i) out.push([i, forth[i] as number]);
  return out;
}

const near = (p: Feature, q: Feature): boolean => Math.abs(p.x - q.x) < 4 && Math.abs(p.y - q.y) < 4;
