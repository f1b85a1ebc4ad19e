import type { DrawingView, DrawnZoneId, Point, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromBelow } from '../tools/camera.ts';
import { arc, flat, type Level, type OvalBody, onLevel, turned, wholeRing } from '../tools/oval-body.ts';
import { closedPath, ovalPath, without } from '../tools/path.ts';
import { bodyOutline, contour, grain, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import type { BareZone } from '../tools/spots.ts';
import { frontIsDown, tag, view, zone } from '../tools/view.ts';

/** What all crowns have in common: the foot with its rope line, the four sides, the base with its stem hole. */

/** Half-length of a crown at the head line, in units: 195 mm of block drawn 224 units long. */
export const HEAD = 112;

/** The rope line: in the wood about 4 mm high and 3 mm deep, some 16 mm above the base; drawn a little bolder. */
export const ROPE = { low: 18, high: 26, deep: 3.6 };

/** Angles at which the sides meet: front and back are a little narrower than left and right, as on a head. */
export const CORNER = 50;

/** A crown with its foot, as one smooth body (for zones) and as the three that the eye sees (for drawing). */
export interface Crown {
  whole: OvalBody;
  foot: OvalBody;
  groove: OvalBody;
  upper: OvalBody;
}

export function crownFrom(
  runs: readonly (readonly Point[])[],
  {
    head = HEAD,
    rope = ROPE,
    ratio = 1.24,
    shiftOf = () => 0,
    floor = 0,
  }: { head?: number; rope?: typeof ROPE; ratio?: number; shiftOf?: (up: number) => number; floor?: number } = {},
): Crown {
  const options = { ratio, shiftOf };
  const straight = (low: number, high: number, half = head): Point[] => [
    [half, low],
    [half, high],
  ];
  return {
    whole: turned([straight(floor, rope.high), ...runs], options),
    foot: turned(
      [
        straight(floor, rope.low),
        [
          [head, rope.low],
          [1, rope.low],
        ],
      ],
      options,
    ),
    groove: turned([straight(rope.low, rope.high, head - rope.deep)], options),
    upper: turned(runs, options),
  };
}

/** The foot of a crown from the side, with the rope line above it. */
export function footLines(see: Camera, crown: Crown, rope = ROPE): Stroke[] {
  const lowest = crown.foot[0] as Level;
  return [
    ...bodyOutline(see, crown.foot, { grounded: true }),
    ...roundShading(see, crown.foot, { from: lowest.up + 2.5, to: rope.low - 2, gap: 3, reach: 40 }),
    swelling(arc(see, lowest, 150, 4), 2),
    ...bodyOutline(see, crown.groove),
    ...roundShading(see, crown.groove, { from: rope.low + 1, to: rope.high - 1, gap: 2.4, reach: 150 }),
  ];
}

/** Outline, rope line and shading of a crown from the side. */
export const crownLines = (
  see: Camera,
  crown: Crown,
  { rope = ROPE, shadeTo }: { rope?: typeof ROPE; shadeTo: number },
): Stroke[] => [
  ...footLines(see, crown, rope),
  ...bodyOutline(see, crown.upper),
  ...roundShading(see, crown.upper, { from: rope.high + 3, to: shadeTo }),
];

export const sideNames: readonly (readonly [DrawnZoneId, number, number])[] = [
  ['sideFront', -CORNER, CORNER],
  ['sideRight', CORNER, 180 - CORNER],
  ['sideBack', 180 - CORNER, 180 + CORNER],
  ['sideLeft', 180 + CORNER, 360 - CORNER],
];

/** The three sides that are seen from the wearer's right; beyond the skyline a sector is cut off by itself. */
export const seenSideNames: readonly (readonly [DrawnZoneId, number, number])[] = [
  ['sideFront', -90, CORNER],
  ['sideRight', CORNER, 180 - CORNER],
  ['sideBack', 180 - CORNER, 270],
];

/** The four sides in plan: quarters of the ring between two ovals. */
export const quarters = (
  see: Camera,
  outer: Level,
  inner: Level,
  names: readonly (readonly [DrawnZoneId, number, number])[] = sideNames,
): BareZone[] =>
  names.map(([id, from, to]) => zone(id, closedPath([...arc(see, outer, from, to), ...arc(see, inner, to, from)])));

/** Little pencil strokes on the centre lines, as every working block has them. */
export const centreMarks = (see: Camera, level: Level, length = 9): Stroke[] =>
  [0, 90, 180, 270].map((degrees) =>
    line(
      [
        ...arc(see, level, degrees, degrees),
        ...arc(see, { ...level, long: level.long - length, wide: level.wide - length }, degrees, degrees),
      ],
      'detail',
    ),
  );

/** The stem hole: drawn 26 mm across, its zone a thumb wide. */
export const stemHole = ([x, y]: Point, radius = 13): { outline: Stroke[]; path: string; zone: BareZone } => {
  const ring = (r: number): Point[] =>
    Array.from({ length: 48 }, (_, k) => [x + r * Math.cos((k * Math.PI) / 24), y + r * Math.sin((k * Math.PI) / 24)]);
  const path = ovalPath([x, y], 24, 24);
  return {
    outline: [
      contour(ring(radius), 'shade'),
      ...[3, 5.5, 8].map((inset) => line(ring(radius - inset * 0.9).slice(22, 44 - inset), 'hatch')),
    ],
    path,
    zone: zone('stemHole', path),
  };
};

const strip = (x: number, top: number, bottom: number): string =>
  closedPath([
    [x - 4, top],
    [x + 4, top],
    [x + 4, bottom],
    [x - 4, bottom],
  ]);

export const crownUnder = (crown: Crown): DrawingView => baseBelow(crown.whole[0] as Level);

/**
 * A base: boards glued side by side, and the stem hole. No stamp is drawn, though most bases have one: in a report it would
 * read as this block's own.
 */
export function baseBelow(level: Level): DrawingView {
  const [x, y] = [160, 20 + level.long];
  const see = fromBelow(x, y - level.shift);
  const inner = { ...level, long: level.long - 6, wide: level.wide - 6 };
  const edge = arc(see, level, 0, 360).slice(0, -1);
  const inside = arc(see, inner, 0, 360).slice(0, -1);
  const hole = stemHole([x, y]);
  const joints = [x - 45, x + 45];
  const reach = level.long * Math.sqrt(1 - (45 / level.wide) ** 2) - 12;
  const strips = joints.map((at) => strip(at, y - reach, y + reach));
  return view('under', Math.round(y + level.long + 42), {
    outline: [
      contour(edge, 'paper'),
      line([...inside, inside[0] as Point], 'hatch'),
      ...joints.map((at) =>
        line(
          [
            [at, y - reach - 4],
            [at, y + reach + 4],
          ],
          'detail',
        ),
      ),
      ...[-74, -66, -57, -32, -24, 22, 29, 36, 58, 67, 75].map((dx, k) =>
        grain(x + dx, y + 14 * Math.sin(k * 2), 74 - Math.abs(dx) * 0.5, k),
      ),
      ...hole.outline,
      ...planShading(see, [inner, { ...inner, long: inner.long - 4, wide: inner.wide - 4 }], { middle: 48 }),
      swelling(arc(see, level, -20, 110), 2.2),
    ],
    lettering: [frontIsDown(x, y + level.long + 22)],
    zones: () => [
      zone('base', without(closedPath(edge), hole.path, ...strips)),
      hole.zone,
      zone('glueLine', without(...strips)),
    ],
  });
}

interface Carving {
  outline: readonly Stroke[];
  /** Zones cut out of the tip, and the zones that fill them. */
  tipHoles?: readonly string[];
  zones?: readonly BareZone[];
}

/** The plan of a crown: outline and rope line, four sides, the tip, and whatever is carved into it. */
export function crownPlan(tip: { long: number; wide: number; shift?: number }, carving?: Carving): DrawingView {
  const see = fromAbove(160, 132);
  const outer = flat(HEAD, HEAD / 1.24);
  const smaller = (by: number): Level => flat(outer.long - by, outer.wide - by);
  const rope = smaller(8);
  const tipEdge = flat(tip.long, tip.wide, tip.shift);
  return view('plan', 286, {
    outline: [
      contour(wholeRing(see, outer), 'paper'),
      line([...wholeRing(see, smaller(4)), onLevel(see, smaller(4), 0)], 'hatch'),
      ...centreMarks(see, smaller(4)),
      ...(carving ? carving.outline : planShading(see, [8, 11, 14, 17, 20, 23, 26, 29].map(smaller))),
      swelling(arc(see, outer, 10, -110)),
    ],
    zones: () => [
      zone('tip', without(closedPath(wholeRing(see, tipEdge)), ...(carving?.tipHoles ?? []))),
      ...quarters(see, rope, tipEdge),
      ...(carving?.zones ?? []),
      zone('ropeLine', without(closedPath(wholeRing(see, outer)), closedPath(wholeRing(see, rope)))),
      tag(8, 230),
    ],
    lettering: [frontIsDown(160, 266)],
  });
}
