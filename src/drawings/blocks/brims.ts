import { boardsBelow, brimNames, faceQuarters, hollowInside } from '../parts/board-parts.ts';
import { quarters } from '../parts/crown-parts.ts';
import type { DrawingView, Point, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromRight } from '../tools/camera.ts';
import {
  arc,
  flat,
  type Level,
  levelAt,
  type OvalBody,
  onLevel,
  reachUp,
  seenArc,
  seenArea,
  seenSides,
  turned,
  wholeRing,
} from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, contour, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

/** Brim blocks: a board with a grooved edge, and a collar round the opening in which the crown stands. */

/** A board is low: looking down on it more steeply shows its face. */
const TILT = 29;

interface Board {
  /** Half-length of the board at its edge, and how much narrower than long it is. */
  long: number;
  slimmer: number;
  /** Heights: bottom of the working edge groove, its top, the edge's top, the foot of the collar, its rim. */
  groove: readonly [number, number];
  edge: number;
  foot: number;
  rim: number;
  /** Half-length of the collar outside and of the opening. */
  collar: number;
  opening: number;
}

function bodiesOf(board: Board) {
  const { long, groove, edge, foot, rim, collar, opening } = board;
  const options = { wideOf: (half: number): number => Math.max(half - board.slimmer, 0.01) };
  const body = (...runs: Point[][]): OvalBody => turned(runs, options);
  const dish: Point[] = [
    [long, edge],
    [long - (long - collar) * 0.4, edge + (foot - edge) * 0.3],
    [collar, foot],
  ];
  return {
    lip: body(
      [
        [long, 0],
        [long, groove[0]],
      ],
      [
        [long, groove[0]],
        [collar, groove[0]],
      ],
    ),
    core: body([
      [long - 3, groove[0]],
      [long - 3, groove[1]],
    ]),
    slab: body(
      [
        [long, groove[1]],
        [long, edge],
      ],
      dish,
    ),
    wall: body([
      [long, 0],
      [long, edge],
    ]),
    face: body(dish),
    collar: body(
      [
        [collar - 2.5, foot],
        [collar - 2.5, rim],
      ],
      [
        [collar - 2.5, rim],
        [opening, rim],
      ],
    ),
    bore: body([
      [opening, 0],
      [opening, rim],
    ]),
  };
}

function boardSide(board: Board): DrawingView {
  const bodies = bodiesOf(board);
  const tall = Math.max(reachUp(bodies.slab, TILT), reachUp(bodies.collar, TILT));
  const floor = 18 + tall;
  const see = fromRight(160, floor, TILT);
  const [outer, foot] = [levelAt(bodies.wall, board.edge), bodies.collar[0] as Level];
  const rim = levelAt(bodies.bore, board.rim);
  const rimOuter = { ...rim, long: board.collar - 2.5, wide: board.collar - 2.5 - board.slimmer };
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  // What the collar hides of the board behind it.
  const collarArea = seenArea(see, bodies.collar);
  const bottom = floor + (board.long - board.slimmer) * see.down;
  const faces = faceQuarters(see, (from, to) => arc(see, outer, from, to), foot, seenSides(see, bodies.collar));
  return view('side', Math.round(bottom + 34), {
    outline: [
      ...groundShade(see, bodies.wall[0] as Level),
      ...bodyOutline(see, bodies.lip, { grounded: true }),
      ...bodyOutline(see, bodies.core),
      ...roundShading(see, bodies.core, {
        from: board.groove[0] + 0.8,
        to: board.groove[1] - 0.5,
        gap: 1.8,
        reach: 160,
      }),
      contour(wholeRing(see, outer), 'paper'),
      ...bodyOutline(see, bodies.slab),
      line(seenArc(see, outer), 'detail'),
      ...roundShading(see, bodies.wall, { from: board.groove[1] + 2, to: board.edge - 1.5, gap: 2.4, reach: 34 }),
      ...roundShading(see, bodies.wall, { from: 2, to: board.groove[0] - 1.5, gap: 2.4, reach: 34 }),
      ...[6, 10, 14, 18, 22, 26].map((out, k) =>
        line(
          arc(
            see,
            flat(board.collar + out, board.collar + out - board.slimmer, 0, board.foot - out * 0.1),
            28 - k * 2,
            -14 + k * 4,
          ),
          'hatch',
        ),
      ),
      ...bodyOutline(see, bodies.collar),
      ...roundShading(see, bodies.collar, { from: board.foot + 4, to: board.rim - 2, gap: 3, reach: 46 }),
      line(arc(see, { ...foot, long: foot.long + 3, wide: foot.wide + 3 }, 174, 6), 'hatch'),
      contour(wholeRing(see, rimOuter), 'paper'),
      ...hollowInside(see, rim, board.rim),
      swelling(arc(see, bodies.wall[0] as Level, 150, 6), 2.2),
    ],
    zones: () => [
      ...faces,
      zone('edgeGroove', seenArea(see, bodies.wall)),
      zone('collar', without(closedPath(collarArea), ring(rim))),
      zone('headOpening', ring(rim)),
    ],
    lettering: [frontIsRight(290, bottom + 22)],
  });
}

