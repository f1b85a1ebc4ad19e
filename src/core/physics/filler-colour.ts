import { channelOf, colourDifference, type Lab, labOf, linearOf, type Rgb } from './colour.ts';
import { requirePositive, requireRange } from './range.ts';

/**
 * Absorption over scattering of an opaque layer, from its linear reflectance: (1 − R)²/2R.
 * @param reflectance linear, above 0 to 1; not an 8-bit channel
 * @throws RangeError outside that
 * SOURCE: Kubelka and Munk 1931 (looked up).
 */
export function absorption(reflectance: number): number {
  const R = requirePositive('reflectance', reflectance, 1);
  return (1 - R) ** 2 / (2 * R);
}

/**
 * Linear reflectance of an opaque layer from its absorption over scattering: 1 + q − √(q² + 2q).
 * @param ratio 0 or more
 * @throws RangeError below zero
 * SOURCE: Kubelka and Munk 1931 (looked up).
 */
export function reflectanceOf(ratio: number): number {
  const q = requireRange('ratio', ratio, 0, 1e12);
  // 1 + q − √(q² + 2q) loses every digit to cancellation for dark colours; its reciprocal form does not.
  return 1 / (1 + q + Math.sqrt(q * q + 2 * q));
}

/**
 * Linear reflectance of a mix of a light and a dark filler that scatter alike.
 * @param light, dark linear reflectances, above 0 to 1 · darkShare by volume, 0 to 1
 * @throws RangeError outside those
 * SOURCE: single-constant mixing, Kubelka and Munk 1931, Allen 1980 (looked up).
 */
export function mixReflectance(light: number, dark: number, darkShare: number): number {
  requireRange('darkShare', darkShare, 0, 1);
  return reflectanceOf((1 - darkShare) * absorption(light) + darkShare * absorption(dark));
}

export type DarkShare =
  | { readonly kind: 'mix'; readonly darkShare: number }
  | { readonly kind: 'out-of-reach'; readonly nearest: 'light' | 'dark' }
  /** Both fillers are the same to this channel. */
  | { readonly kind: 'no-difference' };

/**
 * Share of dark filler for a wanted reflectance. Dark wins: a tenth of it takes 0.60 to 0.37.
 * @param light, dark, target linear reflectances, above 0 to 1
 * @throws RangeError outside those
 * SOURCE: {@link mixReflectance} turned round.
 */
export function darkShareFor(light: number, dark: number, target: number): DarkShare {
  const ofLight = absorption(light);
  const ofDark = absorption(dark);
  if (ofLight === ofDark) return { kind: 'no-difference' };
  const share = (absorption(target) - ofLight) / (ofDark - ofLight);
  if (share < -1e-12) return { kind: 'out-of-reach', nearest: 'light' };
  if (share > 1 + 1e-12) return { kind: 'out-of-reach', nearest: 'dark' };
  return { kind: 'mix', darkShare: Math.min(1, Math.max(0, share)) };
}

/** Begin with this share of the computed dark, dry a dab, look again. SOURCE: common practice. */
export const START_WITH = 2 / 3;

export interface FillerMix {
  readonly darkShare: number;
  /** What to stir in first: {@link START_WITH} of it. */
  readonly firstShare: number;
  readonly rgb: Rgb;
  readonly lab: Lab;
  /** CIEDE2000 to the wood. */
  readonly difference: number;
}

/** Pure black reflects a little in life, and the formula needs it to. */
const floor = (channel: number) => Math.max(1e-4, linearOf(channel));

/**
 * The mix of two fillers that comes nearest a wood's colour, over all three channels at once; all patches from one photo.
 * @param light, dark, wood sRGB, 0 to 255 each
 * @throws RangeError outside that
 * SOURCE: {@link mixReflectance} per channel, search on {@link colourDifference} in steps of 0.001, steep end first.
 */
export function nearestMix(light: Rgb, dark: Rgb, wood: Rgb): FillerMix {
  const goal = labOf(wood);
  const channel = (place: 0 | 1 | 2, darkShare: number) =>
    channelOf(mixReflectance(floor(light[place]), floor(dark[place]), darkShare));
  let best: FillerMix | null = null;
  for (let step = 0; step <= 1000; step++) {
    const darkShare = step / 1000;
    const rgb: Rgb = [channel(0, darkShare), channel(1, darkShare), channel(2, darkShare)];
    const lab = labOf(rgb);
    const difference = colourDifference(lab, goal);
    if (best === null || difference < best.difference)
      best = { darkShare, firstShare: darkShare * START_WITH, rgb, lab, difference };
  }
  return best as FillerMix;
}
