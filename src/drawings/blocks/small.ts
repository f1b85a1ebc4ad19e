import { baseBelow, centreMarks, quarters, seenSideNames } from '../parts/crown-parts.ts';
import type { BlockDrawing, DrawingView, Point } from '../shape.ts';
import { fromAbove, fromRight } from '../tools/camera.ts';
import {
  arc,
  between,
  flat,
  type Level,
  levelAt,
  onLevel,
  reachUp,
  seenArc,
  seenArea,
  turned,
  wholeRing,
} from '../tools/oval-body.ts';
import { closedPath, without } from '../tools/path.ts';
import { bodyOutline, contour, frontEdge, line, planShading, roundShading, swelling } from '../tools/pen.ts';
import { drawing, frontIsDown, frontIsRight, groundShade, tag, view, zone } from '../tools/view.ts';

/** Low blocks turned in one piece: the tip block and the button or pillbox. */

interface LowBlock {
  id: string;
  ratio: number;
  runs: Point[][];
  /** Heights: where the pinning edge ends, where side becomes tip, the top. */
  edge: number;
  shoulder: number;
  top: number;
  /** Half-length of the tip's zone in plan, and of an edge to be seen there. */
  tip: number;
  arris?: number;
}

function lowSide(block: LowBlock): DrawingView {
  const tilt = 22;
  const body = turned(block.runs, { ratio: block.ratio });
  const floor = 22 + reachUp(body, tilt);
  const see = fromRight(160, floor, tilt);
  const lowest = body[0] as Level;
  const bottom = floor + lowest.wide * see.down;
  return view('side', Math.round(bottom + 38), {
    outline: [
      ...groundShade(see, lowest),
      ...bodyOutline(see, body, { grounded: true }),
      line(seenArc(see, levelAt(body, block.edge))),
      ...(block.arris ? [line(seenArc(see, levelAt(body, block.arris)))] : []),
      ...roundShading(see, body, {
        from: block.edge + 3,
        to: block.edge + (block.shoulder - block.edge) * 0.8,
        gap: 3.2,
        reach: 34,
      }),
      ...roundShading(see, body, { from: 2, to: block.edge - 1.5, gap: 2.6, reach: 40 }),
      swelling(frontEdge(see, between(body, 0, block.shoulder))),
      swelling(arc(see, lowest, 150, 4), 2.2),
    ],
    zones: () => [
      zone('tip', seenArea(see, between(body, block.shoulder, block.top))),
      ...seenSideNames.map(([id, from, to]) =>
        zone(id, seenArea(see, between(body, block.edge, block.shoulder), [from, to])),
      ),
      zone('lowerEdge', seenArea(see, between(body, 0, block.edge))),
    ],
    lettering: [frontIsRight(290, bottom + 26)],
  });
}

function lowPlan(block: LowBlock): DrawingView {
  const long = block.runs[0]?.[0]?.[0] as number;
  const wide = long / block.ratio;
  const see = fromAbove(160, 20 + long);
  const at = (by: number): Level => flat(long - by, wide - by);
  const tip = flat(block.tip, block.tip - (long - wide));
  const arris = block.arris ? at(9) : undefined;
  const bottom = 20 + 2 * long;
  return view('plan', Math.round(bottom + 52), {
    outline: [
      contour(wholeRing(see, at(0)), 'paper'),
      ...(arris ? [line([...wholeRing(see, arris), onLevel(see, arris, 0)])] : []),
      ...centreMarks(see, at(arris ? 9 : 2), 8),
      ...planShading(see, [12, 15, 18, 21, 24, 27, 30].map((by) => at(by - (arris ? 8 : 4))).slice(0, arris ? 3 : 7)),
      swelling(arc(see, at(0), 12, -112), 2.4),
    ],
    zones: () => [
      zone('tip', wholeRing(see, tip)),
      ...quarters(see, at(8), tip),
      zone('lowerEdge', without(closedPath(wholeRing(see, at(0))), closedPath(wholeRing(see, at(8))))),
      tag(6, Math.round(bottom - 6)),
    ],
    lettering: [frontIsDown(160, bottom + 24)],
  });
}

const lowBlock = (block: LowBlock): BlockDrawing => {
  const long = block.runs[0]?.[0]?.[0] as number;
  return drawing(block.id, 'side', {
    plan: () => lowPlan(block),
    side: () => lowSide(block),
    under: () => baseBelow(flat(long, long / block.ratio)),
  });
};

/** Only the top of a crown: a low cushion that ends in a crisp edge, to stand on a band block or a plain crown. */
export const tip = lowBlock({
  id: 'tip',
  ratio: 1.24,
  runs: [
    [
      [112, 0],
      [112, 14],
    ],
    [
      [112, 14],
      [107, 28],
      [92, 43],
      [66, 54],
      [34, 59.5],
      [0, 61],
    ],
  ],
  edge: 14,
  shoulder: 44,
  top: 60.9,
  tip: 64,
});

/** A low drum with an even side and a crisp edge. */
export const button = lowBlock({
  id: 'button',
  ratio: 1.1,
  runs: [
    [
      [98, 0],
      [98, 66],
    ],
    [
      [98, 66],
      [96.5, 70.5],
      [93, 72.5],
    ],
    [
      [93, 72.5],
      [60, 76],
      [0, 77.5],
    ],
  ],
  edge: 13,
  shoulder: 66,
  top: 77.4,
  tip: 54,
  arris: 66,
});
