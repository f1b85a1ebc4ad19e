import { crownFrom, crownPlan, crownUnder, footLines, HEAD, ROPE } from '../parts/crown-parts.ts';
import type { DrawingView, Point, Stroke } from '../shape.ts';
import { fromAbove, fromRight, type Space } from '../tools/camera.ts';
import { arc, between, levelAt, seenArea } from '../tools/oval-body.ts';
import { closedPath, smoothPath, without } from '../tools/path.ts';
import { contour, line, swelling, through } from '../tools/pen.ts';
import { drawing, frontIsRight, groundShade, view, zone } from '../tools/view.ts';

/** The shaped crown: a teardrop dent along the top, pinched on both sides of the front. */

/** The crest, from the back round the wearer's right to the pinched front: higher in front, as a hat is worn. */
const crest: Space[] = [
  [-90, 0, 131],
  [-80, 27, 140],
  [-54, 44, 147],
  [-16, 48, 150],
  [20, 43, 154],
  [48, 30, 160],
  [70, 15, 167],
  [84, 0, 168],
];
const mirrored = ([forward, right, up]: Space): Space => [forward, -right, up];

/** The pinch on the wearer's right: a hollow beside the front crest, by its rear and front edges from top to bottom. */
const pinchRear: Space[] = [
  [54, 32, 155],
  [47, 50, 136],
  [50, 61, 112],
  [68, 62, 84],
];
const pinchFore: Space[] = [
  [70, 18, 160],
  [81, 30, 138],
  [83, 42, 112],
  [68, 62, 84],
];
/** Where the sides meet, from the crest down to the rope line. */
const cornerFront: Space[] = [
  [80, 8, 164],
  [90, 30, 136],
  [93, 42, 104],
  [92, 50, 66],
  [86, 58, ROPE.high],
];
const cornerBack: Space[] = [
  [-58, 40, 144],
  [-76, 52, 112],
  [-78, 61, 70],
  [-70, 68, ROPE.high],
];

/** Strokes across a hollow from its dark edge, each a little shorter or longer than the last. */
const hollow = (dark: readonly Point[], light: readonly Point[], count: number, depth: number): Stroke[] =>
  Array.from({ length: count }, (_, k) => {
    const t = (k + 0.7) / (count + 0.4);
    const from = dark[Math.round(t * (dark.length - 1))] as Point;
    const to = light[Math.round(t * (light.length - 1))] as Point;
    const reach = depth * (0.85 + 0.15 * Math.sin(k * 2.3));
    return line([from, [from[0] + (to[0] - from[0]) * reach, from[1] + (to[1] - from[1]) * reach]], 'hatch');
  });

/** Foot and rope line are those of any crown; what stands on them is no oval body and is drawn by hand. */
const footOnly = () =>
  crownFrom([
    [
      [HEAD, ROPE.high],
      [111, 60],
    ],
  ]);

