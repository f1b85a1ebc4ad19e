import type { PhotoBytes } from '../../src/store/repository.ts';
import { sha256Hex } from '../support/sha256.ts';

/** A text as bytes to be stored, under a hash not computed by the code under test. */
export const photoOf = (text: string): PhotoBytes => {
  const bytes = new TextEncoder().encode(text);
  return { sha256: sha256Hex(bytes), bytes: bytes.slice().buffer, mime: 'image/jpeg' };
};
