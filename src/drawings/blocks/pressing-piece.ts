import { around, DEGREE, loop, type Teardrop } from '../parts/teardrop.ts';
import type { DrawingView, Point } from '../shape.ts';
import { fromAbove, fromBelow, fromRight } from '../tools/camera.ts';
import { between, seenArea, turned } from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, contour, grain, line, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, tag, view, zone } from '../tools/view.ts';

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
    zones: () => [
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
    zones: () => [
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
    zones: () => [
      zone('tip', without(closedPath(inner), closedPath(ridge))),
      zone('ridge', ridge),
      zone('lowerEdge', without(closedPath(outline), closedPath(inner))),
    ],
    lettering: [frontIsDown(160, 288)],
  });
}

export const pressingPiece = drawing('pressingPiece', 'side', {
  plan: pressingPiecePlan,
  side: pressingPieceSide,
  under: pressingPieceUnder,
});
