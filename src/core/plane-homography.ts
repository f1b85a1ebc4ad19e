/** A place in a photograph, px, or in a plane, mm. */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/** Four corners in the order of the outline: top left, top right, bottom right, bottom left. */
export type Corners = readonly [PlanePoint, PlanePoint, PlanePoint, PlanePoint];

/** Takes pixels to millimetres in the plane of a rectangle of known size. Row by row; made by `planeFromRectangle`. */
export interface PlaneScale {
  readonly origin: PlanePoint;
  readonly rows: readonly [readonly number[], readonly number[], readonly number[]];
}

/** Corners this near to a straight line, as a share of the product of the sides, say nothing about the plane. */
const FLATTEST = 1e-3;

const cross = (o: PlanePoint, a: PlanePoint, b: PlanePoint): number =>
  (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
const distance = (a: PlanePoint, b: PlanePoint): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Whether four corners make the picture of a rectangle: convex, not crossed over, no three in a line. */
export function cornersHold(corners: Corners): boolean {
  const turns = corners.map((corner, index) => {
    const [before, after] = [corners[(index + 3) % 4] ?? corner, corners[(index + 1) % 4] ?? corner];
    return cross(corner, after, before) / (distance(corner, after) * distance(corner, before));
  });
  return turns.every((turn) => turn > FLATTEST) || turns.every((turn) => turn < -FLATTEST);
}

/**
 * The plane of a flat rectangle (a card, a sheet) from its four corners in the picture.
 * Closed form of the four-point homography: the unit square is mapped to the corners, and the map turned round.
 * Origin of the pixels moved to the first corner, so that large coordinates do not cost digits. Textbook.
 * @returns null when the corners are crossed over, nearly in a line or not numbers
 * @throws when a side is not above 0
 */
export function planeFromRectangle(corners: Corners, widthMm: number, heightMm: number): PlaneScale | null {
  if (!(widthMm > 0 && heightMm > 0))
    throw new Error(`Rectangle came as ${widthMm} × ${heightMm} mm, expected above 0.`);
  if (!cornersHold(corners)) return null;
  const [origin] = corners;
  const fromOrigin = ({ x, y }: PlanePoint): PlanePoint => ({ x: x - origin.x, y: y - origin.y });
  const [p1, p2, p3] = [fromOrigin(corners[1]), fromOrigin(corners[2]), fromOrigin(corners[3])];
  const skew = { x: p2.x - p1.x - p3.x, y: p2.y - p1.y - p3.y };
  const [right, down] = [
    { x: p1.x - p2.x, y: p1.y - p2.y },
    { x: p3.x - p2.x, y: p3.y - p2.y },
  ];
  const area = right.x * down.y - right.y * down.x;
  const g = (skew.x * down.y - skew.y * down.x) / area;
  const h = (right.x * skew.y - right.y * skew.x) / area;
  // Unit square → pixels: [a b 0; d e 0; g h 1]. Its adjugate takes pixels back, up to a factor that divides out.
  const [a, b, d, e] = [p1.x * (1 + g), p3.x * (1 + h), p1.y * (1 + g), p3.y * (1 + h)];
  return {
    origin,
    rows: [
      [e * widthMm, -b * widthMm],
      [-d * heightMm, a * heightMm],
      [d * h - e * g, b * g - a * h, a * e - b * d],
    ],
  };
}

/** A pixel's place in the plane, mm from the first corner. @returns null beyond the plane's horizon, where no place exists */
export function toPlaneMm({ origin, rows }: PlaneScale, pixel: PlanePoint): PlanePoint | null {
  const [x, y] = [pixel.x - origin.x, pixel.y - origin.y];
  const [across = 0, down = 0, depth = 0] = rows.map(([rx = 0, ry = 0, r1 = 0]) => rx * x + ry * y + r1);
  // At the first corner the last row is the determinant; on its side of the horizon the sign stays the same.
  const sign = Math.sign(rows[2][2] ?? 0);
  return depth * sign > 0 ? { x: across / depth, y: down / depth } : null;
}

/** Distance between two pixels in the plane, mm. @returns null when either lies beyond the horizon */
export function planeDistanceMm(plane: PlaneScale, from: PlanePoint, to: PlanePoint): number | null {
  const [a, b] = [toPlaneMm(plane, from), toPlaneMm(plane, to)];
  return a && b ? distance(a, b) : null;
}
