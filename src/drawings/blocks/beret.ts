import { centreMarks, quarters, seenSideNames, sideNames, stemHole } from '../parts/crown-parts.ts';
import type { DrawingView, Point } from '../shape.ts';
import { fromAbove, fromBelow, fromRight } from '../tools/camera.ts';
import {
  arc,
  between,
  flat,
  type Level,
  levelAt,
  type OvalBody,
  reachUp,
  seenArea,
  turned,
  wholeRing,
} from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, contour, frontEdge, grain, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

/**
 * The beret: a wide disc with a round edge, turned in underneath to a neck of head size. Joints are dashed, because the
 * block is made in one piece as well as in five (two cheeks, front, back and key).
 */

const DISC = { long: 130, wide: 122 };
const NECK = { long: 80, wide: 64.5 };
const UP = { rope: 26, neck: 35, edge: 53, shoulder: 95, top: 119 } as const;

const disc = () =>
  turned(
    [
      [
        [NECK.long, UP.neck],
        [98, 37],
        [118, 46],
        [DISC.long, 64],
        [128, 80],
        [114, 97],
        [86, 110],
        [46, 117],
        [0, UP.top],
      ],
    ],
    { wideOf: (long) => long * (DISC.wide / DISC.long) },
  );

/** The height above the disc's edge at which its oval has shrunk to a half-length. */
function heightWhere(body: OvalBody, long: number): number {
  const top = body.filter(({ up }) => up >= 64);
  const k = Math.max(
    1,
    top.findIndex((level) => level.long <= long),
  );
  const [below, above] = [top[k - 1] as Level, top[k] as Level];
  const share = (below.long - long) / (below.long - above.long || 1);
  return below.up + (above.up - below.up) * Math.min(1, Math.max(0, share));
}

function beretSide(): DrawingView {
  const upper = disc();
  const options = { ratio: 1.24 };
  const foot = turned(
    [
      [
        [NECK.long, 0],
        [NECK.long, UP.rope],
      ],
      [
        [NECK.long, UP.rope],
        [1, UP.rope],
      ],
    ],
    options,
  );
  const groove = turned(
    [
      [
        [NECK.long - 3.5, UP.rope],
        [NECK.long - 3.5, UP.neck + 4],
      ],
    ],
    options,
  );
  const neck = turned(
    [
      [
        [NECK.long, 0],
        [NECK.long, UP.rope],
      ],
    ],
    options,
  );
  const floor = 20 + reachUp(upper);
  const see = fromRight(160, floor);
  const turn = (up: number): Level => levelAt(upper, up);
  const joint = (right: number): Point[] =>
    Array.from({ length: 29 }, (_, k): Point => {
      const share = Math.asin(right / DISC.wide) + (k / 28) * (Math.PI - 2 * Math.asin(right / DISC.wide));
      // The height at which the disc's oval is just so wide at this place.
      const forward = Math.cos(share) * DISC.long;
      const reach = Math.hypot(forward, right * (DISC.long / DISC.wide));
      return see([forward, right, heightWhere(upper, reach)]);
    });
  const lower = between(upper, UP.edge, UP.shoulder);
  return view('side', Math.round(floor + 50), {
    outline: [
      ...groundShade(see, foot[0] as Level),
      ...bodyOutline(see, foot, { grounded: true }),
      ...roundShading(see, foot, { from: 3, to: UP.rope - 2, gap: 2.8, reach: 62 }),
      ...bodyOutline(see, groove),
      ...roundShading(see, groove, { from: UP.rope + 1, to: UP.neck, gap: 2.2, reach: 150 }),
      ...bodyOutline(see, upper),
      ...roundShading(see, upper, { from: 57, to: 91, gap: 3.2, reach: 34 }),
      ...[49, 52, 55].map((up, k) => line(arc(see, turn(up), 118 - k * 8, 30 + k * 6), 'hatch')),
      line(joint(38), 'hidden'),
      swelling(frontEdge(see, lower)),
      swelling(arc(see, foot[0] as Level, 150, 4), 2),
      swelling(arc(see, turn(UP.edge), 150, 26), 1.6),
    ],
    zones: () => [
      zone('tip', seenArea(see, between(upper, UP.shoulder, UP.top - 0.1))),
      ...seenSideNames.map(([id, from, to]) => zone(id, seenArea(see, lower, [from, to]))),
      zone('ropeLine', without(closedPath(seenArea(see, between(neck, UP.rope - 10, UP.rope))))),
      zone('lowerEdge', seenArea(see, between(neck, 0, UP.rope - 10))),
    ],
    lettering: [frontIsRight(290, floor + 38)],
  });
}

