import { AppError } from '../core/errors.ts';
import type { WriteTools } from '../exports/report-file.ts';
import type { Bytes } from '../photos/bytes.ts';
import { readCameraFacts } from '../photos/camera-facts.ts';
import { containerOf } from '../photos/containers/index.ts';
import { reduce } from '../photos/reduce.ts';
import { createReducer, type Reduce } from '../photos/reducer.ts';
import { inPage } from '../photos/surface.ts';

/** As photographs on a page: no eye tells it from the stored one at the size it is printed. */
const QUALITY = 0.82;

type Stored = { readonly bytes: ArrayBuffer; readonly mime: string };

/** More at once are more memory, and a phone has few cores to spare. */
const MOST_HANDS = 3;

const reducerHere = (signal: AbortSignal): Reduce =>
  createReducer(
    {
      startWorker: () =>
        new Worker(new URL('../photos/reduce.worker.ts', import.meta.url), { type: 'module', name: 'reduce' }),
      reduceInPage: (source, upright, target) => reduce(source, upright, target, inPage),
      hands: Math.min(MOST_HANDS, navigator.hardwareConcurrency || MOST_HANDS),
    },
    signal,
  );

/**
 * Photographs for a report: a stored JPEG byte for byte but for what a camera or phone may have written into it, which
 * may say where it was taken. Made smaller where wished; any other format is made a JPEG. One that is damaged, or that
 * this browser cannot decode, is as one that is not here.
 * @param signal ends what makes them smaller: abort it when the report is written, or is no longer wanted
 */
export function reportPictures(
  photoBytes: (sha256: string) => Promise<Stored | undefined>,
  signal: AbortSignal,
  makeSmaller: Reduce = reducerHere(signal),
): WriteTools['picture'] {
  return async (sha256, { longSidePx = Number.POSITIVE_INFINITY } = {}) => {
    const stored = await photoBytes(sha256).catch(damaged);
    if (!stored) return undefined;
    const bytes: Bytes = new Uint8Array(stored.bytes);
    const container = containerOf(bytes);
    const block = container?.cameraBlock(bytes) ?? null;
    const orientation = (block && (await readCameraFacts(block, false)).orientation) ?? 1;
    const coded = container?.size(bytes) ?? null;
    const tooLarge = coded ? Math.max(coded.width, coded.height) > longSidePx : Number.isFinite(longSidePx);
    const isJpeg = container?.mime === 'image/jpeg';
    if (isJpeg && !tooLarge && container.isWhole(bytes) && container.withoutMetadata)
      return { bytes: container.withoutMetadata(bytes, orientation).buffer, mime: 'image/jpeg' };
    const upright = coded && orientation > 4 ? { width: coded.height, height: coded.width } : coded;
    const made = await makeSmaller(new Blob([bytes], { type: stored.mime }), upright, { longSidePx, quality: QUALITY });
    return made && { bytes: made, mime: 'image/jpeg' };
  };
}

/** One damaged photograph does not keep the report from being written: it stands there as missing. */
function damaged(error: unknown): undefined {
  if (error instanceof AppError && error.code === 'photo-damaged') return undefined;
  throw error;
}
