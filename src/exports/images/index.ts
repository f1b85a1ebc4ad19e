import type { Catalogue } from '../../core/catalogue.ts';
import { AppError } from '../../core/errors.ts';
import { imageCopy } from './image-copy.ts';
import { ascii } from './names.ts';
import { type PictureCase, wordsOf } from './words-of.ts';

export { imageCopy } from './image-copy.ts';
export { type PictureCase, wordsOf } from './words-of.ts';
export type { PictureWords } from './xmp.ts';

export interface ImagesWish {
  /** In the order they are to have; all of them kept here as JPEG. */
  readonly pictures: readonly PictureCase[];
  readonly pictureBytes: (sha256: string) => Promise<{ readonly bytes: ArrayBuffer } | undefined>;
  readonly signal: AbortSignal;
  readonly onStep: (done: number, of: number) => void;
}

export interface ImagesOut {
  readonly files: readonly File[];
  /** Photographs whose bytes are not here or no longer themselves, by hash. */
  readonly missing: readonly string[];
}

/**
 * Copies of photographs to be handed on, one file each: freed of place and device, with what the owner says of them. File
 * names say what they show and sort in their order.
 * @throws the signal's reason when cancelled
 */
export async function imagesOut(wish: ImagesWish, catalogue: Catalogue): Promise<ImagesOut> {
  const { pictures, signal } = wish;
  const files: File[] = [];
  const missing: string[] = [];
  for (const [i, picture] of pictures.entries()) {
    signal.throwIfAborted();
    const { photo, block } = picture;
    try {
      const stored = await wish.pictureBytes(photo.sha256);
      if (stored) {
        const words = wordsOf(picture, catalogue);
        const copy = imageCopy(new Uint8Array(stored.bytes), words);
        const number = String(i + 1).padStart(String(pictures.length).length, '0');
        const name = [number, ascii(block.objectNumber), ascii(words.title), ascii(photo.view), photo.stage];
        files.push(new File([copy], `${name.filter(Boolean).join('-')}.jpg`, { type: 'image/jpeg' }));
      } else missing.push(photo.sha256);
    } catch (error) {
      if (!(error instanceof AppError)) throw error;
      missing.push(photo.sha256);
    }
    wish.onStep(i + 1, pictures.length);
  }
  return { files, missing };
}
