import type { Px } from './types.ts';

/** Whether a place lies inside a polygon (even-odd rule). */
export function isInPolygon(p: Px, polygon: readonly Px[]): boolean {
  let inside = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const a = polygon[i] as Px;
    const b = polygon[j] as Px;
    if (a[1] > p[1] !== b[1] > p[1] && p[0] < ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1]) + a[0]) inside = !inside;
  }
  return inside;
}

/** Whole pixels round a polygon, kept inside the photo; empty when they do not meet. */
export function boxOf(
  polygon: readonly Px[],
  width: number,
  height: number,
  margin = 0,
): {
  left: number;
  top: number;
  right: number;
  bottom: number;
} {
  const xs = polygon.map((p) => p[0]);
  const ys = polygon.map((p) => p[1]);
  return {
    left: Math.max(0, Math.floor(Math.min(...xs) - margin)),
    top: Math.max(0, Math.floor(Math.min(...ys) - margin)),
    right: Math.min(width, Math.ceil(Math.max(...xs) + margin)),
    bottom: Math.min(height, Math.ceil(Math.max(...ys) + margin)),
  };
}
