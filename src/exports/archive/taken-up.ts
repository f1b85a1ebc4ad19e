import { AppError } from '../../core/errors.ts';
import type { Keep, KeptState } from './keep.ts';

/**
 * What is kept of the same archive, or null. Whether the passphrase is the one it was begun with, this page knows, or
 * after a restart one of the volumes: an archive locked with two would be a trap.
 * @throws AppError archive-passphrase when it is another
 */
export async function takenUp(
  keep: Keep,
  fingerprint: string,
  passphrase: string | null,
  opens: ((volume: File, passphrase: string) => Promise<boolean>) | undefined,
): Promise<KeptState | null> {
  const state = await keep.read();
  if (state?.fingerprint !== fingerprint) return null;
  const files = await Promise.all(state.finished.map((volume) => keep.file(volume)));
  if (passphrase !== null && keep.passphrases.get(state.group) !== passphrase) {
    const locked = files.find((file) => file !== null);
    if (keep.passphrases.has(state.group) || !locked || !opens) return null;
    if (!(await opens(locked, passphrase))) throw new AppError('archive-passphrase');
  }
  return { ...state, finished: state.finished.filter((_, i) => files[i] !== null) };
}
