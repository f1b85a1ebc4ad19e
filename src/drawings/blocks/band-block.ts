import { hollowInside } from '../parts/board-parts.ts';
import { sideNames } from '../parts/crown-parts.ts';
import type { DrawingView, Point, Stroke } from '../shape.ts';
import { fromAbove, fromRight } from '../tools/camera.ts';
import { arc, flat, type Level, levelAt, onLevel, reachUp, turned, wholeRing } from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, contour, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import type { BareZone } from '../tools/spots.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

const TILT = 26;

/** Band block: a straight wall 60 mm high, built of four segments glued at the quarters. */
const BAND = { long: 116, slimmer: 22.5, high: 64, thick: 20 };

function bandSide(): DrawingView {
  const options = { wideOf: (half: number): number => half - BAND.slimmer };
  const wall = turned(
    [
      [
        [BAND.long, 0],
        [BAND.long, BAND.high],
      ],
    ],
    options,
  );
  const floor = 20 + reachUp(wall, TILT) + (BAND.long - BAND.slimmer) * 0.44;
  const see = fromRight(160, floor, TILT);
  const [outer, inner] = [
    levelAt(wall, BAND.high),
    flat(BAND.long - BAND.thick, BAND.long - BAND.slimmer - BAND.thick, 0, BAND.high),
  ];
  const lowest = wall[0] as Level;
  const bottom = floor + lowest.wide * see.down;
  const gap = 2;
  const corners = [50, 130, 230, 310];
  const joint = (degrees: number): Stroke[] => [
    line([onLevel(see, outer, degrees), onLevel(see, inner, degrees)]),
    ...(degrees < 180 ? [line([onLevel(see, outer, degrees), onLevel(see, lowest, degrees)])] : []),
  ];
  const strip = (degrees: number): string =>
    closedPath([...arc(see, lowest, degrees - gap, degrees + gap), ...arc(see, outer, degrees + gap, degrees - gap)]);
  const sector = (from: number, to: number): Point[] => [...arc(see, lowest, from, to), ...arc(see, outer, to, from)];
  return view('side', Math.round(bottom + 40), {
    outline: [
      ...groundShade(see, lowest),
      ...bodyOutline(see, wall, { grounded: true }),
      ...roundShading(see, wall, { from: 4, to: BAND.high - 2, gap: 3.6, reach: 36 }),
      contour(wholeRing(see, outer), 'paper'),
      ...hollowInside(see, inner, BAND.high),
      ...corners.flatMap(joint),
      swelling([onLevel(see, outer, 0), onLevel(see, lowest, 0)], 2),
      swelling(arc(see, lowest, 150, 4), 2.4),
    ],
    zones: () => [
      zone('sideFront', sector(0, 50 - gap)),
      zone('sideRight', sector(50 + gap, 130 - gap)),
      zone('sideBack', sector(130 + gap, 180)),
      zone('collar', without(closedPath(wholeRing(see, outer)), closedPath(wholeRing(see, inner)))),
      zone('headOpening', wholeRing(see, inner)),
      zone('glueLine', without(strip(50), strip(130))),
    ],
    lettering: [frontIsRight(290, bottom + 26)],
  });
}

function bandPlan(): DrawingView {
  const see = fromAbove(160, 140);
  const at = (by: number): Level => flat(120 - by, 120 - BAND.slimmer - by);
  const [outer, rim, inner] = [at(0), at(17.5), at(33)];
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  const degrees = (level: Level): number => (3.5 / level.long) * (180 / Math.PI);
  const corners = [50, 130, 230, 310];
  const strips = corners.map((angle) =>
    closedPath([
      ...arc(see, outer, angle - degrees(outer), angle + degrees(outer)),
      ...arc(see, inner, angle + degrees(inner), angle - degrees(inner)),
    ]),
  );
  const between = (from: Level, to: Level, names: typeof sideNames): BareZone[] =>
    names.map(([id, start, end]) =>
      zone(id, [
        ...arc(see, from, start + degrees(from), end - degrees(from)),
        ...arc(see, to, end - degrees(to), start + degrees(to)),
      ]),
    );
  return view('plan', 316, {
    outline: [
      contour(wholeRing(see, outer), 'paper'),
      ...planShading(see, [3, 6, 9, 12].map(at), { reach: 40 }),
      contour(wholeRing(see, inner), 'shade'),
      ...planShading(see, [34, 37, 40, 43, 46].map(at), { middle: 132, reach: 44 }),
      ...corners.map((angle) => line([onLevel(see, outer, angle), onLevel(see, inner, angle)])),
      swelling(arc(see, outer, 12, -112), 2.6),
    ],
    zones: () => [
      ...between(outer, rim, sideNames),
      zone('collar', without(...between(rim, inner, sideNames).map(({ d }) => d))),
      zone('headOpening', ring(inner)),
      zone('glueLine', without(...strips)),
      tag(6, 258),
    ],
    lettering: [frontIsDown(160, 288)],
  });
}

export const bandBlock = drawing('bandBlock', 'side', { plan: bandPlan, side: bandSide });
