import type { Img, Plane } from './types.ts';

/**
 * Linear light (0 to 1) of an sRGB byte. Source: IEC 61966-2-1 transfer function.
 */
export const LINEAR: Float32Array = Float32Array.from({ length: 256 }, (_, byte) => {
  const v = byte / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
});

/** Shares of red, green and blue in luminance. Source: ITU-R BT.709. */
export const LUMA = [0.2126, 0.7152, 0.0722] as const;

const luminanceOf = new WeakMap<Img, Plane>();

/** Linear luminance Y (0 to 1) of a photo, worked out once per photo. */
export function luminance(img: Img): Plane {
  const known = luminanceOf.get(img);
  if (known) return known;
  const { data, width, height } = img;
  const out = new Float32Array(width * height);
  for (let i = 0, j = 0; i < out.length; i++, j += 4)
    out[i] =
      LUMA[0] * (LINEAR[data[j] as number] as number) +
      LUMA[1] * (LINEAR[data[j + 1] as number] as number) +
      LUMA[2] * (LINEAR[data[j + 2] as number] as number);
  const plane = { data: out, width, height };
  luminanceOf.set(img, plane);
  return plane;
}

/**
 * Floor under the logarithm, as linear light: keeps sensor noise in near black (8-bit steps below about 1 %) from
 * counting as contrast. Trade estimate, from the prototype's trials.
 */
const DARK_FLOOR = 0.012;

/** ln(Y + 0.012): equal steps are equal ratios of light, so a shadow across the wood does not weaken a crack. */
export const logarithm = (y: Plane): Plane => ({ ...y, data: y.data.map((v) => Math.log(v + DARK_FLOOR)) });
