import type { DrawingView, Point, Stroke } from '../shape.ts';
import { fromAbove, fromRight } from '../tools/camera.ts';
import { arc, flat, type Level } from '../tools/oval-body.ts';
import { closedPath, ovalPath, without } from '../tools/path.ts';
import { contour, line, planShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

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
    zones: () => [
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
    zones: () => [
      zone('sideFront', without(closedPath(front.wall), closedPath(front.top))),
      zone('sideBack', without(closedPath(back.wall), closedPath(back.top))),
      zone('dowel', ovalPath([160, screwY + 20], JACK.gap - 2, 44)),
    ],
    lettering: [frontIsRight(290, 192)],
  });
}

export const stretcher = drawing('stretcher', 'plan', { plan: stretcherPlan, side: stretcherSide });
