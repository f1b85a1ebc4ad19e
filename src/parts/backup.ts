import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Store } from '../store/store.ts';
import { useApp } from '../ui/app.ts';

/** When this phone was last backed up, and how large that was. */
export interface LastBackup {
  /** Unix ms: what was written later is not in it. */
  readonly at: number;
  readonly bytes: number;
  /** Records brought in from elsewhere since: their stamps may be older. Absent for none. */
  readonly takenIn?: number;
}

const NOTE = 'backup';
/** Undefined until it has been looked up. */
const last = signal<LastBackup | null | undefined>(undefined);
let lookedUpFor: Store | undefined;

function read(text: string | null): LastBackup | null {
  try {
    const { at, bytes, takenIn } = JSON.parse(text ?? 'null') as LastBackup;
    if (!Number.isFinite(at) || !Number.isFinite(bytes)) return null;
    return { at, bytes, ...(Number.isFinite(takenIn) ? { takenIn: Number(takenIn) } : {}) };
  } catch {
    return null;
  }
}

/** Notes that a backup has left this phone. */
export async function noteBackup({ repository }: Store, backup: LastBackup): Promise<void> {
  last.value = backup;
  await repository.setNote(NOTE, JSON.stringify(backup));
}

/** Notes that records came in from elsewhere, which the last backup does not have. */
export async function noteTakenIn(store: Store, count: number): Promise<void> {
  const before = read(await store.repository.note(NOTE));
  if (before && count > 0) await noteBackup(store, { ...before, takenIn: (before.takenIn ?? 0) + count });
}

const WEEK_MS = 7 * 86_400_000;
const DAY_MS = 86_400_000;
/** When a record was made, by its id. Source: UUIDv7, RFC 9562, 5.7. */
const madeMs = (id: string): number => Number.parseInt(id.slice(0, 8) + id.slice(9, 13), 16);

/** The last backup, what was written since, and whether it is time for another. Redrawn at every save. */
export function useBackup() {
  const { store, now } = useApp();
  useEffect(() => {
    if (lookedUpFor === store) return;
    lookedUpFor = store;
    last.value = undefined;
    store.repository.note(NOTE).then(
      (text) => {
        last.value = read(text);
      },
      () => undefined,
    );
  }, [store]);
  // What was written is counted anew with every save.
  store.saving.value;
  const backup = last.value;
  const changed = backup === undefined ? 0 : store.changedSince(backup?.at ?? 0) + (backup?.takenIn ?? 0);
  const own = store.blocks.value.filter(({ example }) => !example);
  const oldest = own.reduce((least, { id }) => Math.min(least, madeMs(id)), Number.POSITIVE_INFINITY);
  const isDue =
    backup !== undefined &&
    own.length > 0 &&
    changed > 0 &&
    (backup === null ? now() - oldest > DAY_MS : now() - backup.at > WEEK_MS);
  return { backup, changed, isDue };
}
