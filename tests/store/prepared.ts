import type { PreparedPhoto } from '../../src/photos/prepared-photo.ts';
import { photoOf } from '../contracts/photo-of.ts';

/** What the preparation of a photograph hands to the store; its bytes are the text. */
export function prepared(text: string, withOriginal = false): PreparedPhoto {
  const [working, thumbnail, original] = [photoOf(text), photoOf(`${text}, small`), photoOf(`${text}, as it came`)];
  return {
    ...working,
    width: 2048,
    height: 1536,
    mime: 'image/jpeg',
    thumbnail: { ...thumbnail, width: 320, height: 240 },
    taken: null,
    focal35: 26,
    position: null,
    orientation: null,
    original: withOriginal ? { ...original, name: 'IMG_0001.JPG' } : null,
    originalState: withOriginal ? 'asDelivered' : 'notAsked',
  };
}
