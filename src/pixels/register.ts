import { type Feature, featuresOf, matches } from './features.ts';
import {
  applyHomography,
  compose,
  fitHomography,
  type Homography,
  homographyOfQuads,
  type Quad,
} from './homography.ts';
import { luminance } from './linear-light.ts';
import { localContrast } from './local-contrast.ts';
import { seededRandom } from './random.ts';
import { alignmentOf, refineAlignment } from './register-refine.ts';
import { shrinkPlane } from './shrink.ts';
import { type Failed, failed, type Img, type Plane, type Px, type Running, stopped } from './types.ts';

export type Registration = {
  readonly ok: true;
  /** Takes a place in the first photo to the same place in the second. */
  readonly H: Homography;
  /** Likeness of the lined-up photos, −1 to 1: the correlation of their local contrast where both have some. */
  readonly agreement: number;
  /** Part of the first photo that the second one shows, 0 to 1. */
  readonly overlap: number;
};

const LONG_SIDE = 720;
const SCALES = [1, Math.SQRT1_2, 0.5] as const;
const PER_SCALE = [900, 600, 400] as const;
const RATIO = 0.86;
const TRIES = 4000;
const NEAR_PX = 3;
const FEWEST = 10;
/** Long sides of the copies the map is refined on. Taps are rougher than matched corners, so they start smaller. */
const FROM_FEATURES = [300, 600, 1000] as const;
const FROM_TAPS = [200, 400, 900] as const;
/** Under this agreement the photos are not called lined up. */
const LIKE = 0.2;

/**
 * Lines up an after photo with a before photo of the same flat face.
 * @param taps four pairs of places, first photo then second; left out, they are looked for
 * @returns `too-few-points` when nothing matches, `too-weak` when the result does not look alike: offer four taps
 * Source: oriented binary features, random sampling (Fischler and Bolles 1981), then Gauss–Newton on local contrast
 * (Lucas and Kanade 1981).
 */
export function register(a: Img, b: Img, taps?: readonly (readonly [Px, Px])[], run?: Running): Registration | Failed {
  if (stopped(run, 'line up: corners', 0)) return failed('cancelled');
  const guess = taps ? fromTaps(taps) : fromFeatures(a, b, run);
  if (!guess) return failed(run?.signal?.aborted ? 'cancelled' : 'too-few-points');
  let h = guess;
  let correlation = 0;
  let overlap = 0;
  for (const [i, longSide] of (taps ? FROM_TAPS : FROM_FEATURES).entries()) {
    if (stopped(run, 'line up: refine', 0.5 + 0.15 * i)) return failed('cancelled');
    const one = shrinkPlane(luminance(a), longSide);
    const two = shrinkPlane(luminance(b), longSide);
    const surround = Math.max(6, longSide / 60);
    const from = localContrast(one.plane, surround);
    const to = localContrast(two.plane, surround);
    const start = rescaled(h, one.factor, two.factor);
    const better = refineAlignment(from, to, start);
    if (better) h = rescaled(better, 1 / one.factor, 1 / two.factor);
    ({ correlation, overlap } = alignmentOf(from, to, better ?? start));
  }
  if (!(correlation > LIKE)) return failed('too-weak');
  return { ok: true, H: h, agreement: correlation, overlap };
}

/** The same map between copies that are `fa` and `fb` times smaller. */
function rescaled(h: Homography, fa: number, fb: number): Homography {
  const m = compose([1 / fb, 0, 0, 0, 1 / fb, 0, 0, 0, 1], compose(h, [fa, 0, 0, 0, fa, 0, 0, 0, 1]));
  return m.map((v) => v / m[8]) as unknown as Homography;
}

function fromTaps(taps: readonly (readonly [Px, Px])[]): Homography | undefined {
  return fitHomography(
    taps.map((t) => t[0]),
    taps.map((t) => t[1]),
  );
}

