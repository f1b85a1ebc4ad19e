import { baseBelow, quarters } from '../parts/crown-parts.ts';
import type { DrawingView, Point, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromRight, type Space } from '../tools/camera.ts';
import { arc, flat, type Level, seenArea, turned, wholeRing } from '../tools/oval-body.ts';
import { closedPath, cutBy, without } from '../tools/path.ts';
import { bodyOutline, contour, line, planShading, roundShading, swelling, through } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

/** The dolly head: a stylised head on a long neck, cloth over a hard core, on a turned foot. */

/** The profile, from the front of the bust up over the face and down the nape: [forward, up]. */
const profile: readonly (readonly [number, number])[] = [
  [52, 14],
  [50, 24],
  [40, 40],
  [30, 55],
  [25, 72],
  [26, 88],
  [32, 97],
  [44, 101],
  [53, 107],
  [55, 115],
  [52.5, 122],
  [56.5, 127.5],
  [53.5, 132],
  [57.5, 137],
  [56.5, 143],
  [68, 149],
  [66, 155],
  [58, 168],
  [56, 176],
  [60, 188],
  [61, 204],
  [54, 224],
  [36, 242],
  [8, 252],
  [-24, 250],
  [-54, 236],
  [-76, 210],
  [-82, 180],
  [-76, 152],
  [-62, 130],
  [-46, 112],
  [-37, 94],
  [-35, 76],
  [-39, 58],
  [-48, 42],
  [-56, 26],
  [-58, 14],
];
const FOOT = { half: 64, high: 14 };

function headSide(): DrawingView {
  const floor = 266;
  const see = fromRight(162, floor, 12);
  const plain = ([forward, up]: readonly [number, number]): Space => [forward, 0, up];
  const outline = through(see, profile.map(plain));
  const foot = turned(
    [
      [
        [FOOT.half, 0],
        [FOOT.half, FOOT.high],
      ],
      [
        [FOOT.half, FOOT.high],
        [1, FOOT.high],
      ],
    ],
    { ratio: 1.15 },
  );
  // The bust ends in a round cut that stands on the foot.
  const hem = arc(see, { ...flat(55, 48, -3), up: FOOT.high }, 180, 0);
  const head = [...outline, ...hem];
  const drawn = (points: readonly (readonly [number, number])[]): Point[] => through(see, points.map(plain));
  const hatch = (points: readonly (readonly [number, number])[]): Stroke => line(drawn(points), 'hatch');
  const at = (forward: number, up: number): Point => see([forward, 0, up]);
  /** Positive on the right of a line walked from one point to the other: above one that runs to the back. */
  const side =
    (from: Point, to: Point) =>
    ([x, y]: Point): number =>
      (to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]);
  const jaw = side(at(60, 97), at(-60, 124));
  const brow = side(at(80, 208), at(-90, 208));
  const face = side(at(26, 90), at(14, 240));
  const nape = side(at(-30, 90), at(-40, 240));
  const not =
    (test: (point: Point) => number) =>
    (point: Point): number =>
      -test(point);
  const skull = cutBy(head, jaw);
  const below = cutBy(skull, not(brow));
  return view('side', 300, {
    outline: [
      ...groundShade(see, foot[0] as Level),
      ...bodyOutline(see, foot, { grounded: true }),
      ...roundShading(see, foot, { from: 2.5, to: FOOT.high - 2, gap: 2.8, reach: 44 }),
      line(arc(see, { ...flat(FOOT.half, FOOT.half / 1.15), up: FOOT.high }, 0, 180)),
      contour(head, 'paper'),
      // Cheek and temple: a few strokes that follow the bone.
      hatch([
        [40, 108],
        [30, 112],
        [16, 122],
        [6, 136],
      ]),
      hatch([
        [43, 112],
        [33, 116],
        [21, 126],
        [12, 138],
      ]),
      hatch([
        [46, 116],
        [37, 120],
        [27, 129],
      ]),
      // The ear, the closed eye, the mouth: as little as says "head".
      line(
        drawn([
          [-4, 168],
          [-14, 172],
          [-19, 162],
          [-15, 150],
          [-7, 142],
          [-3, 148],
        ]),
      ),
      hatch([
        [-7, 164],
        [-13, 165],
        [-14, 157],
        [-10, 151],
      ]),
      swelling(
        drawn([
          [51, 165],
          [45, 162.5],
          [38, 164],
        ]),
        1.6,
      ),
      hatch([
        [54, 177],
        [46, 180],
        [37, 178],
      ]),
      line(
        drawn([
          [53.5, 131.5],
          [48, 132.5],
          [44, 131],
        ]),
      ),
      hatch([
        [56, 144],
        [52, 145.5],
        [50.5, 149],
      ]),
      // Shade under the jaw and down the front of the neck.
      ...Array.from({ length: 8 }, (_, k) =>
        hatch([
          [31 - k * 5, 98 + k * 1.6],
          [26.5 - k * 4.4, 93 + k * 1.2],
          [24 - k * 3.6, 74 + k * 3.4],
        ]),
      ),
      ...Array.from({ length: 8 }, (_, k) =>
        hatch([
          [48 - k * 2.2, 22 + k * 4.4],
          [43 - k * 2.4, 20 + k * 4.4],
          [34 - k * 2 + 2 * Math.sin(k * 2.3), 19.5 + k * 4.3],
        ]),
      ),
      // Forehead and crown, away from the light.
      ...Array.from({ length: 11 }, (_, k) =>
        hatch([
          [60.5 - Math.max(0, k - 5) ** 2 * 0.42, 190 + k * 4.2],
          [54 - Math.max(0, k - 5) ** 2 * 0.42, 191 + k * 4.2],
          [47 - Math.max(0, k - 4) ** 2 * 0.4 + 2 * Math.sin(k * 2.3), 191 + k * 4.1],
        ]),
      ),
      // The seam of the cover, over the head and down behind the ear, with its stitches.
      line(
        drawn([
          [-8, 251.5],
          [-22, 226],
          [-29, 190],
          [-28, 152],
          [-20, 112],
          [-12, 76],
          [-8, 40],
          [-8, 8],
        ]),
        'hidden',
      ),
      swelling(outline.slice(8, 140), 2),
      swelling(arc(see, foot[0] as Level, 150, 4), 2.2),
    ],
    zones: () => [
      zone('tip', cutBy(skull, brow)),
      zone('sideFront', cutBy(below, face)),
      zone('sideRight', cutBy(cutBy(below, not(face)), nape)),
      zone('sideBack', cutBy(below, not(nape))),
      zone('covering', cutBy(head, not(jaw))),
      zone(
        'base',
        without(
          closedPath(
            seenArea(
              see,
              turned(
                [
                  [
                    [FOOT.half, 0],
                    [FOOT.half, FOOT.high],
                  ],
                ],
                { ratio: 1.15 },
              ),
            ),
          ),
        ),
      ),
    ],
    lettering: [frontIsRight(290, 286)],
  });
}

