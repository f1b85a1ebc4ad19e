import { CARD_MM, type CardFit, sharpenCorners } from './card.ts';
import { completed } from './card-complete.ts';
import { edgePeaks } from './edge-profile.ts';
import { marksAlong, supportBetween, supportOf } from './edge-support.ts';
import { applyHomography, homographyOfQuads, type Quad } from './homography.ts';
import { type EdgeMap, edgeMap, type HoughLine, houghLines } from './lines.ts';
import { type Camera, cameraOf, poseOf } from './plane-pose.ts';
import { apart } from './scale.ts';
import { cardSize } from './scale-card.ts';
import { shrink } from './shrink.ts';
import { type Failed, failed, type Img, type Px, type Running, stopped } from './types.ts';

const LONG_SIDE = 480;
const LINES = 48;
/** Candidates that are worth a look at full size. */
const LOOKED_AT = 10;
/** A found card must show its edge on this share of every side, and be this near to a card's shape. */
const INLIERS = 0.6;
const MISFIT = 0.06;
/** Corners that must be round. One may be hidden by a thumb, or lie on wood of its own colour. */
const ROUND_CORNERS = 3;
/**
 * How near to its place the edge of a round corner must be, as a share of the inset; 0.96 to 1.18 on cards, under 0.4
 * on other things.
 */
const ROUND_WITHIN = 0.35;
/** A card seen on this share of every side ends the search. */
const CERTAIN = 0.85;
/** Share of each of three sides that must show an edge in the small copy. */
const LEAST_SUPPORT = 0.35;
/** Candidates whose corners are all this near are one. */
const SAME_PX = 6;

/**
 * Looks for a card nobody pointed out. Says `no-edge` rather than guess: a wrong card is wrong millimetres.
 * Method: lines of a small copy, three of them completed to a card by the geometry of a phone's camera, and the
 * best few sharpened at full size.
 */
export function findCard(img: Img, run?: Running): CardFit | Failed {
  if (stopped(run, 'card lines', 0)) return failed('cancelled');
  const { planes, factor } = shrink(img, LONG_SIDE);
  const edges = edgeMap(planes);
  const lines = houghLines(edges, LINES);
  if (stopped(run, 'card shapes', 0.3)) return failed('cancelled');
  const camera = cameraOf(planes[0]);
  const candidates = fourSided(edges, lines, camera);
  let best: CardFit | undefined;
  let bestWorth = 0;
  for (const [i, c] of candidates.entries()) {
    if (stopped(run, 'card sides', 0.5 + (0.5 * i) / candidates.length)) return failed('cancelled');
    const corners = c.quad.map((p): Px => [p[0] * factor, p[1] * factor]) as unknown as Quad;
    const fit = sharpenCorners(img, corners);
    if (!fit.ok || fit.inliers < INLIERS) continue;
    const misfit = misfitOf(fit.corners, cameraOf(img));
    if (misfit > MISFIT) continue;
    if (roundCorners(img, fit.corners) < ROUND_CORNERS) continue;
    if (fit.inliers > CERTAIN) return fit;
    const worth = fit.inliers - 2 * misfit;
    if (worth > bestWorth) {
      bestWorth = worth;
      best = fit;
    }
  }
  return best ?? failed('no-edge');
}

/**
 * How many of the four corners are cut off as a card's are: the edge crosses the diagonal (√2 − 1)·radius inside the
 * point where the sides would meet. Tells a card from a tile, a label or a chance of four lines.
 */
function roundCorners(img: Img, corners: Quad): number {
  const size = cardSize(corners, cameraOf(img));
  const toPx = size && homographyOfQuads(size, corners);
  if (!toPx) return 0;
  const inset = (1 - Math.SQRT1_2) * CARD_MM.cornerRadius;
  let count = 0;
  for (const [x, y] of size) {
    const sx = x === 0 ? 1 : -1;
    const sy = y === 0 ? 1 : -1;
    const corner = applyHomography(toPx, [x, y]);
    const cut = applyHomography(toPx, [x + sx * inset, y + sy * inset]);
    const expected = apart(corner, cut);
    const ux = (cut[0] - corner[0]) / expected;
    const uy = (cut[1] - corner[1]) / expected;
    const peak = edgePeaks(
      img,
      corner[0] + ux * expected * 0.5,
      corner[1] + uy * expected * 0.5,
      ux,
      uy,
      1.6 * expected,
    )[0];
    if (peak && Math.abs(peak.at - 0.5 * expected) < ROUND_WITHIN * expected) count++;
  }
  return count;
}

function misfitOf(corners: Quad, camera: Camera): number {
  const size = cardSize(corners, camera);
  const h = size && homographyOfQuads(size, corners);
  return h ? poseOf(h, camera).misfit : Number.POSITIVE_INFINITY;
}

type Candidate = { readonly quad: Quad; readonly score: number };

/**
 * Every three lines that could be two opposite sides of a card and one between them; a camera of known focal length
 * leaves one place for the fourth side, which may be too faint to have been found as a line.
 */
function fourSided(edges: EdgeMap, lines: readonly HoughLine[], camera: Camera): Candidate[] {
  const marks = lines.map((l) => marksAlong(edges, l));
  const smallest = 0.07 * Math.max(edges.width, edges.height);
  const found: Candidate[] = [];
  for (let i = 0; i < lines.length; i++)
    for (let j = i + 1; j < lines.length; j++) {
      const a = lines[i] as HoughLine;
      const c = lines[j] as HoughLine;
      if (sineBetween(a, c) > 0.5) continue;
      for (let k = 0; k < lines.length; k++) {
        const b = lines[k] as HoughLine;
        if (sineBetween(a, b) < 0.6 || sineBetween(c, b) < 0.6) continue;
        for (const quad of completed(a, b, c, camera)) {
          if (!isInside(quad, edges) || shortest(quad) < smallest) continue;
          const base = supportOf(b, marks[k] as Float32Array, quad[0], quad[1]);
          if (base < LEAST_SUPPORT) continue;
          const one = supportOf(a, marks[i] as Float32Array, quad[3], quad[0]);
          if (one < LEAST_SUPPORT) continue;
          const two = supportOf(c, marks[j] as Float32Array, quad[1], quad[2]);
          if (two < LEAST_SUPPORT) continue;
          const last = supportBetween(edges, quad[2], quad[3]);
          const score = base + one + two + last + 2 * Math.min(base, one, two);
          found.push({ quad, score });
        }
      }
    }
  found.sort((p, q) => q.score - p.score);
  const kept: Candidate[] = [];
  for (const c of found) {
    if (kept.length >= LOOKED_AT) break;
    if (!kept.some((k) => k.quad.every((p) => c.quad.some((q) => apart(p, q) < SAME_PX)))) kept.push(c);
  }
  return kept;
}

const sineBetween = (a: HoughLine, b: HoughLine): number => Math.abs(a.cos * b.sin - a.sin * b.cos);

const isInside = (quad: Quad, { width, height }: EdgeMap): boolean =>
  quad.every(([x, y]) => x > -4 && y > -4 && x < width + 4 && y < height + 4);

const shortest = (q: Quad): number => Math.min(...q.map((p, i) => apart(p, q[(i + 1) % 4] as Px)));
