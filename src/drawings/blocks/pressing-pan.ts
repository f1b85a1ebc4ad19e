import { brimNames, faceQuarters } from '../parts/board-parts.ts';
import { quarters, sideNames } from '../parts/crown-parts.ts';
import type { DrawingView, Point, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromBelow, fromRight } from '../tools/camera.ts';
import {
  arc,
  flat,
  type Level,
  levelAt,
  type OvalBody,
  onLevel,
  seenArea,
  turned,
  wholeRing,
} from '../tools/oval-body.ts';
import { closedPath, isInside, without } from '../tools/path.ts';
import { bodyOutline, closedLine, contour, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, tag, view, zone } from '../tools/view.ts';

const TILT = 26;

/** Pressing pan: the female die of a boater, spun in sheet metal; crown below, brim as flange, a lug at either end. */
const PAN = { rim: 134, slimmer: 17, high: 58, lip: 86, floor: 76, deep: 50, lug: 17 };

/** Of the bowl only what hangs below the flange is seen: between the flange's near edge and the bowl's own outline. */
function hanging(see: Camera, bowl: OvalBody, rim: Level): Point[] {
  const edge = arc(see, rim, 0, 180, 2).map(([x, y]): Point => [x, y + 3]);
  const edgeAt = (x: number): number =>
    edge.reduce((best, point) => (Math.abs(point[0] - x) < Math.abs(best[0] - x) ? point : best))[1];
  const shown = seenArea(see, bowl)
    .filter(([x, y]) => y > edgeAt(x))
    .sort(([a], [b]) => a - b);
  const [left, right] = [(shown[0] as Point)[0], (shown[shown.length - 1] as Point)[0]];
  return [...edge.filter(([x]) => x > left && x < right), ...shown];
}

function panSide(): DrawingView {
  const options = { wideOf: (half: number): number => Math.max(half - PAN.slimmer, 1) };
  const bowl = turned(
    [
      [
        [PAN.floor - 4, 0],
        [PAN.floor + 3, 3],
        [PAN.floor + 7, 12],
        [PAN.lip + 3, PAN.high - 2],
      ],
    ],
    options,
  );
  const sheet = turned(
    [
      [
        [PAN.rim, PAN.high - 3],
        [PAN.rim, PAN.high],
      ],
    ],
    options,
  );
  const floor = 22 + PAN.high * 0.9 + (PAN.rim - PAN.slimmer) * 0.44;
  const see = fromRight(160, floor, TILT);
  const at = (long: number, up: number = PAN.high): Level => flat(long, long - PAN.slimmer, 0, up);
  const [outer, lip, bed] = [levelAt(sheet, PAN.high), at(PAN.lip), at(PAN.floor, PAN.high - PAN.deep)];
  const mouth = wholeRing(see, lip);
  const inMouth = (points: Point[]): Point[] => points.filter((point) => isInside([mouth], point));
  const lug = (sign: 1 | -1): Point[] => {
    const [x, y] = onLevel(see, outer, sign > 0 ? 0 : 180);
    return [
      [x - sign * 6, y - 8],
      [x + sign * (PAN.lug - 4), y - 7],
      [x + sign * PAN.lug, y - 3],
      [x + sign * PAN.lug, y + 3],
      [x + sign * (PAN.lug - 4), y + 7],
      [x - sign * 6, y + 9],
    ];
  };
  const bottom = floor + (PAN.floor - PAN.slimmer) * see.down;
  return view('side', Math.round(bottom + 44), {
    outline: [
      ...[0, 1, 2, 3].map((k): Stroke => {
        const [x, y] = onLevel(see, bowl[0] as Level, 16 + k * 13);
        return line(
          [
            [x + 3, y + 1.5],
            [x + 34 - k * 5, y + 1.5],
          ],
          'hatch',
        );
      }),
      ...bodyOutline(see, bowl, { grounded: true }),
      ...roundShading(see, bowl, { from: 4, to: PAN.high - 8, gap: 3, reach: 60 }),
      contour(lug(1), 'paper'),
      contour(lug(-1), 'paper'),
      ...bodyOutline(see, sheet),
      contour(wholeRing(see, outer), 'paper'),
      closedLine(wholeRing(see, at(PAN.rim - 4)), 'hatch'),
      ...[0.2, 0.36, 0.52, 0.68].map((share, k) =>
        line(arc(see, at(PAN.lip + 6 + share * 30), 36 - k * 4, -12 + k * 4), 'hatch'),
      ),
      contour(mouth, 'shade'),
      closedLine(wholeRing(see, at(PAN.lip + 3.5)), 'hatch'),
      // Sheen on the far wall: strokes straight down, then the floor beyond them.
      ...Array.from({ length: 26 }, (_, k): Stroke => {
        const angle = 190 + (160 * k) / 25;
        const [ax, ay] = onLevel(see, lip, angle);
        const [bx, by] = onLevel(see, bed, angle);
        const stop = 0.5 + 0.42 * Math.abs(Math.sin(k * 0.42));
        return line(
          inMouth([
            [ax, ay + 1],
            [ax + (bx - ax) * stop * 0.5, ay + (by - ay) * stop * 0.5],
            [ax + (bx - ax) * stop, ay + (by - ay) * stop],
          ]),
          'hatch',
        );
      }),
      {
        ...contour(
          inMouth(arc(see, bed, 170, 370, 2)).concat(
            inMouth(arc(see, lip, 0, 180, 2).map(([x, y]): Point => [x, y - 0.6])),
          ),
          'paper',
        ),
        weight: 'detail',
      },
      ...[8, 16].map((inset) =>
        line(inMouth(arc(see, at(PAN.floor - inset, PAN.high - PAN.deep), 190, 350, 2)), 'hatch'),
      ),
      line(arc(see, lip, 0, 360), 'contour'),
      ...[1, -1].map((sign): Stroke => {
        const [x, y] = onLevel(see, outer, sign > 0 ? 0 : 180);
        return {
          ...contour(
            Array.from(
              { length: 16 },
              (_, k): Point => [x + sign * 9 + 3 * Math.cos((k * Math.PI) / 8), y + 2.2 * Math.sin((k * Math.PI) / 8)],
            ),
            'shade',
          ),
          weight: 'detail',
        };
      }),
      swelling(
        arc(see, outer, 172, 8).map(([x, y]): Point => [x, y + 2.4]),
        2,
      ),
      swelling(arc(see, bowl[0] as Level, 150, 10), 2.2),
    ],
    zones: () => [
      ...faceQuarters(see, (from, to) => arc(see, outer, from, to), lip, arc(see, lip, 0, -180)),
      zone('interior', mouth),
      zone('sideRight', hanging(see, bowl, outer)),
    ],
    lettering: [frontIsRight(290, bottom + 28)],
  });
}

