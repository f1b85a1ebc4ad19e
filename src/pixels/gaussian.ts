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