function boardPlan(board: Board, extra: (see: Camera) => Stroke[] = () => []): DrawingView {
  const middle = 16 + board.long;
  const see = fromAbove(160, middle);
  const at = (long: number): Level => flat(long, long - board.slimmer);
  const ring = (long: number): string => closedPath(wholeRing(see, at(long)));
  const closed = (long: number): Point[] => [...wholeRing(see, at(long)), onLevel(see, at(long), 0)];
  const bottom = middle + board.long;
  return view('plan', Math.round(bottom + 50), {
    outline: [
      contour(wholeRing(see, at(board.long)), 'paper'),
      ...planShading(
        see,
        [4, 7, 10, 13, 16].map((inset) => at(board.long - inset)),
        { reach: 42 },
      ),
      ...extra(see),
      line(closed(board.collar + 2.5), 'hatch'),
      contour(wholeRing(see, at(board.collar)), 'paper'),
      ...planShading(
        see,
        [3, 6, 9, 12].map((out) => at(board.collar + 2 + out)),
        { reach: 40 },
      ),
      { ...contour(wholeRing(see, at(board.opening)), 'shade'), weight: 'detail' },
      ...planShading(
        see,
        [3, 6, 9, 12, 15].map((inset) => at(board.opening - inset)),
        { middle: 132, reach: 44 },
      ),
      swelling(arc(see, at(board.long), 14, -112), 2.6),
      swelling(arc(see, at(board.collar), 0, -96), 1.8),
      ...[0, 180].map((degrees) =>
        line([onLevel(see, at(board.collar + 4), degrees), onLevel(see, at(board.collar + 13), degrees)], 'detail'),
      ),
    ],
    zones: () => [
      ...quarters(see, at(board.long - 8), at(board.collar), brimNames),
      zone('edgeGroove', without(ring(board.long), ring(board.long - 8))),
      zone('collar', without(ring(board.collar), ring(board.opening))),
      zone('headOpening', ring(board.opening)),
      tag(6, Math.round(bottom - 4)),
    ],
    lettering: [frontIsDown(160, bottom + 22)],
  });
}

const underOf = (board: Board, battens = false): DrawingView =>
  boardsBelow({
    edge: flat(board.long, board.long - board.slimmer),
    opening: flat(board.opening, board.opening - board.slimmer),
    zone: 'brimUnder',
    battens,
  });

/** 345 mm long with a 70 mm brim all round; 0.86 units to the millimetre. */
const plainBoard: Board = {
  long: 148,
  slimmer: 17,
  groove: [8, 13],
  edge: 20,
  foot: 28,
  rim: 48,
  collar: 90,
  opening: 76,
};

/** Beyond 420 mm: the same head, drawn smaller; thinner for its size, and battened against warping. */
const wideBoard: Board = {
  long: 153,
  slimmer: 11,
  groove: [5, 9],
  edge: 13,
  foot: 20,
  rim: 34,
  collar: 66,
  opening: 55,
};

export const flatBrim = drawing('flatBrim', 'side', {
  plan: () => boardPlan(plainBoard),
  side: () => boardSide(plainBoard),
  under: () => underOf(plainBoard),
});

export const cartwheelBrim = drawing('cartwheelBrim', 'side', {
  plan: () =>
    boardPlan(wideBoard, (see) => [
      ...[-88, 88].map((right) => line([see([-106, right, 0]), see([106, right, 0])], 'hatch')),
      ...[110, 130].map((long) => line(arc(see, flat(long, long - 11), 0, 360), 'hatch')),
    ]),
  side: () => boardSide(wideBoard),
  under: () => underOf(wideBoard, true),
});
