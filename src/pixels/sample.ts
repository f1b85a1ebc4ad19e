import type { Plane } from './types.ts';

/** Value between pixels by bilinear interpolation; beyond the border the edge pixel is repeated. */
export function sample(plane: Plane, x: number, y: number): number {
  const { data, width, height } = plane;
  const u = Math.min(Math.max(x - 0.5, 0), width - 1.001);
  const v = Math.min(Math.max(y - 0.5, 0), height - 1.001);
  const i = Math.floor(u);
  const j = Math.floor(v);
  const a = u - i;
  const b = v - j;
  const k = j * width + i;
  return (
    (1 - b) * ((1 - a) * (data[k] as number) + a * (data[k + 1] as number)) +
    b * ((1 - a) * (data[k + width] as number) + a * (data[k + width + 1] as number))
  );
}

/** The given quantile (0 to 1) of unsorted numbers, interpolated; NaN when there are none. */
export function quantile(values: ArrayLike<number>, q: number): number {
  const sorted = Float64Array.from(values).sort();
  if (sorted.length === 0) return Number.NaN;
  const at = (sorted.length - 1) * q;
  const k = Math.floor(at);
  const low = sorted[k] as number;
  return low + ((sorted[Math.min(k + 1, sorted.length - 1)] as number) - low) * (at - k);
}
