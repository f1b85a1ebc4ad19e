import { containerOf } from '../photos/containers/index.ts';
import { MOST_PIXELS } from '../photos/prepared-photo.ts';
import { refusal } from './refuse.ts';

/**
 * The format of a photograph from an archive, by its first bytes and never by its name. Its size is read from the header
 * and judged before any decoder sees it; SVG, which can carry script, is no photograph.
 * @throws AppError archive-bad-picture or archive-picture-too-large naming the entry
 */
export function checkPicture(bytes: Uint8Array, entry: string): { readonly mime: string } {
  const container = containerOf(bytes);
  const size = container?.size(bytes);
  if (!container || !size || size.width * size.height === 0) throw refusal('archive-bad-picture', entry);
  if (size.width * size.height > MOST_PIXELS) throw refusal('archive-picture-too-large', entry);
  if (!container.isWhole(bytes)) throw refusal('archive-bad-picture', entry);
  return { mime: container.mime };
}
