import { sample } from './sample.ts';
import type { Plane } from './types.ts';

/**
 * How bright each pixel is against the sound wood round it: 1 = as bright, 0 = black.
 * The wood is the mean, over a square window, of the pixels not darker than 75 % of the window's own mean, so that the
 * holes being looked for do not darken their own yardstick.
 * @param reach half the window's side in pixels
 */
export function againstWood(light: Plane, reach: number): Plane {
  // The wood's brightness changes slowly, so it is worked out on a coarse copy, eight cells to the window's half.
  const cell = Math.max(1, Math.floor(reach / 8));
  const coarse = cellMeans(light, cell);
  const steps = Math.max(1, Math.round(reach / cell));
  const { width, height } = coarse;
  const all = windowMean(coarse.data, undefined, width, height, steps);
  let wood = all;
  for (let turn = 0; turn < 2; turn++) {
    const yardstick = wood;
    const bright = coarse.data.map((v, i) => (v >= 0.75 * (yardstick[i] as number) ? 1 : 0));
    wood = windowMean(coarse.data, bright, width, height, steps).map((v, i) => (v > 0 ? v : (all[i] as number)));
  }
  const plane = { data: wood, width, height };
  const data = new Float32Array(light.data.length);
  for (let y = 0; y < light.height; y++)
    for (let x = 0; x < light.width; x++) {
      const i = y * light.width + x;
      const here = cell === 1 ? (wood[i] as number) : sample(plane, (x + 0.5) / cell, (y + 0.5) / cell);
      data[i] = (light.data[i] as number) / Math.max(1e-4, here);
    }
  return { ...light, data };
}

/** Means of square cells; what is left over at the right and lower border joins the last cell. */
function cellMeans(light: Plane, cell: number): Plane {
  if (cell === 1) return light;
  const width = Math.max(2, Math.floor(light.width / cell));
  const height = Math.max(2, Math.floor(light.height / cell));
  const data = new Float32Array(width * height);
  const counts = new Float32Array(width * height);
  for (let y = 0; y < light.height; y++) {
    const row = Math.min(height - 1, Math.floor(y / cell)) * width;
    for (let x = 0; x < light.width; x++) {
      const at = row + Math.min(width - 1, Math.floor(x / cell));
      data[at] = (data[at] as number) + (light.data[y * light.width + x] as number);
      counts[at] = (counts[at] as number) + 1;
    }
  }
  return { data: data.map((v, i) => v / (counts[i] as number)), width, height };
}

/** Mean over a square window of the pixels with a mark (all when there are no marks); 0 where none has one. */
function windowMean(
  values: Float32Array,
  marks: Float32Array | undefined,
  width: number,
  height: number,
  reach: number,
): Float32Array {
  const stride = width + 1;
  const sums = new Float64Array(stride * (height + 1));
  const counts = new Float64Array(stride * (height + 1));
  for (let y = 0; y < height; y++) {
    let sum = 0;
    let count = 0;
    for (let x = 0; x < width; x++) {
      const m = marks ? (marks[y * width + x] as number) : 1;
      sum += m * (values[y * width + x] as number);
      count += m;
      const at = (y + 1) * stride + x + 1;
      sums[at] = (sums[at - stride] as number) + sum;
      counts[at] = (counts[at - stride] as number) + count;
    }
  }
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const top = Math.max(0, y - reach) * stride;
    const bottom = Math.min(height, y + reach + 1) * stride;
    for (let x = 0; x < width; x++) {
      const left = Math.max(0, x - reach);
      const right = Math.min(width, x + reach + 1);
      const n =
        (counts[bottom + right] as number) -
        (counts[top + right] as number) -
        (counts[bottom + left] as number) +
        (counts[top + left] as number);
      const s =
        (sums[bottom + right] as number) -
        (sums[top + right] as number) -
        (sums[bottom + left] as number) +
        (sums[top + left] as number);
      out[y * width + x] = n > 0 ? s / n : 0;
    }
  }
  return out;
}
