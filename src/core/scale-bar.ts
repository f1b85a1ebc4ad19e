import type { Crop } from './before-after.ts';
import { apartPx, type PictureSize, type Spot, toPixel } from './mark-geometry.ts';
import { type Corners, planeDistanceMm, planeFromRectangle } from './plane-homography.ts';
import { mapped, planeMap } from './plane-map.ts';
import type { PhotoScale } from './records.ts';

/** A bar of a round length, drawn at the foot of a photograph, true in the plane of what gave the scale. */
export interface ScaleBar {
  readonly lengthMm: number;
  readonly from: Spot;
  readonly to: Spot;
}

const ROUND_MM = [5, 10, 20, 50, 100, 200, 500, 1000] as const;
/** Longest bar, as a share of the picture's width, and where it begins. */
const LONGEST = 0.3;
const START: Spot = [0.04, 0.95];

type DistanceMm = (a: Spot, b: Spot) => number | null;

/** Distances in the plane of a flat rectangle; null where its corners make none. */
function inRectangle({ corners, sizeMm: [long = 0, short = 0] }: PhotoScale, size: PictureSize): DistanceMm | null {
  const places = corners.map((corner) => {
    const [x, y] = toPixel(corner, size);
    return { x, y };
  });
  const [a, b, c, d] = corners as readonly Spot[];
  if (!a || !b || !c || !d) return null;
  const isLongFirst = apartPx(a, b, size) + apartPx(c, d, size) > apartPx(b, c, size) + apartPx(d, a, size);
  const plane = planeFromRectangle(
    places as unknown as Corners,
    isLongFirst ? long : short,
    isLongFirst ? short : long,
  );
  return (
    plane &&
    ((from, to) => {
      const [p, q] = [toPixel(from, size), toPixel(to, size)];
      return planeDistanceMm(plane, { x: p[0], y: p[1] }, { x: q[0], y: q[1] });
    })
  );
}

function distances(scale: PhotoScale, size: PictureSize): DistanceMm | null {
  const [first = 0] = scale.sizeMm;
  const even =
    (mmPerPx: number): DistanceMm =>
    (from, to) =>
      apartPx(from, to, size) * mmPerPx;
  switch (scale.kind) {
    case 'card':
    case 'paper':
      return inRectangle(scale, size);
    case 'coin':
      return scale.rim && even(first / (2 * Math.sqrt(scale.rim.a * scale.rim.b) * size.width));
    case 'twoPoints': {
      const [a, b] = scale.corners as readonly Spot[];
      return a && b ? even(first / apartPx(a, b, size)) : null;
    }
  }
}

/** The longest round bar that fits, from the left along the foot of what is shown, where distances are told by a function. */
function barBy(distance: DistanceMm | null): ScaleBar | null {
  const reach = distance?.(START, [START[0] + LONGEST, START[1]]);
  if (!distance || !reach || !Number.isFinite(reach)) return null;
  const lengthMm = ROUND_MM.filter((mm) => mm <= reach).at(-1);
  if (lengthMm === undefined) return null;
  let [near, far] = [START[0], START[0] + LONGEST];
  for (let i = 0; i < 40; i++) {
    const middle = (near + far) / 2;
    const mm = distance(START, [middle, START[1]]);
    if (mm === null) return null;
    if (mm < lengthMm) near = middle;
    else far = middle;
  }
  return { lengthMm, from: START, to: [far, START[1]] };
}

/**
 * The longest round bar that fits, from the left along the foot of the picture.
 * @returns null where the foot lies beyond the horizon of the reference's plane, or the scale makes none
 * Source: plane homography of the reference (see `plane-homography.ts`), solved for the bar's end by halving.
 */
export const scaleBarOf = (scale: PhotoScale, size: PictureSize): ScaleBar | null => barBy(distances(scale, size));

interface Calibrated extends PictureSize {
  readonly scale: PhotoScale | null;
}

/**
 * One bar for two photographs laid over each other, in shares of the crop both are cut to: by the before's reference, or
 * by the after's where only that has one.
 * @param h from places in the before to those in the after, in shares
 */
export function sharedScaleBar(
  before: Calibrated,
  after: Calibrated,
  h: readonly number[],
  crop: Crop,
): ScaleBar | null {
  const own = before.scale && distances(before.scale, before);
  const other = after.scale && distances(after.scale, after);
  const map = planeMap(h);
  const inBefore = ([x, y]: Spot): Spot => [crop.x + x * crop.width, crop.y + y * crop.height];
  if (own) return barBy((a, b) => own(inBefore(a), inBefore(b)));
  if (!other || !map) return null;
  return barBy((a, b) => {
    const [from, to] = [mapped(map, inBefore(a)), mapped(map, inBefore(b))];
    return from && to ? other(from, to) : null;
  });
}
