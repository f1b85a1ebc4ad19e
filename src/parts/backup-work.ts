import { type ReadonlySignal, signal } from '@preact/signals';
import { AppError } from '../core/errors.ts';
import type { ArchiveProgress, ArchiveWish, PreparedArchive, PreparedVolume } from '../exports/archive/index.ts';
import { canSend, saveFile, sendFile } from '../exports/hand-over.ts';
import { pickFile } from '../exports/pick-file.ts';
import type { Store } from '../store/store.ts';
import { sentenceOf } from '../text/errors.ts';
import type { App } from '../ui/app.ts';
import { awakeDuring } from './awake.ts';
import { noteBackup } from './backup.ts';
import { signposts, type UnderWay } from './under-way.ts';

export type BackupState =
  | { readonly at: 'start' }
  | { readonly at: 'working'; readonly progress: ArchiveProgress | null }
  /** A file is to be picked by a fresh tap before it can be written. */
  | { readonly at: 'picking'; readonly name: string; readonly choose: () => void }
  /** `handed`: numbers of the volumes that have left. */
  | {
      readonly at: 'ready';
      readonly archive: PreparedArchive;
      readonly handed: readonly number[];
      readonly said: string;
      /** What stood in the way of the rest, or of sending. */
      readonly fault: unknown;
    }
  | { readonly at: 'failed'; readonly error: unknown };

/** What is to be prepared: everything as a backup, or a part of it, whole or for others. */
export type Wanted = Pick<ArchiveWish, 'scope' | 'isWhole' | 'passphrase'> & {
  /** Straight into files the person picks, with no room taken here. */
  readonly isPicked: boolean;
};

/**
 * A backup in two steps, because a phone only lets a file be sent by a fresh tap: prepare it, then save or send it.
 * Preparing goes on whatever screen is open.
 */
export interface BackupWork {
  readonly state: ReadonlySignal<BackupState>;
  prepare(wanted: Wanted): void;
  stop(): void;
  mayBeSent(volume: PreparedVolume): boolean;
  handOver(volume: PreparedVolume, way: 'save' | 'send'): void;
  /** Frees what has left; nothing more is to come. */
  done(): void;
  /** Frees what has left and makes the volumes still to come. */
  goOn(passphrase: string | null): void;
  discard(): void;
  /** Takes up what an earlier page prepared and nobody took yet; to be called when the screen is opened. */
  arrive(): void;
  /** The screen is left: what came to its end has been seen. */
  leave(): void;
}

/** What is only fetched when it is used, and where finished files wait on this device. */
async function loaded(app: App) {
  const [archive, { archiveTools }] = await Promise.all([
    import('../exports/archive/index.ts'),
    import('./archive-tools.ts'),
  ]);
  const keep = await archive.keepHere(app.store.repository);
  return { ...archive, keep, tools: archiveTools(app, keep) };
}

const works = new WeakMap<Store, BackupWork>();

