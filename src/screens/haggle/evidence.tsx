import type { LotRow } from '../../core/lots.ts';
import { useAddPhoto } from '../../parts/add-photo.ts';
import { StoredPicture } from '../../parts/stored-picture.tsx';
import { PhotoInput } from '../../photos/photo-input.tsx';
import { useApp } from '../../ui/app.ts';
import { to } from '../../ui/route.ts';
import css from './haggle.module.css';

/** The view of the catalogue that shows a paper. */
const PAPER = 'paper';

/** Photographs of receipt and ticket: they stay with the block and stand behind the step of its history. */
export function Evidence({ row }: { readonly row: LotRow }) {
  const { store } = useApp();
  const addPhoto = useAddPhoto();
  const { keepOriginals, keepPosition } = store.settings.value;
  const [first] = row.blocks;
  if (!first) return <p class={css.hint}>Put a block into the lot first.</p>;
  const papers = row.blocks.flatMap(({ id }) => store.photosOf(id)).filter(({ view }) => view === PAPER);
  return (
    <>
      {papers.length > 0 && (
        <ul class={css.papers}>
          {papers.map((photo, index) => (
            <li key={photo.id}>
              <a href={to('/block/:id/photo/:photo', { id: photo.blockId, photo: photo.id })}>
                <StoredPicture sha256={photo.thumbnail} alt={`Receipt or ticket ${index + 1}`} />
              </a>
            </li>
          ))}
        </ul>
      )}
      <PhotoInput
        context={JSON.stringify({ blockId: first.id })}
        options={{ keepOriginal: keepOriginals, keepPosition }}
        onPrepared={async (prepared) => {
          await addPhoto(prepared, { blockId: first.id, view: PAPER });
        }}
      />
    </>
  );
}
