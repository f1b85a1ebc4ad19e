import { stemHole } from '../parts/crown-parts.ts';
import type { DrawingView, DrawnZoneId, Lettering, Point } from '../shape.ts';
import { fromAbove, fromBelow, fromRight } from '../tools/camera.ts';
import {
  arc,
  between,
  flat,
  type Level,
  levelAt,
  limits,
  onLevel,
  reachUp,
  seenArea,
  turned,
  wholeRing,
} from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, contour, frontEdge, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import type { BareZone } from '../tools/spots.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

/**
 * A sectional block: a bell crown, wider above than at the head line, in five shell parts round a key. The parts are
 * numbered from the front round the wearer's left: 1 front, 2 left, 3 left rear, 4 right rear, 5 right. The key is drawn
 * half drawn out, for it leaves first; it carries all the numbers and the stand hole.
 */
const parts: readonly (readonly [part: number, zone: DrawnZoneId, from: number, to: number])[] = [
  [1, 'sideFront', -36, 36],
  [5, 'sideRight', 36, 108],
  [4, 'sideBack', 108, 180],
  [3, 'sideBack', 180, 252],
  [2, 'sideLeft', 252, 324],
];
const joints = [36, 108, 180, 252, 324];
/** Half the breadth of the strip that stands for a joint. */
const STRIP = 4;
const inset = (level: Level): number => (STRIP / ((level.long + level.wide) / 2)) * (180 / Math.PI);

const ROPE = { low: 16, high: 23 };
const SHOULDER = 150;
const TOP = 178;
/** Here the oval of the tip is as large as the key's upper end, which is flush with it. */
const KEY_TOP = 177.3;

const bell = (): Point[] => [
  [90, ROPE.high],
  [91, 42],
  [98, 78],
  [110, 112],
  [116, 136],
  [110, 156],
  [85, 170],
  [44, 177],
  [0, TOP],
];

function puzzleSide(): DrawingView {
  const foot = turned([
    [
      [90, 0],
      [90, ROPE.low],
    ],
    [
      [90, ROPE.low],
      [1, ROPE.low],
    ],
  ]);
  const groove = turned([
    [
      [86.5, ROPE.low],
      [86.5, ROPE.high + 1],
    ],
  ]);
  const upper = turned([bell()]);
  const whole = turned([
    [
      [90, 0],
      [90, ROPE.high],
    ],
    bell(),
  ]);
  const core = turned(
    [
      [
        [50, -40],
        [53, 2],
      ],
    ],
    { ratio: 1.5 },
  );
  const within = turned(
    [
      [
        [53, 2],
        [58, 120],
      ],
    ],
    { ratio: 1.5 },
  );
  const floor = 20 + reachUp(upper);
  const see = fromRight(160, floor);
  const seam = (degrees: number, low: number, high: number): Point[] =>
    between(whole, low, high)
      .filter((level) => {
        const [front, back] = limits(see, level);
        const turn = degrees > 270 ? degrees - 360 : degrees;
        return turn >= front && turn <= back;
      })
      .map((level) => onLevel(see, level, degrees));
  const shell = ([part, id, from, to]: (typeof parts)[number]): BareZone => {
    const gap = 2.4;
    const sector: [number, number] = [from <= 0 ? -90 : from + gap, to >= 180 ? 270 : to - gap];
    return zone(id, seenArea(see, between(whole, ROPE.high, SHOULDER), sector), part);
  };
  const strip = (degrees: number): string =>
    closedPath(seenArea(see, between(whole, ROPE.high, SHOULDER), [degrees - 2.4, degrees + 2.4]));
  return view('side', Math.round(floor + 84), {
    outline: [
      ...groundShade(see, core[0] as Level),
      contour(seenArea(see, core), 'paper'),
      ...roundShading(see, core, { from: -37, to: -10, gap: 3.2, reach: 44 }),
      ...bodyOutline(see, foot, { grounded: true }),
      ...bodyOutline(see, groove),
      ...roundShading(see, groove, { from: ROPE.low + 1, to: ROPE.high - 1, gap: 2.2, reach: 150 }),
      ...bodyOutline(see, upper),
      ...roundShading(see, foot, { from: 3, to: ROPE.low - 2, gap: 2.8, reach: 40 }),
      ...roundShading(see, upper, { from: ROPE.high + 3, to: SHOULDER, gap: 3.6, reach: 28 }),
      ...[36, 108].flatMap((degrees) => [line(seam(degrees, ROPE.high, KEY_TOP)), line(seam(degrees, 0, ROPE.low))]),
      ...[180, 252, 324].map((degrees) => line(seam(degrees, SHOULDER, KEY_TOP))),
      line(arc(see, levelAt(upper, KEY_TOP), 0, 360)),
      ...[0, 180].map((degrees) =>
        line(
          within.map((level) => onLevel(see, level, degrees)),
          'hidden',
        ),
      ),
      line(arc(see, within[within.length - 1] as Level, 0, 360), 'hidden'),
      swelling(frontEdge(see, between(upper, ROPE.high, SHOULDER))),
      swelling(arc(see, foot[0] as Level, 150, 4), 1.8),
    ],
    zones: () => [
      zone('tip', seenArea(see, between(whole, SHOULDER, TOP - 0.1))),
      ...parts.slice(0, 3).map(shell),
      zone('jointFace', without(strip(36), strip(108))),
      zone('ropeLine', seenArea(see, between(whole, ROPE.low, ROPE.high))),
      zone('lowerEdge', seenArea(see, between(whole, 0, ROPE.low))),
      zone('key', [...arc(see, flat(90, 90 / 1.24), 124, 56), ...arc(see, core[0] as Level, 0, 180)]),
    ],
    numbered: true,
    lettering: [{ at: [160, floor + 70], text: 'key ↓', role: 'front' }, frontIsRight(290, floor + 70)],
  });
}

