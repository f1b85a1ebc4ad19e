import { boardsBelow, brimNames, faceQuarters, hollowInside } from '../parts/board-parts.ts';
import type { DrawingView, Point, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromRight, type Space } from '../tools/camera.ts';
import { arc, flat, type Level, onLevel, seenArea, seenSides, turned, wholeRing } from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, contour, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, tag, view, zone } from '../tools/view.ts';

/** A swept brim: carved from the solid, dipping over the wearer's right eye and turned up on the left. */

const DEGREE = Math.PI / 180;
const HEAD = { foot: 58, rim: 72, collar: 82, opening: 69, slimmer: 16 };
const TILT = 27;

/** Height of the brim's edge all round; the two waves out of step make the sweep. */
const edgeHeight = (angle: number): number =>
  52 - 25 * Math.sin(angle) - 12 * Math.cos(angle) + 3 * Math.cos(2 * angle) + 7 * Math.sin(2 * angle);

/** A point of the working face: `out` runs from 0 at the head line to 1 at the edge; `below` is measured down the wall. */
function face(degrees: number, out: number, below = 0): Space {
  const angle = degrees * DEGREE;
  const long = HEAD.collar + (146 - HEAD.collar) * out;
  const wide = HEAD.collar - HEAD.slimmer + (124 - 9 * Math.sin(angle) - HEAD.collar + HEAD.slimmer) * out;
  // Nearly level at the head line, then ever steeper.
  const up = HEAD.foot + (edgeHeight(angle) - HEAD.foot) * out ** 1.7;
  return [long * Math.cos(angle), wide * Math.sin(angle), up - below];
}

const sweep = (see: Camera, out: number, from: number, to: number, below = 0): Point[] => {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / 4));
  return Array.from({ length: pieces + 1 }, (_, k) => see(face(from + ((to - from) * k) / pieces, out, below)));
};
const loop = (see: Camera, out: number): Point[] => sweep(see, out, 0, 360).slice(0, -1);

/** Strokes from the edge inward where the brim turns up, long in the middle of the curl. */
const curl = (see: Camera, from: number, to: number, step: number, depth: number): Stroke[] =>
  Array.from({ length: Math.floor((to - from) / step) }, (_, k) => {
    const at = from + k * step;
    const share = Math.sin((Math.PI * (k + 0.5)) / ((to - from) / step)) ** 0.7 * (0.85 + 0.15 * Math.sin(k * 2.3));
    return line(
      [1, 0.93, 0.86, 0.79].map((_, n) => see(face(at + n * 0.8, 0.985 - (depth * share * n) / 3))),
      'hatch',
    );
  });

const plain = (long: number, up = 0): Level => flat(long, long - HEAD.slimmer, 0, up);

