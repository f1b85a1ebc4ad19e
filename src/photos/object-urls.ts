import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { createObjectUrlCache, type LoadPicture, NOT_YET, type PhotoUrl } from './object-url-cache.ts';

const cache = createObjectUrlCache();

/**
 * The address of a stored picture for as long as this component shows it.
 * @param sha256 of its bytes; nothing is loaded for null
 * @param load is asked once, however many components show the picture
 * @returns `url` when it is there, `error` when it cannot be had, neither while it is on its way
 */
export function usePhotoUrl(sha256: string | null | undefined, load: LoadPicture): PhotoUrl {
  const [seen, setSeen] = useState<PhotoUrl & { readonly of: string }>();
  const latestLoad = useRef(load);
  latestLoad.current = load;
  useLayoutEffect(() => {
    if (!sha256) return;
    return cache.use(
      sha256,
      (key) => latestLoad.current(key),
      (state) => setSeen({ ...state, of: sha256 }),
    );
  }, [sha256]);
  if (!sha256) return NOT_YET;
  return seen?.of === sha256 ? seen : cache.peek(sha256);
}
