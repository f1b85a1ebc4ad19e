import { AppError } from '../core/errors.ts';
import { asPassphrase } from '../core/passphrase.ts';
import { LIMITS } from './limits.ts';

const AGE = 'age-encryption.org/v1\n';

/** Whether a file is encrypted in the age format, by its first bytes. Source: C2SP age, version 1. */
export async function isLocked(file: Blob): Promise<boolean> {
  return (await file.slice(0, AGE.length).text()) === AGE;
}

/** Base-2 logarithm of the work its passphrase asks for, as its header says; 0 where it says none. */
async function workOf(file: Blob): Promise<number> {
  const header = await file.slice(0, 2048).text();
  return Number(/\n-> scrypt \S+ (\d{1,3})\n/.exec(header)?.[1] ?? 0);
}

/**
 * A file freed of its age encryption.
 * @throws AppError archive-passphrase when the passphrase is wrong, archive-cut-off when the file is damaged,
 *         archive-passphrase-work when a hostile or careless header asks for more memory than a phone has
 */
export async function unlocked(file: Blob, passphrase: string): Promise<Blob> {
  if ((await workOf(file)) > LIMITS.scryptWork) throw new AppError('archive-passphrase-work');
  const { Decrypter } = await import('age-encryption');
  const decrypter = new Decrypter();
  decrypter.addPassphrase(asPassphrase(passphrase));
  let opened: ReadableStream<Uint8Array>;
  try {
    opened = await decrypter.decrypt(file.stream() as ReadableStream<Uint8Array>);
  } catch (cause) {
    throw new AppError('archive-passphrase', { cause });
  }
  try {
    return await new Response(opened as ReadableStream<Uint8Array<ArrayBuffer>>).blob();
  } catch (cause) {
    throw new AppError('archive-cut-off', { cause });
  }
}
