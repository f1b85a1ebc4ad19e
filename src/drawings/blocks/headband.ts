import { stemHole } from '../parts/crown-parts.ts';
import type { DrawingView, Point, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromBelow, type Space } from '../tools/camera.ts';
import { closedPath, without } from '../tools/path.ts';
import { contour, grain, line, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, tag, view, zone } from '../tools/view.ts';

/** The headband block: an arch that follows the head from ear to ear, on a board. Seen from the front, a little aside. */

const ARCH = { half: 86, inner: 62, rise: 124, innerRise: 98, deep: 29, foot: 13 };
const BOARD = { half: 106, deep: 42 };

/** From the front, stepped to the wearer's left and a little above: straight on, the working curve would not be seen. */
const aslant = (x: number, y: number): Camera =>
  Object.assign(
    ([forward, right, up]: Space): Point => [x - right * 0.92 - forward * 0.5, y - up * 0.97 + forward * 0.3],
    { down: 0.3, across: 0.97 },
  );

const STEP = 4;
/** Points along the arch; 0 degrees is its foot at the wearer's right, 180 at the left. */
function along(see: Camera, half: number, rise: number, forward: number, from: number, to: number): Point[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / STEP));
  return Array.from({ length: pieces + 1 }, (_, k) => {
    const angle = ((from + ((to - from) * k) / pieces) * Math.PI) / 180;
    return see([forward, half * Math.cos(angle), ARCH.foot + rise * Math.sin(angle)]);
  });
}

function bandFront(): DrawingView {
  const see = aslant(160, 190);
  const outer = (forward: number, from = 0, to = 180): Point[] => along(see, ARCH.half, ARCH.rise, forward, from, to);
  const inner = (forward: number, from = 0, to = 180): Point[] =>
    along(see, ARCH.inner, ARCH.innerRise, forward, from, to);
  const { deep } = ARCH;
  // Where the working curve turns away: there the outline's slope equals that of a line running straight back.
  const turn = (Math.atan2(0.97 * ARCH.rise * 0.5, 0.92 * ARCH.half * 0.3) * 180) / Math.PI;
  const box = (up: number): Point[] =>
    (
      [
        [BOARD.deep, BOARD.half],
        [BOARD.deep, -BOARD.half],
        [-BOARD.deep, -BOARD.half],
        [-BOARD.deep, BOARD.half],
      ] as const
    ).map(([forward, right]) => see([forward, right, up]));
  const [top, low] = [box(ARCH.foot), box(0)];
  const frontWall = [top[0], top[1], low[1], low[0]] as Point[];
  const sideWall = [top[1], top[2], low[2], low[1]] as Point[];
  const face = [...outer(deep), ...inner(deep, 180, 0)];
  const strip = (from: number, to: number): Point[] => [...outer(deep, from, to), ...outer(-deep, to, from)];
  const lining = [...inner(deep, 0, turn - 6), ...inner(-deep, turn - 6, 0)];
  const curved = (degrees: number, from: number, to: number): Stroke => {
    const angle = (degrees * Math.PI) / 180;
    const at = (forward: number): Point =>
      see([forward, ARCH.half * Math.cos(angle), ARCH.foot + ARCH.rise * Math.sin(angle)]);
    return line([at(from), at(to)], 'hatch');
  };
  return view('front', 256, {
    outline: [
      ...[0, 1, 2, 3].map((k): Stroke => {
        const [x, y] = see([-BOARD.deep + 10 + k * 20, -BOARD.half, 0]);
        return line(
          [
            [x + 3, y],
            [Math.min(x + 30 - k * 3, 315), y],
          ],
          'hatch',
        );
      }),
      contour([...top.slice(0, 1), ...top.slice(1), ...[]], 'paper'),
      contour(frontWall, 'paper'),
      contour(sideWall, 'paper'),
      ...[3, 6, 9].map((drop) =>
        line(
          [
            see([BOARD.deep - 4, -BOARD.half, ARCH.foot - drop]),
            see([-BOARD.deep + drop * 3, -BOARD.half, ARCH.foot - drop]),
          ],
          'hatch',
        ),
      ),
      ...[-4, 2, 8].map((k) =>
        line(
          [see([-10 + k, -ARCH.half - 2, ARCH.foot]), see([-10 + k, -ARCH.half - 14 + k * 0.6, ARCH.foot])],
          'hatch',
        ),
      ),
      { ...contour(lining, 'shade'), weight: 'detail' },
      ...Array.from({ length: 13 }, (_, k): Stroke => {
        const [a, b] = [inner(deep, k * 4.2, k * 4.2)[0] as Point, inner(-deep, k * 4.2, k * 4.2)[0] as Point];
        return line(
          [
            a,
            [
              a[0] + (b[0] - a[0]) * (0.55 + 0.2 * Math.sin(k * 2.2)),
              a[1] + (b[1] - a[1]) * (0.55 + 0.2 * Math.sin(k * 2.2)),
            ],
          ],
          'hatch',
        );
      }),
      contour(strip(turn, 180), 'paper'),
      contour(face, 'paper'),
      ...Array.from({ length: 24 }, (_, k) =>
        curved(178 - k * 2.6, -deep + 1, -deep + 2 * deep * (0.74 - k * 0.026) * (0.9 + 0.1 * Math.sin(k * 2.3))),
      ),
      line(along(see, ARCH.half - 4, ARCH.rise - 4, deep, 4, 176), 'hatch'),
      ...[0.3, 0.55, 0.8].map((share, k) =>
        line(
          along(see, ARCH.inner + 24 * share, ARCH.innerRise + 26 * share, deep, 118 + k * 10, 168 - k * 4),
          'hatch',
        ),
      ),
      swelling(outer(deep, 30, 178), 1.8),
      swelling(outer(-deep, turn + 6, 178), 2.2),
      swelling([low[0] as Point, see([BOARD.deep, 0, 0]), low[1] as Point], 2.2),
    ],
    zones: () => [
      zone('tip', strip(turn, 116)),
      zone('sideLeft', strip(116, 178)),
      zone('sideFront', face),
      zone('interior', inner(deep)),
      zone('base', frontWall),
    ],
    lettering: [],
  });
}

