import type { Size } from './containers/container.ts';
import type { MakeSurface } from './surface.ts';

export interface Target {
  /** Of the longer side. A smaller picture is not enlarged. */
  readonly longSidePx: number;
  /** Of the JPEG, 0 to 1. */
  readonly quality: number;
}

const turned = ({ width, height }: Size): Size => ({ width: height, height: width });

function fitted({ width, height }: Size, longSidePx: number): Size {
  const scale = Math.min(1, longSidePx / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** Draws the bitmap over white, since JPEG knows no transparency, and closes it. */
async function toJpeg(bitmap: ImageBitmap, { width, height }: Size, quality: number, makeSurface: MakeSurface) {
  try {
    const surface = makeSurface(width, height);
    try {
      surface.context.fillStyle = '#fff';
      surface.context.fillRect(0, 0, width, height);
      surface.context.drawImage(bitmap, 0, 0, width, height);
      return await surface.toJpeg(quality);
    } finally {
      surface.free();
    }
  } finally {
    bitmap.close();
  }
}

/**
 * A JPEG copy, upright, reduced while decoding so that the full-size pixels never lie on a canvas.
 * Orientation is left to the browser by saying nothing: the option's names and defaults have changed over time.
 * @param upright size after the browser has turned the picture, as `firstLook` found it
 * @returns JPEG without any metadata. Rejects when the browser cannot decode.
 */
export async function reduce(source: Blob, upright: Size, target: Target, makeSurface: MakeSurface): Promise<Blob> {
  const size = fitted(upright, target.longSidePx);
  const bitmap = await createImageBitmap(source, {
    resizeWidth: size.width,
    resizeHeight: size.height,
    resizeQuality: 'high',
  });
  return toJpeg(bitmap, size, target.quality, makeSurface);
}

/**
 * As `reduce`, for the first picture made of a file: also finds out which way up the browser lays it, whatever was
 * read of its EXIF. Only one side is asked for, and the shape that comes back decides between coded and turned.
 * @param coded size of the pixels as stored
 * @param orientation as EXIF says; only a guess at which side will be the longer
 */
export async function firstLook(
  source: Blob,
  coded: Size,
  orientation: number,
  target: Target,
  makeSurface: MakeSurface,
): Promise<{ jpeg: Blob; upright: Size }> {
  const guess = fitted(orientation > 4 ? turned(coded) : coded, target.longSidePx);
  const oneSide = guess.width >= guess.height ? { resizeWidth: guess.width } : { resizeHeight: guess.height };
  const bitmap = await createImageBitmap(source, { ...oneSide, resizeQuality: 'high' });
  const isTurned = bitmap.width >= bitmap.height !== coded.width >= coded.height;
  const upright = isTurned ? turned(coded) : coded;
  return { jpeg: await toJpeg(bitmap, fitted(upright, target.longSidePx), target.quality, makeSurface), upright };
}
