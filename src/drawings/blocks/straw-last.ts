import { brimNames, faceQuarters } from '../parts/board-parts.ts';
import { baseBelow, quarters, seenSideNames } from '../parts/crown-parts.ts';
import type { DrawingView, Point } from '../shape.ts';
import { fromAbove, fromRight } from '../tools/camera.ts';
import {
  arc,
  between,
  flat,
  type Level,
  levelAt,
  onLevel,
  reachUp,
  seenArc,
  seenArea,
  seenSides,
  turned,
  wholeRing,
} from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, closedLine, contour, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

/** The straw last: a boater in hard wood, crown and brim in one, with the rows of plait laid over it as a faint measure. */

const LAST = { long: 144, slimmer: 17, edge: 13, crown: 86, top: 76 };
const PLAIT = 8;
const TILT = 25;
const options = { wideOf: (half: number): number => Math.max(half - LAST.slimmer, 0.01) };
const CROWN_RATIO = LAST.crown / (LAST.crown - LAST.slimmer);

function lastSide(): DrawingView {
  const board = turned(
    [
      [
        [LAST.long, 0],
        [LAST.long, LAST.edge],
      ],
      [
        [LAST.long, LAST.edge],
        [LAST.crown, LAST.edge],
      ],
    ],
    options,
  );
  const wall = turned(
    [
      [
        [LAST.long, 0],
        [LAST.long, LAST.edge],
      ],
    ],
    options,
  );
  const runs: Point[][] = [
    [
      [LAST.crown, LAST.edge],
      [LAST.crown - 1, LAST.top - 4],
    ],
    [
      [LAST.crown - 1, LAST.top - 4],
      [LAST.crown - 2.4, LAST.top - 1],
      [LAST.crown - 6, LAST.top],
    ],
    [
      [LAST.crown - 6, LAST.top],
      [1, LAST.top + 0.6],
    ],
  ];
  const crown = turned(runs, { ratio: CROWN_RATIO });
  const floor = 20 + reachUp(crown, TILT);
  const see = fromRight(160, floor, TILT);
  const face = (long: number, up: number = LAST.edge): Level => flat(long, long - LAST.slimmer, 0, up);
  const lowest = wall[0] as Level;
  const bottom = floor + lowest.wide * see.down;
  const foot = crown[0] as Level;
  const rows = (from: number, to: number): number[] =>
    Array.from({ length: Math.floor((to - from) / PLAIT) }, (_, k) => from + PLAIT * (k + 1));
  return view('side', Math.round(bottom + 40), {
    outline: [
      ...groundShade(see, lowest),
      ...bodyOutline(see, board, { grounded: true }),
      line(seenArc(see, levelAt(wall, LAST.edge))),
      ...roundShading(see, wall, { from: 2.5, to: LAST.edge - 2, gap: 2.6, reach: 36 }),
      ...rows(LAST.crown + 4, LAST.long - 3).map((long) => closedLine(wholeRing(see, face(long)), 'hatch')),
      ...[4, 7, 10, 13].map((out, k) => line(arc(see, face(LAST.crown + out), 26 - k * 3, -12 + k * 3), 'hatch')),
      ...bodyOutline(see, crown),
      ...rows(LAST.edge + 2, LAST.top - 4).map((up) => line(seenArc(see, levelAt(crown, up)), 'hatch')),
      ...roundShading(see, crown, { from: LAST.edge + 3, to: LAST.top - 5, gap: 2.6, reach: 34 }),
      line(seenArc(see, levelAt(crown, LAST.top - 4))),
      ...[10, 22, 34, 46, 58, 70].map((long) =>
        closedLine(wholeRing(see, flat(long, long / CROWN_RATIO, 0, LAST.top)), 'hatch'),
      ),
      swelling(
        [
          onLevel(see, levelAt(crown, LAST.edge + 4), 0),
          onLevel(see, levelAt(crown, 45), 0),
          onLevel(see, levelAt(crown, LAST.top - 4), 0),
        ],
        2,
      ),
      swelling(arc(see, lowest, 150, 6), 2.4),
    ],
    zones: () => [
      zone('tip', seenArea(see, between(crown, LAST.top - 4, LAST.top + 0.5))),
      ...seenSideNames.map(([id, from, to]) =>
        zone(id, seenArea(see, between(crown, LAST.edge + 8, LAST.top - 4), [from, to])),
      ),
      zone('ropeLine', seenArea(see, between(crown, LAST.edge, LAST.edge + 8))),
      // The crown is too tall for the brim behind it to be seen.
      ...faceQuarters(
        see,
        (from, to) => arc(see, levelAt(wall, LAST.edge), from, to),
        foot,
        seenSides(see, crown),
      ).filter((quarter) => quarter.zone !== 'brimLeft'),
      zone('lowerEdge', seenArea(see, wall)),
    ],
    lettering: [frontIsRight(290, bottom + 26)],
  });
}

function lastPlan(): DrawingView {
  const middle = 16 + LAST.long;
  const see = fromAbove(160, middle);
  const at = (long: number): Level => flat(long, Math.max(long - LAST.slimmer, 4));
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  const rows = (from: number, to: number): number[] =>
    Array.from({ length: Math.floor((to - from) / PLAIT) }, (_, k) => from + PLAIT * (k + 1));
  const onCrown = (long: number): Level => flat(long, long / CROWN_RATIO);
  const tip = onCrown(50);
  return view('plan', middle + LAST.long + 52, {
    outline: [
      contour(wholeRing(see, at(LAST.long)), 'paper'),
      ...rows(LAST.crown + 2, LAST.long - 2).map((long) => closedLine(wholeRing(see, at(long)), 'hatch')),
      ...planShading(see, [LAST.crown + 4, LAST.crown + 7, LAST.crown + 13, LAST.crown + 16].map(at), { reach: 42 }),
      contour(wholeRing(see, at(LAST.crown)), 'paper'),
      closedLine(wholeRing(see, onCrown(LAST.crown - 5))),
      ...rows(2, LAST.crown - 8).map((long) => closedLine(wholeRing(see, onCrown(long)), 'hatch')),
      // Where the sewing starts and every row steps over to the next.
      line([see([0, 0, 0]), see([-7, 3, 0]), see([-17, 5, 0])], 'hatch'),
      swelling(arc(see, at(LAST.long), 14, -112), 2.6),
      swelling(arc(see, at(LAST.crown), 0, -100), 2),
    ],
    zones: () => [
      zone('tip', ring(tip)),
      ...quarters(see, at(LAST.crown), tip),
      zone('ropeLine', without(ring(at(LAST.crown + 8)), ring(at(LAST.crown)))),
      ...quarters(see, at(LAST.long - 8), at(LAST.crown + 8), brimNames),
      zone('lowerEdge', without(ring(at(LAST.long)), ring(at(LAST.long - 8)))),
      tag(6, middle + LAST.long - 4),
    ],
    lettering: [frontIsDown(160, middle + LAST.long + 24)],
  });
}

export const strawLast = drawing('strawLast', 'side', {
  plan: lastPlan,
  side: lastSide,
  under: () => baseBelow(flat(LAST.long, LAST.long - LAST.slimmer)),
});
