import { apartPx, type PictureSize, type Spot, toPixel } from './mark-geometry.ts';
import { type Corners, planeDistanceMm, planeFromRectangle } from './plane-homography.ts';
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

/**
 * The longest round bar that fits, from the left along the foot of the picture.
 * @returns null where the foot lies beyond the horizon of the reference's plane, or the scale makes none
 * Source: plane homography of the reference (see `plane-homography.ts`), solved for the bar's end by halving.
 */
export function scaleBarOf(scale: PhotoScale, size: PictureSize): ScaleBar | null {
  const distance = distances(scale, size);
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
