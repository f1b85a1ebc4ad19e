import { boardsBelow, brimNames, faceQuarters, hollowInside } from './board-parts.ts';
import { fromAbove, fromBelow, fromRight } from './camera.ts';
import { quarters, sideNames } from './crown-parts.ts';
import { arc, flat, type Level, levelAt, onLevel, reachUp, seenArc, seenArea, turned, wholeRing } from './oval-body.ts';
import { closedPath, isInside, without } from './path.ts';
import { bodyOutline, contour, line, planShading, roundShading, swelling } from './pen.ts';
import type { BlockDrawing, DrawingView, Point, Stroke } from './shape.ts';
import type { BareZone } from './spots.ts';
import { frontIsDown, frontIsRight, groundShade, tag, view, zone } from './view.ts';

/** Oval rings and dishes: the band block, the hatter's flange, the pressing pan. */

const closed = (points: Point[]): Point[] => [...points, points[0] as Point];
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
    zones: [
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
    zones: [
      ...between(outer, rim, sideNames),
      zone('collar', without(...between(rim, inner, sideNames).map(({ d }) => d))),
      zone('headOpening', ring(inner)),
      zone('glueLine', without(...strips)),
      tag(6, 258),
    ],
    lettering: [frontIsDown(160, 288)],
  });
}

export const bandBlock = (): BlockDrawing => ({ id: 'bandBlock', face: 'side', views: [bandPlan(), bandSide()] });

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
      line(closed(wholeRing(see, { ...mouth, long: mouth.long + 3, wide: mouth.wide + 3 })), 'hatch'),
      ...roundShading(see, wall, { from: 3, to: FLANGE.edge - 3, gap: 3.2, reach: 34 }),
      line(seenArc(see, outer), 'contour'),
      swelling(arc(see, outer, 340, 200), 1.8),
      swelling(arc(see, lowest, 150, 4), 2.4),
    ],
    zones: [
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
      line(closed(wholeRing(see, at(114))), 'hatch'),
      ...planShading(see, [144, 140.5, 137, 133.5, 130, 126.5].map(at), { middle: 132, reach: 46 }),
      ...planShading(see, [88, 91.5, 95, 98.5, 102].map(at), { middle: -48, reach: 46 }),
      { ...contour(wholeRing(see, at(FLANGE.opening)), 'shade'), weight: 'contour' },
      ...planShading(see, [81, 78, 75, 72, 69].map(at), { middle: 132, reach: 42 }),
      ...[0, 180].map((degrees) =>
        line([onLevel(see, at(FLANGE.opening + 4), degrees), onLevel(see, at(FLANGE.opening + 14), degrees)]),
      ),
      swelling(arc(see, at(FLANGE.long), 14, -112), 2.6),
    ],
    zones: [
      ...quarters(see, at(FLANGE.long - 9), at(FLANGE.opening), brimNames),
      zone('lowerEdge', without(ring(FLANGE.long), ring(FLANGE.long - 9))),
      zone('headOpening', ring(FLANGE.opening)),
      tag(6, middle + FLANGE.long - 4),
    ],
    lettering: [frontIsDown(160, middle + FLANGE.long + 24)],
  });
}

export const flange = (): BlockDrawing => ({
  id: 'flange',
  face: 'side',
  views: [
    flangePlan(),
    flangeSide(),
    boardsBelow({
      edge: flat(FLANGE.long - 4, FLANGE.long - 4 - FLANGE.slimmer),
      opening: flat(FLANGE.opening, FLANGE.opening - FLANGE.slimmer),
      zone: 'brimUnder',
    }),
  ],
});

/** Pressing pan: the female die of a boater, spun in sheet metal; crown below, brim as flange, a lug at either end. */
const PAN = { rim: 134, slimmer: 17, high: 58, lip: 86, floor: 76, deep: 50, lug: 17 };

