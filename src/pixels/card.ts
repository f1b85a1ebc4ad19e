import { type EdgePoint, fitEdgeLine, type Line, meet } from './edge-line.ts';
import { edgePeaks } from './edge-profile.ts';
import type { Quad } from './homography.ts';
import { seededRandom } from './random.ts';
import { type Failed, failed, type Img, type Px, type Running, stopped } from './types.ts';

/** Card of the size of a bank or library card. Source: ISO/IEC 7810 ID-1 (corner radius 2.88 to 3.48 mm). */
export const CARD_MM = { width: 85.6, height: 53.98, cornerRadius: 3.18, thickness: 0.76 } as const;

export type CardFit = {
  readonly ok: true;
  /** Where the straight sides would meet (the card's own corners are round), in the order of the taps. */
  readonly corners: Quad;
  /** Standard error of each corner, each way, in pixels. */
  readonly sigmaPx: number;
  /** Share of profiles that show the edge, on the worst side. */
  readonly inliers: number;
};

/** Below this share of profiles showing the edge a side is not believed. */
const FEWEST = 0.45;
/** Half widths of the three searches: each starts where the last one ended. */
const SHRINK = [1, 0.45] as const;
const LAST_REACH = 4;

/**
 * Sharpens four rough taps on a card's rounded corners to the corners its straight sides would make.
 * @param taps the four corners, going round; up to about 17 px off
 * @returns `no-edge` when a side is hidden or has no contrast
 * Method: three rounds of cross profiles on the middle of each side, a robust line through their colour edges.
 * Source: random sampling, Fischler and Bolles 1981.
 */
export function refineCard(img: Img, taps: readonly Px[], run?: Running): CardFit | Failed {
  if (taps.length !== 4) return failed('too-few-points');
  return sharpenCorners(img, outwards(taps as unknown as Quad), run);
}

/** The same from corners already near where the straight sides meet. */
export function sharpenCorners(img: Img, start: Quad, run?: Running): CardFit | Failed {
  let corners = start;
  const short = shortestSide(corners);
  if (!(short > 30)) return failed('too-few-points');
  const first = Math.max(14, 0.055 * short);
  const reaches = [first * SHRINK[0], Math.max(LAST_REACH, first * SHRINK[1]), LAST_REACH, LAST_REACH];
  const random = seededRandom(1207);
  let inliers = 0;
  let variance = 0;
  for (const [round, reach] of reaches.entries()) {
    if (stopped(run, 'card sides', round / reaches.length)) return failed('cancelled');
    const fits = ([0, 1, 2, 3] as const).map((side) => {
      const a = corners[side];
      const b = corners[((side + 1) % 4) as 0 | 1 | 2 | 3];
      return fitEdgeLine(sidePeaks(img, a, b, reach), random, round === 0);
    });
    const lines: Line[] = [];
    inliers = 1;
    variance = 0;
    for (const fit of fits) {
      if (!fit || fit.share < FEWEST) return failed('no-edge');
      lines.push(fit.line);
      inliers = Math.min(inliers, fit.share);
      variance += (fit.rms * fit.rms) / fit.count / 2;
    }
    const next = ([3, 0, 1, 2] as const).map((before, i) => meet(lines[before] as Line, lines[i] as Line));
    if (next.some((p) => p === undefined)) return failed('no-edge');
    corners = next as unknown as Quad;
  }
  return { ok: true, corners, sigmaPx: Math.max(0.15, 2 * Math.sqrt(variance)) / inliers, inliers };
}

/** Rough taps fall on the round of a corner, (1 − 1/√2)·radius inside in both directions: move them out again. */
function outwards(taps: Quad): Quad {
  const inset = (1 - Math.SQRT1_2) * CARD_MM.cornerRadius;
  const sides = taps.map((p, i) => distance(p, taps[((i + 1) % 4) as 0 | 1 | 2 | 3]));
  const firstIsLong = (sides[0] as number) + (sides[2] as number) > (sides[1] as number) + (sides[3] as number);
  return taps.map((p, i) => {
    const next = taps[((i + 1) % 4) as 0 | 1 | 2 | 3];
    const last = taps[((i + 3) % 4) as 0 | 1 | 2 | 3];
    const along = inset / ((i % 2 === 0) === firstIsLong ? CARD_MM.width : CARD_MM.height);
    const back = inset / ((i % 2 === 0) === firstIsLong ? CARD_MM.height : CARD_MM.width);
    return [
      p[0] - (next[0] - p[0]) * along - (last[0] - p[0]) * back,
      p[1] - (next[1] - p[1]) * along - (last[1] - p[1]) * back,
    ] as const;
  }) as unknown as Quad;
}

/** Colour edges along the middle 76 % of a side: beyond that the corners' rounding begins. */
function sidePeaks(img: Img, a: Px, b: Px, reach: number): EdgePoint[][] {
  const length = distance(a, b);
  const ux = (b[0] - a[0]) / length;
  const uy = (b[1] - a[1]) / length;
  const n = Math.round(Math.min(80, Math.max(24, length / 5)));
  return Array.from({ length: n }, (_, i) => {
    const t = length * (0.12 + (0.76 * i) / (n - 1));
    const x = a[0] + ux * t;
    const y = a[1] + uy * t;
    return edgePeaks(img, x, y, -uy, ux, reach).map((p) => ({
      x: x - uy * p.at,
      y: y + ux * p.at,
      strength: p.strength,
    }));
  });
}

const distance = (a: Px, b: Px): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const shortestSide = (q: Quad): number =>
  Math.min(distance(q[0], q[1]), distance(q[1], q[2]), distance(q[2], q[3]), distance(q[3], q[0]));
