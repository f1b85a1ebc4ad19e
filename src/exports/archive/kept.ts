import type { Keep, KeptState, KeptVolume, KeptWish } from './keep.ts';

export interface PreparedVolume extends KeptVolume {
  /** To be sent or saved by a fresh tap; null when it was written into a picked file. */
  readonly file: File | null;
}

export interface PreparedArchive {
  readonly wish: KeptWish;
  /** Everything here, whole: only that is a backup. */
  readonly isBackup: boolean;
  readonly made: string;
  readonly volumes: number;
  /** Volumes ready now. */
  readonly ready: readonly PreparedVolume[];
  /** Volumes that are not made yet: prepare again for them. */
  readonly left: number;
  /** For want of room: those that are ready must be sent first, and `sent` called for each. */
  readonly isFull: boolean;
  /** Bytes of all volumes, those sent earlier included. */
  readonly bytes: number;
  /** Photographs that could not be put in. */
  readonly missing: KeptState['missing'];
}

const volumeOf = ({ volume, name, bytes }: KeptVolume): KeptVolume => ({ volume, name, bytes });
export const named = (volume: KeptVolume, file: File | null): PreparedVolume => ({ ...volume, file });

export const filesOf = (state: KeptState, keep: Keep): Promise<PreparedVolume[]> =>
  Promise.all(state.finished.map(async (kept) => named(kept, await keep.file(kept))));

/** A volume was handed over: its file here is no longer needed. Once all are, nothing is remembered of the archive. */
export async function sent(volume: PreparedVolume, keep: Keep): Promise<void> {
  const state = await keep.read();
  await keep.remove(volume.name);
  if (!state) return;
  const next: KeptState = {
    ...state,
    finished: state.finished.filter(({ name }) => name !== volume.name),
    sent: [...state.sent.filter(({ name }) => name !== volume.name), volumeOf(volume)],
  };
  await (next.sent.length >= next.volumes ? keep.forget() : keep.write(next));
}

/** Held while an archive is being made: two windows at it would take each other's files for leftovers. */
export const ARCHIVE_LOCK = 'blockworth-archive';

/** Does the work unless another is at an archive; null then. */
async function whileIdle<T>(work: () => Promise<T>): Promise<T | null> {
  if (!globalThis.navigator?.locks) return work();
  return navigator.locks.request(ARCHIVE_LOCK, { ifAvailable: true }, (lock) => (lock ? work() : null));
}

/**
 * What is still here of an archive: to be sent, gone on with, or discarded. Null when there is nothing, and while one is
 * being made; what a killed page left of a first volume is taken away.
 */
export function keptArchive(keep: Keep): Promise<PreparedArchive | null> {
  return whileIdle(async () => {
    const state = await keep.read();
    if (!state || state.volumes === 0) {
      await keep.tidy([]);
      return null;
    }
    const ready = (await filesOf(state, keep)).filter(({ file }) => file !== null);
    return preparedFrom(state, ready);
  });
}

export function preparedFrom(
  { wish, made, volumes, sent: gone, isFull, missing }: KeptState,
  ready: readonly PreparedVolume[],
): PreparedArchive {
  const known = new Map([...gone, ...ready].map(({ volume, bytes }) => [volume, bytes]));
  return {
    ...{ wish, made, volumes, ready, isFull, missing },
    isBackup: wish.scope.kind === 'shelf' && wish.isWhole,
    left: volumes - known.size,
    bytes: [...known.values()].reduce((total, bytes) => total + bytes, 0),
  };
}

/** Takes away everything kept of archives. Records and photographs are not touched. */
export async function discardArchive(keep: Keep): Promise<void> {
  await keep.forget();
  await keep.tidy([]);
}
