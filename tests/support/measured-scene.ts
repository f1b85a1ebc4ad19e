import { applyHomography, invertHomography } from '../../src/pixels/homography.ts';
import type { Img, Px } from '../../src/pixels/types.ts';
import { dimmed, type Light, lengthOf, photoOf, seen, toLine, view, wood } from '../pixels/drawn.ts';

/*
 * A photograph drawn in code of a wooden face with things of known size on it: a card, a crack, holes, a stain. All
 * places are millimetres on the face, from the middle of the picture; what is measured in it is checked against these.
 */

const CAMERA = { width: 1600, height: 1200, focalPx: 1230 };
const CARD_MM = { width: 85.6, height: 53.98, radius: 3.18 };
const CARD_AT: Px = [-160, 50];
const CRACK_WIDTH_MM = 1.4;
/** A check that wanders as checks do. */
const CRACK: readonly Px[] = Array.from({ length: 41 }, (_, i) => [
  -130 + 3.6 * i,
  -60 + 10 * Math.sin(i / 6) + 1.5 * Math.sin(i / 1.7),
]);
const HOLE_MM = 2;
const HOLES: readonly Px[] = [
  [72, -84],
  [96, -71],
  [118, -92],
  [139, -66],
  [84, -49],
  [110, -40],
  [133, -31],
  [151, -47],
  [66, -28],
];
const STAIN = { x: 110, y: 70, a: 42, b: 28 };

const toPx = view(CAMERA, 10, 340, 6)(0);
const toMm = invertHomography(toPx);
if (!toMm) throw new Error('The camera of the drawn scene looks along the face.');

/** A sheet of A6 and a coin of one euro. Source: ISO 216; European Commission, technical specifications of coins. */
const SHEET = { x: -200, y: 12, width: 148, height: 105 };
const COIN = { x: -58, y: -26, diameter: 23.25 };
/** A short crack beside the coin. */
const NEAR_COIN: readonly Px[] = Array.from({ length: 21 }, (_, i) => [-84 + 2.5 * i, -7 + 2 * Math.sin(i / 4)]);
/** Flat dabs, 24 mm wide: what reflects how much red, green and blue. */
const DABS = {
  grey: { x: 20, y: 20, reflects: [0.18, 0.18, 0.18] },
  repair: { x: 20, y: 60, reflects: [0.42, 0.26, 0.11] },
  wood: { x: 20, y: 100, reflects: [0.5, 0.33, 0.17] },
} as const;
const DAB_MM = 24;
/** Evening light: what it has of red, green and blue. */
const EVENING: Light = [1.1, 0.95, 0.7];

const inBox = (x: number, y: number, left: number, top: number, width: number, height: number): boolean =>
  x >= left && x < left + width && y >= top && y < top + height;

const inCard = (x: number, y: number): boolean => {
  const { width, height, radius } = CARD_MM;
  const dx = Math.max(Math.abs(x - CARD_AT[0] - width / 2) - width / 2 + radius, 0);
  const dy = Math.max(Math.abs(y - CARD_AT[1] - height / 2) - height / 2 + radius, 0);
  return Math.hypot(dx, dy) <= radius;
};

const ground = wood(5, 0.5);

/** A place of the picture in mm on the face. */
const onFace = (u: number, v: number): Px => applyHomography(toMm as NonNullable<typeof toMm>, [u, v]);

function withCard(u: number, v: number): Light {
  const [x, y] = onFace(u, v);
  return inCard(x, y) ? [0.12, 0.25, 0.5] : face(u, v, x, y);
}

function withSheetAndCoin(u: number, v: number): Light {
  const [x, y] = onFace(u, v);
  const reflects = ((): Light => {
    if (inBox(x, y, SHEET.x, SHEET.y, SHEET.width, SHEET.height)) return [0.75, 0.75, 0.72];
    const away = Math.hypot(x - COIN.x, y - COIN.y);
    if (away < COIN.diameter / 2) return away < COIN.diameter / 2 - 4 ? [0.5, 0.5, 0.5] : [0.62, 0.5, 0.2];
    if (inBox(x, y, -90, -12, 62, 10) && toLine(NEAR_COIN, x, y).away < CRACK_WIDTH_MM / 2)
      return dimmed(ground(u, v), 0.06);
    const dab = Object.values(DABS).find((one) => inBox(x, y, one.x, one.y, DAB_MM, DAB_MM));
    return dab?.reflects ?? face(u, v, x, y);
  })();
  return [reflects[0] * EVENING[0], reflects[1] * EVENING[1], reflects[2] * EVENING[2]];
}

