import { LINEAR } from './linear-light.ts';

/** L* 0 (black) to 100, a* green to red, b* blue to yellow; white is D65. */
export type Lab = readonly [number, number, number];

/** White of the sRGB monitor. Source: IEC 61966-2-1, D65, 2° observer. */
const WHITE = [0.95047, 1, 1.08883] as const;

/** CIELAB of linear RGB (0 to 1 each). Source: sRGB primaries of IEC 61966-2-1; CIE 15 for L*a*b*. */
export function labOfLinear(r: number, g: number, b: number): Lab {
  const fx = shaped((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / WHITE[0]);
  const fy = shaped((0.2126729 * r + 0.7151522 * g + 0.072175 * b) / WHITE[1]);
  const fz = shaped((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / WHITE[2]);
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** CIELAB of sRGB bytes. */
export const labOfBytes = (r: number, g: number, b: number): Lab =>
  labOfLinear(LINEAR[r] ?? 0, LINEAR[g] ?? 0, LINEAR[b] ?? 0);

const shaped = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);

/**
 * Colour difference as the eye has it: about 1 is just noticed side by side, 2 to 3 at a glance.
 * Source: CIEDE2000 with kL = kC = kH = 1, as set out by G. Sharma, W. Wu, E. Dalal 2005.
 */
export function colourDifference(one: Lab, two: Lab): number {
  const c1 = Math.hypot(one[1], one[2]);
  const c2 = Math.hypot(two[1], two[2]);
  const mean7 = ((c1 + c2) / 2) ** 7;
  const stretch = 1 + 0.5 * (1 - Math.sqrt(mean7 / (mean7 + 25 ** 7)));
  const a1 = stretch * one[1];
  const a2 = stretch * two[1];
  const chroma1 = Math.hypot(a1, one[2]);
  const chroma2 = Math.hypot(a2, two[2]);
  const hue1 = hueOf(a1, one[2]);
  const hue2 = hueOf(a2, two[2]);
  const grey = chroma1 * chroma2 === 0;

  const dL = two[0] - one[0];
  const dC = chroma2 - chroma1;
  let turn = grey ? 0 : hue2 - hue1;
  if (turn > 180) turn -= 360;
  else if (turn < -180) turn += 360;
  const dH = 2 * Math.sqrt(chroma1 * chroma2) * Math.sin(radians(turn / 2));

  const L = (one[0] + two[0]) / 2;
  const C = (chroma1 + chroma2) / 2;
  let hue = hue1 + hue2;
  if (!grey) {
    if (Math.abs(hue1 - hue2) > 180) hue += hue < 360 ? 360 : -360;
    hue /= 2;
  }
  const t =
    1 -
    0.17 * Math.cos(radians(hue - 30)) +
    0.24 * Math.cos(radians(2 * hue)) +
    0.32 * Math.cos(radians(3 * hue + 6)) -
    0.2 * Math.cos(radians(4 * hue - 63));
  const sL = 1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2);
  const sC = 1 + 0.045 * C;
  const sH = 1 + 0.015 * C * t;
  const turnBlue = 30 * Math.exp(-(((hue - 275) / 25) ** 2));
  const rT = -Math.sin(radians(2 * turnBlue)) * 2 * Math.sqrt(C ** 7 / (C ** 7 + 25 ** 7));
  return Math.sqrt((dL / sL) ** 2 + (dC / sC) ** 2 + (dH / sH) ** 2 + rT * (dC / sC) * (dH / sH));
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

function hueOf(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const h = (Math.atan2(b, a) * 180) / Math.PI;
  return h < 0 ? h + 360 : h;
}
