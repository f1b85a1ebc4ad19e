import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  leastDistanceMm,
  lengthErrorMm,
  lengthMm,
  pixelsPerMm,
  planeError,
  tiltFromEllipseDeg,
  unforeshortenedMm,
} from '../../src/core/photo-scale.ts';
import {
  type Corners,
  cornersHold,
  type PlanePoint,
  planeDistanceMm,
  planeFromRectangle,
  toPlaneMm,
} from '../../src/core/plane-homography.ts';
import { type CheckRow, checksOf, input, strayOf, titleOf } from '../handbook/checks.ts';

const point = ([x = Number.NaN, y = Number.NaN]: readonly number[]): PlanePoint => ({ x, y });
const errorIn = (row: CheckRow) => planeError(input(row, 'distance_mm'), input(row, 'height_mm'));

const ANSWERS: Record<string, (row: CheckRow) => number> = {
  'photo.scale_card': (row) => pixelsPerMm(input(row, 'px'), input(row, 'mm')),
  'photo.len': (row) => lengthMm(input(row, 'px'), input(row, 'scale')),
  'photo.plane_error': errorIn,
  'photo.plane_error_far': errorIn,
  'photo.min_distance': (row) => leastDistanceMm(input(row, 'height_mm'), input(row, 'max_error')),
  'photo.tilt_from_coin': (row) => tiltFromEllipseDeg(input(row, 'major_px'), input(row, 'minor_px')),
  'photo.foreshorten': (row) => unforeshortenedMm(input(row, 'apparent_mm'), input(row, 'tilt_deg')),
  'photo.scale_sd': (row) =>
    lengthErrorMm({
      lengthMm: input(row, 'length_mm'),
      lengthPx: input(row, 'px_len'),
      referencePx: input(row, 'px_ref'),
      sigmaPx: input(row, 'sigma_px'),
    }),
  'photo.homography': (row) => {
    const corners = (row.inputs.card_corners_px as number[][]).map(point) as unknown as Corners;
    const [widthMm = 0, heightMm = 0] = row.inputs.card_mm as number[];
    const plane = planeFromRectangle(corners, widthMm, heightMm);
    const [from, to] = [point(row.inputs.p1_px as number[]), point(row.inputs.p2_px as number[])];
    return (plane && planeDistanceMm(plane, from, to)) ?? Number.NaN;
  },
};

describe('from pixels to millimetres, against the handbook', () => {
  it.each(checksOf('photo').map((row) => [titleOf(row), row] as const))('%s', (_, row) => {
    expect(ANSWERS[row.id], `${row.id} has no answer here`).toBeDefined();
    expect(strayOf(row, ANSWERS[row.id]?.(row) ?? Number.NaN)).toBeLessThanOrEqual(1);
  });
});

