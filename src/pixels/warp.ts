import { applyHomography, type Homography } from './homography.ts';
import type { Img } from './types.ts';

/**
 * A photo seen through a map: each pixel of the new one is read where the map takes its middle, between four pixels by
 * bilinear interpolation; beyond the border the edge is repeated. Not a resize: a map that shrinks much more than by half
 * leaves pixels out.
 * @param h takes a place in the new picture to the same place in the photo, both in pixels
 */
export function warp(img: Img, h: Homography, width: number, height: number): Img {
  const out = new Uint8ClampedArray(width * height * 4);
  const { data } = img;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [px, py] = applyHomography(h, [x + 0.5, y + 0.5]);
      const u = Math.min(Math.max(px - 0.5, 0), img.width - 1.001);
      const v = Math.min(Math.max(py - 0.5, 0), img.height - 1.001);
      const [i, j] = [Math.floor(u), Math.floor(v)];
      const [a, b] = [u - i, v - j];
      const from = (j * img.width + i) * 4;
      const below = from + img.width * 4;
      const at = (y * width + x) * 4;
      for (let c = 0; c < 3; c++)
        out[at + c] =
          (1 - b) * ((1 - a) * (data[from + c] as number) + a * (data[from + 4 + c] as number)) +
          b * ((1 - a) * (data[below + c] as number) + a * (data[below + 4 + c] as number));
      out[at + 3] = 255;
    }
  return { data: out, width, height };
}
