import { LINEAR } from './linear-light.ts';
import type { Img, Plane } from './types.ts';

export type Rgb = readonly [Plane, Plane, Plane];

/**
 * A smaller copy of a photo, three planes of the square root of linear light; each pixel is the mean of the area it
 * covers.
 * @param longSide wanted length of the longer side; a photo already smaller keeps its size
 * @returns the planes and how many photo pixels make one of theirs
 */
export function shrink(img: Img, longSide: number): { planes: Rgb; factor: number } {
  const factor = Math.max(1, Math.max(img.width, img.height) / longSide);
  const width = Math.max(1, Math.floor(img.width / factor));
  const height = Math.max(1, Math.floor(img.height / factor));
  const columns = weightsOf(width, factor, img.width);
  const rows = weightsOf(height, factor, img.height);
  const planes = [0, 1, 2].map((channel) => {
    const data = new Float32Array(width * height);
    const line = new Float32Array(width);
    for (let y = 0; y < height; y++) {
      const row = rows[y] as Cover;
      for (let j = 0; j < row.share.length; j++) {
        const at = (row.first + j) * img.width;
        for (let x = 0; x < width; x++) {
          const { first, share } = columns[x] as Cover;
          let sum = 0;
          for (let i = 0; i < share.length; i++)
            sum += (share[i] as number) * (LINEAR[img.data[(at + first + i) * 4 + channel] as number] as number);
          line[x] = (line[x] as number) + (row.share[j] as number) * sum;
        }
      }
      for (let x = 0; x < width; x++) data[y * width + x] = Math.sqrt(line[x] as number);
      line.fill(0);
    }
    return { data, width, height };
  });
  return { planes: planes as unknown as Rgb, factor };
}

/** A smaller copy of one plane by area means; never larger than the original. */
export function shrinkPlane(plane: Plane, longSide: number): { plane: Plane; factor: number } {
  const factor = Math.max(1, Math.max(plane.width, plane.height) / longSide);
  const width = Math.max(1, Math.floor(plane.width / factor));
  const height = Math.max(1, Math.floor(plane.height / factor));
  const columns = weightsOf(width, factor, plane.width);
  const rows = weightsOf(height, factor, plane.height);
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const row = rows[y] as Cover;
    for (let x = 0; x < width; x++) {
      const { first, share } = columns[x] as Cover;
      let sum = 0;
      for (let j = 0; j < row.share.length; j++) {
        const at = (row.first + j) * plane.width + first;
        let line = 0;
        for (let i = 0; i < share.length; i++) line += (share[i] as number) * (plane.data[at + i] as number);
        sum += (row.share[j] as number) * line;
      }
      data[y * width + x] = sum;
    }
  }
  return { plane: { data, width, height }, factor };
}

type Cover = { readonly first: number; readonly share: readonly number[] };

/** For each small pixel the large ones it covers and the share of each. */
function weightsOf(n: number, factor: number, most: number): Cover[] {
  return Array.from({ length: n }, (_, i) => {
    const from = i * factor;
    const to = Math.min(most, from + factor);
    const first = Math.floor(from);
    const share: number[] = [];
    for (let k = first; k < Math.min(most, Math.ceil(to - 1e-9)); k++)
      share.push((Math.min(to, k + 1) - Math.max(from, k)) / (to - from));
    return { first, share };
  });
}
