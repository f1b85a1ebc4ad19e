import type { Bytes } from './bytes.ts';
import type { CameraFacts } from './camera-facts.ts';
import type { Container } from './containers/container.ts';
import type { PreparedPhoto } from './prepared-photo.ts';
import { sha256 } from './sha256.ts';

type Kept = Pick<PreparedPhoto, 'original' | 'originalState'>;

/**
 * The file itself, if the owner wants it kept.
 *
 * With `keepPosition` it stays byte for byte. Without, position must not stay behind, and a camera may write it in
 * EXIF, XMP, maker's notes, a second picture or a video at the end of the file; so everything that drawing does not
 * need is left out, not only the GPS entries: the coded picture and its orientation are unchanged, date and focal
 * length live on in the record. HEIC and AVIF cannot be freed that way here and are then not kept.
 */
export async function keepOriginal(
  bytes: Bytes,
  name: string,
  container: Container,
  facts: CameraFacts,
  wishes: { readonly keepOriginal: boolean; readonly keepPosition: boolean; readonly readCameraFacts: boolean },
): Promise<Kept> {
  if (!wishes.keepOriginal) return { original: null, originalState: 'notAsked' };
  const store = async (kept: Bytes) => ({
    bytes: kept.buffer,
    sha256: await sha256(kept.buffer),
    mime: container.mime,
    name,
  });
  if (wishes.keepPosition) return { original: await store(bytes), originalState: 'asDelivered' };
  // Without having read the orientation, leaving EXIF out could lay the picture on its side.
  if (!container.withoutMetadata || !wishes.readCameraFacts) return { original: null, originalState: 'notPossible' };
  const freed = container.withoutMetadata(bytes, facts.orientation ?? 1);
  const same = freed.length === bytes.length && freed.every((byte, i) => byte === bytes[i]);
  return { original: await store(freed), originalState: same ? 'asDelivered' : 'withoutMetadata' };
}
