import { stemHole } from '../parts/crown-parts.ts';
import type { DrawingView } from '../shape.ts';
import { fromAbove, fromBelow, fromRight } from '../tools/camera.ts';
import { arc, flat, type Level, reachUp, seenArc, seenArea, turned, wholeRing } from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, closedLine, contour, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import { drawing, groundShade, tag, view, zone } from '../tools/view.ts';

const round = { ratio: 1 };
const standBodies = () => ({
  foot: turned(
    [
      [
        [82, 0],
        [82, 10],
      ],
      [
        [82, 10],
        [40, 17],
      ],
    ],
    round,
  ),
  shaft: turned(
    [
      [
        [40, 17],
        [36, 21],
        [28, 30],
        [20, 46],
        [16.5, 64],
        [15, 82],
      ],
    ],
    round,
  ),
  bead: turned(
    [
      [
        [15, 80],
        [23, 83],
        [26.5, 90],
        [23, 97],
        [15, 100],
      ],
    ],
    round,
  ),
  neck: turned(
    [
      [
        [15, 100],
        [14, 122],
        [18, 140],
        [30, 151],
        [44, 154],
      ],
    ],
    round,
  ),
  plate: turned(
    [
      [
        [50, 154],
        [50, 163],
      ],
      [
        [50, 163],
        [1, 163],
      ],
    ],
    round,
  ),
  dowel: turned(
    [
      [
        [14, 163],
        [14, 190],
      ],
      [
        [14, 190],
        [11, 194],
      ],
      [
        [11, 194],
        [1, 194],
      ],
    ],
    round,
  ),
});

function standSide(): DrawingView {
  const bodies = standBodies();
  const floor = 20 + reachUp(bodies.dowel);
  const see = fromRight(160, floor);
  const foot = bodies.foot[0] as Level;
  const top = bodies.plate[bodies.plate.length - 1] as Level;
  // What the dowel hides of the plate: from its own foot to the plate's far edge.
  const behindDowel = [...arc(see, flat(14, 14, 0, 163), 180, 0), ...arc(see, flat(50, 50, 0, 163), -73.7, -106.3)];
  return view('side', Math.round(floor + 50), {
    outline: [
      ...groundShade(see, foot),
      ...bodyOutline(see, bodies.foot, { grounded: true }),
      line(seenArc(see, { ...foot, up: 10 })),
      ...roundShading(see, bodies.foot, { from: 2, to: 9, gap: 2.4, reach: 46 }),
      ...[44, 48, 52, 56].map((out, k) =>
        line(arc(see, flat(out, out, 0, 16.5 - k * 0.6), 30 - k * 3, -8 + k * 3), 'hatch'),
      ),
      ...bodyOutline(see, bodies.shaft),
      ...roundShading(see, bodies.shaft, { from: 24, to: 80, gap: 2.6, reach: 52 }),
      ...bodyOutline(see, bodies.bead),
      ...roundShading(see, bodies.bead, { from: 83, to: 97, gap: 2.4, reach: 56 }),
      ...bodyOutline(see, bodies.neck),
      ...roundShading(see, bodies.neck, { from: 102, to: 148, gap: 2.6, reach: 56 }),
      ...bodyOutline(see, bodies.plate),
      line(seenArc(see, { ...foot, ...top, long: 50, wide: 50, slope: foot.slope })),
      ...roundShading(see, bodies.plate, { from: 155.5, to: 162, gap: 2.2, reach: 46 }),
      ...[19, 23, 27].map((out, k) => line(arc(see, flat(out, out, 0, 163), 34 - k * 4, -10 + k * 4), 'hatch')),
      ...bodyOutline(see, bodies.dowel),
      line(seenArc(see, { ...foot, long: 14, wide: 14, up: 190 })),
      ...roundShading(see, bodies.dowel, { from: 165, to: 189, gap: 2.6, reach: 62 }),
      swelling(arc(see, foot, 150, 4), 2.4),
    ],
    zones: () => [
      zone('base', seenArea(see, bodies.foot)),
      zone('sideRight', [
        ...seenArea(
          see,
          turned(
            [
              [
                [20, 46],
                [17, 64],
                [17, 80],
                [24, 86],
                [24, 94],
                [17, 100],
                [15, 122],
                [18, 138],
              ],
            ],
            round,
          ),
        ),
      ]),
      zone('tip', without(closedPath(seenArea(see, bodies.plate)), closedPath(behindDowel))),
      zone('dowel', seenArea(see, bodies.dowel)),
    ],
    lettering: [],
  });
}

function standPlan(): DrawingView {
  const see = fromAbove(160, 116);
  const at = (radius: number): Level => flat(radius, radius);
  const ring = (radius: number): string => closedPath(wholeRing(see, at(radius)));
  return view('plan', 268, {
    outline: [
      contour(wholeRing(see, at(98)), 'paper'),
      closedLine(wholeRing(see, at(93)), 'hatch'),
      ...planShading(see, [89, 86, 83, 80].map(at), { reach: 38 }),
      ...planShading(see, [63, 66, 69, 72].map(at), { reach: 44 }),
      contour(wholeRing(see, at(60)), 'paper'),
      ...planShading(see, [20, 23, 26, 29].map(at), { reach: 40 }),
      contour(wholeRing(see, at(17)), 'paper'),
      closedLine(wholeRing(see, at(13.5)), 'hatch'),
      ...planShading(see, [11, 8.5, 6].map(at), { reach: 30 }),
      swelling(arc(see, at(98), 12, -112), 2.6),
      swelling(arc(see, at(60), 0, -100), 1.8),
    ],
    zones: () => [
      zone('base', without(ring(98), ring(60))),
      zone('tip', without(ring(60), ring(24))),
      zone('dowel', ring(24)),
      tag(6, 210),
    ],
    lettering: [],
  });
}

function standUnder(): DrawingView {
  const see = fromBelow(160, 116);
  const at = (radius: number): Level => flat(radius, radius);
  const hole = stemHole([160, 116], 12);
  return view('under', 234, {
    outline: [
      contour(wholeRing(see, at(98)), 'paper'),
      ...[92, 60, 56].map((radius) => closedLine(wholeRing(see, at(radius)), 'hatch')),
      ...hole.outline,
      swelling(arc(see, at(98), -12, 112), 2.6),
    ],
    zones: () => [zone('base', without(closedPath(wholeRing(see, at(98))), hole.path)), hole.zone],
    lettering: [],
  });
}

export const stand = drawing('stand', 'side', { plan: standPlan, side: standSide, under: standUnder });
