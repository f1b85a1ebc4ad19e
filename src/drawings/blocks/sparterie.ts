import { quarters, seenSideNames } from '../parts/crown-parts.ts';
import type { DrawingView, Point, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromBelow, fromRight } from '../tools/camera.ts';
import {
  arc,
  between,
  flat,
  type Level,
  levelAt,
  limits,
  type OvalBody,
  onLevel,
  reachUp,
  seenArea,
  turned,
  wholeRing,
} from '../tools/oval-body.ts';
import { closedPath, curveThrough, without } from '../tools/path.ts';
import { bodyOutline, contour, frontEdge, line, planShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

/** A studio form of sparterie: a toque, woven straw outside and muslin within, wired and bound along the edge. */

const TOP = 129;
const SHOULDER = 104;
const BINDING = { wire: 5, top: 20 };

/** Tilted back, as it was pinned: the higher, the farther from the front. */
const toque = (): OvalBody =>
  turned(
    [
      [
        [98, 0],
        [101, 18],
        [107, 46],
        [112, 74],
        [113, 92],
        [108, 104],
        [96, 112],
        [66, 122],
        [32, 128],
        [0, TOP],
      ],
    ],
    { shiftOf: (up) => 12 - up * 0.19 },
  );

/** The same scatter every time: a number from 0 to 1 for a place in the weave. */
const scatter = (row: number, column: number): number =>
  Math.abs(Math.sin(row * 12.9898 + column * 78.233) * 43758.5453) % 1;

/**
 * The weave: straws over and under by turns, drawn as pairs of short strokes, upright and level. Blank toward the light
 * at the back, full at the front, and never more than a hand would bother with.
 */
function weave(see: Camera, body: OvalBody, low: number, high: number): Stroke[] {
  const strokes: Stroke[] = [];
  const [rowHeight, turn] = [6.4, 5.6];
  for (let row = 0; low + (row + 1) * rowHeight < high; row += 1) {
    const at = (share: number): Level => levelAt(body, low + (row + share) * rowHeight);
    const [front, back] = limits(see, at(0.5));
    for (let column = -16; column < 50; column += 1) {
      const angle = column * turn;
      if (angle < front + 3 || angle > back - 5) continue;
      const share = (back - angle) / (back - front);
      if (scatter(row, column) > share ** 1.9 * 1.25) continue;
      if ((row + column) % 2 === 0) {
        for (const level of [at(0.28), at(0.66)])
          strokes.push(line(arc(see, level, angle - 2.2, angle + 2.2), 'hatch'));
      } else {
        for (const degrees of [angle - 1.1, angle + 1.1])
          strokes.push(line([onLevel(see, at(0.1), degrees), onLevel(see, at(0.88), degrees)], 'hatch'));
      }
    }
  }
  return strokes;
}

function toqueSide(): DrawingView {
  const body = toque();
  const floor = 20 + reachUp(body);
  const see = fromRight(160, floor);
  const edge = body[0] as Level;
  const stitch = (degrees: number): Stroke =>
    line([onLevel(see, levelAt(body, 2), degrees - 2), onLevel(see, levelAt(body, BINDING.top - 2), degrees + 2)]);
  const seam = (degrees: number, lean: number): Point[] =>
    between(body, BINDING.top, TOP - 6).map((level) =>
      onLevel(see, level, degrees + lean * ((level.up - BINDING.top) / TOP) ** 2),
    );
  const fold = Array.from({ length: 41 }, (_, k): Point => {
    const along = k / 40;
    return onLevel(see, levelAt(body, 52 + 66 * along ** 0.8 - 16 * Math.sin(Math.PI * along)), 150 - 112 * along);
  });
  const seamLine = seam(118, 26);
  return view('side', Math.round(floor + 52), {
    outline: [
      ...groundShade(see, edge),
      ...bodyOutline(see, body, { grounded: true }),
      ...weave(see, body, BINDING.top + 3, 120),
      // One soft fold, pinched in while the sheet was damp.
      ...[0, 1, 2, 3].map((row) =>
        line(
          fold.slice(6 + row * 3, -4 - row * 3).map(([x, y]): Point => [x, y + 3 * row]),
          'hatch',
        ),
      ),
      swelling(fold, 2),
      line(seamLine),
      line(seam(124, 26), 'hatch'),
      // The overlap is caught down with slanting stitches.
      ...Array.from({ length: 11 }, (_, k): Stroke => {
        const [x, y] = seamLine[Math.round(((k + 0.7) * (seamLine.length - 1)) / 11.5)] as Point;
        return line([
          [x - 6, y - 3],
          [x + 1, y + 2],
        ]);
      }),
      { ...contour(seenArea(see, between(body, 0, BINDING.top)), 'paper'), weight: 'detail' },
      line(seenArea(see, between(body, 0, BINDING.top)).slice(0, 2), 'contour'),
      line(arc(see, levelAt(body, BINDING.wire), 178, 2), 'detail'),
      ...Array.from({ length: 26 }, (_, k) => stitch(6 + k * 6.7)),
      swelling(arc(see, edge, 178, 2), 2.6),
      swelling(frontEdge(see, between(body, BINDING.top, SHOULDER)), 2),
    ],
    zones: () => [
      zone('tip', seenArea(see, between(body, SHOULDER, TOP - 0.1))),
      ...seenSideNames.map(([id, from, to]) =>
        zone(id, seenArea(see, between(body, BINDING.top, SHOULDER), [from, to])),
      ),
      zone('covering', seenArea(see, between(body, BINDING.wire, BINDING.top))),
      zone('wire', seenArea(see, between(body, 0, BINDING.wire))),
    ],
    lettering: [frontIsRight(290, floor + 40)],
  });
}

function toquePlan(): DrawingView {
  const see = fromAbove(160, 130);
  const outer = flat(111, 90, -2);
  const tip = flat(54, 40, -12);
  const edge = flat(98, 79, 12);
  const mesh = Array.from({ length: 8 }, (_, row): Stroke[] =>
    Array.from({ length: 44 }, (_, column): Stroke[] => {
      const angle = -126 + column * 3.8;
      const share = Math.cos(((angle + 48) * Math.PI) / 180) * (1 - row * 0.1);
      if (share <= 0.05 || scatter(row, column) > share * 1.1) return [];
      const at = (inset: number, degrees: number): Point => {
        const by = 4 + row * 6.4 + inset;
        return onLevel(see, flat(111 - by, 90 - by, -2 - by * 0.18), degrees);
      };
      return (row + column) % 2 === 0
        ? [1.8, 4.2].map((inset) => line([at(inset, angle - 1.6), at(inset, angle + 1.6)], 'hatch'))
        : [-0.8, 0.8].map((aside) => line([at(0.6, angle + aside), at(5.6, angle + aside)], 'hatch'));
    }).flat(),
  ).flat();
  return view('plan', 300, {
    outline: [
      contour(wholeRing(see, edge), 'paper'),
      contour(wholeRing(see, outer), 'paper'),
      ...mesh,
      line(
        curveThrough([
          onLevel(see, outer, 118),
          onLevel(see, flat(84, 66, -7), 126),
          onLevel(see, flat(50, 38, -12), 140),
        ]),
      ),
      line(
        curveThrough([
          onLevel(see, outer, 122),
          onLevel(see, flat(84, 66, -7), 130.5),
          onLevel(see, flat(52, 40, -12), 145),
        ]),
        'hatch',
      ),
      ...Array.from({ length: 6 }, (_, k): Stroke => {
        const [x, y] = onLevel(see, flat(108 - k * 10, 87 - k * 9, -3 - k * 1.6), 118.6 + k * 2.6);
        return line([
          [x - 3, y - 4],
          [x + 3, y + 3],
        ]);
      }),
      swelling(arc(see, outer, 14, -112), 2.4),
    ],
    zones: () => [zone('tip', wholeRing(see, tip)), ...quarters(see, outer, tip), tag(6, 242)],
    lettering: [frontIsDown(160, 272)],
  });
}

/** Looking up into it: the wire, the turned-in binding, and the muslin with its threads crossing. */
function toqueUnder(): DrawingView {
  const see = fromBelow(160, 134);
  const [edge, wire, binding] = [flat(120, 98), flat(112, 90), flat(89, 67)];
  const ring = (level: Level): string => closedPath(wholeRing(see, level));
  const threads = [-1, 1].flatMap((sign) =>
    Array.from({ length: 17 }, (_, k): Stroke[] => {
      // A thread is a straight line at an offset from the middle; it shows where the shade of the rim falls.
      const offset = -80 + k * 10;
      const points = Array.from({ length: 60 }, (_, n): Point => {
        const along = -100 + n * (200 / 59);
        return [160 + (offset + along * sign) * Math.SQRT1_2, 134 + (along - offset * sign) * Math.SQRT1_2];
      }).filter(
        ([x, y]) =>
          ((x - 160) / 65) ** 2 + ((y - 134) / 87) ** 2 < 1 &&
          (x - 160) * 0.6 + (y - 134) * 0.8 < -18 + 14 * Math.sin(k * 2.1),
      );
      return points.length > 3 ? [line([points[0] as Point, points[points.length - 1] as Point], 'hatch')] : [];
    }).flat(),
  );
  return view('under', 296, {
    outline: [
      contour(wholeRing(see, edge), 'paper'),
      line([...wholeRing(see, wire), onLevel(see, wire, 0)]),
      { ...contour(wholeRing(see, binding), 'shade'), weight: 'contour' },
      ...threads,
      ...Array.from(
        { length: 58 },
        (_, k): Stroke =>
          line(
            [onLevel(see, flat(113, 91), k * 6.2), onLevel(see, flat(90, 68), k * 6.2 + 2)],
            k % 2 === 0 ? 'detail' : 'hatch',
          ),
      ),
      ...planShading(
        see,
        [86, 83, 80, 77, 74].map((long) => flat(long, long - 22)),
        { middle: 228, reach: 46 },
      ),
      swelling(arc(see, edge, -12, 112), 2.4),
    ],
    zones: () => [
      zone('interior', ring(binding)),
      zone('covering', without(ring(wire), ring(binding))),
      zone('wire', without(ring(edge), ring(wire))),
    ],
    lettering: [frontIsDown(160, 274)],
  });
}

export const sparterieToque = drawing('sparterieToque', 'side', {
  plan: toquePlan,
  side: toqueSide,
  under: toqueUnder,
});