describe('one scale in one plane', () => {
  const length = fc.double({ min: 1, max: 5000, noNaN: true });

  it('keeps the depth error within the limit at the distance it asks for, and not nearer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 200, noNaN: true }),
        fc.double({ min: 0.001, max: 0.3, noNaN: true }),
        (height, error) => {
          const distance = leastDistanceMm(height, error);
          expect(planeError(distance, height)).toBeCloseTo(error, 9);
          expect(planeError(distance * 0.99, height)).toBeGreaterThan(error);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('finds the tilt that a coin was turned by, whichever axis is given first', () => {
    fc.assert(
      fc.property(length, fc.double({ min: 1, max: 85, noNaN: true }), (diameter, tilt) => {
        const short = diameter * Math.cos((tilt * Math.PI) / 180);
        expect(tiltFromEllipseDeg(diameter, short)).toBeCloseTo(tilt, 6);
        expect(tiltFromEllipseDeg(short, diameter)).toBeCloseTo(tilt, 6);
        expect(unforeshortenedMm(short, tilt) / diameter).toBeCloseTo(1, 9);
      }),
      { numRuns: 500 },
    );
    expect(tiltFromEllipseDeg(98, 100)).toBeGreaterThan(11);
  });

  it('reads a deeper feature too short, and refuses one behind the lens', () => {
    expect(planeError(600, -30)).toBeLessThan(0);
    expect(() => planeError(600, 600)).toThrow('Distance left came as 0');
    expect(() => pixelsPerMm(0, 85.6)).toThrow('Reference px came as 0');
    expect(() => unforeshortenedMm(40, 90)).toThrow('Tilt came as 90');
  });

  it('is surer the longer the reference', () => {
    fc.assert(
      fc.property(length, length, length, (mm, px, reference) => {
        const measured = { lengthMm: mm, lengthPx: px, referencePx: reference, sigmaPx: 1 };
        expect(lengthErrorMm({ ...measured, referencePx: reference * 2 })).toBeLessThan(lengthErrorMm(measured));
      }),
      { numRuns: 500 },
    );
  });
});

/** A pinhole camera over a plane: where a plane point, mm, lands in the picture, px. */
interface Camera {
  readonly tiltX: number;
  readonly tiltY: number;
  readonly turn: number;
  readonly distance: number;
  readonly focal: number;
}
function photograph({ tiltX, tiltY, turn, distance, focal }: Camera, { x, y }: PlanePoint): PlanePoint {
  const [cz, sz, cx, sx, cy, sy] = [turn, tiltX, tiltY].flatMap((angle) => [Math.cos(angle), Math.sin(angle)]) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [turnedX, turnedY] = [cz * x - sz * y, sz * x + cz * y];
  const [rolledY, rolledZ] = [cx * turnedY, sx * turnedY];
  const [seenX, seenZ] = [cy * turnedX + sy * rolledZ, -sy * turnedX + cy * rolledZ];
  const depth = distance + seenZ;
  return { x: 2000 + (focal * seenX) / depth, y: 1500 + (focal * rolledY) / depth };
}
const camera: fc.Arbitrary<Camera> = fc.record({
  tiltX: fc.double({ min: -0.7, max: 0.7, noNaN: true }),
  tiltY: fc.double({ min: -0.7, max: 0.7, noNaN: true }),
  turn: fc.double({ min: -3.1, max: 3.1, noNaN: true }),
  distance: fc.double({ min: 400, max: 2000, noNaN: true }),
  focal: fc.double({ min: 2500, max: 4000, noNaN: true }),
});
const CARD = [85.6, 53.98] as const;
const cardCorners = (view: Camera): Corners => {
  const [w, h] = CARD;
  const at = (x: number, y: number) => photograph(view, { x, y });
  return [at(0, 0), at(w, 0), at(w, h), at(0, h)];
};
const onTable = fc.record({
  x: fc.double({ min: -150, max: 230, noNaN: true }),
  y: fc.double({ min: -150, max: 200, noNaN: true }),
});

describe('the plane of a card laid beside the damage', () => {
  it('gives every distance in the plane back, from any side and tilt', () => {
    fc.assert(
      fc.property(camera, onTable, onTable, (view, a, b) => {
        const plane = planeFromRectangle(cardCorners(view), ...CARD);
        expect(plane).not.toBeNull();
        if (!plane) return;
        const found = planeDistanceMm(plane, photograph(view, a), photograph(view, b));
        expect(found).not.toBeNull();
        expect(Math.abs((found ?? 0) - Math.hypot(a.x - b.x, a.y - b.y))).toBeLessThan(1e-6);
        const place = toPlaneMm(plane, photograph(view, a));
        expect(Math.abs((place?.x ?? Infinity) - a.x)).toBeLessThan(1e-6);
        expect(Math.abs((place?.y ?? Infinity) - a.y)).toBeLessThan(1e-6);
      }),
      { numRuns: 1000 },
    );
  });

  it('gives the same distances when the corners are tapped the other way round', () => {
    fc.assert(
      fc.property(camera, onTable, onTable, (view, a, b) => {
        const [tl, tr, br, bl] = cardCorners(view);
        const [w, h] = CARD;
        const mirrored = planeFromRectangle([tr, tl, bl, br], w, h);
        const fromBelow = planeFromRectangle([bl, tl, tr, br], h, w);
        const true_ = Math.hypot(a.x - b.x, a.y - b.y);
        for (const plane of [mirrored, fromBelow])
          expect(plane && planeDistanceMm(plane, photograph(view, a), photograph(view, b))).toBeCloseTo(true_, 5);
      }),
      { numRuns: 500 },
    );
  });

  it('knows no place beyond the horizon', () => {
    const view: Camera = { tiltX: 1.2, tiltY: 0, turn: 0, distance: 600, focal: 3000 };
    const plane = planeFromRectangle(cardCorners(view), ...CARD);
    if (!plane) throw new Error('The card should be seen.');
    // Tilted so, the plane’s far edge is a level line in the picture; pixels past it show the room, not the table.
    const horizonY = 1500 + 3000 / Math.tan(1.2);
    expect(toPlaneMm(plane, { x: 2000, y: horizonY - 5 })).not.toBeNull();
    expect(toPlaneMm(plane, { x: 2000, y: horizonY + 5 })).toBeNull();
    expect(planeDistanceMm(plane, { x: 2000, y: 1500 }, { x: 2000, y: horizonY + 5 })).toBeNull();
  });

  it('refuses corners that are crossed over, in a line, on one spot or no numbers', () => {
    const square: Corners = [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 60 },
      { x: 0, y: 60 },
    ];
    const [tl, tr, br, bl] = square;
    expect(cornersHold(square)).toBe(true);
    const bad: Corners[] = [
      [tl, br, tr, bl],
      [tl, tr, { x: 200, y: 0 }, bl],
      [tl, tl, br, bl],
      [tl, tr, { x: 20, y: 12 }, bl],
      [tl, tr, { x: Number.NaN, y: 60 }, bl],
    ];
    for (const corners of bad) expect(planeFromRectangle(corners, ...CARD)).toBeNull();
    expect(() => planeFromRectangle(square, 0, 50)).toThrow('came as 0 × 50 mm');
  });
});
