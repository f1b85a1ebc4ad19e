import { brimNames } from '../parts/board-parts.ts';
import { baseBelow, centreMarks, quarters, seenSideNames } from '../parts/crown-parts.ts';
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

/** Crown and brim in one piece: a cloche. */

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
      swelling(frontEdge(see, between(bodies.crown, CLOCHE.rope, CLOCHE.shoulder))),
      swelling(
        between(bodies.slope, CLOCHE.edge, 60).map((level) => onLevel(see, level, -4)),
        1.8,
      ),
      swelling(arc(see, bodies.lip[0] as Level, 150, 4), 2.2),
    ],
    zones: () => [
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
  const see = fromAbove(160, 140);
  const edge = flat(138, 118, 6);
  const inner = flat(131, 111, 5.5);
  const rope = flat(92, 76, 1);
  const crown = flat(86, 70);
  const tip = flat(50, 34);
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  return view('plan', 338, {
    outline: [
      contour(wholeRing(see, edge), 'paper'),
      ...planShading(
        see,
        [3, 6, 9, 12].map((by) => flat(138 - by, 118 - by, 6 - by / 3)),
        { reach: 44 },
      ),
      line([...wholeRing(see, rope), onLevel(see, rope, 0)]),
      contour(wholeRing(see, crown), 'paper'),
      ...planShading(
        see,
        [4, 7, 10, 13, 16, 19, 22].map((by) => flat(86 - by, 70 - by)),
      ),
      ...centreMarks(see, flat(85, 69), 7),
      swelling(arc(see, edge, 14, -110), 2.6),
      swelling(arc(see, crown, 6, -100), 1.8),
    ],
    zones: () => [
      zone('tip', ring(tip)),
      ...quarters(see, crown, tip),
      ...quarters(see, inner, rope, brimNames),
      zone('ropeLine', without(ring(rope), ring(crown))),
      zone('edgeGroove', without(ring(edge), ring(inner))),
      tag(6, 280),
    ],
    lettering: [frontIsDown(160, 310)],
  });
}

export const fullShape = drawing('fullShape', 'side', {
  plan: clochePlan,
  side: clocheSide,
  under: () => baseBelow({ ...(clocheBodies().lip[0] as Level), shift: 0 }),
});