function panPlan(): DrawingView {
  const see = fromAbove(160, 172);
  const at = (long: number): Level => flat(long, long - PAN.slimmer);
  const ring = (long: number): string => closedPath(wholeRing(see, at(long)));
  const lug = (sign: 1 | -1): Point[] =>
    (
      [
        [128, 13],
        [146, 12],
        [151, 6],
        [151, -6],
        [146, -12],
        [128, -13],
      ] as const
    ).map(([forward, right]) => see([sign * forward, right, 0]));
  const bolt = (sign: 1 | -1): Stroke => ({
    ...contour(
      Array.from({ length: 20 }, (_, k) =>
        see([sign * 142 + 4 * Math.cos((k * Math.PI) / 10), 4 * Math.sin((k * Math.PI) / 10), 0]),
      ),
      'shade',
    ),
    weight: 'detail',
  });
  return view('plan', 372, {
    outline: [
      contour(lug(1), 'paper'),
      contour(lug(-1), 'paper'),
      bolt(1),
      bolt(-1),
      contour(wholeRing(see, at(PAN.rim)), 'paper'),
      closedLine(wholeRing(see, at(PAN.rim - 4)), 'hatch'),
      ...planShading(see, [127, 123.5, 120, 116.5].map(at), { reach: 36 }),
      contour(wholeRing(see, at(PAN.lip + 4)), 'shade'),
      ...planShading(see, [87, 83.5, 80, 76.5, 73].map(at), { middle: 132, reach: 52 }),
      contour(wholeRing(see, at(58)), 'paper'),
      closedLine(wholeRing(see, at(52)), 'hatch'),
      ...planShading(see, [48, 44.5, 41, 37.5].map(at), { middle: 132, reach: 34 }),
      swelling(arc(see, at(PAN.rim), 14, -112), 2.6),
    ],
    zones: () => [
      zone('interior', ring(58)),
      ...quarters(see, at(PAN.lip + 4), at(58)),
      ...quarters(see, at(PAN.rim - 8), at(PAN.lip + 4), brimNames),
      zone('lowerEdge', without(ring(PAN.rim), ring(PAN.rim - 8))),
      tag(6, 310),
    ],
    lettering: [frontIsDown(160, 344)],
  });
}

function panUnder(): DrawingView {
  const see = fromBelow(160, 156);
  const at = (long: number): Level => flat(long, long - PAN.slimmer);
  const ring = (long: number): string => closedPath(wholeRing(see, at(long)));
  return view('under', 340, {
    outline: [
      contour(wholeRing(see, at(PAN.rim)), 'paper'),
      closedLine(wholeRing(see, at(PAN.rim - 4)), 'hatch'),
      ...planShading(see, [93, 96.5, 100, 103.5, 107].map(at), { middle: 48, reach: 48 }),
      contour(wholeRing(see, at(PAN.lip + 3)), 'paper'),
      ...planShading(see, [86, 83, 80, 77, 74].map(at), { middle: 48, reach: 44 }),
      closedLine(wholeRing(see, at(58))),
      swelling(arc(see, at(PAN.rim), -12, 112), 2.6),
      swelling(arc(see, at(PAN.lip + 3), 0, 100), 2),
    ],
    zones: () => [
      zone('base', ring(58)),
      ...quarters(see, at(PAN.lip + 3), at(58), sideNames),
      zone('jointFace', without(ring(PAN.rim), ring(PAN.lip + 3))),
    ],
    lettering: [frontIsDown(160, 312)],
  });
}

export const pressingPan = drawing('pressingPan', 'side', { plan: panPlan, side: panSide, under: panUnder });
