import { fromAbove, fromBelow, fromRight } from './camera.ts';
import { stemHole } from './crown-parts.ts';
import { arc, between, flat, type Level, reachUp, seenArc, seenArea, turned, wholeRing } from './oval-body.ts';
import { closedPath, ovalPath, without } from './path.ts';
import { bodyOutline, contour, line, planShading, roundShading, swelling } from './pen.ts';
import type { BlockDrawing, DrawingView, Point, Stroke } from './shape.ts';
import { frontIsDown, frontIsRight, groundShade, tag, view, zone } from './view.ts';

/** What holds a block or a hat: the turned stand, and the stretcher with its screw. */

const round = { ratio: 1 };
const closed = (points: Point[]): Point[] => [...points, points[0] as Point];

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
    zones: [
      zone('base', seenArea(see, bodies.foot)),
      zone('sideRight', [
        ...seenArea(
          see,
          turned(
            [
              [
                [26, 33],
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
      zone(
        'tip',
        without(closedPath(seenArea(see, bodies.plate)), closedPath(seenArea(see, between(bodies.dowel, 163, 165)))),
      ),
      zone('dowel', seenArea(see, between(bodies.dowel, 166, 193.9))),
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
      line(closed(wholeRing(see, at(93))), 'hatch'),
      ...planShading(see, [89, 86, 83, 80].map(at), { reach: 38 }),
      ...planShading(see, [63, 66, 69, 72].map(at), { reach: 44 }),
      contour(wholeRing(see, at(60)), 'paper'),
      ...planShading(see, [20, 23, 26, 29].map(at), { reach: 40 }),
      contour(wholeRing(see, at(17)), 'paper'),
      line(closed(wholeRing(see, at(13.5))), 'hatch'),
      ...planShading(see, [11, 8.5, 6].map(at), { reach: 30 }),
      swelling(arc(see, at(98), 12, -112), 2.6),
      swelling(arc(see, at(60), 0, -100), 1.8),
    ],
    zones: [
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
      ...[92, 60, 56].map((radius) => line(closed(wholeRing(see, at(radius))), 'hatch')),
      ...hole.outline,
      swelling(arc(see, at(98), -12, 112), 2.6),
    ],
    zones: [zone('base', without(closedPath(wholeRing(see, at(98))), hole.path)), hole.zone],
    lettering: [],
  });
}

export const stand = (): BlockDrawing => ({
  id: 'stand',
  face: 'side',
  views: [standPlan(), standSide(), standUnder()],
});

/** The stretcher: two half-ovals pushed apart lengthwise by a screw with a left- and a right-hand thread. */
const JACK = { long: 96, wide: 90, gap: 22, high: 46 };

const half = (sign: 1 | -1): { level: (by?: number, up?: number) => Level; from: number; to: number } => ({
  level: (by = 0, up = 0) => flat(JACK.long - by, JACK.wide - by, sign * JACK.gap, up),
  from: sign > 0 ? -90 : 90,
  to: sign > 0 ? 90 : 270,
});

function stretcherPlan(): DrawingView {
  const see = fromAbove(160, 138);
  const shape = (sign: 1 | -1, by = 0): Point[] => {
    const { level, from, to } = half(sign);
    return arc(see, level(by), from, to, 4);
  };
  // A strip along the flat face, 12 wide, where the two halves would meet.
  const strip = (sign: 1 | -1, from: number, to: number): Point[] => [
    see([sign * JACK.gap, from, 0]),
    see([sign * JACK.gap, to, 0]),
    see([sign * (JACK.gap + 12), to, 0]),
    see([sign * (JACK.gap + 12), from, 0]),
  ];
  const trimmed = (sign: 1 | -1): Point[] => {
    const { level, from, to } = half(sign);
    const cut = (Math.asin(12 / JACK.long) * 180) / Math.PI;
    const edge = arc(see, level(), from + cut, to - cut, 4);
    return edge;
  };
  const plate = (sign: 1 | -1): Stroke[] => {
    const corners = [
      see([sign * JACK.gap, -22, 0]),
      see([sign * JACK.gap, 22, 0]),
      see([sign * (JACK.gap + 11), 22, 0]),
      see([sign * (JACK.gap + 11), -22, 0]),
    ];
    return [
      { ...contour(corners, 'paper'), weight: 'detail' },
      ...[-15, 15].map((right) => ({
        ...contour(
          Array.from({ length: 14 }, (_, k) =>
            see([
              sign * (JACK.gap + 5.5) + 2.6 * Math.cos((k * Math.PI) / 7),
              right + 2.6 * Math.sin((k * Math.PI) / 7),
              0,
            ]),
          ),
          'shade',
        ),
        weight: 'detail' as const,
      })),
    ];
  };
  const screw = 60;
  const thread = Array.from({ length: 17 }, (_, k) => -screw + 8 + k * ((screw * 2 - 16) / 16));
  const dowel = closedPath([
    see([-JACK.gap + 2, -24, 0]),
    see([-JACK.gap + 2, 24, 0]),
    see([JACK.gap - 2, 24, 0]),
    see([JACK.gap - 2, -24, 0]),
  ]);
  return view('plan', 322, {
    outline: [
      contour(shape(1), 'paper'),
      contour(shape(-1), 'paper'),
      ...([1, -1] as const).flatMap((sign) => [line(shape(sign, 7), 'hatch'), ...plate(sign)]),
      ...planShading(
        see,
        [4, 7, 10, 13, 16].map((by) => half(1).level(by)),
        { reach: 34 },
      ),
      // The tunnel of the screw shows as two dashed lines inside each half.
      ...([1, -1] as const).flatMap((sign) =>
        [-5, 5].map((right) =>
          line([see([sign * (JACK.gap + 12), right, 0]), see([sign * (screw + 6), right, 0])], 'hidden'),
        ),
      ),
      contour(
        [see([-JACK.gap, -5, 0]), see([-JACK.gap, 5, 0]), see([JACK.gap, 5, 0]), see([JACK.gap, -5, 0])],
        'paper',
      ),
      ...thread
        .filter((forward) => Math.abs(forward) < JACK.gap - 1)
        .map((forward) => line([see([forward - 1.2, -5, 0]), see([forward + 1.2, 5, 0])])),
      contour(
        Array.from({ length: 28 }, (_, k) =>
          see([11 * Math.cos((k * Math.PI) / 14), 13 * Math.sin((k * Math.PI) / 14), 0]),
        ),
        'paper',
      ),
      // The bar that turns it.
      contour([see([-3, 13, 0]), see([-3, 62, 0]), see([3, 62, 0]), see([3, 13, 0])], 'paper'),
      contour(
        Array.from({ length: 20 }, (_, k) =>
          see([6 * Math.cos((k * Math.PI) / 10), 66 + 6 * Math.sin((k * Math.PI) / 10), 0]),
        ),
        'paper',
      ),
      swelling(arc(see, half(1).level(), 12, -88), 2.6),
      swelling([see([-JACK.gap, 88, 0]), see([-JACK.gap, 0, 0]), see([-JACK.gap, -88, 0])], 2),
    ],
    zones: [
      zone('sideFront', trimmed(1)),
      zone('sideBack', trimmed(-1)),
      zone('jointFace', without(closedPath(strip(1, -86, 86)), closedPath(strip(-1, -86, 86)))),
      zone('dowel', dowel),
      tag(6, 264),
    ],
    lettering: [frontIsDown(160, 290)],
  });
}

function stretcherSide(): DrawingView {
  const tilt = 24;
  const see = fromRight(160, 112, tilt);
  const part = (sign: 1 | -1) => {
    const { level } = half(sign);
    const [from, to] = sign > 0 ? [0, 90] : [180, 90];
    const top = arc(see, level(0, JACK.high), half(sign).from, half(sign).to, 4);
    const wall = [...arc(see, level(0, JACK.high), from, to, 4), ...arc(see, level(), to, from, 4)];
    return { top, wall, level };
  };
  const [front, back] = [part(1), part(-1)];
  const screwY = see([0, 0, JACK.high / 2])[1];
  const turn = (x: number): Stroke =>
    line([
      [x - 1.4, screwY - 4.6],
      [x + 1.4, screwY + 4.6],
    ]);
  return view('side', 206, {
    outline: [
      ...groundShade(see, { ...flat(JACK.long, JACK.wide, JACK.gap) }),
      contour(
        [
          [160 - JACK.gap, screwY - 5],
          [160 + JACK.gap, screwY - 5],
          [160 + JACK.gap, screwY + 5],
          [160 - JACK.gap, screwY + 5],
        ],
        'paper',
      ),
      ...[-20, -15.5, 15.5, 20].map((dx) => turn(160 + dx)),
      contour(
        [
          [160 - 11, screwY - 10],
          [160 + 11, screwY - 10],
          [160 + 11, screwY + 10],
          [160 - 11, screwY + 10],
        ],
        'paper',
      ),
      ...[-4, 0, 4].map((dy) =>
        line(
          [
            [160 - 9, screwY + dy + 3],
            [160 + 9, screwY + dy + 3],
          ],
          'hatch',
        ),
      ),
      contour(
        [
          [157, screwY + 4],
          [163, screwY + 4],
          [163, screwY + 46],
          [157, screwY + 46],
        ],
        'paper',
      ),
      contour(
        Array.from(
          { length: 20 },
          (_, k): Point => [160 + 6 * Math.cos((k * Math.PI) / 10), screwY + 49 + 5 * Math.sin((k * Math.PI) / 10)],
        ),
        'paper',
      ),
      contour(back.wall, 'paper'),
      contour(front.wall, 'paper'),
      contour(back.top, 'paper'),
      contour(front.top, 'paper'),
      line(arc(see, front.level(7, JACK.high), -84, 84), 'hatch'),
      line(arc(see, back.level(7, JACK.high), 96, 264), 'hatch'),
      ...Array.from({ length: 11 }, (_, k) =>
        line(arc(see, front.level(0, 3 + k * 3.8), 3, 26 + 6 * Math.sin(k * 2.3)), 'hatch'),
      ),
      ...Array.from({ length: 11 }, (_, k) =>
        line(arc(see, back.level(0, 3 + k * 3.8), 91, 100 + 3 * Math.sin(k * 2.3)), 'hatch'),
      ),
      ...[0.3, 0.62].map((share, k) => line(arc(see, front.level(0, JACK.high * share), 50 - k * 8, 82), 'hatch')),
      ...[0.38, 0.7].map((share, k) => line(arc(see, back.level(0, JACK.high * share), 112, 146 + k * 10), 'hatch')),
      swelling(arc(see, front.level(), 4, 88), 2.4),
      swelling(arc(see, back.level(), 92, 170), 2),
    ],
    zones: [
      zone('sideFront', without(closedPath(front.wall), closedPath(front.top))),
      zone('sideBack', without(closedPath(back.wall), closedPath(back.top))),
      zone('dowel', ovalPath([160, screwY + 20], JACK.gap - 2, 44)),
    ],
    lettering: [frontIsRight(290, 192)],
  });
}

export const stretcher = (): BlockDrawing => ({
  id: 'stretcher',
  face: 'plan',
  views: [stretcherPlan(), stretcherSide()],
});
