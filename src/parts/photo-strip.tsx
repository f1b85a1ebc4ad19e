import { entry } from '../core/catalogue.ts';
import type { Fields } from '../core/records.ts';
import { PhotoInput } from '../photos/photo-input.tsx';
import { useApp } from '../ui/app.ts';
import { to } from '../ui/route.ts';
import { useAddPhoto } from './add-photo.ts';
import css from './photo-strip.module.css';
import { StoredPicture } from './stored-picture.tsx';
import type { BlockCase } from './use-case.ts';

/** Photographs of a block or of one finding, and the way to add more. With `shotList`, the standard views still missing. */
export function PhotoStrip({
  of,
  findingId = null,
  shotList = false,
}: {
  readonly of: BlockCase;
  readonly findingId?: string | null;
  readonly shotList?: boolean;
}) {
  const { catalogue } = useApp();
  const addPhoto = useAddPhoto();
  const photos = of.photos.filter((photo) => findingId === null || photo.findingId === findingId);
  const taken = new Set(of.photos.map(({ view }) => view));
  const next = shotList ? Object.keys(catalogue.views).find((view) => !taken.has(view)) : undefined;
  const fields: Partial<Fields<'photo'>> = {
    blockId: of.block.id,
    findingId,
    view: findingId ? 'damageClose' : (next ?? 'threeQuarter'),
    stage: 'before',
  };
  return (
    <div class={css.photos}>
      {photos.length > 0 && (
        <ul class={css.strip}>
          {photos.map((photo) => (
            <li key={photo.id}>
              <a href={to('/block/:id/photo/:photo', { id: of.block.id, photo: photo.id })}>
                <StoredPicture
                  sha256={photo.thumbnail}
                  alt={photo.caption || (entry(catalogue.views, photo.view)?.term ?? photo.view)}
                />
                <span>{entry(catalogue.views, photo.view)?.term ?? photo.view}</span>
              </a>
            </li>
          ))}
        </ul>
      )}
      {next && (
        <p class={css.next}>
          Next view: <b>{catalogue.views[next]?.term}</b>. {catalogue.views[next]?.text}
        </p>
      )}
      <PhotoInput
        context={JSON.stringify(fields)}
        options={{ keepOriginal: of.settings.keepOriginals, keepPosition: of.settings.keepPosition }}
        onPrepared={(prepared) => addPhoto(prepared, fields)}
      />
    </div>
  );
}
