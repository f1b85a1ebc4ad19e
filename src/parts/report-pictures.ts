import { AppError } from '../core/errors.ts';
import type { WriteTools } from '../exports/report-file.ts';
import type { Bytes } from '../photos/bytes.ts';
import { readCameraFacts } from '../photos/camera-facts.ts';
import { containerOf } from '../photos/containers/index.ts';
import { reduce } from '../photos/reduce.ts';
import { inPage } from '../photos/surface.ts';

/** As photographs on a page: no eye tells it from the stored one at the size it is printed. */
const QUALITY = 0.82;

type Stored = { readonly bytes: ArrayBuffer; readonly mime: string };

/**
 * Photographs for a report: a stored JPEG byte for byte but for what a camera or phone may have written into it, which
 * may say where it was taken. Made smaller where wished; any other format is made a JPEG.
 */
export function reportPictures(photoBytes: (sha256: string) => Promise<Stored | undefined>): WriteTools['picture'] {
  return async (sha256, { longSidePx } = {}) => {
    const stored = await photoBytes(sha256).catch(damaged);
    if (!stored) return undefined;
    const bytes: Bytes = new Uint8Array(stored.bytes);
    const container = containerOf(bytes);
    const block = container?.cameraBlock(bytes) ?? null;
    const orientation = (block && (await readCameraFacts(block, false)).orientation) ?? 1;
    const coded = container?.size(bytes) ?? null;
    const tooLarge = longSidePx !== undefined && (!coded || Math.max(coded.width, coded.height) > longSidePx);
    const isJpeg = container?.mime === 'image/jpeg';
    if (isJpeg && !tooLarge && container.isWhole(bytes) && container.withoutMetadata)
      return { bytes: container.withoutMetadata(bytes, orientation).buffer, mime: 'image/jpeg' };
    const source = new Blob([bytes], { type: stored.mime });
    const upright = coded && orientation > 4 ? { width: coded.height, height: coded.width } : coded;
    const size = upright ?? (await sizeOf(source));
    const longest = longSidePx ?? Math.max(size.width, size.height);
    const made = await reduce(source, size, { longSidePx: longest, quality: QUALITY }, inPage);
    return { bytes: await made.arrayBuffer(), mime: 'image/jpeg' };
  };
}

/** One damaged photograph does not keep the report from being written: it stands there as missing. */
function damaged(error: unknown): undefined {
  if (error instanceof AppError && error.code === 'photo-damaged') return undefined;
  throw error;
}

async function sizeOf(source: Blob): Promise<{ readonly width: number; readonly height: number }> {
  const bitmap = await createImageBitmap(source);
  const { width, height } = bitmap;
  bitmap.close();
  return { width, height };
}
