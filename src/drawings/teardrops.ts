import { type Camera, fromAbove, fromBelow, fromRight, type Space } from './camera.ts';
import { stemHole } from './crown-parts.ts';
import { between, seenArea, turned } from './oval-body.ts';
import { closedPath, without } from './path.ts';
import { bodyOutline, contour, grain, line, swelling } from './pen.ts';
import type { BlockDrawing, DrawingView, DrawnZoneId, Point, Stroke } from './shape.ts';
import { frontIsDown, frontIsRight, tag, view, zone } from './view.ts';

/** Two small pieces on a teardrop outline: the fascinator block and the pressing piece. */

/** Half-length, half-width; `point` says at which end the outline runs out. */
interface Teardrop {
  long: number;
  wide: number;
  point: 'front' | 'back';
}

const DEGREE = Math.PI / 180;

/** A point of the outline, shrunk toward the middle of the round end; 0 degrees is the point, 90 the wearer's right. */
function rim({ long, wide, point }: Teardrop, degrees: number, share = 1, up = 0): Space {
  const angle = degrees * DEGREE;
  const toPoint = long * Math.cos(angle);
  const right = wide * 1.32 * Math.sin(angle) * Math.abs(Math.sin(angle / 2)) ** 1.6;
  const middle = -long * 0.3;
  const forward = (middle + (toPoint - middle) * share) * (point === 'front' ? 1 : -1);
  return [forward, right * share, up];
}

const around = (see: Camera, shape: Teardrop, share = 1, up = 0, from = 0, to = 360): Point[] => {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / 5));
  return Array.from({ length: pieces + 1 }, (_, k) => see(rim(shape, from + ((to - from) * k) / pieces, share, up)));
};
const loop = (see: Camera, shape: Teardrop, share = 1, up = 0): Point[] => around(see, shape, share, up).slice(0, -1);

/** Height on the page of a line that runs from left to right, at a given x. */
const heightAt = (points: readonly Point[], x: number): number => {
  for (let k = 1; k < points.length; k += 1) {
    const [[ax, ay], [bx, by]] = [points[k - 1] as Point, points[k] as Point];
    if ((ax <= x && x <= bx) || (bx <= x && x <= ax)) return bx === ax ? ay : ay + ((by - ay) * (x - ax)) / (bx - ax);
  }
  const [first, last] = [points[0] as Point, points[points.length - 1] as Point];
  return Math.abs(first[0] - x) < Math.abs(last[0] - x) ? first[1] : last[1];
};

/** The area between two lines that run from left to right. */
const slab = (upper: readonly Point[], lower: readonly Point[], from: number, to: number): Point[] => {
  const xs = Array.from({ length: 25 }, (_, k) => from + ((to - from) * k) / 24);
  return [...xs.map((x): Point => [x, heightAt(upper, x)]), ...xs.reverse().map((x): Point => [x, heightAt(lower, x)])];
};

const SAUCER: Teardrop = { long: 124, wide: 88, point: 'back' };
const EDGE = 13;
/** Height of the face: domed over the round end, with the tail lifting a little. */
const faceHeight = (share: number, forward: number): number =>
  EDGE + 50 * (1 - share ** 2.3) + 15 * Math.max(0, -(forward + 30) / 94) ** 2;
const facePoint = (degrees: number, share: number): Space => {
  const [forward, right] = rim(SAUCER, degrees, share);
  return [forward, right, faceHeight(share, forward)];
};

