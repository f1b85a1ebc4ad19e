import { usePhotoUrl } from '../photos/object-urls.ts';
import { sentenceOf } from '../text/errors.ts';
import { useApp } from '../ui/app.ts';
import css from './stored-picture.module.css';

/** A picture from the store by the hash of its bytes, checked on reading. A damaged one says so and stays. */
export function StoredPicture({ sha256, alt }: { readonly sha256: string; readonly alt: string }) {
  const { store } = useApp();
  const { url, error } = usePhotoUrl(sha256, (key) => store.photoBytes(key));
  if (error) {
    return (
      <span class={css.broken} role="img" aria-label={`${alt || 'Photograph'}: cannot be shown`}>
        {sentenceOf(error)}
      </span>
    );
  }
  return url ? <img src={url} alt={alt} decoding="async" /> : <span class={css.waiting} />;
}
