import type { VolumeFile, VolumeOrder, Written } from './archive-messages.ts';
import type { OpenPlace } from './archive-places.ts';
import { encrypted, volumeStream } from './archive-volume.ts';

/**
 * Writes one volume from its payload to a place. Nothing is left there unless it resolves.
 * @param payload pulled one file at a time
 * @throws the signal's reason when stopped; what the payload or the place throws
 */
export async function writeVolume(
  { heading, passphrase }: Pick<VolumeOrder, 'heading' | 'passphrase'>,
  payload: AsyncIterable<VolumeFile>,
  open: OpenPlace,
  signal: AbortSignal,
): Promise<Written> {
  signal.throwIfAborted();
  const plain = volumeStream(heading, payload);
  // The key is worked out here, in one piece that cannot be stopped: before any file is there to be left behind.
  const stream = passphrase === null ? plain : await encrypted(plain, passphrase);
  const reader = stream.getReader();
  const file = await open(heading.name);
  try {
    for (;;) {
      signal.throwIfAborted();
      const { done, value } = await reader.read();
      if (done) break;
      signal.throwIfAborted();
      await file.write(value as Uint8Array<ArrayBuffer>);
    }
  } catch (error) {
    await Promise.allSettled([file.abort(), reader.cancel(error)]);
    throw error;
  }
  return file.close();
}
