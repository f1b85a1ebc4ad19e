import { blur, sigmaBetween } from './gaussian.ts';
import { luminance } from './linear-light.ts';
import { quantile } from './sample.ts';
import { shrinkPlane } from './shrink.ts';
import type { Img, Plane } from './types.ts';

export type PhotoFault = 'soft' | 'shaken' | 'dark' | 'clipped';
export type Quality = { readonly verdict: 'ok' | 'retake'; readonly reasons: readonly PhotoFault[] };

/** Photos are judged at this size, so that the limits mean the same for every camera. */
const LONG_SIDE = 1200;
const TILE = 64;
/** Share of the tiles, the busiest, that are asked: bare background can not look sharp. */
const BUSIEST = 0.2;
/**
 * A sharp edge loses most of its slope when blurred again, a soft one little. Limits set between good and bad photos
 * of the trials.
 */
const SOFT_BELOW = 2.1;
const SHAKEN_BELOW = 1.8;
/** Share of a tile's slopes that smooth shading may make up. */
const SHADING = 0.03;
/** Mean of the bytes under which a photo is called dark, and the share of burnt-out pixels that spoils it. */
const DARK_BELOW = 45;
const CLIPPED_ABOVE = 0.05;

/**
 * Whether a photo is worth measuring on, and if not, why. Advice only: it never stops anyone from keeping a photo.
 * Shake along the grain of wood can not be seen: what is left are edges along the shake, and they stay sharp.
 */
export function quality(img: Img): Quality {
  const reasons: PhotoFault[] = [];
  const { all, worst } = sharpness(img);
  if (all < SOFT_BELOW) reasons.push('soft');
  else if (worst < SHAKEN_BELOW) reasons.push('shaken');
  const { mean, clipped } = exposure(img);
  if (mean < DARK_BELOW) reasons.push('dark');
  if (clipped > CLIPPED_ABOVE) reasons.push('clipped');
  return { verdict: reasons.length > 0 ? 'retake' : 'ok', reasons };
}

/** Sums of squared slopes in a tile: across, down, and their product. */
type Slopes = { readonly xx: number; readonly xy: number; readonly yy: number };

/**
 * How many times more slope the busiest tiles have after a small blur than after a larger one: over all directions, and
 * in the direction that has least (that of a shake).
 * Source of the idea: re-blurring, F. Crété and others 2007. The worst direction is the smaller generalised
 * eigenvalue of
 * the two slope tensors.
 */
export function sharpness(img: Img): { all: number; worst: number } {
  const small = shrinkPlane(luminance(img), LONG_SIDE).plane;
  const tone: Plane = { ...small, data: small.data.map((v) => 255 * Math.sqrt(v)) };
  const fine = blur(tone, 1);
  const coarse = blur(fine, sigmaBetween(1, 2.2));
  const tiles: { fine: Slopes; coarse: Slopes }[] = [];
  for (let top = 2; top + TILE < tone.height; top += TILE)
    for (let left = 2; left + TILE < tone.width; left += TILE)
      tiles.push({ fine: slopesIn(fine, left, top), coarse: slopesIn(coarse, left, top) });
  if (tiles.length === 0) return { all: Number.POSITIVE_INFINITY, worst: Number.POSITIVE_INFINITY };
  tiles.sort((p, q) => q.fine.xx + q.fine.yy - p.fine.xx - p.fine.yy);
  const asked = tiles.slice(0, Math.max(4, Math.round(BUSIEST * tiles.length)));
  return {
    all: quantile(
      asked.map((t) => (t.fine.xx + t.fine.yy) / (t.coarse.xx + t.coarse.yy + 1)),
      0.8,
    ),
    worst: quantile(
      asked.map((t) => leastRatio(t.fine, t.coarse)),
      0.8,
    ),
  };
}

function slopesIn({ data, width }: Plane, left: number, top: number): Slopes {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let y = top; y < top + TILE; y++)
    for (let i = y * width + left, end = i + TILE; i < end; i++) {
      const dx = (data[i + 1] as number) - (data[i - 1] as number);
      const dy = (data[i + width] as number) - (data[i - width] as number);
      xx += dx * dx;
      xy += dx * dy;
      yy += dy * dy;
    }
  return { xx, xy, yy };
}

/**
 * Smallest l with det(F − l·C) = 0. A little of all slopes is added to both: a direction with only shading in it does
 * not count.
 */
function leastRatio(f: Slopes, c: Slopes): number {
  const f0 = SHADING * (f.xx + f.yy);
  const c0 = SHADING * (c.xx + c.yy) + 1;
  const [fx, fy, cx, cy] = [f.xx + f0, f.yy + f0, c.xx + c0, c.yy + c0];
  const p = cx * cy - c.xy * c.xy;
  const q = fx * cy + fy * cx - 2 * f.xy * c.xy;
  const r = fx * fy - f.xy * f.xy;
  return (q - Math.sqrt(Math.max(0, q * q - 4 * p * r))) / (2 * p);
}

/** Mean byte, and the share of pixels with two or more channels burnt out. */
function exposure(img: Img): { mean: number; clipped: number } {
  let sum = 0;
  let burnt = 0;
  const { data } = img;
  for (let i = 0; i < data.length; i += 4) {
    const r = data[i] as number;
    const g = data[i + 1] as number;
    const b = data[i + 2] as number;
    sum += r + g + b;
    if ((r >= 254 ? 1 : 0) + (g >= 254 ? 1 : 0) + (b >= 254 ? 1 : 0) >= 2) burnt++;
  }
  const n = data.length / 4;
  return { mean: sum / (3 * n), clipped: burnt / n };
}
