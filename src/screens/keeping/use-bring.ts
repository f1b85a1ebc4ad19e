import { useEffect, useRef, useState } from 'preact/hooks';
import { AppError } from '../../core/errors.ts';
import { type Preview, previewOf } from '../../imports/preview.ts';
import type { ArchiveReader, OpenedArchive } from '../../imports/reader.ts';
import { type Journal, type TakeInStep, type TakenIn, takeIn } from '../../imports/take-in.ts';
import { IMPORT_NOTE } from '../../store/store.ts';
import { useApp } from '../../ui/app.ts';
import { readInWorker } from '../../workers/import-reader.ts';

export type BringState =
  | { readonly at: 'start' }
  | { readonly at: 'reading' }
  | { readonly at: 'locked'; readonly files: readonly File[]; readonly isWrong: boolean }
  | { readonly at: 'preview'; readonly archive: OpenedArchive; readonly preview: Preview }
  | { readonly at: 'taking'; readonly step: TakeInStep | null }
  | { readonly at: 'done'; readonly taken: TakenIn; readonly archive: OpenedArchive }
  | { readonly at: 'failed'; readonly error: unknown };

const startWorker = (): Worker =>
  new Worker(new URL('../../workers/import.worker.ts', import.meta.url), { type: 'module', name: 'import' });

function journalOf(text: string | null): Journal | null {
  try {
    return JSON.parse(text ?? 'null') as Journal | null;
  } catch {
    return null;
  }
}

/** Files chosen, opened, looked at, and taken in or not. */
export function useBring() {
  const { store, now } = useApp();
  const [state, setState] = useState<BringState>({ at: 'start' });
  const [cutOff, setCutOff] = useState<Journal | null>(null);
  const reader = useRef<ArchiveReader | undefined>(undefined);
  const work = useRef<AbortController | undefined>(undefined);

  useEffect(() => {
    store.repository.note(IMPORT_NOTE).then(
      (text) => setCutOff(journalOf(text)),
      () => undefined,
    );
    return () => {
      work.current?.abort();
      reader.current?.close();
    };
  }, [store]);

  const close = (): void => {
    reader.current?.close();
    reader.current = undefined;
  };

  async function open(files: readonly File[], passphrase: string | null = null): Promise<void> {
    if (files.length === 0) return;
    setState({ at: 'reading' });
    try {
      reader.current ??= readInWorker(startWorker);
      const archive = await reader.current.open(files, passphrase, now());
      if (archive === 'locked') {
        setState({ at: 'locked', files, isWrong: false });
        return;
      }
      const here = new Set(await store.repository.photoKeys());
      setState({ at: 'preview', archive, preview: previewOf(archive.records, store, here) });
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return;
      if (error instanceof AppError && error.code === 'archive-passphrase')
        setState({ at: 'locked', files, isWrong: true });
      else {
        close();
        setState({ at: 'failed', error });
      }
    }
  }

  async function take(archive: OpenedArchive, blocks: ReadonlySet<string> | null): Promise<void> {
    const control = new AbortController();
    work.current = control;
    setState({ at: 'taking', step: null });
    try {
      if (!reader.current) throw new Error('The archive was closed.');
      const taken = await takeIn(
        archive,
        blocks,
        { store, reader: reader.current, label: 'taking a file in' },
        { signal: control.signal, onStep: (step) => setState({ at: 'taking', step }) },
      );
      if (store.cleared.value) await store.acknowledgeCleared();
      setCutOff(null);
      setState({ at: 'done', taken, archive });
      void store.keeping.look();
    } catch (error) {
      setState(control.signal.aborted ? { at: 'start' } : { at: 'failed', error });
    } finally {
      close();
    }
  }

  return {
    state,
    cutOff,
    open: (files: readonly File[], passphrase: string | null = null) => void open(files, passphrase),
    take: (archive: OpenedArchive, blocks: ReadonlySet<string> | null) => void take(archive, blocks),
    stop: () => work.current?.abort(),
    putAway() {
      close();
      setState({ at: 'start' });
    },
    async forget() {
      await store.repository.setNote(IMPORT_NOTE, null);
      setCutOff(null);
    },
  };
}
