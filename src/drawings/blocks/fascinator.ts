import { stemHole } from '../parts/crown-parts.ts';
import { around, loop, rim, slab, type Teardrop } from '../parts/teardrop.ts';
import type { DrawingView, DrawnZoneId, Point, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromBelow, fromRight, type Space } from '../tools/camera.ts';
import { closedPath, curveThrough, without } from '../tools/path.ts';
import { contour, grain, line, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, tag, view, zone } from '../tools/view.ts';

const SAUCER: Teardrop = { long: 124, wide: 88, point: 'back' };
const EDGE = 13;
/** Height of the face: domed over the round end, with the tail lifting a little. */
const faceHeight = (share: number, forward: number): number =>
  EDGE + 50 * (1 - share ** 2.3) + 15 * Math.max(0, -(forward + 30) / 94) ** 2;
const facePoint = (degrees: number, share: number): Space => {
  const [forward, right] = rim(SAUCER, degrees, share);
  return [forward, right, faceHeight(share, forward)];
};

const COLUMN = 4;
/** The line against the sky of the domed face: the highest point above every place along the block. */
function skyline(see: Camera): Point[] {
  const highest = new Map<number, Point>();
  for (let degrees = 0; degrees < 360; degrees += 1.5) {
    for (let share = 0; share <= 1; share += 0.02) {
      const [x, y] = see(facePoint(degrees, share));
      const column = Math.round(x / COLUMN);
      if (y < (highest.get(column)?.[1] ?? Number.POSITIVE_INFINITY)) highest.set(column, [x, y]);
    }
  }
  const raw = [...highest.entries()].sort(([a], [b]) => a - b).map(([column, [, y]]): Point => [column * COLUMN, y]);
  // Averaged with its neighbours: the grid leaves steps of half a unit.
  return raw.map(
    ([x, y], k): Point =>
      k === 0 || k === raw.length - 1 ? [x, y] : [x, ((raw[k - 1] as Point)[1] + 2 * y + (raw[k + 1] as Point)[1]) / 4],
  );
}

function fascinatorSide(): DrawingView {
  const see = fromRight(160, 96, 22);
  const edgeLine = (up: (forward: number) => number, from: number, to: number): Point[] => {
    const pieces = 40;
    return Array.from({ length: pieces + 1 }, (_, k) => {
      const [forward, right] = rim(SAUCER, from + ((to - from) * k) / pieces);
      return see([forward, right, up(forward)]);
    });
  };
  const top = (forward: number): number => faceHeight(1, forward);
  const nearEdge = edgeLine(top, 0, 180);
  const nearFoot = edgeLine((forward) => top(forward) - EDGE, 0, 180);
  const sky = skyline(see);
  const [tail, nose] = [(nearEdge[0] as Point)[0], (nearEdge[nearEdge.length - 1] as Point)[0]];
  // Every third point is enough for a curve, but the fall over the nose is too quick for that.
  const crest = sky.filter(([x], k) => (k % 3 === 0 || x > nose - 22) && x > tail + 6 && x < nose - 1.5);
  const rise = curveThrough([nearEdge[0] as Point, ...crest, nearEdge[nearEdge.length - 1] as Point], { step: 5 });
  const inner = Array.from({ length: 41 }, (_, k) => see(facePoint(4 + (172 * k) / 40, 0.62)));
  const [left, right] = [(inner[0] as Point)[0], (inner[inner.length - 1] as Point)[0]];
  const above = (from: number, to: number): Point[] => slab(rise, nearEdge, from, to);
  return view('side', 178, {
    outline: [
      ...[0, 1, 2, 3].map((k): Stroke => {
        const [x, y] = nearFoot[38 - k * 4] as Point;
        return line(
          [
            [x + 3, y + 2],
            [x + 28 - k * 5, y + 2],
          ],
          'hatch',
        );
      }),
      contour([...rise, ...[...nearFoot].reverse()], 'paper'),
      line(nearEdge),
      ...[0.86, 0.9, 0.94].map((share, k) =>
        line(
          Array.from({ length: 15 }, (_, n) => see(facePoint(126 + k * 4 + (n * (44 - k * 8)) / 14, share))),
          'hatch',
        ),
      ),
      ...[0.5, 0.56, 0.62, 0.68, 0.74, 0.8].map((share, k) =>
        line(
          Array.from({ length: 15 }, (_, n) => see(facePoint(132 + k * 2 + (n * (40 - k * 3)) / 14, share))),
          'hatch',
        ),
      ),
      ...[2, 5, 8].map((drop, k) =>
        line(
          edgeLine((forward) => top(forward) - drop - 1.5, 118 + k * 8, 174),
          'hatch',
        ),
      ),
      line(
        Array.from({ length: 30 }, (_, n) => see(facePoint(14, 1 - n / 34))),
        'hatch',
      ),
      swelling(nearFoot, 2.4),
      swelling(rise.slice(-60), 2.2),
    ],
    zones: () => [
      zone('tip', slab(rise, inner, left + 1, right - 1)),
      zone('sideBack', [...above(tail + 2, left - 1), ...slab(inner, nearEdge, left - 1, left + 26).slice(0, 0)]),
      zone('sideRight', slab(inner, nearEdge, left + 1, right - 26)),
      zone('sideFront', [
        ...slab(inner, nearEdge, right - 24, right - 1).slice(0, 25),
        ...above(right - 1, nose - 2).slice(0, 25),
        ...slab(inner, nearEdge, right - 24, nose - 2).slice(25),
      ]),
      zone('lowerEdge', [...nearEdge, ...[...nearFoot].reverse()]),
    ],
    lettering: [frontIsRight(290, 166)],
  });
}

