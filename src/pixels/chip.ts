import { type Lab, labOfLinear } from './colour.ts';
import { LINEAR } from './linear-light.ts';
import { boxOf, isInPolygon } from './polygon.ts';
import { type Failed, failed, type Img, type Px } from './types.ts';

/** Factors that turn linear red, green and blue of this photo, near the chip, into reflectance. */
export type ChipGain = { readonly ok: true; readonly gain: readonly [number, number, number] };

/** A chip with more clipped pixels than this is too bright to measure by. */
const CLIPPED_SHARE = 0.02;
/** The outer part of the outline that is left out: edges, shadow, a finger's inaccuracy. */
const INSET = 0.18;

/**
 * Colour and brightness of the light from a neutral chip of known reflectance lying in the same light.
 * @param quad the chip's outline, going round
 * @param reflectance 0.18 for a grey card; white (0.88) clips easily and is not advised
 * @returns `clipped`, or `too-few-points` for a chip under some 8 px across
 */
export function chipGain(img: Img, quad: readonly Px[], reflectance: number): ChipGain | Failed {
  const means = trimmedMeans(img, shrunk(quad, INSET));
  if (!means) return failed('too-few-points');
  if (means.clipped > CLIPPED_SHARE) return failed('clipped');
  const gain = means.rgb.map((v) => reflectance / Math.max(v, 1e-4)) as [number, number, number];
  return { ok: true, gain };
}

/**
 * CIELAB (D65) of an outlined patch, corrected by a chip.
 * @returns undefined for a patch under some 8 px across
 */
export function patchLab(
  img: Img,
  quad: readonly Px[],
  gain: readonly [number, number, number] = [1, 1, 1],
): Lab | undefined {
  const means = trimmedMeans(img, quad);
  return means && labOfLinear(means.rgb[0] * gain[0], means.rgb[1] * gain[1], means.rgb[2] * gain[2]);
}

function shrunk(quad: readonly Px[], share: number): Px[] {
  const cx = quad.reduce((s, p) => s + p[0], 0) / quad.length;
  const cy = quad.reduce((s, p) => s + p[1], 0) / quad.length;
  return quad.map(([x, y]) => [x + share * (cx - x), y + share * (cy - y)]);
}

/** Mean linear light of each channel without the brightest and darkest tenth, and the share of clipped pixels. */
function trimmedMeans(
  img: Img,
  outline: readonly Px[],
): { rgb: [number, number, number]; clipped: number } | undefined {
  const box = boxOf(outline, img.width, img.height);
  const seen: [number[], number[], number[]] = [[], [], []];
  let clipped = 0;
  for (let y = box.top; y < box.bottom; y++)
    for (let x = box.left; x < box.right; x++) {
      if (!isInPolygon([x + 0.5, y + 0.5], outline)) continue;
      const at = (y * img.width + x) * 4;
      let over = false;
      for (const c of [0, 1, 2] as const) {
        const byte = img.data[at + c] as number;
        over ||= byte >= 254;
        seen[c].push(LINEAR[byte] as number);
      }
      if (over) clipped++;
    }
  const n = seen[0].length;
  if (n < 50) return undefined;
  const rgb = seen.map((values) => {
    const sorted = Float64Array.from(values).sort();
    const skip = Math.floor(n / 10);
    let sum = 0;
    for (let i = skip; i < n - skip; i++) sum += sorted[i] as number;
    return sum / (n - 2 * skip);
  }) as [number, number, number];
  return { rgb, clipped: clipped / n };
}
