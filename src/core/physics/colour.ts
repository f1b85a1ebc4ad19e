import { requireRange } from './range.ts';

/** CIELAB under D65, 2° observer: lightness, green–red, blue–yellow. */
export type Lab = readonly [lightness: number, a: number, b: number];
/** sRGB, 0 to 255 each. */
export type Rgb = readonly [red: number, green: number, blue: number];

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const degreesOf = (y: number, x: number) => {
  if (x === 0 && y === 0) return 0;
  const angle = (Math.atan2(y, x) * 180) / Math.PI;
  return angle < 0 ? angle + 360 : angle;
};

/** The mean of two hues by the shorter way round; with a grey, the other's hue alone. */
function meanHue(h1: number, h2: number, grey: boolean): number {
  if (grey) return h1 + h2;
  if (Math.abs(h1 - h2) <= 180) return (h1 + h2) / 2;
  return h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
}

function hueStep(h1: number, h2: number, grey: boolean): number {
  if (grey) return 0;
  const step = h2 - h1;
  if (step > 180) return step - 360;
  return step < -180 ? step + 360 : step;
}

const seventh = (chroma: number) => Math.sqrt(chroma ** 7 / (chroma ** 7 + 25 ** 7));

/**
 * Colour difference CIEDE2000 with kL = kC = kH = 1: about 1 is just visible.
 * @param one, other finite CIELAB colours
 * @throws RangeError for a component that is not a number from −1000 to 1000
 * SOURCE: Sharma, Wu and Dalal 2005, Color Res. Appl. 30(1):21 (looked up).
 */
export function colourDifference(one: Lab, other: Lab): number {
  for (const value of [...one, ...other]) requireRange('Lab component', value, -1000, 1000);
  const [L1, a1, b1] = one;
  const [L2, a2, b2] = other;
  const stretch = 1 + 0.5 * (1 - seventh((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2));
  const C1 = Math.hypot(a1 * stretch, b1);
  const C2 = Math.hypot(a2 * stretch, b2);
  const h1 = degreesOf(b1, a1 * stretch);
  const h2 = degreesOf(b2, a2 * stretch);
  const grey = C1 * C2 === 0;

  const L = (L1 + L2) / 2;
  const C = (C1 + C2) / 2;
  const h = meanHue(h1, h2, grey);
  const dH = 2 * Math.sqrt(C1 * C2) * Math.sin(radians(hueStep(h1, h2, grey) / 2));

  const T =
    1 -
    0.17 * Math.cos(radians(h - 30)) +
    0.24 * Math.cos(radians(2 * h)) +
    0.32 * Math.cos(radians(3 * h + 6)) -
    0.2 * Math.cos(radians(4 * h - 63));
  const inLightness = (L2 - L1) / (1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2));
  const inChroma = (C2 - C1) / (1 + 0.045 * C);
  const inHue = dH / (1 + 0.015 * C * T);
  const turn = -2 * seventh(C) * Math.sin(radians(60 * Math.exp(-(((h - 275) / 25) ** 2))));
  return Math.sqrt(inLightness ** 2 + inChroma ** 2 + inHue ** 2 + turn * inChroma * inHue);
}

/**
 * Linear reflectance, 0 to 1, of one sRGB channel.
 * @param value 0 to 255
 * @throws RangeError outside that
 * SOURCE: IEC 61966-2-1 transfer curve (from memory).
 */
export function linearOf(value: number): number {
  const v = requireRange('sRGB channel', value, 0, 255) / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}

/**
 * One sRGB channel, 0 to 255 unrounded, of a linear reflectance.
 * @param reflectance 0 to 1
 * @throws RangeError outside that
 * SOURCE: IEC 61966-2-1 transfer curve (from memory).
 */
export function channelOf(reflectance: number): number {
  const v = requireRange('reflectance', reflectance, 0, 1);
  return 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
}

/** sRGB to XYZ; rows divided by the white they sum to, so that white comes out as exactly 100, 0, 0. SOURCE: IEC 61966-2-1 matrix (from memory). */
const TO_XYZ = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041],
] as const;

/**
 * CIELAB of an sRGB colour, D65. A phone photo without a grey card is off by more than a filler match: compare patches of one photo only.
 * @param rgb 0 to 255 each
 * @throws RangeError outside that
 * SOURCE: IEC 61966-2-1 and CIE 15 (from memory).
 */
export function labOf(rgb: Rgb): Lab {
  const [red, green, blue] = [linearOf(rgb[0]), linearOf(rgb[1]), linearOf(rgb[2])];
  const f = ([r, g, b]: readonly [number, number, number]) => {
    const t = (r * red + g * green + b * blue) / (r + g + b);
    return t > 216 / 24389 ? Math.cbrt(t) : (24389 / 27) * (t / 116) + 16 / 116;
  };
  const [x, y, z] = [f(TO_XYZ[0]), f(TO_XYZ[1]), f(TO_XYZ[2])];
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** Where a difference begins to matter on a block. SOURCE: from memory. */
export const DIFFERENCE_LINES = { visible: 1, goodMatchBelow: 2, obviousAbove: 5 } as const;

/** What a difference looks like. @throws RangeError below zero. SOURCE: {@link DIFFERENCE_LINES} */
export function matchOf(difference: number): 'unseen' | 'good' | 'visible' | 'obvious' {
  requireRange('difference', difference, 0, 1000);
  if (difference < DIFFERENCE_LINES.visible) return 'unseen';
  if (difference < DIFFERENCE_LINES.goodMatchBelow) return 'good';
  return difference <= DIFFERENCE_LINES.obviousAbove ? 'visible' : 'obvious';
}