function fromFeatures(a: Img, b: Img, run: Running | undefined): Homography | undefined {
  const one = allScales(a);
  if (stopped(run, 'line up: match', 0.2)) return undefined;
  const two = allScales(b);
  const pairs = matches(one, two, RATIO);
  if (pairs.length < FEWEST || stopped(run, 'line up: agree', 0.4)) return undefined;
  const from = pairs.map(([i]): Px => [(one[i] as Feature).x, (one[i] as Feature).y]);
  const to = pairs.map(([, j]): Px => [(two[j] as Feature).x, (two[j] as Feature).y]);
  const tolerance = (NEAR_PX * Math.max(b.width, b.height)) / LONG_SIDE;
  return agreed(from, to, tolerance, a);
}

/** Features of three sizes of a photo, in its own pixels. */
function allScales(img: Img): Feature[] {
  const base = shrinkPlane(luminance(img), LONG_SIDE);
  return SCALES.flatMap((scale, i) => {
    const small: { plane: Plane; factor: number } =
      scale === 1 ? { plane: base.plane, factor: 1 } : shrinkPlane(base.plane, LONG_SIDE * scale);
    const factor = base.factor * small.factor;
    return featuresOf(localContrast(small.plane, 12), PER_SCALE[i] as number).map((f) => ({
      x: f.x * factor,
      y: f.y * factor,
      bits: f.bits,
    }));
  });
}

/** The homography most pairs agree on. */
function agreed(from: readonly Px[], to: readonly Px[], tolerance: number, photo: Img): Homography | undefined {
  const random = seededRandom(4000);
  const n = from.length;
  let best: number[] = [];
  for (let i = 0; i < TRIES; i++) {
    const picked = [0, 0, 0, 0].map(() => Math.floor(random() * n));
    if (new Set(picked).size < 4) continue;
    const h = homographyOfQuads(
      picked.map((k) => from[k]) as unknown as Quad,
      picked.map((k) => to[k]) as unknown as Quad,
    );
    if (!h || !isPlausible(h, photo)) continue;
    const inside = insideOf(h, from, to, tolerance);
    if (inside.length > best.length) best = inside;
  }
  if (best.length < FEWEST) return undefined;
  let h: Homography | undefined;
  for (let turn = 0; turn < 4; turn++) {
    h = fitHomography(
      best.map((k) => from[k] as Px),
      best.map((k) => to[k] as Px),
    );
    if (!h) return undefined;
    best = insideOf(h, from, to, tolerance);
    if (best.length < FEWEST) return undefined;
  }
  return h;
}

function insideOf(h: Homography, from: readonly Px[], to: readonly Px[], tolerance: number): number[] {
  const inside: number[] = [];
  for (let k = 0; k < from.length; k++) {
    const p = applyHomography(h, from[k] as Px);
    const q = to[k] as Px;
    if (Math.abs(p[0] - q[0]) < tolerance && Math.abs(p[1] - q[1]) < tolerance) inside.push(k);
  }
  return inside;
}

/** Refuses maps that mirror, fold or change the size of the photo more than fourfold: no two looks at one face do. */
function isPlausible(h: Homography, { width, height }: Img): boolean {
  const corners: Px[] = [
    [0.1 * width, 0.1 * height],
    [0.9 * width, 0.1 * height],
    [0.9 * width, 0.9 * height],
    [0.1 * width, 0.9 * height],
  ];
  const seen = corners.map((p) => applyHomography(h, p));
  for (const p of corners) if (h[6] * p[0] + h[7] * p[1] + h[8] < 0.2) return false;
  let area = 0;
  for (let i = 0; i < 4; i++) {
    const p = seen[i] as Px;
    const q = seen[(i + 1) % 4] as Px;
    const r = seen[(i + 2) % 4] as Px;
    if ((q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]) <= 0) return false;
    area += (p[0] * q[1] - p[1] * q[0]) / 2;
  }
  const ratio = area / (0.64 * width * height);
  return ratio > 1 / 16 && ratio < 16;
}
