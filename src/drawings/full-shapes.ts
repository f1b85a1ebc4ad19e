import { boardsBelow, brimNames, faceQuarters, hollowInside } from './board-parts.ts';
import { fromAbove, fromRight } from './camera.ts';
import { baseBelow, centreMarks, crownFrom, crownLines, quarters, seenSideNames } from './crown-parts.ts';
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
} from './oval-body.ts';
import { closedPath, without } from './path.ts';
import { bodyOutline, contour, line, planShading, roundShading, swelling } from './pen.ts';
import type { BlockDrawing, DrawingView, Point } from './shape.ts';
import { frontIsDown, frontIsRight, groundShade, tag, view, zone } from './view.ts';

/** Crown and brim together: the cloche in one piece, and the crown that drops into its brim board. */

const brimWide = { wideOf: (long: number): number => Math.max(long - 18, 0.01) };

/** Heights of the cloche from the table up: edge groove, brim, rope line at the head line, crown. */
const CLOCHE = { groove: [8, 13], edge: 18, brim: 64, rope: 71, shoulder: 140, top: 182 } as const;

function clocheBodies() {
  // The brim reaches farther forward than back, as a peak over the eyes.
  const options = { ...brimWide, shiftOf: (up: number): number => Math.max(0, CLOCHE.brim - up) * 0.2 };
  const [low, high] = CLOCHE.groove;
  const slope: Point[] = [
    [126, CLOCHE.edge],
    [116, 29],
    [103, 45],
    [90, CLOCHE.brim],
  ];
  const crown: Point[] = [
    [90, CLOCHE.rope],
    [91.5, 92],
    [89, 118],
    [81, 142],
    [64, 164],
    [36, 178.5],
    [0, CLOCHE.top],
  ];
  return {
    lip: turned(
      [
        [
          [124, 0],
          [124, low],
        ],
        [
          [124, low],
          [90, low],
        ],
      ],
      options,
    ),
    core: turned(
      [
        [
          [121, low],
          [121, high],
        ],
      ],
      options,
    ),
    brim: turned(
      [
        [
          [126, high],
          [126, CLOCHE.edge],
        ],
        slope,
      ],
      options,
    ),
    slope: turned([slope], options),
    edge: turned(
      [
        [
          [125, 0],
          [125, CLOCHE.edge],
        ],
      ],
      options,
    ),
    rope: turned([
      [
        [86.5, CLOCHE.brim],
        [86.5, CLOCHE.rope],
      ],
    ]),
    band: turned([
      [
        [90, CLOCHE.brim],
        [90, CLOCHE.rope],
      ],
    ]),
    crown: turned([crown]),
  };
}

function clocheSide(): DrawingView {
  const bodies = clocheBodies();
  const floor = 20 + reachUp(bodies.crown);
  const see = fromRight(155, floor);
  return view('side', Math.round(floor + 50), {
    outline: [
      ...groundShade(see, bodies.edge[0] as Level),
      ...bodyOutline(see, bodies.lip, { grounded: true }),
      ...bodyOutline(see, bodies.core),
      ...roundShading(see, bodies.core, { from: 9, to: 12.5, gap: 1.8, reach: 160 }),
      ...bodyOutline(see, bodies.brim),
      line(seenArc(see, levelAt(bodies.slope, CLOCHE.edge))),
      ...roundShading(see, bodies.lip, { from: 2, to: 6, gap: 2.2, reach: 34 }),
      ...roundShading(see, bodies.slope, { from: 21, to: 61, gap: 3.2, reach: 30 }),
      ...bodyOutline(see, bodies.rope),
      ...roundShading(see, bodies.rope, { from: 65, to: 70, gap: 2, reach: 150 }),
      ...bodyOutline(see, bodies.crown),
      ...roundShading(see, bodies.crown, { from: CLOCHE.rope + 3, to: CLOCHE.shoulder }),
      swelling(between(bodies.crown, CLOCHE.rope, CLOCHE.shoulder).map((level) => onLevel(see, level, 0))),
      swelling(
        between(bodies.slope, CLOCHE.edge, 60).map((level) => onLevel(see, level, -4)),
        1.8,
      ),
      swelling(arc(see, bodies.lip[0] as Level, 150, 4), 2.2),
    ],
    zones: [
      zone('tip', seenArea(see, between(bodies.crown, CLOCHE.shoulder, CLOCHE.top - 0.1))),
      ...seenSideNames.map(([id, from, to]) =>
        zone(id, seenArea(see, between(bodies.crown, CLOCHE.rope, CLOCHE.shoulder), [from, to])),
      ),
      ...(['brimFront', 'brimRight', 'brimBack'] as const).map((id, k) =>
        zone(
          id,
          seenArea(
            see,
            bodies.slope,
            [
              [-90, 50],
              [50, 130],
              [130, 270],
            ][k] as [number, number],
          ),
        ),
      ),
      zone('ropeLine', seenArea(see, bodies.band)),
      zone('edgeGroove', seenArea(see, bodies.edge)),
    ],
    lettering: [frontIsRight(290, floor + 40)],
  });
}