function panSide(): DrawingView {
  const options = { wideOf: (half: number): number => Math.max(half - PAN.slimmer, 1) };
  const bowl = turned(
    [
      [
        [PAN.floor - 4, 0],
        [PAN.floor + 3, 3],
        [PAN.floor + 7, 12],
        [PAN.lip + 3, PAN.high - 2],
      ],
    ],
    options,
  );
  const sheet = turned(
    [
      [
        [PAN.rim, PAN.high - 3],
        [PAN.rim, PAN.high],
      ],
    ],
    options,
  );
  const floor = 22 + PAN.high * 0.9 + (PAN.rim - PAN.slimmer) * 0.44;
  const see = fromRight(160, floor, TILT);
  const at = (long: number, up: number = PAN.high): Level => flat(long, long - PAN.slimmer, 0, up);
  const [outer, lip, bed] = [levelAt(sheet, PAN.high), at(PAN.lip), at(PAN.floor, PAN.high - PAN.deep)];
  const mouth = wholeRing(see, lip);
  const inMouth = (points: Point[]): Point[] => points.filter((point) => isInside([mouth], point));
  const lug = (sign: 1 | -1): Point[] => {
    const [x, y] = onLevel(see, outer, sign > 0 ? 0 : 180);
    return [
      [x - sign * 6, y - 8],
      [x + sign * (PAN.lug - 4), y - 7],
      [x + sign * PAN.lug, y - 3],
      [x + sign * PAN.lug, y + 3],
      [x + sign * (PAN.lug - 4), y + 7],
      [x - sign * 6, y + 9],
    ];
  };
  const bottom = floor + (PAN.floor - PAN.slimmer) * see.down;
  const nearBowl = seenArea(see, bowl);
  const under = arc(see, outer, 0, 180).map(([x, y]): Point => [x, y + 3]);
  // Of the bowl only what hangs below the flange is seen.
  const edgeAt = (x: number): number =>
    Math.max(...under.filter(([ux]) => Math.abs(ux - x) < 9).map(([, uy]) => uy), -1000);
  const shown = nearBowl.filter(([x, y]) => y > edgeAt(x));
  const ordered = [...shown].sort(([a], [b]) => a - b);
  const left = (ordered[0] as Point)[0];
  const right = (ordered[ordered.length - 1] as Point)[0];
  const lintel = under.filter(([x]) => x > left && x < right).reverse();
  return view('side', Math.round(bottom + 44), {
    outline: [
      ...[0, 1, 2, 3].map((k): Stroke => {
        const [x, y] = onLevel(see, bowl[0] as Level, 16 + k * 13);
        return line(
          [
            [x + 3, y + 1.5],
            [x + 34 - k * 5, y + 1.5],
          ],
          'hatch',
        );
      }),
      ...bodyOutline(see, bowl, { grounded: true }),
      ...roundShading(see, bowl, { from: 4, to: PAN.high - 8, gap: 3, reach: 60 }),
      contour(lug(1), 'paper'),
      contour(lug(-1), 'paper'),
      ...bodyOutline(see, sheet),
      contour(wholeRing(see, outer), 'paper'),
      line(closed(wholeRing(see, at(PAN.rim - 4))), 'hatch'),
      ...[0.2, 0.36, 0.52, 0.68].map((share, k) =>
        line(arc(see, at(PAN.lip + 6 + share * 30), 36 - k * 4, -12 + k * 4), 'hatch'),
      ),
      contour(mouth, 'shade'),
      line(closed(wholeRing(see, at(PAN.lip + 3.5))), 'hatch'),
      // Sheen on the far wall: strokes straight down, then the floor beyond them.
      ...Array.from({ length: 26 }, (_, k): Stroke => {
        const angle = 190 + (160 * k) / 25;
        const [ax, ay] = onLevel(see, lip, angle);
        const [bx, by] = onLevel(see, bed, angle);
        const stop = 0.5 + 0.42 * Math.abs(Math.sin(k * 0.42));
        return line(
          inMouth([
            [ax, ay + 1],
            [ax + (bx - ax) * stop * 0.5, ay + (by - ay) * stop * 0.5],
            [ax + (bx - ax) * stop, ay + (by - ay) * stop],
          ]),
          'hatch',
        );
      }),
      {
        ...contour(
          inMouth(arc(see, bed, 170, 370, 2)).concat(
            inMouth(arc(see, lip, 0, 180, 2).map(([x, y]): Point => [x, y - 0.6])),
          ),
          'paper',
        ),
        weight: 'detail',
      },
      ...[8, 16].map((inset) =>
        line(inMouth(arc(see, at(PAN.floor - inset, PAN.high - PAN.deep), 190, 350, 2)), 'hatch'),
      ),
      line(arc(see, lip, 0, 360), 'contour'),
      ...[1, -1].map((sign): Stroke => {
        const [x, y] = onLevel(see, outer, sign > 0 ? 0 : 180);
        return {
          ...contour(
            Array.from(
              { length: 16 },
              (_, k): Point => [x + sign * 9 + 3 * Math.cos((k * Math.PI) / 8), y + 2.2 * Math.sin((k * Math.PI) / 8)],
            ),
            'shade',
          ),
          weight: 'detail',
        };
      }),
      swelling(
        arc(see, outer, 172, 8).map(([x, y]): Point => [x, y + 2.4]),
        2,
      ),
      swelling(arc(see, bowl[0] as Level, 150, 10), 2.2),
    ],
    zones: [
      ...faceQuarters(see, (from, to) => arc(see, outer, from, to), lip, arc(see, lip, 0, -180)),
      zone('interior', mouth),
      zone('sideRight', [...lintel, ...[...ordered].filter(([, y]) => y > edgeAt(160) - 40)]),
    ],
    lettering: [frontIsRight(290, bottom + 28)],
  });
}

