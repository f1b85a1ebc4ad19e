import type { Plane } from './types.ts';

/** Half of a normalised Gaussian kernel: [centre, ±1, ±2, …], cut at three sigma. */
export function halfKernel(sigma: number): Float32Array {
  const radius = Math.max(1, Math.ceil(3 * sigma));
  const half = new Float32Array(radius + 1);
  let sum = 0;
  for (let i = 0; i <= radius; i++) {
    half[i] = Math.exp(-(i * i) / (2 * sigma * sigma));
    sum += i === 0 ? (half[i] as number) : 2 * (half[i] as number);
  }
  return half.map((v) => v / sum);
}

/** Gaussian blur, sigma in pixels; beyond the border the edge pixel is repeated. Separable, two passes. */
export function blur(src: Plane, sigma: number): Plane {
  const { width, height } = src;
  const half = halfKernel(sigma);
  const radius = half.length - 1;
  const rows = new Float32Array(width * height);
  const line = new Float32Array(width + 2 * radius);
  const middle = half[0] as number;
  for (let y = 0; y < height; y++) {
    const at = y * width;
    line.fill(src.data[at] as number, 0, radius);
    line.set(src.data.subarray(at, at + width), radius);
    line.fill(src.data[at + width - 1] as number, radius + width);
    for (let x = 0; x < width; x++) {
      const c = x + radius;
      let sum = middle * (line[c] as number);
      for (let k = 1; k <= radius; k++)
        sum += (half[k] as number) * ((line[c - k] as number) + (line[c + k] as number));
      rows[at + x] = sum;
    }
  }
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const at = y * width;
    for (let x = 0; x < width; x++) out[at + x] = middle * (rows[at + x] as number);
    for (let k = 1; k <= radius; k++) {
      const up = Math.max(0, y - k) * width;
      const down = Math.min(height - 1, y + k) * width;
      const w = half[k] as number;
      for (let x = 0; x < width; x++)
        out[at + x] = (out[at + x] as number) + w * ((rows[up + x] as number) + (rows[down + x] as number));
    }
  }
  return { data: out, width, height };
}

/** The sigma that turns an image already blurred by `have` into one blurred by `want` (variances add). */
export const sigmaBetween = (have: number, want: number): number => Math.sqrt(want * want - have * have);

/**
 * Blur by a large sigma, close to Gaussian, at a cost that does not grow with sigma: three running means each way.
 * Source: W. M. Wells 1986, repeated uniform filters.
 */
export function wideBlur(src: Plane, sigma: number): Plane {
  // Three means over 2r + 1 pixels have the variance r(r + 1).
  const radius = Math.max(1, Math.round((Math.sqrt(1 + 4 * sigma * sigma) - 1) / 2));
  const { width, height } = src;
  let data = src.data;
  for (let turn = 0; turn < 3; turn++) data = meanDown(meanAlong(data, width, height, radius), width, height, radius);
  return { data, width, height };
}

function meanAlong(src: Float32Array, width: number, height: number, radius: number): Float32Array {
  const out = new Float32Array(src.length);
  const share = 1 / (2 * radius + 1);
  for (let y = 0; y < height; y++) {
    const at = y * width;
    const last = width - 1;
    let sum = 0;
    for (let k = -radius; k <= radius; k++) sum += src[at + Math.min(last, Math.max(0, k))] as number;
    for (let x = 0; x < width; x++) {
      out[at + x] = sum * share;
      sum += (src[at + Math.min(last, x + radius + 1)] as number) - (src[at + Math.max(0, x - radius)] as number);
    }
  }
  return out;
}

function meanDown(src: Float32Array, width: number, height: number, radius: number): Float32Array {
  const out = new Float32Array(src.length);
  const share = 1 / (2 * radius + 1);
  const last = height - 1;
  const sums = new Float64Array(width);
  for (let k = -radius; k <= radius; k++) {
    const row = Math.min(last, Math.max(0, k)) * width;
    for (let x = 0; x < width; x++) sums[x] = (sums[x] as number) + (src[row + x] as number);
  }
  for (let y = 0; y < height; y++) {
    const at = y * width;
    const enter = Math.min(last, y + radius + 1) * width;
    const leave = Math.max(0, y - radius) * width;
    for (let x = 0; x < width; x++) {
      out[at + x] = (sums[x] as number) * share;
      sums[x] = (sums[x] as number) + (src[enter + x] as number) - (src[leave + x] as number);
    }
  }
  return out;
}
