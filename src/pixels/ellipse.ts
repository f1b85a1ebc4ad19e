import { LeastSquares } from './solve.ts';
import type { Px } from './types.ts';

/** Half axes a ≥ b and centre in pixels; theta is the angle of the long axis from the x axis, in radians. */
export type Ellipse = {
  readonly cx: number;
  readonly cy: number;
  readonly a: number;
  readonly b: number;
  readonly theta: number;
};

/**
 * Weighted least-squares ellipse through five or more points; undefined when the best conic is no ellipse.
 * The conic is scaled by A + C = 1, which does not depend on how the axes lie and suits near-circles; a second pass
 * weighs each point by its distance instead of its conic value.
 * Source: F. L. Bookstein 1979 (invariant conic fitting); P. D. Sampson 1982 (the second pass).
 */
export function fitEllipse(points: readonly Px[], weights?: ArrayLike<number>, passes = 2): Ellipse | undefined {
  if (points.length < 5) return undefined;
  let mx = 0;
  let my = 0;
  for (const p of points) {
    mx += p[0] / points.length;
    my += p[1] / points.length;
  }
  let size = 0;
  for (const p of points) size += Math.hypot(p[0] - mx, p[1] - my) / points.length;
  if (!(size > 0)) return undefined;
  let conic: readonly number[] | undefined;
  for (let pass = 0; pass < passes; pass++) {
    const system = new LeastSquares(5);
    for (let i = 0; i < points.length; i++) {
      const p = points[i] as Px;
      const x = (p[0] - mx) / size;
      const y = (p[1] - my) / size;
      let w = weights ? (weights[i] as number) : 1;
      if (conic) {
        const [A, B, D, E] = conic as [number, number, number, number];
        const gx = 2 * A * x + B * y + D;
        const gy = B * x + 2 * (1 - A) * y + E;
        w /= Math.max(gx * gx + gy * gy, 1e-9);
      }
      system.add([x * x - y * y, x * y, x, y, 1], -y * y, w);
    }
    conic = system.solve();
    if (!conic) return undefined;
  }
  const [A, B, D, E, F] = conic as [number, number, number, number, number];
  const e = ellipseOfConic(A, B, 1 - A, D, E, F);
  return e && { cx: e.cx * size + mx, cy: e.cy * size + my, a: e.a * size, b: e.b * size, theta: e.theta };
}

/** A·x² + B·xy + C·y² + D·x + E·y + F = 0 as centre, half axes and angle. */
function ellipseOfConic(A: number, B: number, C: number, D: number, E: number, F: number): Ellipse | undefined {
  const det = 4 * A * C - B * B;
  if (!(det > 1e-9)) return undefined;
  const cx = (B * E - 2 * C * D) / det;
  const cy = (B * D - 2 * A * E) / det;
  const inside = -(F + (D * cx + E * cy) / 2);
  const mean = (A + C) / 2;
  const root = Math.hypot((A - C) / 2, B / 2);
  const a2 = inside / (mean - root);
  const b2 = inside / (mean + root);
  if (!(a2 > 0 && b2 > 0)) return undefined;
  // The long axis belongs to the smaller eigenvalue, at right angles to the larger one's direction.
  const theta = 0.5 * Math.atan2(B, A - C) + Math.PI / 2;
  return { cx, cy, a: Math.sqrt(a2), b: Math.sqrt(b2), theta };
}

/** Distance from a place inside an ellipse to its rim along a unit direction; NaN when the ray misses. */
export function rimAlong(e: Ellipse, x: number, y: number, ux: number, uy: number): number {
  const c = Math.cos(e.theta);
  const s = Math.sin(e.theta);
  const px = ((x - e.cx) * c + (y - e.cy) * s) / e.a;
  const py = (-(x - e.cx) * s + (y - e.cy) * c) / e.b;
  const dx = (ux * c + uy * s) / e.a;
  const dy = (-ux * s + uy * c) / e.b;
  const A = dx * dx + dy * dy;
  const B = px * dx + py * dy;
  const C = px * px + py * py - 1;
  return (-B + Math.sqrt(B * B - A * C)) / A;
}