function panPlan(): DrawingView {
  const see = fromAbove(160, 172);
  const at = (long: number): Level => flat(long, long - PAN.slimmer);
  const ring = (long: number): string => closedPath(wholeRing(see, at(long)));
  const lug = (sign: 1 | -1): Point[] =>
    (
      [
        [128, 13],
        [146, 12],
        [151, 6],
        [151, -6],
        [146, -12],
        [128, -13],
      ] as const
    ).map(([forward, right]) => see([sign * forward, right, 0]));
  const bolt = (sign: 1 | -1): Stroke => ({
    ...contour(
      Array.from({ length: 20 }, (_, k) =>
        see([sign * 142 + 4 * Math.cos((k * Math.PI) / 10), 4 * Math.sin((k * Math.PI) / 10), 0]),
      ),
      'shade',
    ),
    weight: 'detail',
  });
  return view('plan', 372, {
    outline: [
      contour(lug(1), 'paper'),
      contour(lug(-1), 'paper'),
      bolt(1),
      bolt(-1),
      contour(wholeRing(see, at(PAN.rim)), 'paper'),
      line(closed(wholeRing(see, at(PAN.rim - 4))), 'hatch'),
      ...planShading(see, [127, 123.5, 120, 116.5].map(at), { reach: 36 }),
      contour(wholeRing(see, at(PAN.lip + 4)), 'shade'),
      ...planShading(see, [87, 83.5, 80, 76.5, 73].map(at), { middle: 132, reach: 52 }),
      contour(wholeRing(see, at(58)), 'paper'),
      line(closed(wholeRing(see, at(52))), 'hatch'),
      ...planShading(see, [48, 44.5, 41, 37.5].map(at), { middle: 132, reach: 34 }),
      swelling(arc(see, at(PAN.rim), 14, -112), 2.6),
    ],
    zones: [
      zone('interior', ring(58)),
      ...quarters(see, at(PAN.lip + 4), at(58)),
      ...quarters(see, at(PAN.rim - 8), at(PAN.lip + 4), brimNames),
      zone('lowerEdge', without(ring(PAN.rim), ring(PAN.rim - 8))),
      tag(6, 310),
    ],
    lettering: [frontIsDown(160, 344)],
  });
}

function panUnder(): DrawingView {
  const see = fromBelow(160, 156);
  const at = (long: number): Level => flat(long, long - PAN.slimmer);
  const ring = (long: number): string => closedPath(wholeRing(see, at(long)));
  return view('under', 340, {
    outline: [
      contour(wholeRing(see, at(PAN.rim)), 'paper'),
      line(closed(wholeRing(see, at(PAN.rim - 4))), 'hatch'),
      ...planShading(see, [93, 96.5, 100, 103.5, 107].map(at), { middle: 48, reach: 48 }),
      contour(wholeRing(see, at(PAN.lip + 3)), 'paper'),
      ...planShading(see, [86, 83, 80, 77, 74].map(at), { middle: 48, reach: 44 }),
      line(closed(wholeRing(see, at(58)))),
      swelling(arc(see, at(PAN.rim), -12, 112), 2.6),
      swelling(arc(see, at(PAN.lip + 3), 0, 100), 2),
    ],
    zones: [
      zone('base', ring(58)),
      ...quarters(see, at(PAN.lip + 3), at(58), sideNames),
      zone('jointFace', without(ring(PAN.rim), ring(PAN.lip + 3))),
    ],
    lettering: [{ at: [160, 128], text: '7', role: 'stamp' }, frontIsDown(160, 312)],
  });
}

export const pressingPan = (): BlockDrawing => ({
  id: 'pressingPan',
  face: 'side',
  views: [panPlan(), panSide(), panUnder()],
});
