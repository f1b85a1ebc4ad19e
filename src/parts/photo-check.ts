import { signal } from '@preact/signals';
import type { Photo } from '../core/records.ts';
import type { Store } from '../store/store.ts';
import type { PixelWork } from '../workers/pixels.ts';
import { pixelWork } from './pixel-work.ts';

/** What was found wrong with photographs of this visit, by photograph, until they are kept or taken again. */
export const noticed = signal<ReadonlyMap<string, readonly string[]>>(new Map());

/** The owner keeps the photograph as it is: nothing more is said of it. */
export function keepPhoto(id: string): void {
  const rest = new Map(noticed.value);
  if (rest.delete(id)) noticed.value = rest;
}

/**
 * Looks, beside the page, whether a photograph just saved is sharp and well lit, and notes what is wrong. Advice only: a
 * look that fails says nothing, and the photograph is saved either way.
 */
export async function checkPhoto(
  photo: Photo,
  photoBytes: Store['photoBytes'],
  work: Pick<PixelWork, 'ask'> = pixelWork,
): Promise<void> {
  const load = async () => {
    const stored = await photoBytes(photo.sha256);
    if (!stored) throw new Error(`No bytes under ${photo.sha256}.`);
    // The buffer is handed over; the store may keep its own.
    return { bytes: stored.bytes.slice(0), mime: stored.mime };
  };
  const seen = await work.ask('quality', [{ key: photo.sha256, load }], null).catch(() => undefined);
  if (!seen || !('reasons' in seen) || seen.reasons.length === 0) return;
  noticed.value = new Map(noticed.value).set(photo.id, seen.reasons);
}