const saucerSides: readonly (readonly [DrawnZoneId, number, number])[] = [
  ['sideBack', -66, 66],
  ['sideRight', 66, 140],
  ['sideFront', 140, 220],
  ['sideLeft', 220, 294],
];

function fascinatorPlan(): DrawingView {
  const see = fromAbove(160, 142);
  const outline = loop(see, SAUCER);
  return view('plan', 320, {
    outline: [
      contour(outline, 'paper'),
      line([...loop(see, SAUCER, 0.955), loop(see, SAUCER, 0.955)[0] as Point], 'hatch'),
      ...[0.92, 0.89, 0.86, 0.83, 0.8, 0.77, 0.74, 0.71].map((share, k) =>
        line(around(see, SAUCER, share, 0, 236 - k * 3, 186 + k * 3), 'hatch'),
      ),
      line(
        Array.from({ length: 12 }, (_, k) => see(rim(SAUCER, 0, 0.94 - k * 0.035))),
        'hatch',
      ),
      swelling(around(see, SAUCER, 1, 0, 320, 160), 2.6),
    ],
    zones: () => [
      zone('tip', loop(see, SAUCER, 0.46)),
      ...saucerSides.map(([id, from, to]) =>
        zone(id, [...around(see, SAUCER, 0.9, 0, from, to), ...around(see, SAUCER, 0.46, 0, to, from)]),
      ),
      zone('lowerEdge', without(closedPath(outline), closedPath(loop(see, SAUCER, 0.9)))),
      tag(6, 262),
    ],
    lettering: [frontIsDown(160, 292)],
  });
}

/** The stem hole is under the middle of the round end. */
const STEM = 36;

function fascinatorUnder(): DrawingView {
  const see = fromBelow(160, 142);
  const outline = loop(see, SAUCER);
  const hole = stemHole([160, 142 + STEM], 11);
  return view('under', 310, {
    outline: [
      contour(outline, 'paper'),
      line([...loop(see, SAUCER, 0.955), loop(see, SAUCER, 0.955)[0] as Point], 'hatch'),
      ...[-50, -42, -33, 32, 40, 51].map((dx, k) =>
        grain(160 + dx, 142 + STEM + 14 * Math.sin(k * 2), 70 - Math.abs(dx) * 0.4, k),
      ),
      ...hole.outline,
      swelling(around(see, SAUCER, 1, 0, 40, 200), 2.4),
    ],
    zones: () => [zone('base', without(closedPath(outline), hole.path)), hole.zone],
    lettering: [frontIsDown(160, 292)],
  });
}

export const fascinator = drawing('fascinator', 'plan', {
  plan: fascinatorPlan,
  side: fascinatorSide,
  under: fascinatorUnder,
});
