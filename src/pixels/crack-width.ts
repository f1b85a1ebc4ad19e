import { luminance } from './linear-light.ts';
import { quantile, sample } from './sample.ts';
import { apart, type Scale } from './scale.ts';
import type { Img, Px } from './types.ts';

/** hairline: under 0.4 mm or 3 px, not measurable; fine: up to 0.8 mm; open: wider. Trade estimate. */
export type WidthClass = 'hairline' | 'fine' | 'open';

/** Half length of a profile across the crack, in pixels. */
const REACH = 16;
const STEP = 0.5;
/** Profiles are averaged over this many neighbours before and after: grain noise falls, a crack changes little. */
const ALONG = 3;
/**
 * The wood beside a crack: this quantile of the samples from NEAR to FAR beyond its rim (a little over half, as grain
 * darkens).
 */
const WOOD_QUANTILE = 0.55;
const NEAR = 2;
const FAR = 9;
/** Where the missing light falls below this, or rises again by RISE, the crack ends and the next grain line begins. */
const FAINT = 0.05;
const RISE = 0.02;
/**
 * How dark the inside of a crack is, as a share of the light missing. A hairline's own depth is blurred away, so the
 * least is assumed for it. Trade estimate, from the developers' photos.
 */
const INSIDE = { least: 0.6, most: 0.97 } as const;

/**
 * Opening of a crack from how much light it swallows: across the path, ∫(1 − I / wood) divided by how dark its inside
 * is. Blur spreads the loss of light but does not change its sum, so the figure survives a soft photo.
 * @returns undefined when the path leaves the photo
 */
export function crackWidth(
  img: Img,
  path: readonly Px[],
  scale: Scale,
): { meanWidthMm: number; maxWidthMm: number; widthSigmaMm: number; widthClass: WidthClass } | undefined {
  const profiles = profilesAcross(img, path);
  if (profiles.length < 4) return undefined;
  const lost: number[] = [];
  const depth: number[] = [];
  const mmPerPx: number[] = [];
  for (let i = 0; i < profiles.length; i++) {
    const p = averaged(profiles, i);
    const { sum, deepest } = lostLight(p);
    lost.push(sum);
    depth.push(deepest);
    const { x, y, nx, ny } = profiles[i] as Profile;
    mmPerPx.push(apart(scale.toMm([x - nx, y - ny]), scale.toMm([x + nx, y + ny])) / 2);
  }
  const inside = Math.min(INSIDE.most, Math.max(INSIDE.least, quantile(depth, 0.92)));
  const widths = lost.map((v, i) => (v * (mmPerPx[i] as number)) / inside);
  let meanWidthMm = 0;
  for (const w of widths) meanWidthMm += w / widths.length;
  const pxMm = quantile(mmPerPx, 0.5);
  const hairline = meanWidthMm < 0.4 || meanWidthMm < 3 * pxMm;
  return {
    meanWidthMm,
    maxWidthMm: quantile(widths, 0.95),
    widthSigmaMm: hairline ? Math.max(0.06, 0.5 * meanWidthMm) : Math.max(0.05, 0.08 * meanWidthMm),
    widthClass: hairline ? 'hairline' : meanWidthMm < 0.8 ? 'fine' : 'open',
  };
}

type Profile = { x: number; y: number; nx: number; ny: number; light: Float32Array };

function profilesAcross(img: Img, path: readonly Px[]): Profile[] {
  const plane = luminance(img);
  const out: Profile[] = [];
  for (let i = 0; i < path.length; i++) {
    const [x, y] = path[i] as Px;
    const a = path[Math.max(0, i - 4)] as Px;
    const b = path[Math.min(path.length - 1, i + 4)] as Px;
    const n = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (n < 1e-6 || x < 2 || y < 2 || x > img.width - 2 || y > img.height - 2) continue;
    const nx = -(b[1] - a[1]) / n;
    const ny = (b[0] - a[0]) / n;
    const light = new Float32Array((2 * REACH) / STEP + 1);
    for (let k = 0; k < light.length; k++) {
      const s = k * STEP - REACH;
      light[k] = sample(plane, x + nx * s, y + ny * s);
    }
    out.push({ x, y, nx, ny, light });
  }
  return out;
}

/** A profile averaged with its neighbours along the path. */
function averaged(profiles: readonly Profile[], i: number): Float32Array {
  const from = Math.max(0, i - ALONG);
  const to = Math.min(profiles.length - 1, i + ALONG);
  const out = new Float32Array((profiles[i] as Profile).light.length);
  for (let j = from; j <= to; j++) {
    const { light } = profiles[j] as Profile;
    for (let k = 0; k < out.length; k++) out[k] = (out[k] as number) + (light[k] as number) / (to - from + 1);
  }
  return out;
}

/** Light swallowed by the crack in pixel widths of total black, and the share missing at the darkest spot. */
function lostLight(light: Float32Array): { sum: number; deepest: number } {
  const middle = (light.length - 1) / 2;
  let darkest = middle;
  for (let k = middle - 6; k <= middle + 6; k++) if ((light[k] as number) < (light[darkest] as number)) darkest = k;
  const side = (way: number): number => {
    // Out to where the light has come back, then the wood beyond.
    const top = quantile(way < 0 ? light.subarray(0, middle) : light.subarray(middle + 1), WOOD_QUANTILE);
    let k = darkest;
    while (k > 0 && k < light.length - 1 && (light[k] as number) < top - 0.25 * (top - (light[darkest] as number)))
      k += way;
    const a = k + way * NEAR;
    const b = k + way * FAR;
    return (
      quantile(
        light.subarray(Math.max(0, Math.min(a, b)), Math.min(light.length, Math.max(a, b) + 1)),
        WOOD_QUANTILE,
      ) || top
    );
  };
  const left = side(-1);
  const right = side(1);
  const missing = (k: number): number => {
    const t = k / (light.length - 1);
    return 1 - (light[k] as number) / Math.max(1e-4, left + (right - left) * t);
  };
  const deepest = missing(darkest);
  let sum = deepest;
  // Outwards from the darkest spot until the wood's own brightness is reached again.
  for (const way of [-1, 1]) {
    let least = deepest;
    for (let k = darkest + way; k >= 0 && k < light.length; k += way) {
      const m = missing(k);
      if (m < FAINT || m > least + RISE) break;
      least = Math.min(least, m);
      sum += m;
    }
  }
  return { sum: Math.max(0, sum) * STEP, deepest: Math.max(0, deepest) };
}
