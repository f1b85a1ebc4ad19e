import { boardsBelow, brimNames, faceQuarters, hollowInside } from '../parts/board-parts.ts';
import { quarters } from '../parts/crown-parts.ts';
import type { DrawingView, Point } from '../shape.ts';
import { fromAbove, fromRight } from '../tools/camera.ts';
import { arc, flat, type Level, onLevel, seenArc, seenArea, turned, wholeRing } from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, closedLine, contour, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

const TILT = 26;

/** Flange: a ring board whose upper face is curved as a brim is set; no groove, for the felt is only ironed on it. */
const FLANGE = { long: 148, slimmer: 17, edge: 34, opening: 84, mouth: 24 };
const flangeFace: Point[] = [
  [FLANGE.long, FLANGE.edge],
  [140, 25],
  [122, 17],
  [102, 18],
  [FLANGE.opening, FLANGE.mouth],
];

function flangeSide(): DrawingView {
  const options = { wideOf: (half: number): number => half - FLANGE.slimmer };
  const wall = turned(
    [
      [
        [FLANGE.long - 5, 0],
        [FLANGE.long, FLANGE.edge],
      ],
    ],
    options,
  );
  const face = turned([flangeFace], options);
  const floor = 20 + FLANGE.edge * 0.9 + (FLANGE.long - FLANGE.slimmer) * 0.44;
  const see = fromRight(160, floor, TILT);
  const [outer, mouth, lowest] = [
    face[0] as Level,
    flat(FLANGE.opening, FLANGE.opening - FLANGE.slimmer, 0, FLANGE.mouth),
    wall[0] as Level,
  ];
  const bottom = floor + lowest.wide * see.down;
  const trough = (share: number): Level => {
    const index = Math.round(share * (face.length - 1));
    return face[index] as Level;
  };
  return view('side', Math.round(bottom + 40), {
    outline: [
      ...groundShade(see, lowest),
      ...bodyOutline(see, wall, { grounded: true }),
      contour(wholeRing(see, outer), 'paper'),
      // The far side of the dish shows the fall from edge to trough; the near side is hidden behind its own edge.
      ...[0.12, 0.2, 0.28, 0.36].map((share, k) => line(arc(see, trough(share), 200 + k * 7, 340 - k * 7), 'hatch')),
      line(arc(see, trough(0.55), 168, 372), 'hatch'),
      ...[0.62, 0.7, 0.78, 0.86].map((share, k) => line(arc(see, trough(share), 66 - k * 6, 8 + k * 5), 'hatch')),
      ...hollowInside(see, mouth, FLANGE.mouth),
      closedLine(wholeRing(see, { ...mouth, long: mouth.long + 3, wide: mouth.wide + 3 }), 'hatch'),
      ...roundShading(see, wall, { from: 3, to: FLANGE.edge - 3, gap: 3.2, reach: 34 }),
      line(seenArc(see, outer), 'contour'),
      swelling(arc(see, outer, 340, 200), 1.8),
      swelling(arc(see, lowest, 150, 4), 2.4),
    ],
    zones: () => [
      ...faceQuarters(see, (from, to) => arc(see, outer, from, to), mouth, arc(see, mouth, 0, -180)),
      zone('headOpening', wholeRing(see, mouth)),
      zone('lowerEdge', seenArea(see, wall)),
    ],
    lettering: [frontIsRight(290, bottom + 26)],
  });
}

function flangePlan(): DrawingView {
  const middle = 16 + FLANGE.long;
  const see = fromAbove(160, middle);
  const at = (long: number): Level => flat(long, long - FLANGE.slimmer);
  const ring = (long: number): string => closedPath(wholeRing(see, at(long)));
  return view('plan', middle + FLANGE.long + 52, {
    outline: [
      contour(wholeRing(see, at(FLANGE.long)), 'paper'),
      closedLine(wholeRing(see, at(114)), 'hatch'),
      ...planShading(see, [144, 140.5, 137, 133.5, 130, 126.5].map(at), { middle: 132, reach: 46 }),
      ...planShading(see, [88, 91.5, 95, 98.5, 102].map(at), { middle: -48, reach: 46 }),
      { ...contour(wholeRing(see, at(FLANGE.opening)), 'shade'), weight: 'contour' },
      ...planShading(see, [81, 78, 75, 72, 69].map(at), { middle: 132, reach: 42 }),
      ...[0, 180].map((degrees) =>
        line([onLevel(see, at(FLANGE.opening + 4), degrees), onLevel(see, at(FLANGE.opening + 14), degrees)]),
      ),
      swelling(arc(see, at(FLANGE.long), 14, -112), 2.6),
    ],
    zones: () => [
      ...quarters(see, at(FLANGE.long - 9), at(FLANGE.opening), brimNames),
      zone('lowerEdge', without(ring(FLANGE.long), ring(FLANGE.long - 9))),
      zone('headOpening', ring(FLANGE.opening)),
      tag(6, middle + FLANGE.long - 4),
    ],
    lettering: [frontIsDown(160, middle + FLANGE.long + 24)],
  });
}

export const flange = drawing('flange', 'side', {
  plan: flangePlan,
  side: flangeSide,
  under: () =>
    boardsBelow({
      edge: flat(FLANGE.long - 4, FLANGE.long - 4 - FLANGE.slimmer),
      opening: flat(FLANGE.opening, FLANGE.opening - FLANGE.slimmer),
      zone: 'brimUnder',
    }),
});