function clochePlan(): DrawingView {
  const see = fromAbove(160, 136);
  const edge = flat(134, 114, 9);
  const inner = flat(127, 107, 8.5);
  const rope = flat(98, 80, 1);
  const crown = flat(92, 74);
  const tip = flat(50, 34);
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  return view('plan', 330, {
    outline: [
      contour(wholeRing(see, edge), 'paper'),
      ...planShading(
        see,
        [3, 6, 9, 12].map((by) => flat(134 - by, 114 - by, 9 - by / 2)),
        { reach: 44 },
      ),
      line([...wholeRing(see, rope), onLevel(see, rope, 0)]),
      contour(wholeRing(see, crown), 'paper'),
      ...planShading(
        see,
        [4, 7, 10, 13, 16, 19, 22].map((by) => flat(92 - by, 74 - by)),
      ),
      ...centreMarks(see, flat(91, 73), 7),
      swelling(arc(see, edge, 14, -110), 2.6),
      swelling(arc(see, crown, 6, -100), 1.8),
    ],
    zones: [
      zone('tip', ring(tip)),
      ...quarters(see, crown, tip),
      ...quarters(see, inner, rope, brimNames),
      zone('ropeLine', without(ring(rope), ring(crown))),
      zone('edgeGroove', without(ring(edge), ring(inner))),
      tag(6, 272),
    ],
    lettering: [frontIsDown(160, 304)],
  });
}

export const fullShape = (): BlockDrawing => ({
  id: 'fullShape',
  face: 'side',
  views: [clochePlan(), clocheSide(), baseBelow({ ...(clocheBodies().lip[0] as Level), shift: 0 }, '57')],
});

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
  const rope = { low: lift + 22, high: lift + 29, deep: 3 };
  const up = (points: Point[]): Point[] => points.map(([half, height]): Point => [half, height + lift]);
  const crown = crownFrom(
    [
      up([
        [SET.crown, 29],
        [75.6, 52],
        [73.5, 77],
        [67, 97],
        [53, 113],
        [32, 121.5],
        [0, 124],
      ]),
    ],
    { head: SET.crown, rope, floor: lift },
  );
  const floor = 18 + reachUp(crown.upper, tilt);
  const see = fromRight(160, floor, tilt);
  const mouth = levelAt(slab, edge);
  const rim: Level = { ...mouth, long: opening, wide: opening - SET.slimmer };
  const shoulder = lift + 96;
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
      [x - 22, top],
      [x + 22, top],
      [x + 22, y + 24],
      [x - 22, y + 24],
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
      ...[-34, 34].map((forward) => contour(pin(forward), 'paper')),
      ...crownLines(see, crown, { rope, shadeTo: shoulder }),
      swelling(between(crown.upper, rope.high, shoulder).map((level) => onLevel(see, level, 0))),
    ],
    zones: [
      zone('tip', seenArea(see, between(crown.whole, shoulder, lift + 123.9))),
      ...seenSideNames.map(([id, from, to]) =>
        zone(id, seenArea(see, between(crown.whole, rope.high, shoulder), [from, to])),
      ),
      zone('ropeLine', seenArea(see, between(crown.whole, rope.low, rope.high))),
      zone('lowerEdge', seenArea(see, between(crown.whole, lift, rope.low))),
      ...faceQuarters(see, outer, rim, sky),
      zone('headOpening', without(closedPath(wholeRing(see, rim)))),
      zone('edgeGroove', seenArea(see, wall)),
      zone('dowel', without(...[-34, 34].map(pinZone))),
    ],
    lettering: [frontIsRight(290, floor + 74)],
  });
}

function insertPlan(): DrawingView {
  const see = fromAbove(160, 160);
  const at = (long: number): Level => flat(long, long - SET.slimmer);
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  const crown = flat(SET.crown - 1, (SET.crown - 1) / 1.24);
  const tip = flat(32, 22);
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
    zones: [
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

export const insertSet = (): BlockDrawing => ({
  id: 'insertSet',
  face: 'side',
  views: [
    insertPlan(),
    insertSide(),
    boardsBelow({
      edge: flat(SET.long, SET.long - SET.slimmer),
      opening: flat(SET.opening + 2, SET.opening + 2 - SET.slimmer),
      zone: 'brimUnder',
      plug: flat(SET.crown - 1, (SET.crown - 1) / 1.24),
    }),
  ],
});
