import { LINEAR } from './linear-light.ts';
import type { Img } from './types.ts';

/** One sharp change of colour along a line across an expected edge. */
export type EdgePeak = {
  /** Distance from the middle of the profile, in pixels, positive along the given direction. */
  readonly at: number;
  /** Size of the change per pixel, over the three channels (perceptual units, 0 to about 1). */
  readonly strength: number;
};

/** Samples per pixel along a profile. */
const PER_PX = 2;
/** Sigma of the derivative-of-Gaussian that finds edges, in pixels. */
const SIGMA = 1;
const KERNEL = derivativeKernel();

function derivativeKernel(): Float32Array {
  const radius = Math.ceil(3 * SIGMA * PER_PX);
  const k = new Float32Array(radius + 1);
  let gain = 0;
  for (let i = 1; i <= radius; i++) {
    const s = i / PER_PX;
    k[i] = s * Math.exp((-s * s) / (2 * SIGMA * SIGMA));
    gain += 2 * s * (k[i] as number);
  }
  // Scaled so that a ramp of one unit per pixel answers 1.
  return k.map((v) => v / gain);
}

/**
 * Square root of linear light: evens out bright and dark sides of an edge without the bytes' dark-end steps (cube root
 * and plain light gave larger corner errors).
 */
const TONE = LINEAR.map(Math.sqrt);

/**
 * The strongest colour changes across an expected edge, strongest first.
 * @param x,y middle of the profile; ux,uy its unit direction; reach half its length, all in pixels
 * @param wide averaged over 2·wide + 1 parallel lines one pixel apart, for less noise
 * @returns at most `most` peaks, none when the profile leaves the photo
 */
export function edgePeaks(
  img: Img,
  x: number,
  y: number,
  ux: number,
  uy: number,
  reach: number,
  wide = 1,
  most = 5,
): EdgePeak[] {
  const pad = KERNEL.length;
  const half = Math.ceil(reach * PER_PX);
  const n = 2 * (half + pad) + 1;
  const rgb = [new Float32Array(n), new Float32Array(n), new Float32Array(n)] as const;
  const { data, width, height } = img;
  for (let k = 0; k < n; k++) {
    const s = (k - half - pad) / PER_PX;
    for (let side = -wide; side <= wide; side++) {
      const u = x + s * ux - side * uy - 0.5;
      const v = y + s * uy + side * ux - 0.5;
      if (u < 0 || v < 0 || u >= width - 1 || v >= height - 1) return [];
      const i = Math.floor(u);
      const j = Math.floor(v);
      const a = u - i;
      const b = v - j;
      const at = (j * width + i) * 4;
      const below = at + width * 4;
      for (let c = 0; c < 3; c++) {
        const channel = rgb[c] as Float32Array;
        channel[k] =
          (channel[k] as number) +
          ((1 - b) *
            ((1 - a) * (TONE[data[at + c] as number] as number) + a * (TONE[data[at + 4 + c] as number] as number)) +
            b *
              ((1 - a) * (TONE[data[below + c] as number] as number) +
                a * (TONE[data[below + 4 + c] as number] as number))) /
            (2 * wide + 1);
      }
    }
  }
  const change = new Float32Array(2 * half + 1);
  for (let k = 0; k < change.length; k++) {
    let sum = 0;
    for (const channel of rgb) {
      let d = 0;
      for (let t = 1; t < KERNEL.length; t++)
        d += (KERNEL[t] as number) * ((channel[k + pad + t] as number) - (channel[k + pad - t] as number));
      sum += d * d;
    }
    change[k] = Math.sqrt(sum);
  }
  const peaks: EdgePeak[] = [];
  for (let k = 1; k + 1 < change.length; k++) {
    const m = change[k] as number;
    const l = change[k - 1] as number;
    const r = change[k + 1] as number;
    if (m < l || m <= r || m < 0.004) continue;
    const curve = l - 2 * m + r;
    const shift = curve < 0 ? (l - r) / (2 * curve) : 0;
    peaks.push({ at: (k - half + shift) / PER_PX, strength: m });
  }
  return peaks.sort((p, q) => q.strength - p.strength).slice(0, most);
}