function headPlan(): DrawingView {
  const see: Camera = fromAbove(160, 122);
  const skull = flat(74, 60, -6);
  const tip = flat(34, 18, -8);
  const nose = through(see, [
    [62, 8, 0],
    [74, 6, 0],
    [80, 0, 0],
    [74, -6, 0],
    [62, -8, 0],
  ]);
  const bust = flat(84, 96, -2);
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  return view('plan', 286, {
    outline: [
      contour(wholeRing(see, bust), 'paper'),
      ...planShading(see, [80, 83, 86, 89].map((wide) => flat(wide + 8, wide, -4)).slice(0, 3), { reach: 36 }),
      ...planShading(
        see,
        [64, 67, 70, 73].map((wide) => flat(wide + 14, wide, -6)),
        { middle: -62, reach: 40 },
      ),
      contour(nose, 'paper'),
      ...([1, -1] as const).map((sign) =>
        contour(
          through(see, [
            [4, sign * 58, 0],
            [6, sign * 66, 0],
            [-6, sign * 68, 0],
            [-14, sign * 60, 0],
          ]),
          'paper',
        ),
      ),
      contour(wholeRing(see, skull), 'paper'),
      ...planShading(
        see,
        [4, 7, 10, 13, 16, 19].map((by) => flat(74 - by, 60 - by, -6)),
        { reach: 36 },
      ),
      line([see([-80, 0, 0]), see([68, 0, 0])], 'hidden'),
      swelling(arc(see, skull, 8, -110), 2.4),
      swelling(arc(see, bust, 0, -100), 2.2),
    ],
    zones: () => [
      zone('tip', ring(tip)),
      ...quarters(see, skull, tip),
      zone('covering', without(ring(bust), ring(flat(76, 62, -6)))),
      tag(6, 226),
    ],
    lettering: [frontIsDown(160, 252)],
  });
}

export const poupee = drawing('poupee', 'side', {
  plan: headPlan,
  side: headSide,
  under: () => baseBelow(flat(96, 84)),
});