/** Sectors between two ovals, drawn in a little from the joints. */
const sectors = (see: ReturnType<typeof fromAbove>, outer: Level, inner: Level): [number, DrawnZoneId, string][] =>
  parts.map(([part, id, from, to]) => [
    part,
    id,
    closedPath([
      ...arc(see, outer, from + inset(outer), to - inset(outer)),
      ...arc(see, inner, to - inset(inner), from + inset(inner)),
    ]),
  ]);

const strips = (see: ReturnType<typeof fromAbove>, outer: Level, inner: Level): string[] =>
  joints.map((at) =>
    closedPath([
      ...arc(see, outer, at - inset(outer), at + inset(outer)),
      ...arc(see, inner, at + inset(inner), at - inset(inner)),
    ]),
  );

function puzzlePlan(): DrawingView {
  const see = fromAbove(160, 146);
  const [outer, tip, key] = [flat(130, 105), flat(66, 53), flat(33, 27)];
  return view('plan', 330, {
    outline: [
      contour(wholeRing(see, outer), 'paper'),
      ...planShading(
        see,
        [4, 7, 10, 13, 16, 19, 22].map((by) => flat(outer.long - by, outer.wide - by)),
        { reach: 38 },
      ),
      ...joints.map((at) => line([onLevel(see, outer, at), onLevel(see, key, at)], 'contour')),
      contour(wholeRing(see, key), 'paper'),
      swelling(arc(see, outer, 12, -112), 2.6),
      swelling(arc(see, key, 0, -100), 1.6),
    ],
    zones: () => [
      zone('tip', without(...sectors(see, tip, key).map(([, , d]) => d))),
      ...sectors(see, outer, tip).map(([part, id, d]) => zone(id, d, part)),
      zone('jointFace', without(...strips(see, outer, key))),
      zone('key', wholeRing(see, key)),
      tag(6, 274),
    ],
    numbered: true,
    lettering: [frontIsDown(160, 304)],
  });
}

function puzzleUnder(): DrawingView {
  const [x, y] = [160, 150];
  const see = fromBelow(x, y);
  const [bulge, foot, key] = [flat(134, 108), flat(114, 92), flat(54, 45)];
  const hole = stemHole([x, y]);
  return view('under', 334, {
    outline: [
      contour(wholeRing(see, bulge), 'paper'),
      ...planShading(
        see,
        [3, 6, 9, 12].map((by) => flat(foot.long + by, foot.wide + by)),
        { middle: 50, reach: 44 },
      ),
      contour(wholeRing(see, foot), 'paper'),
      ...joints.map((at) => line([onLevel(see, foot, at), onLevel(see, key, at)], 'contour')),
      contour(wholeRing(see, key), 'paper'),
      ...hole.outline,
      swelling(arc(see, bulge, -12, 112), 2.6),
      swelling(arc(see, key, 0, 100), 1.6),
    ],
    zones: () => [
      ...sectors(see, foot, key).map(([part, , d]) => zone('base', d, part)),
      zone('jointFace', without(...strips(see, foot, key))),
      zone('key', without(closedPath(wholeRing(see, key)), hole.path)),
      hole.zone,
    ],
    numbered: true,
    lettering: [
      ...parts.map(
        ([part, , from, to]): Lettering => ({
          at: onLevel(see, flat(36, 28), (from + to) / 2),
          text: String(part),
          role: 'struck',
        }),
      ),
      frontIsDown(160, 308),
    ],
  });
}

export const puzzle = drawing('puzzle', 'side', { plan: puzzlePlan, side: puzzleSide, under: puzzleUnder });
