import {
  type Crown,
  crownFrom,
  crownLines,
  crownPlan,
  crownUnder,
  HEAD,
  ROPE,
  seenSideNames,
} from '../parts/crown-parts.ts';
import type { DrawingView, Stroke } from '../shape.ts';
import { type Camera, fromAbove, fromRight } from '../tools/camera.ts';
import { between, flat, levelAt, onLevel, reachUp, seenArea, wholeRing } from '../tools/oval-body.ts';
import { frontEdge, line, planShading, rings, swelling } from '../tools/pen.ts';
import { drawing, frontIsRight, groundShade, view, zone } from '../tools/view.ts';

/** The side view of a plain crown. `shoulder` is the height at which the side becomes the tip. */
function crownSide(
  crown: Crown,
  shoulder: number,
  top: number,
  extra: (see: Camera) => Stroke[] = () => [],
): DrawingView {
  const floor = 20 + reachUp(crown.upper);
  const see = fromRight(160, floor);
  const { whole } = crown;
  const edge = frontEdge(see, between(crown.upper, ROPE.high, shoulder));
  return view('side', Math.round(floor + 46), {
    outline: [
      ...groundShade(see, levelAt(whole, 0)),
      ...crownLines(see, crown, { shadeTo: shoulder * 1.02 }),
      swelling(edge),
      ...extra(see),
    ],
    zones: () => [
      zone('tip', seenArea(see, between(whole, shoulder, top))),
      ...seenSideNames.map(([id, from, to]) =>
        zone(id, seenArea(see, between(whole, ROPE.high, shoulder), [from, to])),
      ),
      zone('ropeLine', seenArea(see, between(whole, ROPE.low, ROPE.high))),
      zone('lowerEdge', seenArea(see, between(whole, 0, ROPE.low))),
    ],
    lettering: [frontIsRight(286, floor + 34)],
  });
}

/** Nearly straight for more than half its height, then rounded over: taller than a half-sphere. */
const dome = (): Crown =>
  crownFrom([
    [
      [HEAD, ROPE.high],
      [111.6, 52],
      [109.5, 84],
      [102, 115],
      [85, 141],
      [59, 157.5],
      [28, 165.5],
      [0, 167.5],
    ],
  ]);

export const domeCrown = drawing('domeCrown', 'side', {
  plan: () => crownPlan({ long: 66, wide: 46 }),
  side: () => crownSide(dome(), 128, 167.4),
  under: () => crownUnder(dome()),
});

/** Straight sides and a flat tip, the edge between them only just broken. */
const drum = (): Crown =>
  crownFrom([
    [
      [HEAD, ROPE.high],
      [110, 128],
    ],
    [
      [110, 128],
      [108.6, 132.5],
      [105, 134.5],
    ],
    [
      [105, 134.5],
      [0.5, 135.5],
    ],
  ]);

function drumPlan(): DrawingView {
  const see = fromAbove(160, 132);
  const edge = flat(101, 79);
  return crownPlan(
    { long: 74, wide: 51 },
    {
      outline: [
        line([...wholeRing(see, edge), onLevel(see, edge, 0)]),
        ...planShading(
          see,
          [104, 106.5, 109].map((long) => flat(long, long - 22)),
          { reach: 40 },
        ),
      ],
    },
  );
}

export const flatCrown = drawing('flatCrown', 'side', {
  plan: drumPlan,
  side: () => {
    const crown = drum();
    return crownSide(crown, 126, 135.4, (see) => rings(see, crown.upper, [128]));
  },
  under: () => crownUnder(drum()),
});
