import { useMemo } from 'preact/hooks';
import { AppError } from '../core/errors.ts';
import type { Photo } from '../core/records.ts';
import { useApp } from '../ui/app.ts';
import { createPixelWork, type PictureSource } from '../workers/pixels.ts';

/** The one worker that looks at pixels; started at the first question. */
export const pixelWork = createPixelWork(
  () => new Worker(new URL('../workers/pixels.worker.ts', import.meta.url), { type: 'module', name: 'pixels' }),
);

/** A stored photograph as the worker asks for it. */
export function usePicture(photo: Photo): PictureSource {
  const { store } = useApp();
  return useMemo(
    () => ({
      key: photo.sha256,
      async load() {
        const stored = await store.photoBytes(photo.sha256);
        if (!stored) throw new AppError('photo-damaged');
        // The buffer is handed over; the store may keep its own.
        return { bytes: stored.bytes.slice(0), mime: stored.mime };
      },
    }),
    [store, photo.sha256],
  );
}
