import { blank } from '../core/blank.ts';
import type { Fields } from '../core/records.ts';
import type { PreparedPhoto } from '../photos/prepared-photo.ts';
import { useApp } from '../ui/app.ts';

/** Stores a prepared photograph: bytes, thumbnail and record in one transaction. Resolves when it is on this phone. */
export function useAddPhoto(): (prepared: PreparedPhoto, fields: Partial<Fields<'photo'>>) => Promise<void> {
  const { store } = useApp();
  return async (prepared, fields) => {
    await store.addPhoto(prepared, { ...blank.photo, ...fields });
  };
}
