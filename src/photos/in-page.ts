import { prepare, type Wishes } from './prepare.ts';
import type { PhotoStage, PreparedPhoto } from './prepared-photo.ts';
import { reduce } from './reduce.ts';
import { inPage } from './surface.ts';

/**
 * The same work on the page's own thread, for browsers without a canvas in workers: slower to the touch, same result.
 * Without the library: outside a worker it may read the picture through a `data:` address, which our policy forbids.
 */
export const prepareInPage = (
  file: Blob,
  name: string,
  wishes: Wishes,
  onStage: (stage: PhotoStage) => void,
): Promise<PreparedPhoto> =>
  prepare(
    file,
    name,
    wishes,
    { makeSurface: inPage, workingCopy: (source, upright, target) => reduce(source, upright, target, inPage) },
    onStage,
  );
