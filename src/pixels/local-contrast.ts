import { wideBlur } from './gaussian.ts';
import type { Plane } from './types.ts';

/** Under this local spread (square root of linear light) there is nothing but noise to compare. */
const NOISE = 0.012;

/**
 * Each pixel as its difference from the mean round it, in spreads: two photos in other light look alike afterwards.
 * @param sigma of the Gaussian surround, in pixels
 */
export function localContrast(light: Plane, sigma: number): Plane {
  const { width, height } = light;
  const n = width * height;
  const out = new Float32Array(n);
  for (let i = 0; i < n; i++) out[i] = Math.sqrt(light.data[i] as number);
  const mean = wideBlur({ data: out, width, height }, sigma).data;
  const power = new Float32Array(n);
  for (let i = 0; i < n; i++) {
    const off = (out[i] as number) - (mean[i] as number);
    out[i] = off;
    power[i] = off * off;
  }
  const spread = wideBlur({ data: power, width, height }, sigma).data;
  for (let i = 0; i < n; i++) out[i] = (out[i] as number) / (Math.sqrt(Math.max(0, spread[i] as number)) + NOISE);
  return { data: out, width, height };
}
