import { blank } from '../core/blank.ts';
import type { Fields, Photo } from '../core/records.ts';
import type { PreparedPhoto } from '../photos/prepared-photo.ts';
import { useApp } from '../ui/app.ts';
import { checkPhoto } from './photo-check.ts';

/**
 * Stores a prepared photograph: bytes, thumbnail and record in one transaction. Resolves when it is on this phone; whether
 * it is sharp and well lit is looked at afterwards, see `noticed`.
 */
export function useAddPhoto(): (prepared: PreparedPhoto, fields: Partial<Fields<'photo'>>) => Promise<Photo> {
  const { store } = useApp();
  return async (prepared, fields) => {
    const photo = await store.addPhoto(prepared, { ...blank.photo, ...fields });
    void checkPhoto(photo, store.photoBytes);
    return photo;
  };
}
