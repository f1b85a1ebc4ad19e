import { type PictureSize, type Spot, toPixel } from '../core/mark-geometry.ts';
import type { PhotoScale } from '../core/records.ts';
import {
  apart,
  type Failed,
  type Mm,
  type Px,
  type Quad,
  type Scale,
  scaleFromCard,
  scaleFromCoin,
  scaleFromTwoPoints,
  USUAL_FOCAL,
} from '../pixels/index.ts';

/** A photograph's scale and what is needed beside it to reckon in pixels. */
export interface ScaleFacts {
  readonly scale: PhotoScale;
  /** Focal length as 35 mm equivalent where the camera wrote one. */
  readonly focal35: number | null;
}

/** Diagonal of a full frame, mm: what "35 mm equivalent" refers to. Source: CIPA DCG-001 (from memory). */
const FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);

/** Focal length in pixels of a picture of this size. */
export const focalPx = (focal35: number | null, { width, height }: PictureSize): number | undefined =>
  focal35 === null ? undefined : (focal35 / FULL_FRAME_DIAGONAL_MM) * Math.hypot(width, height);

/** The surface `aboveMm` nearer to the lens reads too long by that share of the distance. Source: pinhole geometry. */
function nearer(flat: Scale, aboveMm: number, distanceMm: number): Scale | undefined {
  if (aboveMm === 0) return flat;
  const by = 1 - aboveMm / distanceMm;
  if (!(by > 0)) return undefined;
  // The distance comes from a guessed lens and the height from a ruler: see `scaleFromCard`.
  const share = Math.hypot(0.1 * aboveMm, Math.hypot(0.5, 0.04 * aboveMm)) / distanceMm;
  const toMm = (p: Px): Mm => {
    const [x, y] = flat.toMm(p);
    return [x * by, y * by];
  };
  return {
    ...flat,
    toMm,
    sigmaMm: (a, b) => Math.hypot(flat.sigmaMm(a, b) * by, apart(toMm(a), toMm(b)) * share),
    zMm: aboveMm,
  };
}

/** A sheet is measured as a card of other sides: the plane map stretched along its own axes. Flush surfaces only. */
function stretched(card: Scale, across: number, along: number): Scale {
  const toMm = (p: Px): Mm => {
    const [x, y] = card.toMm(p);
    return [x * across, y * along];
  };
  // The direction of a length decides its share of the stretch; the larger is never too sure.
  const most = Math.max(across, along);
  return { ...card, toMm, sigmaMm: (a, b) => card.sigmaMm(a, b) * most };
}

const CARD = [85.6, 53.98] as const;

/**
 * The measuring scale of a photograph in pixels of a picture of the given size.
 * @returns `no-scale` when corners make no rectangle or the height lies behind the lens
 */
export function scaleOf({ scale, focal35 }: ScaleFacts, size: PictureSize): Scale | Failed {
  const none: Failed = { ok: false, why: 'no-scale' };
  const corners = scale.corners.map((corner) => toPixel(corner, size));
  const sigmaPx = scale.sigmaOfWidth * size.width;
  const focal = focalPx(focal35, size);
  const [long = 0, short = 0] = scale.sizeMm;
  const camera = focal ?? USUAL_FOCAL * Math.max(size.width, size.height);
  switch (scale.kind) {
    case 'card':
      return scaleFromCard(corners as unknown as Quad, sigmaPx, {
        photo: size,
        zMm: scale.featureAboveMm,
        ...(focal === undefined ? {} : { focalPx: focal }),
      });
    case 'paper': {
      const card = scaleFromCard(corners as unknown as Quad, sigmaPx, { photo: size });
      if ('ok' in card) return none;
      const flat = stretchedSheet(card, corners, long, short);
      return nearer(flat, scale.featureAboveMm, camera * mmPerPx(flat, corners)) ?? none;
    }
    case 'coin': {
      if (!scale.rim) return none;
      const [cx, cy] = toPixel(scale.rim.centre as Spot, size);
      const ellipse = { cx, cy, a: scale.rim.a * size.width, b: scale.rim.b * size.width, theta: scale.rim.angle };
      const flat = scaleFromCoin(ellipse, long, size, camera);
      return nearer(flat, scale.featureAboveMm, (camera * long) / (2 * ellipse.a)) ?? none;
    }
    case 'twoPoints': {
      const [a, b] = corners;
      const flat = a && b && scaleFromTwoPoints(a, b, long);
      return (
        (flat && nearer(flat, scale.featureAboveMm, (camera * long) / Math.hypot(a[0] - b[0], a[1] - b[1]))) ?? none
      );
    }
  }
}

function stretchedSheet(card: Scale, corners: readonly Px[], long: number, short: number): Scale {
  // Which axis became the long one is read off the corners as the card put them.
  const [a, b] = corners as [Px, Px];
  const [ax, ay] = card.toMm(a);
  const [bx, by] = card.toMm(b);
  const firstIsLong = Math.hypot(ax - bx, ay - by) > (CARD[0] + CARD[1]) / 2;
  const [acrossMm, alongMm] = firstIsLong ? [long, short] : [short, long];
  const [acrossCard, alongCard] = firstIsLong ? CARD : [CARD[1], CARD[0]];
  return stretched(card, acrossMm / acrossCard, alongMm / alongCard);
}

/** Millimetres of one pixel in the middle of an outline. */
function mmPerPx(scale: Scale, outline: readonly Px[]): number {
  const x = outline.reduce((sum, p) => sum + p[0], 0) / outline.length;
  const y = outline.reduce((sum, p) => sum + p[1], 0) / outline.length;
  return apart(scale.toMm([x - 5, y - 5]), scale.toMm([x + 5, y + 5])) / Math.hypot(10, 10);
}