function beretPlan(): DrawingView {
  const see = fromAbove(160, 148);
  const at = (by: number): Level => flat(DISC.long - by, DISC.wide - by);
  const [edge, tip] = [at(0), at(46)];
  const across = (right: number): number => DISC.long * Math.sqrt(1 - (right / DISC.wide) ** 2);
  return view('plan', 330, {
    outline: [
      contour(wholeRing(see, edge), 'paper'),
      ...centreMarks(see, at(2)),
      ...planShading(see, [4, 7, 10, 13, 16, 19, 22, 25].map(at), { reach: 40 }),
      ...[-38, 38].map((right) => line([see([-across(right), right, 0]), see([across(right), right, 0])], 'hidden')),
      ...[-58, 58].map((forward) => line([see([forward, -38, 0]), see([forward, 38, 0])], 'hidden')),
      swelling(arc(see, edge, 12, -112), 2.6),
    ],
    zones: () => [zone('tip', wholeRing(see, tip)), ...quarters(see, edge, tip), tag(6, 274)],
    lettering: [frontIsDown(160, 304)],
  });
}

function beretUnder(): DrawingView {
  const [x, y] = [160, 150];
  const see = fromBelow(x, y);
  const at = (by: number): Level => flat(DISC.long - by, DISC.wide - by);
  const neck = flat(NECK.long, NECK.wide);
  const rope = flat(NECK.long + 8, NECK.wide + 8);
  const hole = stemHole([x, y]);
  const [half, key] = [33, 57];
  const reach = NECK.long * Math.sqrt(1 - (half / NECK.wide) ** 2) - 3;
  const bar = (left: number, top: number, right: number, bottom: number): string =>
    closedPath([
      [x + left, y + top],
      [x + right, y + top],
      [x + right, y + bottom],
      [x + left, y + bottom],
    ]);
  const joints = [
    bar(-half - 4, -reach, -half + 4, reach),
    bar(half - 4, -reach, half + 4, reach),
    bar(-half + 4, -key - 4, half - 4, -key + 4),
    bar(-half + 4, key - 4, half - 4, key + 4),
  ];
  const core = bar(-half + 4, -key + 4, half - 4, key - 4);
  return view('under', 330, {
    outline: [
      contour(wholeRing(see, at(0)), 'paper'),
      ...planShading(see, [4, 7, 10, 13, 16].map(at), { middle: 48, reach: 40 }),
      ...planShading(
        see,
        [3, 6, 9, 12, 15].map((by) => flat(rope.long + by, rope.wide + by)),
        { middle: 50, reach: 46 },
      ),
      { ...contour(wholeRing(see, rope), 'shade'), weight: 'detail' },
      contour(wholeRing(see, neck), 'paper'),
      ...[-1, 1].map((sign) =>
        line(
          [
            [x + sign * half, y - reach - 2],
            [x + sign * half, y + reach + 2],
          ],
          'hidden',
        ),
      ),
      ...[-1, 1].map((sign) =>
        line(
          [
            [x - half, y + sign * key],
            [x + half, y + sign * key],
          ],
          'hidden',
        ),
      ),
      ...[-54, -46, 45, 54].map((dx, k) => grain(x + dx, y + 10 * Math.sin(k * 2), 46, k)),
      ...hole.outline,
      swelling(arc(see, at(0), -12, 112), 2.6),
      swelling(arc(see, neck, 0, 96), 1.8),
    ],
    zones: () => [
      ...quarters(see, at(0), rope, sideNames),
      zone('ropeLine', without(closedPath(wholeRing(see, rope)), closedPath(wholeRing(see, neck)))),
      zone('base', without(closedPath(wholeRing(see, neck)), ...joints, core)),
      zone('key', without(core, hole.path)),
      hole.zone,
      zone('jointFace', without(...joints)),
    ],
    lettering: [frontIsDown(160, 304)],
  });
}

export const beret = drawing('beret', 'side', { plan: beretPlan, side: beretSide, under: beretUnder });
