import { AppError } from '../core/errors.ts';

export interface PictureBytes {
  readonly bytes: ArrayBuffer;
  readonly mime: string;
}

/** Undefined when these bytes never came to this phone. */
export type LoadPicture = (sha256: string) => Promise<PictureBytes | undefined>;

/** Neither yet: still loading, or waiting for a place. */
export interface PhotoUrl {
  readonly url: string | undefined;
  readonly error: unknown;
}

export const NOT_YET: PhotoUrl = { url: undefined, error: undefined };

interface Entry {
  state: PhotoUrl;
  load: LoadPicture;
  /** Holds one of the places: its bytes are being read or its address is live. */
  isPlaced: boolean;
  readonly users: Set<(state: PhotoUrl) => void>;
}

/**
 * The one owner of object URLs: each keeps its picture in memory until revoked. One URL per hash however many use it;
 * revoked once nobody does; never more than `most` at a time, the next waits its turn.
 */
export function createObjectUrlCache({
  most = 120,
  make = (picture: PictureBytes) => URL.createObjectURL(new Blob([picture.bytes], { type: picture.mime })),
  revoke = (url: string) => URL.revokeObjectURL(url),
} = {}) {
  const entries = new Map<string, Entry>();
  let placed = 0;

  function tell(entry: Entry, state: PhotoUrl): void {
    entry.state = state;
    for (const user of entry.users) user(state);
  }

  function leave(entry: Entry): void {
    if (!entry.isPlaced) return;
    entry.isPlaced = false;
    placed -= 1;
    for (const [sha256, waiting] of entries)
      if (!waiting.isPlaced && waiting.state === NOT_YET) return void place(sha256, waiting);
  }

  async function place(sha256: string, entry: Entry): Promise<void> {
    if (placed >= most) return;
    entry.isPlaced = true;
    placed += 1;
    try {
      const picture = await entry.load(sha256);
      if (!picture) throw new AppError('photo-damaged', { facts: { sha256 } });
      // Nobody may want it any more by the time it is read.
      if (entries.get(sha256) === entry) tell(entry, { url: make(picture), error: undefined });
    } catch (error) {
      if (entries.get(sha256) !== entry) return;
      // Told before it leaves: leaving looks for the next one that knows nothing yet.
      tell(entry, { url: undefined, error });
      leave(entry);
    }
  }

  function dropIfUnused(sha256: string, entry: Entry): void {
    if (entry.users.size > 0 || entries.get(sha256) !== entry) return;
    entries.delete(sha256);
    if (entry.state.url) revoke(entry.state.url);
    leave(entry);
  }

  return {
    /** Addresses alive now. */
    live: (): number => [...entries.values()].filter(({ state }) => state.url).length,
    /** What is known already, without asking for it. */
    peek: (sha256: string): PhotoUrl => entries.get(sha256)?.state ?? NOT_YET,
    /** Asks for a picture and is told of every change; the returned function gives it back. */
    use(sha256: string, load: LoadPicture, onChange: (state: PhotoUrl) => void): () => void {
      const user = (state: PhotoUrl) => onChange(state);
      let entry = entries.get(sha256);
      if (!entry) {
        entry = { state: NOT_YET, load, isPlaced: false, users: new Set() };
        entries.set(sha256, entry);
        void place(sha256, entry);
      }
      const mine = entry;
      mine.users.add(user);
      if (mine.state !== NOT_YET) onChange(mine.state);
      return () => {
        mine.users.delete(user);
        // Not at once: a list that is drawn anew gives its pictures back and asks for them again in one go.
        queueMicrotask(() => dropIfUnused(sha256, mine));
      };
    },
  };
}
