import { type ReadonlySignal, signal } from '@preact/signals';
import { AppError } from '../core/errors.ts';
import { type StillOut, stillOutOf } from '../imports/journal.ts';
import { type Preview, previewOf } from '../imports/preview.ts';
import type { ArchiveReader, OpenedArchive } from '../imports/reader.ts';
import { type TakeInStep, type TakenIn, takeIn } from '../imports/take-in.ts';
import type { Store } from '../store/store.ts';
import { sentenceOf } from '../text/errors.ts';
import type { App } from '../ui/app.ts';
import { readInWorker } from '../workers/import-reader.ts';
import { awakeDuring } from './awake.ts';
import { noteTakenIn } from './backup.ts';
import { IMPORT_LOCK, importNotesOf } from './import-notes.ts';
import { signposts, type UnderWay } from './under-way.ts';

export type BringState =
  | { readonly at: 'start' }
  | { readonly at: 'reading' }
  | { readonly at: 'locked'; readonly files: readonly File[]; readonly isWrong: boolean }
  | {
      readonly at: 'preview';
      readonly archive: OpenedArchive;
      readonly preview: Preview;
      /** What these files would leave out. */
      readonly stillOut: StillOut;
    }
  | { readonly at: 'taking'; readonly step: TakeInStep | null }
  | { readonly at: 'done'; readonly taken: TakenIn }
  | { readonly at: 'failed'; readonly error: unknown };

/** Files chosen, opened, looked at, and taken in or not. Taking in goes on whatever screen is open. */
export interface BringWork {
  readonly state: ReadonlySignal<BringState>;
  /** @param passphrase of files that are locked */
  open(files: readonly File[], passphrase?: string | null): void;
  /** @param blocks ids of the blocks wanted; null for everything */
  take(archive: OpenedArchive, blocks: ReadonlySet<string> | null): void;
  /** Ends taking in before any record is written. */
  stop(): void;
  putAway(): void;
  /** The screen is opened. */
  arrive(): void;
  /** The screen is left: what was only looked at is put away, what came to its end has been seen. */
  leave(): void;
}

const works = new WeakMap<Store, BringWork>();

/** The one import of this page. */
export function bringWorkOf(
  { store, now }: Pick<App, 'store' | 'now'>,
  newReader: () => ArchiveReader = () => readInWorker(),
): BringWork {
  const known = works.get(store);
  if (known) return known;
  const notes = importNotesOf(store);
  const state = signal<BringState>({ at: 'start' });
  let reader: ArchiveReader | undefined;
  let control: AbortController | undefined;

  function become(next: BringState): void {
    state.value = next;
    signposts.bring.say(signOf(next));
  }
  function close(): void {
    reader?.close();
    reader = undefined;
  }

  async function open(files: readonly File[], passphrase: string | null): Promise<void> {
    become({ at: 'reading' });
    reader ??= newReader();
    const mine = reader;
    try {
      const archive = await mine.open(files, passphrase, now());
      if (archive === 'locked') {
        become({ at: 'locked', files, isWrong: false });
        return;
      }
      const here = new Set(await store.repository.photoKeys());
      if (reader !== mine) return;
      const preview = previewOf(archive.records, store, here, (hash) => archive.pictures.has(hash));
      const then = new Set([...here, ...archive.pictures.keys()]);
      become({ at: 'preview', archive, preview, stillOut: stillOutOf(archive.index, archive.records, then) });
    } catch (error) {
      // Put away meanwhile: that ends the reader, which is no failure.
      if (reader !== mine) return;
      if (error instanceof AppError && error.code === 'archive-passphrase')
        become({ at: 'locked', files, isWrong: true });
      else {
        close();
        become({ at: 'failed', error });
      }
    }
  }

  async function take(archive: OpenedArchive, blocks: ReadonlySet<string> | null): Promise<void> {
    control = new AbortController();
    const { signal: stopping } = control;
    become({ at: 'taking', step: null });
    try {
      if (!reader) throw new Error('The archive was closed.');
      const tools = { store, reader, label: 'taking a file in' };
      const onStep = (step: TakeInStep): void => become({ at: 'taking', step });
      const work = (): Promise<TakenIn> =>
        awakeDuring(() => takeIn(archive, blocks, tools, { signal: stopping, onStep }));
      const taken = await (globalThis.navigator?.locks
        ? navigator.locks.request(IMPORT_LOCK, { signal: stopping }, work)
        : work());
      if (store.cleared.value) await store.acknowledgeCleared();
      await noteTakenIn(store, taken.changed);
      become({ at: 'done', taken });
      void store.keeping.look();
    } catch (error) {
      become(stopping.aborted ? { at: 'start' } : { at: 'failed', error });
    } finally {
      close();
      await notes.look().catch(() => undefined);
    }
  }

  const work: BringWork = {
    state,
    open(files, passphrase = null) {
      if (files.length > 0) void open(files, passphrase);
    },
    take: (archive, blocks) => void take(archive, blocks),
    stop: () => control?.abort(),
    putAway() {
      close();
      become({ at: 'start' });
    },
    arrive: signposts.bring.arrive,
    leave() {
      signposts.bring.leave();
      if (state.value.at !== 'taking') work.putAway();
    },
  };
  works.set(store, work);
  return work;
}

/** One line of it for other screens; null for what is looked at in its own place. */
function signOf(state: BringState): UnderWay | null {
  if (state.at === 'failed') {
    return { words: `Not taken in. ${sentenceOf(state.error)}`, done: null, of: 0, isBad: true };
  }
  if (state.at === 'done') return { words: 'The file is taken in.', done: null, of: 0 };
  if (state.at !== 'taking') return null;
  const { stage, done = 0, of = 0 } = state.step ?? {};
  const what = stage === 'records' ? 'record' : 'photograph';
  return { words: of === 0 ? 'Taking a file in…' : `Taking a file in: ${what} ${done} of ${of}`, done, of };
}
