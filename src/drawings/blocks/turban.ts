import { baseBelow, quarters } from '../parts/crown-parts.ts';
import type { DrawingView, Point, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromRight, type Space } from '../tools/camera.ts';
import { arc, flat, type Level, levelAt, onLevel, reachUp, seenArea, turned, wholeRing } from '../tools/oval-body.ts';
import { closedPath, curveThrough, cutBy, without } from '../tools/path.ts';
import { bodyOutline, contour, line, roundShading, swelling, through } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

/** A draped shape carved from the wood: rolls that spring from a knot at the front and open out toward the back. */

const KNOT = 88;
/** Heights at which the furrows between the rolls reach the back, from the lowest up. */
const FURROWS = [14, 44, 74, 101, 124] as const;
const EDGE = 12;

const drapedBody = () =>
  turned([
    [
      [92, EDGE],
      [105, 26],
      [112, 52],
      [112, 82],
      [102, 112],
      [80, 137],
      [46, 151],
      [0, 155],
    ],
  ]);

/** One furrow on the wearer's right: `along` runs from 0 at the knot to 1 at the back. */
function furrow(body: ReturnType<typeof drapedBody>, index: number, see: Camera): Point[] {
  const end = FURROWS[index] as number;
  return Array.from({ length: 31 }, (_, k) => {
    const along = k / 30;
    const near = KNOT + (end - KNOT) * 0.22;
    const up = end + (near - end) * (1 - along) ** 1.8 + 5 * Math.sin(Math.PI * along) * (index - 2.2) * 0.5;
    return onLevel(see, levelAt(body, Math.min(Math.max(up, EDGE), 154)), 6 + along * 172);
  });
}

/** Lines that keep a furrow company on its shaded side, each shorter than the last: how drapery is drawn. */
const company = (points: readonly Point[], offset: (point: Point, along: number) => Point, rows: number): Stroke[] =>
  Array.from({ length: rows }, (_, row): Stroke => {
    const [from, to] = [0.16 + row * 0.09, 0.84 - row * 0.07];
    const some = points.slice(Math.round(points.length * from), Math.round(points.length * to));
    return line(
      some.map((point, k) => offset(point, (row + 1) * Math.sin((Math.PI * (k + 0.5)) / some.length) ** 0.5)),
      'hatch',
    );
  });

