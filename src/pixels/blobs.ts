import type { Plane } from './types.ts';

/** A connected dark patch at one threshold. Lengths in pixels, positions in the plane's pixels (centres at .5). */
export type Blob = {
  readonly level: number;
  readonly x: number;
  readonly y: number;
  readonly area: number;
  /** Half axes of the ellipse with the same moments. */
  readonly a: number;
  readonly b: number;
  /** Area as a share of that ellipse's: 1 for an ellipse, less for ragged or hollow shapes. */
  readonly fill: number;
};

/** Eight-connected patches darker than `level`, of an area between the given limits and not touching the border. */
export function blobsBelow(plane: Plane, level: number, least: number, most: number): Blob[] {
  const { data, width, height } = plane;
  const seen = new Uint8Array(width * height);
  const stack: number[] = [];
  const out: Blob[] = [];
  for (let start = 0; start < data.length; start++) {
    if (seen[start] || (data[start] as number) >= level) continue;
    let n = 0;
    let sx = 0;
    let sy = 0;
    let xx = 0;
    let xy = 0;
    let yy = 0;
    let border = false;
    const x0 = start % width;
    const y0 = (start - x0) / width;
    stack.push(start);
    seen[start] = 1;
    while (stack.length > 0) {
      const i = stack.pop() as number;
      const x = i % width;
      const y = (i - x) / width;
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) {
        border = true;
        continue;
      }
      const dx = x - x0;
      const dy = y - y0;
      n++;
      sx += dx;
      sy += dy;
      xx += dx * dx;
      xy += dx * dy;
      yy += dy * dy;
      for (let v = -1; v <= 1; v++)
        for (let u = -1; u <= 1; u++) {
          const j = i + v * width + u;
          if (seen[j] || (data[j] as number) >= level) continue;
          seen[j] = 1;
          stack.push(j);
        }
    }
    if (border || n < least || n > most) continue;
    const mx = sx / n;
    const my = sy / n;
    // A pixel is a square of side 1: its own moment is 1/12.
    const cxx = xx / n - mx * mx + 1 / 12;
    const cyy = yy / n - my * my + 1 / 12;
    const cxy = xy / n - mx * my;
    const half = (cxx + cyy) / 2;
    const root = Math.hypot((cxx - cyy) / 2, cxy);
    const a = 2 * Math.sqrt(half + root);
    const b = 2 * Math.sqrt(Math.max(half - root, 1e-6));
    out.push({ level, x: x0 + mx + 0.5, y: y0 + my + 0.5, area: n, a, b, fill: n / (Math.PI * a * b) });
  }
  return out;
}
