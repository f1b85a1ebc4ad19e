import type { Photo } from '../core/records.ts';
import type { PhotoBytes, Repository } from './repository.ts';

/**
 * Thumbnails are not in an archive, and one made here has other bytes than the one its record names: it is kept under
 * that name as a stand-in, on this device alone, so that phones do not pass each other's hashes to and fro.
 * @param make of a working copy's bytes; where nobody can, thumbnails stay missing
 */
export function createStandIns(repository: Repository, make?: (copy: PhotoBytes) => Promise<ArrayBuffer>) {
  const underWay = new Map<string, Promise<PhotoBytes | undefined>>();
  let last: Promise<unknown> = Promise.resolve();

  async function find(sha256: string, photos: readonly Photo[]): Promise<PhotoBytes | undefined> {
    const there = await repository.standIn(sha256);
    if (there) return { sha256, ...there };
    const photo = photos.find(({ thumbnail }) => thumbnail === sha256);
    if (!photo || !make) return undefined;
    const copy = await repository.photoBytes(photo.sha256);
    if (!copy) return undefined;
    // One at a time: several pictures decoded at once are what a phone dies of.
    const made = last.then(() => make(copy));
    last = made.catch(() => undefined);
    const thumbnail = { bytes: await made, mime: 'image/jpeg' };
    // Room may be short; the thumbnail is good for this once all the same.
    await repository.keepStandIn(sha256, thumbnail).catch(() => undefined);
    return { sha256, ...thumbnail };
  }

  return {
    /** Bytes for a thumbnail's hash; undefined if it is none, or its photograph is not here. */
    of(sha256: string, photos: readonly Photo[]): Promise<PhotoBytes | undefined> {
      const asked = underWay.get(sha256) ?? find(sha256, photos).finally(() => underWay.delete(sha256));
      underWay.set(sha256, asked);
      return asked;
    },
  };
}
