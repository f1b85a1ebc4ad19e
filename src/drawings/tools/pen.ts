import type { Point, Stroke } from '../shape.ts';
import type { Camera, Space } from './camera.ts';
import { arc, type Level, levelAt, limits, nearFoot, type OvalBody, onLevel, seenArc, seenSides } from './oval-body.ts';
import { closedPath, curveThrough, linePath, smoothPath, thinned } from './path.ts';

/** The strokes of the pen, and the few habits that make a drawing look drawn: swelling lines and shading arcs. */

export const contour = (points: readonly Point[], fill?: 'paper' | 'shade'): Stroke => ({
  d: closedPath(thinned(points, 0.04)),
  weight: 'contour',
  ...(fill && { fill }),
});

export const line = (
  points: readonly Point[],
  weight: 'contour' | 'detail' | 'hatch' | 'hidden' = 'detail',
): Stroke => ({
  d: linePath(thinned(points, 0.04)),
  weight,
});

/** A line that comes back to where it began. */
export const closedLine = (points: readonly Point[], weight: 'detail' | 'hatch' = 'detail'): Stroke => ({
  d: closedPath(thinned(points, 0.04)),
  weight,
});

/**
 * A line that swells toward its middle and runs out at both ends, as a pressed nib leaves it.
 * @param press greatest thickness in view units
 */
export function swelling(points: readonly Point[], press = 2.4): Stroke {
  const lengths = [0];
  points.forEach((point, index) => {
    const next = points[index + 1];
    if (next) lengths.push((lengths[index] ?? 0) + Math.hypot(next[0] - point[0], next[1] - point[1]));
  });
  const whole = lengths[lengths.length - 1] || 1;
  const side = (sign: 1 | -1): Point[] =>
    points.map(([x, y], index) => {
      const [ax, ay] = points[Math.max(index - 1, 0)] as Point;
      const [bx, by] = points[Math.min(index + 1, points.length - 1)] as Point;
      const run = Math.hypot(bx - ax, by - ay) || 1;
      const half = (sign * press * Math.sin((Math.PI * (lengths[index] ?? 0)) / whole)) / 2;
      return [x - ((by - ay) / run) * half, y + ((bx - ax) / run) * half];
    });
  return { d: closedPath(thinned([...side(1), ...side(-1).reverse()], 0.05)), weight: 'ink' };
}

/**
 * A body seen from the wearer's right, filled so that it covers what stands behind it: heavy against the sky, light
 * where it meets the next body below. `grounded` bodies stand on the table and are heavy there too.
 */
export function bodyOutline(see: Camera, body: OvalBody, { grounded = false } = {}): Stroke[] {
  const sides = seenSides(see, body);
  const all = contour([...sides, ...nearFoot(see, body)], 'paper');
  return grounded ? [all] : [{ ...all, weight: 'detail' }, line(sides, 'contour')];
}

/** The front edge of a body against the sky: the side away from the light, where the pen presses. */
export const frontEdge = (see: Camera, body: OvalBody): Point[] =>
  body.map((level) => onLevel(see, level, limits(see, level)[0] + 0.5));

/** A smooth line through points of the block. */
export const through = (see: Camera, points: readonly Space[], closed = false): Point[] =>
  curveThrough(points.map(see), { closed, step: 8 });

/** A stroke of grain along the block (up and down the page in plan): long and calm, for a wavy one looks like a worm. */
export const grain = (x: number, y: number, length: number, seed: number): Stroke => {
  const lean = 1.6 * Math.sin(seed * 1.7);
  const whole = length * (1.15 + 0.25 * Math.cos(seed * 2.6));
  const start = y - whole / 2 + length * 0.16 * Math.sin(seed * 3.1);
  return {
    d: smoothPath([
      [x, start],
      [x + lean, start + whole * 0.45],
      [x + lean * 0.4, start + whole],
    ]),
    weight: 'hatch',
  };
};

/** The seen part of the ovals at these heights. */
export const rings = (
  see: Camera,
  body: OvalBody,
  heights: readonly number[],
  weight: Stroke['weight'] = 'detail',
): Stroke[] => heights.map((up) => line(seenArc(see, levelAt(body, up)), weight as 'detail'));

/**
 * Shading in arcs that follow the turning of the body, thick at the front edge and thinning out toward the light, which
 * falls over the back shoulder (the left of the page).
 * @param reach how far round, in degrees, the longest arc runs; `gap` is the distance between arcs in units
 */
export function roundShading(
  see: Camera,
  body: OvalBody,
  { from, to, gap = 3.6, reach = 30 }: { from: number; to: number; gap?: number; reach?: number },
): Stroke[] {
  if (to <= from) return [];
  const rows = Math.max(1, Math.floor((to - from) / gap));
  return Array.from({ length: rows + 1 }, (_, row) => {
    const level = levelAt(body, Math.min(from + row * gap, to));
    const [front] = limits(see, level);
    // Shorter toward the top, and never two alike: a ruled edge to the shade would look printed.
    const length = reach * (0.5 + 0.5 * Math.cos((row / rows) * 1.4)) * (0.86 + 0.14 * Math.sin(row * 2.4));
    return line(arc(see, level, front + 4, front + 4 + length), 'hatch');
  });
}

/** Shading on the lower right of a plan: arcs one inside the other, each a little shorter. Angles as on the block. */
export const planShading = (
  see: Camera,
  levels: readonly Level[],
  { middle = -48, reach = 34 }: { middle?: number; reach?: number } = {},
): Stroke[] =>
  levels.map((level, index) => {
    const half = reach * (1 - (0.75 * index) / levels.length) * (0.92 + 0.08 * Math.sin(index * 2.4));
    return line(arc(see, level, middle - half, middle + half), 'hatch');
  });
