import { fittedSize } from '../core/mark-geometry.ts';
import type { Img } from '../pixels/index.ts';

/** Long side of the picture that is measured, px: the size the methods' figures were found at. */
export const WORKING_LONG_SIDE_PX = 1600;

/**
 * The upright working image of a photograph's bytes. Works in a worker and in the page; all but the pixels is freed.
 * @param makeCanvas as the realm can
 * @throws when the bytes are no picture, or there is no 2D canvas here
 */
export async function workingImage(
  bytes: ArrayBuffer,
  mime: string,
  makeCanvas: (width: number, height: number) => OffscreenCanvas | HTMLCanvasElement,
): Promise<Img> {
  const file = new Blob([bytes], { type: mime });
  const whole = await createImageBitmap(file);
  const size = fittedSize(whole, WORKING_LONG_SIDE_PX);
  const isSmall = size.width === whole.width && size.height === whole.height;
  const bitmap = isSmall
    ? whole
    : await createImageBitmap(whole, { resizeWidth: size.width, resizeHeight: size.height, resizeQuality: 'high' });
  if (bitmap !== whole) whole.close();
  const canvas = makeCanvas(size.width, size.height);
  try {
    const context = canvas.getContext('2d', { willReadFrequently: true }) as
      | OffscreenCanvasRenderingContext2D
      | CanvasRenderingContext2D
      | null;
    if (!context) throw new NoCanvas();
    context.drawImage(bitmap, 0, 0);
    return { data: context.getImageData(0, 0, size.width, size.height).data, ...size };
  } finally {
    bitmap.close();
    Object.assign(canvas, { width: 0, height: 0 });
  }
}

/** This realm has no 2D canvas (workers of iOS before 16.4). */
export class NoCanvas extends Error {}