function turbanSide(): DrawingView {
  const body = drapedBody();
  const rim = turned([
    [
      [92, 0],
      [92, EDGE],
    ],
  ]);
  const floor = 20 + reachUp(body);
  const see = fromRight(154, floor);
  const lines = FURROWS.map((_, index) => furrow(body, index, see));
  const pick = (index: number): Point[] => lines[index] as Point[];
  // Each roll swells a little beyond the smooth outline at the back.
  const roll = (index: number): Point[] => {
    const [low, high] = [pick(index), pick(index + 1)];
    const [ax, ay] = low[low.length - 1] as Point;
    const [bx, by] = high[high.length - 1] as Point;
    return [
      ...low,
      // A half-round end, so that the furrows bite into the outline.
      ...[0.12, 0.3, 0.5, 0.7, 0.88].map(
        (t): Point => [ax + (bx - ax) * t - 8 * Math.sin(Math.PI * t), ay + (by - ay) * t],
      ),
      ...[...high].reverse(),
    ];
  };
  const overTip = through(see, [
    [100, 8, 108],
    [70, 22, 140],
    [20, 34, 149],
    [-40, 30, 146],
    [-72, 14, 134],
  ]);
  const inProfile = ([forward, up]: Point): Space => [forward, 18, up];
  const knot = curveThrough(
    (
      [
        [90, 122],
        [106, 120],
        [119, 106],
        [124, 88],
        [118, 68],
        [104, 58],
        [92, 64],
        [86, 92],
      ] as Point[]
    )
      .map(inProfile)
      .map(see),
    { closed: true, step: 8 },
  );
  const knotLine = (points: Point[]): Stroke => swelling(through(see, points.map(inProfile)), 1.4);
  // The knot stands before the front ends of rolls, furrows and tip.
  const besideKnot = ([x]: Point): number => 238 - x;
  const strip = (points: readonly Point[]): string =>
    closedPath(
      cutBy(
        [...points.map(([x, y]): Point => [x, y - 4]), ...[...points].reverse().map(([x, y]): Point => [x, y + 5])],
        besideKnot,
      ),
    );
  const cap = seenArea(see, body);
  const top = pick(4);
  const topZone = [
    ...top.slice(0, -1).map(([x, y]): Point => [x, y - 5]),
    ...cap.filter(([x, y]) => y < (x < 154 ? (top[top.length - 1] as Point)[1] : (top[0] as Point)[1]) - 5).reverse(),
  ];
  return view('side', Math.round(floor + 48), {
    outline: [
      ...groundShade(see, rim[0] as Level),
      ...bodyOutline(see, rim, { grounded: true }),
      ...roundShading(see, rim, { from: 2.5, to: EDGE - 1, gap: 2.6, reach: 40 }),
      ...bodyOutline(see, body),
      ...[0, 1, 2, 3].flatMap((index) => [
        { ...contour(roll(index), 'paper'), weight: 'detail' as const },
        line(roll(index).slice(30, -30), 'contour'),
      ]),
      ...[1, 2, 3, 4].flatMap((index) => company(pick(index), ([x, y], rows) => [x, y + 2.9 * rows], 4)),
      ...[0, 1, 2, 3, 4].map((index) => swelling(pick(index), 2)),
      swelling(overTip, 1.6),
      ...company(overTip, ([x, y], rows) => [x, y + 2.6 * rows], 3),
      contour(knot, 'paper'),
      knotLine([
        [94, 118],
        [104, 98],
        [106, 80],
        [98, 62],
      ]),
      knotLine([
        [106, 116],
        [113, 98],
        [113, 80],
        [108, 64],
      ]),
      ...[0, 1, 2, 3, 4, 5, 6].map((k) =>
        line(
          through(
            see,
            [
              [117 + (k < 4 ? 1 : 0), 106 - k * 6],
              [122 - k * 0.5, 103 - k * 6],
            ].map(([f, u]) => inProfile([f as number, u as number])),
          ),
          'hatch',
        ),
      ),
      swelling(arc(see, rim[0] as Level, 150, 4), 2),
    ],
    zones: () => [
      zone('tip', cutBy(topZone, besideKnot)),
      zone('sideFront', knot),
      zone(
        'ridge',
        without(
          ...[0, 1, 2, 3].map((index) => {
            const [low, high] = [pick(index), pick(index + 1)];
            const crest = [
              ...low.map(([x, y]): Point => [x, y - 4.5]),
              ...[...high].reverse().map(([x, y]): Point => [x, y + 5.5]),
            ];
            return closedPath(cutBy(crest, besideKnot));
          }),
        ),
      ),
      zone('valley', without(...[1, 2, 3, 4].map((index) => strip(pick(index))))),
      zone('lowerEdge', seenArea(see, rim)),
    ],
    lettering: [frontIsRight(290, floor + 36)],
  });
}

function turbanPlan(): DrawingView {
  const see = fromAbove(160, 128);
  const outer = flat(113, 92);
  const tip = flat(46, 36);
  const ring = (by: number): Level => flat(113 * by, 92 * by);
  // From the knot round both sides to the back, each furrow nearer the middle than the last.
  const spring = (sign: 1 | -1, end: number): Point[] =>
    Array.from({ length: 37 }, (_, k) => {
      const along = k / 36;
      return onLevel(
        see,
        ring(0.93 + (end - 0.93) * Math.sin((along * Math.PI) / 2) ** 1.3),
        sign * (16 + along * 160),
      );
    });
  const furrows = ([1, -1] as const).flatMap((sign) => [0.86, 0.66, 0.45, 0.24].map((end) => spring(sign, end)));
  const knot = through(
    see,
    [
      [88, -30, 0],
      [84, 0, 0],
      [88, 30, 0],
      [104, 36, 0],
      [116, 24, 0],
      [120, 0, 0],
      [116, -24, 0],
      [104, -36, 0],
    ],
    true,
  );
  return view('plan', 312, {
    outline: [
      contour(wholeRing(see, outer), 'paper'),
      ...furrows.map((points) => swelling(points, 1.8)),
      ...furrows.flatMap((points) =>
        company(
          points,
          ([x, y], rows) => {
            const [dx, dy] = [160 - x, 128 - y];
            const far = Math.hypot(dx, dy) || 1;
            return [x + (dx / far) * 2.8 * rows, y + (dy / far) * 2.8 * rows];
          },
          3,
        ),
      ),
      swelling(arc(see, outer, 12, -112), 2.6),
      contour(knot, 'paper'),
      ...[-20, -7, 7, 20].map((right) =>
        swelling(
          through(see, [
            [88, right * 0.8, 0],
            [102, right * 1.15, 0],
            [117, right * 0.9, 0],
          ]),
          1.3,
        ),
      ),
    ],
    zones: () => [zone('tip', wholeRing(see, tip)), ...quarters(see, outer, tip), tag(6, 254)],
    lettering: [frontIsDown(160, 284)],
  });
}

export const turban = drawing('turban', 'side', {
  plan: turbanPlan,
  side: turbanSide,
  under: () => baseBelow(flat(98, 79)),
});
