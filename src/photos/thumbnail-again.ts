import { containerOf } from './containers/index.ts';
import { THUMBNAIL } from './prepared-photo.ts';
import { reduce } from './reduce.ts';
import { inPage } from './surface.ts';

/**
 * The thumbnail of a stored working copy, as `preparePhoto` would have made it.
 * @throws Error when the browser cannot decode it
 */
export async function thumbnailAgain({ bytes, mime }: { readonly bytes: ArrayBuffer; readonly mime: string }) {
  const size = containerOf(new Uint8Array(bytes))?.size(new Uint8Array(bytes));
  if (!size) throw new Error('A stored photograph should have a size.');
  const jpeg = await reduce(new Blob([bytes], { type: mime }), size, THUMBNAIL, inPage);
  return jpeg.arrayBuffer();
}
