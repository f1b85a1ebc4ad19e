import { type ReadonlySignal, signal } from '@preact/signals';
import { type Journal, journalFrom, STILL_OUT_NOTE, type StillOut, stillOutFrom } from '../imports/journal.ts';
import { IMPORT_NOTE, type Store } from '../store/store.ts';

/** Held while a file is being taken in: two windows at it would take each other's photographs for leftovers. */
export const IMPORT_LOCK = 'blockworth-import';

export interface ImportNotes {
  /** An import that was cut off and nobody has finished; null while one is under way. */
  readonly cutOff: ReadonlySignal<Journal | null>;
  /** Archives of which not every file was taken in. */
  readonly stillOut: ReadonlySignal<readonly StillOut[]>;
  look(): Promise<void>;
  /** Frees, at the next start, what the cut-off import had brought. */
  forgetCutOff(): Promise<void>;
  forgetStillOut(): Promise<void>;
}

const all = new WeakMap<Store, ImportNotes>();

/** What this device remembers of imports that are not complete; looked up once by itself. */
export function importNotesOf(store: Store): ImportNotes {
  const known = all.get(store);
  if (known) return known;
  const { repository } = store;
  const cutOff = signal<Journal | null>(null);
  const stillOut = signal<readonly StillOut[]>([]);
  async function look(): Promise<void> {
    const journal = journalFrom(await repository.note(IMPORT_NOTE));
    const locks = journal && (await globalThis.navigator?.locks?.query());
    cutOff.value = locks?.held?.some(({ name }) => name === IMPORT_LOCK) ? null : journal;
    stillOut.value = stillOutFrom(await repository.note(STILL_OUT_NOTE));
  }
  const notes: ImportNotes = {
    ...{ cutOff, stillOut, look },
    async forgetCutOff() {
      await repository.setNote(IMPORT_NOTE, null);
      await look();
    },
    async forgetStillOut() {
      await repository.setNote(STILL_OUT_NOTE, null);
      await look();
    },
  };
  all.set(store, notes);
  // A storage that cannot be read says so elsewhere.
  look().catch(() => undefined);
  return notes;
}
