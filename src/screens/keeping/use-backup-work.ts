import { useEffect, useRef, useState } from 'preact/hooks';
import { AppError } from '../../core/errors.ts';
import type { ArchiveProgress, ArchiveWish, PreparedArchive, PreparedVolume } from '../../exports/archive/index.ts';
import { canSend, saveFile, sendFile } from '../../exports/hand-over.ts';
import { noteBackup } from '../../parts/backup.ts';
import { useApp } from '../../ui/app.ts';

export type BackupState =
  | { readonly at: 'start' }
  | { readonly at: 'working'; readonly progress: ArchiveProgress | null }
  /** `handed`: numbers of the volumes that have left. */
  | {
      readonly at: 'ready';
      readonly archive: PreparedArchive;
      readonly handed: readonly number[];
      readonly said: string;
    }
  | { readonly at: 'failed'; readonly error: unknown };

/** What is to be prepared: everything as a backup, or a part of it, whole or for others. */
export type Wanted = Pick<ArchiveWish, 'scope' | 'isWhole' | 'passphrase'>;

const WHOLE: Omit<Wanted, 'passphrase'> = { scope: { kind: 'shelf' }, isWhole: true };

const load = () => Promise.all([import('../../exports/archive/index.ts'), import('../../parts/archive-tools.ts')]);

/** A backup in two steps, because a phone only lets a file be sent by a fresh tap: prepare it, then save or send it. */
export function useBackupWork() {
  const app = useApp();
  const [state, setState] = useState<BackupState>({ at: 'start' });
  const work = useRef<AbortController | undefined>(undefined);
  const before = useRef(0);
  /** Taken up from an earlier page it is a backup like any other; only what was asked for here may be less. */
  const wanted = useRef<Wanted | undefined>(undefined);

  // What an earlier page prepared and nobody took yet.
  useEffect(() => {
    let isHere = true;
    load()
      .then(([{ keptArchive }]) => keptArchive())
      .then((archive) => {
        if (archive && isHere)
          setState((now) => (now.at === 'start' ? { at: 'ready', archive, handed: [], said: '' } : now));
      })
      .catch(() => undefined);
    return () => {
      isHere = false;
      work.current?.abort();
    };
  }, []);

  async function prepare(wish: Wanted): Promise<void> {
    const control = new AbortController();
    work.current = control;
    wanted.current = wish;
    setState({ at: 'working', progress: null });
    try {
      const [{ prepareArchive }, { archiveTools }] = await load();
      const archive = await prepareArchive(wish, archiveTools(app), {
        signal: control.signal,
        onProgress: (progress) => setState({ at: 'working', progress }),
      });
      control.signal.throwIfAborted();
      setState({ at: 'ready', archive, handed: [], said: '' });
    } catch (error) {
      setState(control.signal.aborted ? { at: 'start' } : { at: 'failed', error });
    }
  }

  /** All volumes of this round have left: the backup is noted once none is still to be made. */
  async function left(archive: PreparedArchive, handed: readonly number[], said: string): Promise<void> {
    setState({ at: 'ready', archive, handed, said });
    const isAll = archive.ready.every(({ volume }) => handed.includes(volume));
    if (!isAll || archive.left > 0) return;
    // A part of the shelf, or one without private names, is no backup.
    if (!archive.isBackup) return;
    const bytes = archive.ready.reduce((total, volume) => total + volume.bytes, before.current);
    await noteBackup(app.store, { at: Date.parse(archive.made), bytes });
  }

  function handOver(volume: PreparedVolume, way: 'save' | 'send'): void {
    if (state.at !== 'ready' || !volume.file) return;
    const { archive, handed } = state;
    const gone = [...handed, volume.volume];
    if (way === 'save') {
      saveFile(volume.file);
      left(archive, gone, `${volume.name} is handed to the browser to save.`).catch(() => undefined);
      return;
    }
    sendFile(volume.file).then(
      (isSent) =>
        isSent ? left(archive, gone, `${volume.name} is on its way.`) : setState({ ...state, said: 'Not sent.' }),
      (error: unknown) => setState({ at: 'failed', error }),
    );
  }

  /** Frees what has left, and goes on with the volumes there was no room for. */
  async function done(passphrase: string | null): Promise<void> {
    if (state.at !== 'ready') return;
    const { archive, handed } = state;
    const [{ sent }] = await load();
    for (const volume of archive.ready) {
      if (!handed.includes(volume.volume)) continue;
      before.current += volume.bytes;
      await sent(volume);
    }
    if (archive.left > 0) await prepare({ ...(wanted.current ?? WHOLE), passphrase });
    else {
      before.current = 0;
      setState({ at: 'start' });
    }
  }

  async function discard(): Promise<void> {
    const [{ discardArchive }] = await load();
    await discardArchive();
    setState({ at: 'start' });
  }

  return {
    state,
    prepare,
    handOver,
    done: (passphrase: string | null) =>
      void done(passphrase).catch((error: unknown) => setState({ at: 'failed', error })),
    discard: () => void discard().catch((error: unknown) => setState({ at: 'failed', error })),
    stop: () => work.current?.abort(new AppError('export-failed')),
    mayBeSent: (volume: PreparedVolume) => volume.file !== null && canSend(volume.file),
  };
}