/** The one backup of this page. */
export function backupWorkOf(app: App): BackupWork {
  const known = works.get(app.store);
  if (known) return known;
  const state = signal<BackupState>({ at: 'start' });
  let control: AbortController | undefined;
  let loading: ReturnType<typeof loaded> | undefined;
  const load = (): ReturnType<typeof loaded> => {
    loading ??= loaded(app).catch((error: unknown) => {
      loading = undefined;
      throw error;
    });
    return loading;
  };

  function become(next: BackupState): void {
    state.value = next;
    signposts.backup.say(signOf(next));
  }
  const fail = (error: unknown): void => become({ at: 'failed', error });
  const isDone = ({ ready, left }: PreparedArchive, handed: readonly number[]): boolean =>
    left === 0 && ready.every(({ volume }) => handed.includes(volume));

  /** Shows what is here of an archive; what was written into picked files has left already. */
  async function show(archive: PreparedArchive, said: string, fault: unknown = null): Promise<void> {
    const handed = archive.ready.flatMap(({ volume, file }) => (file === null ? [volume] : []));
    become({ at: 'ready', archive, handed, said, fault });
    await noteIfDone(archive, handed);
  }

  async function noteIfDone(archive: PreparedArchive, handed: readonly number[]): Promise<void> {
    // A part of the shelf, or one without private names, is no backup.
    if (archive.isBackup && isDone(archive, handed))
      await noteBackup(app.store, { at: Date.parse(archive.made), bytes: archive.bytes });
  }

  /** One tap for each file, since a browser lets one be picked only by a fresh one. */
  const pick = (name: string, stopping: AbortSignal): Promise<FileSystemFileHandle> =>
    new Promise((resolve, reject) => {
      stopping.addEventListener('abort', () => reject(stopping.reason), { once: true });
      const choose = (): void => {
        pickFile(name).then((handle) => handle && resolve(handle), reject);
      };
      become({ at: 'picking', name, choose });
    });

  async function prepare({ isPicked, ...wish }: Wanted): Promise<void> {
    control = new AbortController();
    const { signal: stopping } = control;
    become({ at: 'working', progress: null });
    const { keep, tools, keptArchive, prepareArchive } = await load();
    try {
      const picked = isPicked ? { pick: (name: string) => pick(name, stopping) } : {};
      const onProgress = (progress: ArchiveProgress): void => become({ at: 'working', progress });
      const archive = await awakeDuring(() =>
        prepareArchive({ ...wish, ...picked }, tools, { signal: stopping, onProgress }),
      );
      stopping.throwIfAborted();
      await show(archive, '');
    } catch (error) {
      if (stopping.aborted) {
        become({ at: 'start' });
        return;
      }
      // Volumes that are whole are not lost by one that failed.
      const kept = await keptArchive(keep).catch(() => null);
      if (kept) await show(kept, '', error);
      else fail(error);
    }
  }

  function handOver(volume: PreparedVolume, way: 'save' | 'send'): void {
    const now = state.value;
    if (now.at !== 'ready' || !volume.file) return;
    const { archive } = now;
    const left = (said: string): void => {
      const handed = [...now.handed, volume.volume];
      become({ at: 'ready', archive, handed, said, fault: null });
      noteIfDone(archive, handed).catch(() => undefined);
    };
    if (way === 'save') {
      saveFile(volume.file);
      left(`${volume.name} is handed to the browser to save.`);
      return;
    }
    sendFile(volume.file).then(
      (isSent) => (isSent ? left(`${volume.name} is on its way.`) : become({ ...now, said: 'Not sent.', fault: null })),
      () => become({ ...now, said: '', fault: new AppError('send-refused') }),
    );
  }

  /** Frees what has left. */
  async function free(): Promise<PreparedArchive | undefined> {
    if (state.value.at !== 'ready') return undefined;
    const { archive, handed } = state.value;
    const { keep, sent } = await load();
    for (const volume of archive.ready) if (handed.includes(volume.volume)) await sent(volume, keep);
    return archive;
  }

  async function goOn(passphrase: string | null): Promise<void> {
    const archive = await free();
    if (!archive) return;
    const { scope, isWhole, isPicked } = archive.wish;
    await prepare({ scope, isWhole, isPicked, passphrase });
  }

  async function arrive(): Promise<void> {
    signposts.backup.arrive();
    if (state.value.at !== 'start') return;
    const { keep, keptArchive } = await load();
    const archive = await keptArchive(keep);
    if (archive && state.value.at === 'start') await show(archive, '');
  }

  const work: BackupWork = {
    state,
    prepare: (wanted) => void prepare(wanted).catch(fail),
    stop: () => control?.abort(new AppError('export-failed')),
    mayBeSent: ({ file }) => file !== null && canSend(file),
    handOver,
    done: () => void free().then(() => become({ at: 'start' }), fail),
    goOn: (passphrase) => void goOn(passphrase).catch(fail),
    discard: () =>
      void load()
        .then(({ keep, discardArchive }) => discardArchive(keep))
        .then(() => become({ at: 'start' }), fail),
    arrive: () => void arrive().catch(() => undefined),
    leave() {
      signposts.backup.leave();
      if (state.value.at === 'failed') become({ at: 'start' });
    },
  };
  works.set(app.store, work);
  return work;
}

/** One line of it for other screens. */
function signOf(state: BackupState): UnderWay | null {
  if (state.at === 'failed')
    return { words: `No backup made. ${sentenceOf(state.error)}`, done: null, of: 0, isBad: true };
  if (state.at === 'picking') return { words: 'The backup waits for a place to be written.', done: 0, of: 0 };
  if (state.at === 'ready' && !state.archive.wish.isPicked)
    return { words: 'A backup is ready to be saved.', done: null, of: 0 };
  if (state.at !== 'working') return null;
  const { stage, done = 0, of = 0 } = state.progress ?? {};
  return stage === 'writing' && of > 0
    ? { words: `Preparing a backup: photograph ${done} of ${of}`, done, of }
    : { words: 'Preparing a backup…', done: 0, of: 0 };
}
