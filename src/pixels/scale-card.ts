import { CARD_MM } from './card.ts';
import { applyHomography, type Homography, homographyOfQuads, invertHomography, type Quad } from './homography.ts';
import { type Camera, cameraOf, poseOf, raised, tiltOf, USUAL_FOCAL_SPREAD } from './plane-pose.ts';
import { apart, type Scale, tapSigmaMm } from './scale.ts';
import { type Failed, failed, type Mm, type Px } from './types.ts';

export type CardScaleOptions = {
  /** Size of the photo the corners were found in; its centre is taken for the optical axis. */
  readonly photo: { readonly width: number; readonly height: number };
  /** How far the measured surface lies nearer to the camera than the card (negative: farther). */
  readonly zMm?: number;
  /** Standard error of zMm. Left out: 0.5 mm and 4 % of zMm. */
  readonly zSigmaMm?: number;
  /** Focal length in pixels of this photo, when its metadata told. */
  readonly focalPx?: number;
};

/**
 * What is left when everything counted is right: lens distortion, a card not quite flat. Measured on rendered photos.
 */
const UNEXPLAINED = 0.0045;

/**
 * Millimetres from a card's four corners. The long side is found from the shape, so the corners may start anywhere,
 * going round either way.
 * @returns `no-scale` for corners that make no card
 * Source: plane homography and pose (Zhang 2000), errors propagated by differences for each corner, the height and
 * the focal length.
 */
export function scaleFromCard(corners: Quad, sigmaPx: number, options: CardScaleOptions): Scale | Failed {
  const camera = cameraOf(options.photo, options.focalPx);
  const size = cardSize(corners, camera);
  const zMm = options.zMm ?? 0;
  const zSigmaMm = options.zSigmaMm ?? Math.hypot(0.5, 0.04 * zMm);
  const best = size && mapping(corners, size, camera, zMm);
  if (!best) return failed('no-scale');

  const toMm = (p: Px): Mm => applyHomography(best.pxToMm, p);
  // Maps that would have come out had one thing been off by one standard error.
  const others: Homography[] = [];
  for (let i = 0; i < 8; i++) {
    const moved = corners.map((p, k): Px => {
      if (k !== i >> 1) return p;
      return i % 2 === 0 ? [p[0] + sigmaPx, p[1]] : [p[0], p[1] + sigmaPx];
    });
    const m = mapping(moved as unknown as Quad, size, camera, zMm);
    if (m) others.push(m.pxToMm);
  }
  const higher = mapping(corners, size, camera, zMm + zSigmaMm);
  if (higher) others.push(higher.pxToMm);
  if (zMm !== 0) {
    const spread = options.focalPx === undefined ? USUAL_FOCAL_SPREAD : 0.01;
    const longer = mapping(corners, size, { ...camera, focalPx: camera.focalPx * (1 + spread) }, zMm);
    if (longer) others.push(longer.pxToMm);
  }
  const sigmaMm = (a: Px, b: Px): number => {
    const d = apart(toMm(a), toMm(b));
    let variance = tapSigmaMm(toMm, a, b) ** 2 + (UNEXPLAINED * d) ** 2;
    for (const h of others) variance += (apart(applyHomography(h, a), applyHomography(h, b)) - d) ** 2;
    return Math.sqrt(variance);
  };
  return { toMm, sigmaMm, source: 'card', zMm, tiltDeg: best.tiltDeg };
}

const rectangle = (w: number, h: number): Quad => [
  [0, 0],
  [w, 0],
  [w, h],
  [0, h],
];

/** The card with its first side long or short, whichever fits a camera of that focal length better. */
export function cardSize(corners: Quad, camera: Camera): Quad | undefined {
  const fits = [rectangle(CARD_MM.width, CARD_MM.height), rectangle(CARD_MM.height, CARD_MM.width)].flatMap((size) => {
    const h = homographyOfQuads(size, corners);
    return h ? [{ size, misfit: poseOf(h, camera).misfit }] : [];
  });
  return fits.sort((a, b) => a.misfit - b.misfit)[0]?.size;
}

function mapping(
  corners: Quad,
  size: Quad,
  camera: Camera,
  zMm: number,
): { pxToMm: Homography; tiltDeg: number } | undefined {
  const h = homographyOfQuads(size, corners);
  if (!h) return undefined;
  const pose = poseOf(h, camera);
  const moved = zMm === 0 ? h : raised(pose, camera, zMm);
  const pxToMm = moved && invertHomography(moved);
  return pxToMm && { pxToMm, tiltDeg: tiltOf(pose) };
}
