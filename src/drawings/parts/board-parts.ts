import type { DrawingView, DrawnZoneId, Point, Stroke } from '../shape.ts';
import { type Camera, fromBelow } from '../tools/camera.ts';
import { arc, flat, type Level, limits, onLevel, wholeRing } from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { contour, grain, line, planShading, swelling } from '../tools/pen.ts';
import type { BareZone } from '../tools/spots.ts';
import { frontIsDown, view, zone } from '../tools/view.ts';
import { stemHole } from './crown-parts.ts';

/** What all boards with an opening have in common: the quarters of the face, the hollow, the underside. */

export const brimNames: readonly (readonly [DrawnZoneId, number, number])[] = [
  ['brimFront', -42, 42],
  ['brimRight', 42, 138],
  ['brimBack', 138, 222],
  ['brimLeft', 222, 318],
];

/** The far inner wall and the dark of an opening, seen over its near rim. */
export function hollowInside(see: Camera, rim: Level, depth: number): Stroke[] {
  const mouth = wholeRing(see, rim);
  const floor = { ...rim, up: rim.up - depth };
  const rows = 15;
  return [
    { ...contour(mouth, 'shade'), weight: 'detail' },
    ...Array.from({ length: rows }, (_, k): Stroke => {
      const angle = 196 + ((344 - 196) * k) / (rows - 1);
      const [x, y] = onLevel(see, rim, angle);
      const deep = Math.min(onLevel(see, floor, angle)[1], onLevel(see, rim, 360 - angle)[1] - 2.5);
      return line(
        [
          [x, y + 1],
          [x, y + Math.max(1, (deep - y) * (0.62 + 0.2 * Math.sin(k * 2.1)))],
        ],
        'hatch',
      );
    }),
  ];
}

/**
 * The four quarters of a brim's face seen from the side, round a collar or crown that hides part of them.
 * @param outer points of the brim's edge between two angles
 * @param sky what stands on the face, as a line from its front foot over its top to its back foot
 */
export function faceQuarters(
  see: Camera,
  outer: (from: number, to: number) => Point[],
  foot: Level,
  sky: readonly Point[],
): BareZone[] {
  const nearest = (angle: number): number => {
    const [x, y] = outer(angle, angle)[0] as Point;
    return sky.reduce((best, [sx, sy], k) => {
      const [bx, by] = sky[best] as Point;
      return Math.hypot(sx - x, sy - y) < Math.hypot(bx - x, by - y) ? k : best;
    }, 0);
  };
  const [front, back] = limits(see, foot);
  const [cutFront, cutBack] = [nearest(318), nearest(222)];
  return [
    zone('brimFront', [...outer(-42, 42), ...arc(see, foot, 42, front), ...sky.slice(0, cutFront + 1)]),
    zone('brimRight', [...outer(42, 138), ...arc(see, foot, 138, 42)]),
    zone('brimBack', [...outer(222, 138), ...arc(see, foot, 138, back), ...sky.slice(cutBack).reverse()]),
    zone('brimLeft', [...outer(318, 222), ...sky.slice(cutFront, cutBack + 1).reverse()]),
  ];
}

const screw = (x: number, y: number): Stroke[] => [
  {
    ...contour(
      Array.from(
        { length: 16 },
        (_, k): Point => [x + 3 * Math.cos((k * Math.PI) / 8), y + 3 * Math.sin((k * Math.PI) / 8)],
      ),
      'paper',
    ),
    weight: 'detail',
  },
  line(
    [
      [x - 1.8, y + 1.4],
      [x + 1.8, y - 1.4],
    ],
    'hatch',
  ),
];

/** A strip screwed across the boards to keep them flat. */
const batten = (half: number, y: number): Stroke[] => [
  {
    ...contour(
      [
        [160 - half, y - 8],
        [160 + half, y - 8],
        [160 + half, y + 8],
        [160 - half, y + 8],
      ],
      'paper',
    ),
    weight: 'detail',
  },
  ...[-half + 10, -half * 0.28, half * 0.28, half - 10].flatMap((x) => screw(160 + x, y)),
];

/** An underside: boards glued side by side, grain running front to back, the opening, sometimes battens across. */
export function boardsBelow({
  edge,
  opening,
  zone: id,
  battens = false,
  plug,
}: {
  edge: Level;
  opening: Level;
  zone: DrawnZoneId;
  battens?: boolean;
  /** The foot of a crown standing in the opening. */
  plug?: Level;
}): DrawingView {
  const middle = 16 + edge.long;
  const see = fromBelow(160, middle);
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  const joint = opening.wide + 22;
  const reach = edge.long * Math.sqrt(1 - (joint / edge.wide) ** 2) - 9;
  const shift = edge.shift;
  const strips = [-joint, joint].map((x) =>
    closedPath([
      [156 + x, middle + shift - reach],
      [164 + x, middle + shift - reach],
      [164 + x, middle + shift + reach],
      [156 + x, middle + shift + reach],
    ]),
  );
  const bottom = middle + edge.long + shift;
  const outer = (joint + edge.wide) / 2;
  const board = (edge.long - opening.long) / 2;
  const hole = stemHole([160, middle]);
  return view('under', Math.round(bottom + 44), {
    outline: [
      contour(wholeRing(see, edge), 'paper'),
      ...[-joint, joint].map((x) =>
        line([
          [160 + x, middle + shift - reach - 4],
          [160 + x, middle + shift + reach + 4],
        ]),
      ),
      ...[-outer - 7, -outer + 3, -outer + 10, outer - 9, outer + 1, outer + 8].map((x, k) =>
        grain(160 + x, middle + 22 * Math.sin(k * 2.2), edge.long * (k % 3 === 1 ? 0.8 : 0.5), k),
      ),
      ...[-30, -12, 9, 26].flatMap((x, k) => [
        grain(160 + x, middle + shift - edge.long + board + (battens ? -12 : 0), board * 0.8, k + 8),
        grain(163 + x, middle + shift + edge.long - board + (battens ? 12 : 0), board * 0.8, k + 14),
      ]),
      ...(battens ? [-1, 1].flatMap((sign) => batten(joint + 22, middle + sign * (opening.long + 20))) : []),
      contour(wholeRing(see, opening), 'shade'),
      ...planShading(
        see,
        [3, 6, 9, 12, 15].map((by) => flat(opening.long - by, opening.wide - by)),
        { middle: 228, reach: 44 },
      ),
      ...(plug
        ? [
            contour(wholeRing(see, plug), 'paper'),
            ...[-40, -33, 32, 40].map((x, k) => grain(160 + x, middle + 12 * Math.sin(k * 2), 56, k + 3)),
            ...hole.outline,
          ]
        : []),
      swelling(arc(see, edge, -14, 112), 2.6),
    ],
    zones: () => [
      zone(id, without(ring(edge), ring(opening), ...strips)),
      ...(plug
        ? [
            zone('headOpening', without(ring(opening), ring(plug))),
            zone('base', without(ring(plug), hole.path)),
            hole.zone,
          ]
        : [zone('headOpening', ring(opening))]),
      zone('glueLine', without(...strips)),
    ],
    lettering: [frontIsDown(160, bottom + 22)],
  });
}
