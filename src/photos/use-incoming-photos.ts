import { useRef, useState } from 'preact/hooks';
import { AppError } from '../core/errors.ts';
import { type PhotoOptions, preparePhoto } from './prepare-photo.ts';
import type { PreparedPhoto } from './prepared-photo.ts';

export interface IncomingPhotos {
  /** Kept originals and positions, as the owner's settings say. */
  readonly options: Pick<PhotoOptions, 'keepOriginal' | 'keepPosition'>;
  /** Stores one photograph; the next is only begun when it resolves. */
  readonly onPrepared: (photo: PreparedPhoto, file: File) => void | Promise<void>;
  /** After the last one of a run, with how many were stored and how many failed; not after a stop. */
  readonly onDone?: ((added: number, failed: number) => void) | undefined;
  readonly prepare?: typeof preparePhoto;
}

interface Waiting {
  readonly file: File;
  readonly fromCamera: boolean;
}

export interface Failure extends Waiting {
  readonly error: unknown;
}

/** A file that is no photograph stays none; a full or slow phone may do better next time. */
export const isWorthAnotherTry = ({ error }: Failure): boolean =>
  !(error instanceof AppError) || !error.code.startsWith('photo-') || error.code === 'photo-timeout';

/** Takes files one after another; more may be added meanwhile, and one that fails does not stop the rest. */
export function useIncomingPhotos(given: IncomingPhotos) {
  const latest = useRef(given);
  latest.current = given;
  const queue = useRef<Waiting[]>([]);
  const stopping = useRef<AbortController | undefined>(undefined);
  /** Number of the photograph in work, of how many in this run. */
  const [progress, setProgress] = useState<{ readonly at: number; readonly of: number }>();
  const [failures, setFailures] = useState<readonly Failure[]>([]);
  const [added, setAdded] = useState(0);

  async function takeOne({ file, fromCamera }: Waiting, signal: AbortSignal): Promise<boolean> {
    try {
      const { options, onPrepared, prepare = preparePhoto } = latest.current;
      const photo = await prepare(file, { ...options, fromCamera, signal });
      signal.throwIfAborted();
      await onPrepared(photo, file);
      return true;
    } catch (error) {
      if (!signal.aborted) setFailures((before) => [...before, { file, fromCamera, error }]);
      return false;
    }
  }

  async function run(): Promise<void> {
    const stop = new AbortController();
    stopping.current = stop;
    let stored = 0;
    let failed = 0;
    for (let at = 1; ; at++) {
      const next = queue.current.shift();
      if (!next) break;
      setProgress({ at, of: at + queue.current.length });
      if (await takeOne(next, stop.signal)) stored += 1;
      else failed += 1;
      setAdded(stored);
    }
    stopping.current = undefined;
    setProgress(undefined);
    if (!stop.signal.aborted) latest.current.onDone?.(stored, failed);
  }

  function take(files: readonly File[], fromCamera: boolean): void {
    add(files.map((file) => ({ file, fromCamera })));
  }

  function add(waiting: readonly Waiting[]): void {
    if (waiting.length === 0) return;
    queue.current.push(...waiting);
    if (stopping.current) setProgress((now) => now && { at: now.at, of: now.at + queue.current.length });
    else {
      setAdded(0);
      setFailures([]);
      void run();
    }
  }

  return {
    progress,
    failures,
    added,
    take,
    /** Ends the one in work and forgets those waiting; what is stored stays. */
    stop(): void {
      queue.current = [];
      stopping.current?.abort(new DOMException('Stopped by the owner.', 'AbortError'));
    },
    tryAgain: (): void => add(failures.filter(isWorthAnotherTry)),
  };
}