function face(u: number, v: number, x: number, y: number): Light {
  const light = ground(u, v);
  if (x > -136 && x < 24 && y > -78 && y < -42 && toLine(CRACK, x, y).away < CRACK_WIDTH_MM / 2)
    return dimmed(light, 0.06);
  if (HOLES.some(([hx, hy]) => (hx - x) ** 2 + (hy - y) ** 2 < (HOLE_MM / 2) ** 2)) return dimmed(light, 0.04);
  if (((x - STAIN.x) / STAIN.a) ** 2 + ((y - STAIN.y) / STAIN.b) ** 2 < 1)
    return [light[0] * 0.35, light[1] * 0.4, light[2] * 0.6];
  return light;
}

const [cx, cy] = CARD_AT;
/** Where a finger taps a round corner: on the round, not where the sides would meet. */
const inset = (1 - Math.SQRT1_2) * CARD_MM.radius;

/** Places in pixels of the picture. */
export const TRUTH = {
  size: { width: CAMERA.width, height: CAMERA.height },
  /** 35 mm equivalent of the drawn camera's lens. */
  focal35: (CAMERA.focalPx / Math.hypot(CAMERA.width, CAMERA.height)) * Math.hypot(36, 24),
  cardTaps: seen(toPx, [
    [cx + inset, cy + inset],
    [cx + CARD_MM.width - inset, cy + inset],
    [cx + CARD_MM.width - inset, cy + CARD_MM.height - inset],
    [cx + inset, cy + CARD_MM.height - inset],
  ]),
  crackEnds: seen(toPx, [CRACK[0] as Px, CRACK.at(-1) as Px]),
  crackMiddle: seen(toPx, [CRACK[20] as Px])[0] as Px,
  crackLengthMm: lengthOf(CRACK),
  crackWidthMm: CRACK_WIDTH_MM,
  holes: seen(toPx, HOLES),
  holeMm: HOLE_MM,
  holeBox: seen(toPx, [
    [52, -104],
    [168, -12],
  ]),
  /** Outline of a face of which the stain covers a known share. */
  face: seen(toPx, [
    [55, 30],
    [165, 30],
    [165, 110],
    [55, 110],
  ]),
  stainShare: (Math.PI * STAIN.a * STAIN.b) / (110 * 80),
  stained: seen(toPx, [[STAIN.x, STAIN.y]])[0] as Px,
  clean: seen(toPx, [[110, 36]])[0] as Px,
} as const;

/** What lies in the second picture, in evening light. */
export const SECOND = {
  sheetTaps: seen(toPx, [
    [SHEET.x, SHEET.y],
    [SHEET.x + SHEET.width, SHEET.y],
    [SHEET.x + SHEET.width, SHEET.y + SHEET.height],
    [SHEET.x, SHEET.y + SHEET.height],
  ]),
  sheetLongMm: SHEET.width,
  nearCoinEnds: seen(toPx, [NEAR_COIN[0] as Px, NEAR_COIN.at(-1) as Px]),
  nearCoinLengthMm: lengthOf(NEAR_COIN),
  rimTaps: seen(
    toPx,
    [0.3, 2.4, 4.5].map(
      (turn): Px => [COIN.x + (COIN.diameter / 2) * Math.cos(turn), COIN.y + (COIN.diameter / 2) * Math.sin(turn)],
    ),
  ),
  dabs: Object.fromEntries(
    Object.entries(DABS).map(([name, { x, y }]) => [name, seen(toPx, [[x + DAB_MM / 2, y + DAB_MM / 2]])[0] as Px]),
  ) as Record<keyof typeof DABS, Px>,
  reflects: { repair: DABS.repair.reflects, wood: DABS.wood.reflects },
} as const;

const drawn = new Map<typeof withCard, Img>();
function draw(paint: typeof withCard): Img {
  const picture = drawn.get(paint) ?? photoOf(CAMERA.width, CAMERA.height, paint);
  drawn.set(paint, picture);
  return picture;
}

/** The pictures; each drawn once, which takes some seconds. */
export const measuredScene = (): Img => draw(withCard);
export const secondScene = (): Img => draw(withSheetAndCoin);
