import type { Blob } from './blobs.ts';
import { fitEllipse } from './ellipse.ts';
import { quantile, sample } from './sample.ts';
import type { Scale } from './scale.ts';
import type { Plane, Px } from './types.ts';

export type HoleShape = {
  readonly mark: { x: number; y: number; majorMm: number; minorMm: number; sigmaMm: number };
  /** Share of light missing in the middle: 1 = black. */
  readonly depth: number;
  /** Change of light at the rim per pixel, as a share of the depth: a blurred soft spot has little. */
  readonly steepness: number;
  /** Scatter of the outline about its best ellipse, as a share of the mean radius. */
  readonly roughness: number;
  /** Thresholds at which the patch was a compact ellipse. */
  readonly roundLevels: number;
};

const RAYS = 32;

/** A patch that fills its own ellipse, not longer than 2.4 times its width. */
export const isRound = (b: Blob): boolean => b.fill > 0.86 && b.a / b.b < 2.4;

/** Outline at half depth over 32 rays, as an ellipse in millimetres; undefined when the rim is open. */
export function shapeOf(plane: Plane, family: readonly Blob[], origin: Px, scale: Scale): HoleShape | undefined {
  const round = family.filter(isRound);
  const core = round[Math.floor((round.length - 1) / 2)];
  if (!core) return undefined;
  const { x, y } = core;
  const dark: number[] = [];
  for (let v = -1; v <= 1; v++)
    for (let u = -1; u <= 1; u++) dark.push(sample(plane, x + u * 0.3 * core.b, y + v * 0.3 * core.b));
  const floor = quantile(dark, 0.4);
  const largest = Math.max(...round.map((b) => b.a));
  const outline: Px[] = [];
  const steep: number[] = [];
  for (let k = 0; k < RAYS; k++) {
    const angle = (2 * Math.PI * k) / RAYS;
    const ux = Math.cos(angle);
    const uy = Math.sin(angle);
    const found = rim(plane, x, y, ux, uy, floor, 2 * largest + 4);
    if (!found) continue;
    outline.push([x + ux * found.r, y + uy * found.r]);
    steep.push(found.slope);
  }
  if (outline.length < 0.75 * RAYS) return undefined;
  const fit = fitEllipse(outline);
  if (!fit || fit.a / fit.b > 2.6) return undefined;
  const mean = Math.sqrt(fit.a * fit.b);
  let off = 0;
  const c = Math.cos(fit.theta);
  const s = Math.sin(fit.theta);
  for (const p of outline) {
    const u = ((p[0] - fit.cx) * c + (p[1] - fit.cy) * s) / fit.a;
    const v = (-(p[0] - fit.cx) * s + (p[1] - fit.cy) * c) / fit.b;
    off += (Math.hypot(u, v) - 1) ** 2 / outline.length;
  }
  const inMm = fitEllipse(outline.map((p) => scale.toMm([p[0] + origin[0], p[1] + origin[1]])));
  if (!inMm) return undefined;
  const cx = fit.cx + origin[0];
  const cy = fit.cy + origin[1];
  const rimSigma = scale.sigmaMm([cx - mean, cy], [cx + mean, cy]);
  return {
    mark: { x: cx, y: cy, majorMm: 2 * inMm.a, minorMm: 2 * inMm.b, sigmaMm: rimSigma },
    depth: 1 - floor,
    steepness: quantile(steep, 0.5),
    roughness: Math.sqrt(off),
    roundLevels: round.length,
  };
}

/** Where the light, going outwards, first passes half way between the floor and the wood; and how fast it does. */
function rim(
  plane: Plane,
  x: number,
  y: number,
  ux: number,
  uy: number,
  floor: number,
  reach: number,
): { r: number; slope: number } | undefined {
  const step = 0.25;
  const half = (1 + floor) / 2;
  let last = sample(plane, x, y);
  for (let r = step; r <= reach; r += step) {
    const here = sample(plane, x + ux * r, y + uy * r);
    if (here >= half) {
      const at = r - step + (step * (half - last)) / Math.max(1e-6, here - last);
      const inner = sample(plane, x + ux * (at - 1), y + uy * (at - 1));
      const outer = sample(plane, x + ux * (at + 1), y + uy * (at + 1));
      return { r: at, slope: (outer - inner) / 2 / (1 - floor) };
    }
    last = here;
  }
  return undefined;
}