function bandPlan(): DrawingView {
  const see = fromAbove(160, 86);
  const rect = (half: number, deep: number): Point[] => [
    see([-deep, half, 0]),
    see([-deep, -half, 0]),
    see([deep, -half, 0]),
    see([deep, half, 0]),
  ];
  const part = (from: number, to: number): Point[] => [
    see([-ARCH.deep, from, 0]),
    see([-ARCH.deep, to, 0]),
    see([ARCH.deep, to, 0]),
    see([ARCH.deep, from, 0]),
  ];
  const board = rect(BOARD.half, BOARD.deep);
  const arch = rect(ARCH.half, ARCH.deep);
  return view('plan', 206, {
    outline: [
      contour(board, 'paper'),
      contour(arch, 'paper'),
      // Crowded toward the ends, where the curve falls away.
      ...[84, 82, 79, 75.5, 71.5, 67, 61.5, 55].flatMap((right, k) =>
        ([1, -1] as const).map((sign) =>
          line(
            [see([-ARCH.deep + 1, sign * right, 0]), see([ARCH.deep - 1 - k * (sign > 0 ? 5 : 2.5), sign * right, 0])],
            'hatch',
          ),
        ),
      ),
      line([see([-ARCH.deep, 0, 0]), see([-ARCH.deep + 8, 0, 0])]),
      line([see([ARCH.deep, 0, 0]), see([ARCH.deep - 8, 0, 0])]),
      ...[3, 6, 9].map((out) =>
        line(
          [
            see([ARCH.deep + out, -18, 0]),
            see([ARCH.deep + out, -ARCH.half - out, 0]),
            see([-ARCH.deep + 14, -ARCH.half - out, 0]),
          ],
          'hatch',
        ),
      ),
      swelling([board[1] as Point, board[2] as Point], 2),
      swelling([board[2] as Point, board[3] as Point], 2.4),
    ],
    zones: () => [
      zone('sideRight', part(ARCH.half, 30)),
      zone('tip', part(30, -30)),
      zone('sideLeft', part(-30, -ARCH.half)),
      zone('base', without(closedPath(board), closedPath(arch))),
      tag(6, 148),
    ],
    lettering: [frontIsDown(160, 158)],
  });
}

function bandUnder(): DrawingView {
  const see = fromBelow(160, 76);
  const board = [
    see([-BOARD.deep, -BOARD.half, 0]),
    see([-BOARD.deep, BOARD.half, 0]),
    see([BOARD.deep, BOARD.half, 0]),
    see([BOARD.deep, -BOARD.half, 0]),
  ];
  const hole = stemHole([160, 76], 11);
  return view('under', 156, {
    outline: [
      contour(board, 'paper'),
      ...[-84, -62, -38, 40, 60, 82].map((dx, k) => grain(160 + dx, 76 + 6 * Math.sin(k * 2), 50, k)),
      ...hole.outline,
      swelling([board[1] as Point, board[2] as Point], 2),
      swelling([board[3] as Point, board[2] as Point], 2.4),
    ],
    zones: () => [zone('base', without(closedPath(board), hole.path)), hole.zone],
    lettering: [frontIsDown(160, 138)],
  });
}

export const headband = drawing('headband', 'front', { plan: bandPlan, front: bandFront, under: bandUnder });
