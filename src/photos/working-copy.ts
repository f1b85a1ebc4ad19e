import imageCompression from 'browser-image-compression';
import type { Size } from './containers/container.ts';
import { ONE_STEP_UP_TO, reduce, type Target } from './reduce.ts';
import { offscreen } from './surface.ts';
import { freeingPixels } from './tidy.ts';

/** WebKit: the library refuses `createImageBitmap` there and asks for `Image`, which no worker has. */
let libraryWorks = true;

async function compress(source: Blob, { longSidePx, quality }: Target): Promise<Blob> {
  const plain = new Blob([source], { type: source.type });
  // It repeats at falling quality until the copy is smaller than its source: a well packed WebP would come out spoiled.
  Object.defineProperty(plain, 'size', { value: Number.MAX_SAFE_INTEGER });
  return freeingPixels(() =>
    imageCompression(plain as File, {
      // Its own worker is a blob that fetches its code from another host.
      useWebWorker: false,
      // Any number keeps its EXIF reader away, which hangs for ever on a bad offset; the browser turns the picture.
      exifOrientation: 1,
      fileType: 'image/jpeg',
      maxWidthOrHeight: longSidePx,
      initialQuality: quality,
    }),
  );
}

/** The working copy, made in a worker: by the library where it works and its one bilinear step is good enough, else by the browser alone. */
export async function workingCopy(source: Blob, upright: Size, target: Target): Promise<Blob> {
  const reduction = Math.max(upright.width, upright.height) / target.longSidePx;
  if (libraryWorks && reduction <= ONE_STEP_UP_TO) {
    try {
      return await compress(source, target);
    } catch {
      libraryWorks = false;
    }
  }
  return reduce(source, upright, target, offscreen);
}
