import { channelOf, linearOf, type Rgb } from '../core/physics/colour.ts';
import type { Img, Px } from '../pixels/index.ts';

/** Half the side of the square looked at, in pixels of the working image: grain and noise even out. */
const HALF_PX = 9;

/** The square looked at round a place, going round. */
export const patchAround = ([x, y]: Px): Px[] => [
  [x - HALF_PX, y - HALF_PX],
  [x + HALF_PX, y - HALF_PX],
  [x + HALF_PX, y + HALF_PX],
  [x - HALF_PX, y + HALF_PX],
];

/**
 * sRGB, 0 to 255 unrounded, of the mean linear light round a place; null where the square leaves the picture.
 * @param gain factors by channel that take the colour of the light out, see `chipGain`
 */
export function patchColour(img: Img, [x, y]: Px, gain: readonly [number, number, number] = [1, 1, 1]): Rgb | null {
  const [left, top] = [Math.round(x) - HALF_PX, Math.round(y) - HALF_PX];
  const side = 2 * HALF_PX + 1;
  if (left < 0 || top < 0 || left + side > img.width || top + side > img.height) return null;
  const sum = [0, 0, 0];
  for (let row = top; row < top + side; row++)
    for (let column = left; column < left + side; column++)
      for (let c = 0; c < 3; c++)
        sum[c] = (sum[c] as number) + linearOf(img.data[(row * img.width + column) * 4 + c] as number);
  const [r = 0, g = 0, b = 0] = sum.map((light, c) =>
    channelOf(Math.min(1, ((gain[c] as number) * light) / (side * side))),
  );
  return [r, g, b];
}
