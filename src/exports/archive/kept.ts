import { type Keep, type KeptState, type KeptVolume, keepHere } from './keep.ts';
import type { Missing } from './write.ts';

export interface PreparedVolume extends KeptVolume {
  /** To be sent or saved by a fresh tap; null when it was written into a picked file. */
  readonly file: File | null;
}

export interface PreparedArchive {
  /** Everything here, whole: only that is a backup. */
  readonly isBackup: boolean;
  readonly made: string;
  readonly volumes: number;
  /** Volumes ready now. */
  readonly ready: readonly PreparedVolume[];
  /** Volumes for which there was no room yet: send those that are ready, call `sent` for each, and prepare again. */
  readonly left: number;
  /** Photographs that could not be put in, of the volumes written in this run. */
  readonly missing: readonly Missing[];
}

export const named = (volume: KeptVolume, file: File | null): PreparedVolume => ({ ...volume, file });

export const filesOf = (state: KeptState, keep: Keep): Promise<PreparedVolume[]> =>
  Promise.all(state.finished.map(async (kept) => named(kept, await keep.file(kept))));

/** A volume was handed over: its file here is no longer needed. Once all are, nothing is remembered of the archive. */
export async function sent(volume: PreparedVolume, given?: Keep): Promise<void> {
  const keep = given ?? (await keepHere());
  const state = keep.read();
  await keep.remove(volume.name);
  if (!state) return;
  const next: KeptState = {
    ...state,
    finished: state.finished.filter(({ name }) => name !== volume.name),
    sent: [...new Set([...state.sent, volume.volume])],
  };
  if (next.sent.length >= next.volumes) keep.forget();
  else keep.write(next);
}

/** What is still here of an archive: to be sent, gone on with, or discarded. Null when there is nothing. */
export async function keptArchive(given?: Keep): Promise<PreparedArchive | null> {
  const keep = given ?? (await keepHere());
  const state = keep.read();
  if (!state || state.volumes === 0) return null;
  const ready = (await filesOf(state, keep)).filter(({ file }) => file !== null);
  const left = state.volumes - ready.length - state.sent.length;
  return { isBackup: state.isBackup, made: state.made, volumes: state.volumes, ready, left, missing: [] };
}

export async function discard(keep: Keep): Promise<void> {
  keep.forget();
  await keep.tidy([]);
}

/** Takes away everything kept of archives. Records and photographs are not touched. */
export async function discardArchive(given?: Keep): Promise<void> {
  await discard(given ?? (await keepHere()));
}
