import { boardsBelow, brimNames, faceQuarters, hollowInside } from '../parts/board-parts.ts';
import { centreMarks, crownFrom, crownLines, quarters, seenSideNames } from '../parts/crown-parts.ts';
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
  turned,
  wholeRing,
} from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, contour, frontEdge, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

/** The insertion set: a low board with a plain opening, and the crown that stands in it with a cord's play all round. */
const SET = { long: 142, slimmer: 17, groove: [7, 12], edge: 17, opening: 80, crown: 76, lift: 104 } as const;

function insertSide(): DrawingView {
  const tilt = 22;
  const { long, groove, edge, opening, lift } = SET;
  const options = { wideOf: (half: number): number => Math.max(half - SET.slimmer, 0.01) };
  const lip = turned(
    [
      [
        [long, 0],
        [long, groove[0]],
      ],
      [
        [long, groove[0]],
        [opening, groove[0]],
      ],
    ],
    options,
  );
  const core = turned(
    [
      [
        [long - 3, groove[0]],
        [long - 3, groove[1]],
      ],
    ],
    options,
  );
  const wall = turned(
    [
      [
        [long, 0],
        [long, edge],
      ],
    ],
    options,
  );
  const slab = turned(
    [
      [
        [long, groove[1]],
        [long, edge],
      ],
      [
        [long, edge],
        [opening, edge],
      ],
    ],
    options,
  );
  const rope = { low: lift + 26, high: lift + 34, deep: 3 };
  const up = (points: Point[]): Point[] => points.map(([half, height]): Point => [half, height + lift]);
  const crown = crownFrom(
    [
      up([
        [SET.crown, 34],
        [75.6, 56],
        [73.5, 81],
        [67, 101],
        [53, 117],
        [32, 125.5],
        [0, 128],
      ]),
    ],
    { head: SET.crown, rope, floor: lift },
  );
  const floor = 18 + reachUp(crown.upper, tilt);
  const see = fromRight(160, floor, tilt);
  const mouth = levelAt(slab, edge);
  const rim: Level = { ...mouth, long: opening, wide: opening - SET.slimmer };
  const shoulder = lift + 100;
  const pin = (forward: number): Point[] => {
    const [x, y] = see([forward, 20, lift]);
    return [
      [x - 5, y],
      [x - 5, y + 15],
      [x - 3, y + 17],
      [x + 3, y + 17],
      [x + 5, y + 15],
      [x + 5, y],
    ];
  };
  const pinZone = (forward: number): string => {
    const [x, y] = see([forward, 20, lift]);
    const top = onLevel(see, crown.foot[0] as Level, 90 - (forward * 60) / SET.crown)[1] + 2;
    return closedPath([
      [x - 28, top],
      [x + 28, top],
      [x + 28, y + 26],
      [x - 28, y + 26],
    ]);
  };
  const guide = (degrees: number) =>
    line(
      [
        onLevel(see, crown.foot[0] as Level, degrees),
        onLevel(see, { ...rim, long: SET.crown, wide: SET.crown / 1.24 }, degrees),
      ],
      'hidden',
    );
  const outer = (from: number, to: number): Point[] => arc(see, mouth, from, to);
  const sky = arc(see, rim, 0, -180);
  return view('side', Math.round(floor + 84), {
    outline: [
      ...groundShade(see, wall[0] as Level),
      ...bodyOutline(see, lip, { grounded: true }),
      ...bodyOutline(see, core),
      ...roundShading(see, core, { from: groove[0] + 0.8, to: groove[1] - 0.5, gap: 1.8, reach: 160 }),
      ...bodyOutline(see, slab),
      line(seenArc(see, mouth)),
      ...roundShading(see, wall, { from: 2, to: 6, gap: 2, reach: 34 }),
      ...hollowInside(see, rim, 30),
      line(arc(see, { ...rim, long: opening + 4, wide: rim.wide + 4 }, 0, 360), 'hatch'),
      swelling(arc(see, lip[0] as Level, 150, 6), 2.2),
      guide(0),
      guide(180),
      ...[-37, 37].map((forward) => contour(pin(forward), 'paper')),
      ...crownLines(see, crown, { rope, shadeTo: shoulder }),
      swelling(frontEdge(see, between(crown.upper, rope.high, shoulder))),
    ],
    zones: () => [
      zone('tip', seenArea(see, between(crown.whole, shoulder, lift + 127.9))),
      ...seenSideNames.map(([id, from, to]) =>
        zone(id, seenArea(see, between(crown.whole, rope.high, shoulder), [from, to])),
      ),
      zone('ropeLine', seenArea(see, between(crown.whole, rope.low, rope.high))),
      zone('lowerEdge', seenArea(see, between(crown.whole, lift, rope.low))),
      ...faceQuarters(see, outer, rim, sky),
      zone('headOpening', without(closedPath(wholeRing(see, rim)))),
      zone('edgeGroove', seenArea(see, wall)),
      zone('dowel', without(...[-37, 37].map(pinZone))),
    ],
    lettering: [frontIsRight(290, floor + 74)],
  });
}

function insertPlan(): DrawingView {
  const see = fromAbove(160, 160);
  const at = (long: number): Level => flat(long, long - SET.slimmer);
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  const crown = flat(SET.crown - 1, (SET.crown - 1) / 1.24);
  const tip = flat(28, 17);
  return view('plan', 352, {
    outline: [
      contour(wholeRing(see, at(SET.long)), 'paper'),
      ...planShading(
        see,
        [4, 7, 10, 13, 16].map((by) => at(SET.long - by)),
        { reach: 42 },
      ),
      contour(wholeRing(see, at(SET.opening + 2)), 'shade'),
      contour(wholeRing(see, crown), 'paper'),
      ...planShading(
        see,
        [4, 7, 10, 13, 16, 19].map((by) => flat(crown.long - by, crown.wide - by)),
      ),
      ...centreMarks(see, crown, 7),
      ...[0, 180].map((degrees) =>
        line([onLevel(see, at(SET.opening + 5), degrees), onLevel(see, at(SET.opening + 14), degrees)]),
      ),
      swelling(arc(see, at(SET.long), 14, -112), 2.6),
    ],
    zones: () => [
      zone('tip', ring(tip)),
      ...quarters(see, crown, tip),
      ...quarters(see, at(SET.long - 8), at(SET.opening + 3), brimNames),
      zone('headOpening', without(ring(at(SET.opening + 3)), ring(crown))),
      zone('edgeGroove', without(ring(at(SET.long)), ring(at(SET.long - 8)))),
      tag(6, 298),
    ],
    lettering: [frontIsDown(160, 326)],
  });
}

export const insertSet = drawing('insertSet', 'side', {
  plan: insertPlan,
  side: insertSide,
  under: () =>
    boardsBelow({
      edge: flat(SET.long, SET.long - SET.slimmer),
      opening: flat(SET.opening + 2, SET.opening + 2 - SET.slimmer),
      zone: 'brimUnder',
      plug: flat(SET.crown - 1, (SET.crown - 1) / 1.24),
    }),
});
