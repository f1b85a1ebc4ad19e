import { entry } from '../core/catalogue.ts';
import type { Photo } from '../core/records.ts';
import { useApp } from '../ui/app.ts';
import { to } from '../ui/route.ts';
import css from './photo-strip.module.css';
import { StoredPicture } from './stored-picture.tsx';

/** Photographs of a block side by side, each leading to its own page; nothing where there are none. */
export function PhotoRow({ blockId, photos }: { readonly blockId: string; readonly photos: readonly Photo[] }) {
  const { catalogue } = useApp();
  if (photos.length === 0) return null;
  return (
    <ul class={css.strip}>
      {photos.map((photo) => (
        <li key={photo.id}>
          <a href={to('/block/:id/photo/:photo', { id: blockId, photo: photo.id })}>
            <StoredPicture
              sha256={photo.thumbnail}
              alt={photo.caption || (entry(catalogue.views, photo.view)?.term ?? photo.view)}
            />
            <span>{entry(catalogue.views, photo.view)?.term ?? photo.view}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}