function shapedSide(): DrawingView {
  const floor = 196;
  const see = fromRight(160, floor);
  const crown = footOnly();
  const [far, near] = [through(see, crest.map(mirrored)), through(see, crest)];
  const inProfile = (points: Point[]): Point[] =>
    through(
      see,
      points.map(([forward, up]): Space => [forward, 0, up]),
    );
  const back = inProfile([
    [-112, ROPE.high],
    [-111.5, 62],
    [-109, 94],
    [-102, 118],
    [-90, 131],
  ]);
  const front = inProfile([
    [84, 168],
    [91, 160],
    [96, 138],
    [103, 104],
    [109, 66],
    [112, ROPE.high],
  ]);
  const brow = levelAt(crown.whole, ROPE.high);
  const skirt = arc(see, brow, 0, 180);
  const skyline = [...back, ...far, ...front];
  const [rear, fore] = [through(see, pinchRear), through(see, pinchFore)];
  const lens = closedPath([...rear, ...[...fore].reverse()]);
  // The crest is as broad as a thumb's edge: 15 units down the side in its middle.
  const below = near.map(([x, y], k): Point => [x, y + 15 * Math.sin((Math.PI * k) / (near.length - 1)) ** 0.6]);
  const [fore2, rear2] = [through(see, cornerFront), through(see, cornerBack)];
  const nearest = (to: Point): number =>
    below.reduce((best, [x], k) => (Math.abs(x - to[0]) < Math.abs((below[best] as Point)[0] - to[0]) ? k : best), 0);
  const [cutFront, cutBack] = [nearest(fore2[0] as Point), nearest(rear2[0] as Point)];
  const [footFront, footBack] = [62, 131];
  const under = (from: number, to: number): Point[] => below.slice(from, to + 1);
  const dent = closedPath([...far, ...[...near].reverse()]);
  return view('side', 250, {
    outline: [
      ...groundShade(see, levelAt(crown.whole, 0)),
      ...footLines(see, crown),
      { ...contour([...skyline, ...skirt], 'paper'), weight: 'detail' },
      line(skyline, 'contour'),
      ...hollow(far.slice(6, -4), near.slice(6, -4), 26, 0.5),
      line(near, 'detail'),
      swelling(near.slice(2, -4), 1.8),
      ...hollow(fore, rear, 19, 0.62),
      swelling(fore, 1.5),
      swelling(rear.slice(6), 1.1),
      ...hollow(
        front.slice(4),
        [...front.slice(4)].map(([x, y], k): Point => [x - 26, y + 6 + k * 0.12]),
        30,
        0.7,
      ),
      swelling(front),
    ],
    zones: () => [
      zone('ridge', [...near, ...[...below].reverse()]),
      zone('valley', without(dent, lens)),
      zone('sideFront', [
        ...fore2,
        ...arc(see, brow, footFront - 12, 0),
        ...[...front].reverse(),
        ...under(cutFront, below.length - 1).reverse(),
      ]),
      zone(
        'sideRight',
        without(
          closedPath([
            ...rear2,
            ...arc(see, brow, footBack - 1, footFront - 12),
            ...[...fore2].reverse(),
            ...under(cutBack, cutFront).reverse(),
          ]),
          lens,
        ),
      ),
      zone('sideBack', [...back, ...under(0, cutBack), ...rear2, ...arc(see, brow, footBack - 1, 180)]),
      zone('ropeLine', seenArea(see, between(crown.whole, ROPE.low, ROPE.high))),
      zone('lowerEdge', seenArea(see, between(crown.whole, 0, ROPE.low))),
    ],
    lettering: [frontIsRight(286, floor + 36)],
  });
}

/** The carving as seen from above; the pinches lie in the front side, the dent in the middle of the tip. */
function shapedPlan(): DrawingView {
  const see = fromAbove(160, 132);
  const round = (points: readonly Space[]): Space[] => [...points, ...points.slice(1, -1).reverse().map(mirrored)];
  const smaller = (share: number): Space[] =>
    round(crest.map(([forward, right, up]) => [(forward + 6) * share - 6, right * share * share, up]));
  const [top, inner] = [smaller(0.9), smaller(0.7)];
  const [crestPath, dentPath] = [smoothPath(top.map(see), true), smoothPath(inner.map(see), true)];
  const hollows = ([1, -1] as const).map((sign): { rear: Point[]; fore: Point[] } => {
    const flip = (points: readonly Space[]): Space[] => points.map(([f, r, u]): Space => [f, sign * r, u]);
    return {
      rear: through(
        see,
        flip([
          [74, 13, 0],
          [66, 26, 0],
          [53, 36, 0],
          [40, 41, 0],
          [24, 40, 0],
        ]),
      ),
      fore: through(
        see,
        flip([
          [74, 13, 0],
          [61, 19, 0],
          [46, 27, 0],
          [35, 33, 0],
          [24, 40, 0],
        ]),
      ),
    };
  });
  const lenses = hollows.map(({ rear, fore }) => closedPath([...rear, ...[...fore].reverse()]));
  const [crestLine, dentLine] = [through(see, top, true), through(see, inner, true)];
  const lit = (points: Point[], from: number, to: number): Point[] =>
    points.slice(Math.round(points.length * from), Math.round(points.length * to));
  return crownPlan(
    { long: 86, wide: 57, shift: -6 },
    {
      outline: [
        { d: crestPath, weight: 'detail' },
        { d: dentPath, weight: 'hatch' },
        swelling(lit(crestLine, 0.08, 0.46), 1.8),
        ...hollow(lit(crestLine, 0.06, 0.44), lit(dentLine, 0.06, 0.44), 30, 0.72),
        ...hollows.flatMap(({ rear, fore }) => [
          swelling(fore, 1.5),
          swelling(rear, 0.9),
          ...hollow(rear.slice(2), fore.slice(2), 10, 0.6),
        ]),
      ],
      tipHoles: [crestPath, ...lenses],
      zones: [zone('ridge', without(crestPath, dentPath)), zone('valley', without(dentPath, ...lenses))],
    },
  );
}

export const shapedCrown = drawing('shapedCrown', 'side', {
  plan: shapedPlan,
  side: shapedSide,
  under: () => crownUnder(footOnly()),
});