/** The line against the sky of the domed face: the highest point above every place along the block. */
function skyline(see: Camera): Point[] {
  const highest = new Map<number, Point>();
  for (let degrees = 0; degrees < 360; degrees += 1.5) {
    for (let share = 0; share <= 1; share += 0.02) {
      const [x, y] = see(facePoint(degrees, share));
      const column = Math.round(x / 5);
      if (y < (highest.get(column)?.[1] ?? Number.POSITIVE_INFINITY)) highest.set(column, [x, y]);
    }
  }
  const raw = [...highest.entries()].sort(([a], [b]) => a - b).map(([column, [, y]]): Point => [column * 5, y]);
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
  const crest = sky.filter(([x]) => x > tail + 1 && x < nose - 5);
  const rise: Point[] = [nearEdge[0] as Point, ...crest, nearEdge[nearEdge.length - 1] as Point];
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
      swelling(rise.slice(-16), 2.2),
    ],
    zones: [
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
    zones: [
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

function teardropUnder(shape: Teardrop, middleForward: number): DrawingView {
  const see = fromBelow(160, 142);
  const outline = loop(see, shape);
  const hole = stemHole([160, 142 + middleForward], 11);
  return view('under', 310, {
    outline: [
      contour(outline, 'paper'),
      line([...loop(see, shape, 0.955), loop(see, shape, 0.955)[0] as Point], 'hatch'),
      ...[-50, -42, -33, 32, 40, 51].map((dx, k) =>
        grain(160 + dx, 142 + middleForward + 14 * Math.sin(k * 2), 70 - Math.abs(dx) * 0.4, k),
      ),
      ...hole.outline,
      swelling(around(see, shape, 1, 0, 40, 200), 2.4),
    ],
    zones: [zone('base', without(closedPath(outline), hole.path)), hole.zone],
    lettering: [frontIsDown(160, 292)],
  });
}

export const fascinator = (): BlockDrawing => ({
  id: 'fascinator',
  face: 'plan',
  views: [fascinatorPlan(), fascinatorSide(), teardropUnder(SAUCER, 36)],
});

/** The pressing piece follows the dent of a crown: its point to the front, its belly down, a knob to press with. */
const COUNTER: Teardrop = { long: 116, wide: 70, point: 'front' };
const BACK = 44;

function pressingPieceSide(): DrawingView {
  const floor = 168;
  const see = fromRight(160, floor, 20);
  const nearTop = around(see, COUNTER, 1, BACK, 0, 180);
  const wholeTop = loop(see, COUNTER, 1, BACK);
  const nearLow = around(see, COUNTER, 1, BACK - 9, 0, 180);
  // The belly: what hangs below the back board, from the point round to the tail.
  const belly = nearLow.map(([x, y], k): Point => [x, y + 27 * Math.sin((Math.PI * k) / (nearLow.length - 1)) ** 0.55]);
  const knob = turned(
    [
      [
        [15, BACK],
        [13, BACK + 8],
        [12, BACK + 20],
        [17, BACK + 30],
        [24, BACK + 42],
        [24, BACK + 52],
        [16, BACK + 62],
        [0, BACK + 66],
      ],
    ],
    { ratio: 1, shiftOf: () => -18 },
  );
  return view('side', 236, {
    outline: [
      contour([...nearLow, ...[...belly].reverse()], 'paper'),
      ...[0.25, 0.45, 0.62, 0.77, 0.9].map((t, k) =>
        line(
          nearLow
            .map(([x, y], n): Point => {
              const [, by] = belly[n] as Point;
              return [x, y + (by - y) * t];
            })
            .slice(2, 13 - k),
          'hatch',
        ),
      ),
      contour([...around(see, COUNTER, 1, BACK, 180, 360), ...nearLow], 'paper'),
      contour(wholeTop, 'paper'),
      ...[22, 28, 34].map((out, k) =>
        line(
          Array.from({ length: 9 }, (_, n): Point => {
            const angle = (-30 + n * 9 + k * 3) * DEGREE;
            return see([-18 + out * Math.cos(angle), out * Math.sin(angle), BACK]);
          }),
          'hatch',
        ),
      ),
      ...bodyOutline(see, knob),
      ...[BACK + 36, BACK + 40, BACK + 44, BACK + 48, BACK + 52].map((up, k) =>
        line(
          Array.from({ length: 7 }, (_, n): Point => {
            const angle = (12 + n * (9 - k)) * DEGREE;
            return see([-18 + 23 * Math.cos(angle), 23 * Math.sin(angle), up]);
          }),
          'hatch',
        ),
      ),
      swelling(belly, 2.4),
      swelling(nearTop, 1.4),
    ],
    zones: [
      zone('base', without(closedPath(wholeTop))),
      zone('lowerEdge', [...nearTop, ...[...nearLow].reverse()]),
      zone('tip', [...nearLow, ...[...belly].reverse()]),
      zone('dowel', seenArea(see, between(knob, BACK + 36, BACK + 65.9))),
    ],
    lettering: [frontIsRight(290, 224)],
  });
}

function pressingPiecePlan(): DrawingView {
  const see = fromAbove(160, 140);
  const outline = loop(see, COUNTER);
  const ring = (radius: number): Point[] =>
    Array.from({ length: 48 }, (_, k) =>
      see([-18 + radius * Math.cos((k * Math.PI) / 24), radius * Math.sin((k * Math.PI) / 24), 0]),
    );
  return view('plan', 316, {
    outline: [
      contour(outline, 'paper'),
      line([...loop(see, COUNTER, 0.95), loop(see, COUNTER, 0.95)[0] as Point], 'hatch'),
      ...[-46, -38, 37, 46].map((dx, k) => grain(160 + dx, 118 + 10 * Math.sin(k * 2), 60, k)),
      grain(154, 196, 44, 2),
      grain(166, 190, 40, 5),
      contour(ring(25), 'paper'),
      line([...ring(15), ring(15)[0] as Point], 'hatch'),
      ...[28, 31, 34, 37].map((radius) =>
        line(
          Array.from({ length: 10 }, (_, k) =>
            see([-18 + radius * Math.cos((12 + k * 7) * DEGREE), -radius * Math.sin((12 + k * 7) * DEGREE), 0]),
          ),
          'hatch',
        ),
      ),
      swelling(around(see, COUNTER, 1, 0, 340, 200), 2.4),
    ],
    zones: [
      zone('base', without(closedPath(loop(see, COUNTER, 0.9)), closedPath(ring(27)))),
      zone('dowel', ring(27)),
      zone('lowerEdge', without(closedPath(outline), closedPath(loop(see, COUNTER, 0.9)))),
      tag(6, 258),
    ],
    lettering: [frontIsDown(160, 288)],
  });
}

function pressingPieceUnder(): DrawingView {
  const see = fromBelow(160, 140);
  const outline = loop(see, COUNTER);
  const inner = loop(see, COUNTER, 0.9);
  const keel = Array.from({ length: 20 }, (_, k) => see([96 - k * 8.6, 0, 0]));
  const strip = keel.map(([x, y]): Point => [x, y]);
  const ridge = [
    ...strip.map(([x, y], k): Point => [x - 8 * Math.sin((Math.PI * (k + 1)) / 21) - 1, y]),
    ...[...strip].reverse().map(([x, y], k): Point => [x + 8 * Math.sin((Math.PI * (k + 1)) / 21) + 1, y]),
  ];
  return view('under', 306, {
    outline: [
      contour(outline, 'paper'),
      line([...inner, inner[0] as Point], 'detail'),
      ...[0.84, 0.79, 0.74, 0.69, 0.64, 0.59].map((share, k) =>
        line(around(see, COUNTER, share, 0, 40 + k * 4, 140 - k * 6), 'hatch'),
      ),
      swelling(keel, 1.6),
      swelling(around(see, COUNTER, 1, 0, 20, 160), 2.4),
    ],
    zones: [
      zone('tip', without(closedPath(inner), closedPath(ridge))),
      zone('ridge', ridge),
      zone('lowerEdge', without(closedPath(outline), closedPath(inner))),
    ],
    lettering: [frontIsDown(160, 288)],
  });
}

export const pressingPiece = (): BlockDrawing => ({
  id: 'pressingPiece',
  face: 'side',
  views: [pressingPiecePlan(), pressingPieceSide(), pressingPieceUnder()],
});