function sweptSide(): DrawingView {
  const floor = 150;
  const see = fromRight(160, floor, TILT);
  const half = HEAD.collar - 2;
  const collar = turned(
    [
      [
        [half, HEAD.foot - 1],
        [half, HEAD.rim],
      ],
      [
        [half, HEAD.rim],
        [HEAD.opening, HEAD.rim],
      ],
    ],
    { wideOf: (long) => Math.max(0.01, long - HEAD.slimmer) },
  );
  const rim = plain(HEAD.opening, HEAD.rim);
  const base = (from: number, to: number): Point[] => sweep((([f, r]) => see([f, r, 0])) as Camera, 1, from, to);
  const wall = [...sweep(see, 1, 180, 0), ...base(0, 180)];
  const grooves = [7, 11];
  const foot = { ...(collar[0] as Level), long: half, wide: half - HEAD.slimmer };
  return view('side', 254, {
    outline: [
      ...[8, 17, 26, 35].map((degrees, k): Stroke => {
        const [x, y] = base(degrees, degrees)[0] as Point;
        return line(
          [
            [x + 3, y + 1.5],
            [Math.min(x + 30 - k * 5, 314), y + 1.5],
          ],
          'hatch',
        );
      }),
      contour(loop(see, 1), 'paper'),
      ...curl(see, 196, 318, 3, 0.42),
      line(sweep(see, 0.45, 150, 60), 'hatch'),
      line(sweep(see, 0.72, 140, 40), 'hatch'),
      ...[0.5, 0.6, 0.7, 0.8, 0.9].map((out, k) => line(sweep(see, out, 46 - k * 4, -14 + k * 5), 'hatch')),
      ...bodyOutline(see, collar),
      ...roundShading(see, collar, { from: HEAD.foot + 2, to: HEAD.rim - 2, gap: 3, reach: 48 }),
      contour(wholeRing(see, plain(half, HEAD.rim)), 'paper'),
      ...hollowInside(see, rim, 60),
      contour(wall, 'paper'),
      ...grooves.map((below) => line(sweep(see, 1, 180, 0, below))),
      line(sweep(see, 1, 176, 4, 9), 'hatch'),
      ...[15, 19, 23, 27, 31].map((below, k) => line(sweep(see, 1, 44 - k * 3, 4, below), 'hatch')),
      swelling(sweep(see, 1, 336, 200), 2),
      swelling(base(150, 6), 2.2),
    ],
    zones: () => [
      ...faceQuarters(see, (from, to) => sweep(see, 1, from, to), foot, seenSides(see, collar)),
      zone('edgeGroove', [...sweep(see, 1, 180, 0), ...sweep(see, 1, 0, 180, 13)]),
      zone('base', [...sweep(see, 1, 180, 0, 13), ...base(0, 180)]),
      zone('collar', without(closedPath(seenArea(see, collar)), closedPath(wholeRing(see, rim)))),
      zone('headOpening', wholeRing(see, rim)),
    ],
    lettering: [frontIsRight(290, 240)],
  });
}

function sweptPlan(): DrawingView {
  const see = fromAbove(160, 162);
  const ring = (long: number): string => closedPath(wholeRing(see, plain(long)));
  const inset = (from: number, to: number): Point[] => sweep(see, 0.87, from, to);
  return view('plan', 360, {
    outline: [
      contour(loop(see, 1), 'paper'),
      ...curl(see, 200, 330, 2.6, 0.5),
      ...[0.34, 0.66].map((out) => line(sweep(see, out, 20, 200), 'hatch')),
      ...[0.94, 0.88, 0.82, 0.76].map((out, k) => line(sweep(see, out, 118 - k * 5, 64 + k * 7), 'hatch')),
      line([...wholeRing(see, plain(HEAD.collar + 2.5)), onLevel(see, plain(HEAD.collar + 2.5), 0)], 'hatch'),
      contour(wholeRing(see, plain(HEAD.collar)), 'paper'),
      ...planShading(
        see,
        [5, 8, 11, 14].map((out) => plain(HEAD.collar + out)),
        { reach: 38 },
      ),
      { ...contour(wholeRing(see, plain(HEAD.opening)), 'shade'), weight: 'detail' },
      ...planShading(
        see,
        [3, 6, 9, 12, 15].map((by) => plain(HEAD.opening - by)),
        { middle: 132, reach: 44 },
      ),
      swelling(sweep(see, 1, 30, -112), 2.6),
      swelling(arc(see, plain(HEAD.collar), 0, -96), 1.8),
    ],
    zones: () => [
      ...brimNames.map(([id, from, to]) => zone(id, [...inset(from, to), ...arc(see, plain(HEAD.collar), to, from)])),
      zone('edgeGroove', without(closedPath(loop(see, 1)), closedPath(loop(see, 0.87)))),
      zone('collar', without(ring(HEAD.collar), ring(HEAD.opening))),
      zone('headOpening', ring(HEAD.opening)),
      tag(6, 304),
    ],
    lettering: [frontIsDown(160, 330)],
  });
}

export const sculptedBrim = drawing('sculptedBrim', 'side', {
  plan: sweptPlan,
  side: sweptSide,
  under: () => boardsBelow({ edge: flat(146, 124), opening: plain(HEAD.opening), zone: 'base' }),
});
