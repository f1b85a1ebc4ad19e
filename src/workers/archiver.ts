import { AppError } from '../core/errors.ts';
import type { FromArchiveWorker, ToArchiveWorker, VolumeFile, VolumeOrder, Written } from './archive-messages.ts';
import { type OpenPlace, placeFor, removePrivate } from './archive-places.ts';
import { writeVolume } from './archive-write.ts';

/**
 * Writes one volume at a time.
 * @param payload pulled one file at a time; the bytes of each are given away
 * @returns once the file is whole
 * @throws AppError storage-full or export-failed, or the signal's reason; nothing is left of the file then
 */
export type Archiver = (
  order: VolumeOrder,
  payload: AsyncIterable<VolumeFile>,
  signal: AbortSignal,
) => Promise<Written>;

const isFull = (error: unknown): boolean => error instanceof DOMException && error.name === 'QuotaExceededError';

const failed = (full: boolean, reason: unknown): AppError =>
  new AppError(full ? 'storage-full' : 'export-failed', { cause: reason });

/** Writes here and now: for a page whose browser starts no worker, and for tests. */
export const archiveHere =
  (open?: OpenPlace): Archiver =>
  async (order, payload, signal) => {
    try {
      return await writeVolume(order, payload, open ?? placeFor(order.destination), signal);
    } catch (error) {
      if (signal.aborted || error instanceof AppError) throw error;
      throw failed(isFull(error), error);
    }
  };

/** How long a worker that was told to stop may take before it is ended, in ms; the page promises 300. */
const PATIENCE_MS = 200;

/** Writes in a worker of its own, ended after each volume: what it took of memory goes with it. */
export const archiveInWorker =
  (startWorker: () => Worker): Archiver =>
  async (order, payload, signal) => {
    signal.throwIfAborted();
    const worker = startWorker();
    const send = (message: ToArchiveWorker, given: Transferable[] = []): void => worker.postMessage(message, given);
    const source = payload[Symbol.asyncIterator]();
    let patience: ReturnType<typeof setTimeout> | undefined;
    let stop = (): void => undefined;
    try {
      return await new Promise<Written>((resolve, reject) => {
        let reason: unknown;
        // The worker takes away what it wrote and says so; a worker deaf with working out a key has written nothing.
        const breakOff = (why: unknown): void => {
          reason ??= why;
          send({ what: 'stop' });
          patience ??= setTimeout(() => reject(reason), PATIENCE_MS);
        };
        stop = () => breakOff(signal.reason);
        signal.addEventListener('abort', stop, { once: true });
        const feed = async (): Promise<void> => {
          try {
            const next = await source.next();
            if (reason !== undefined) return;
            if (next.done) send({ what: 'end' });
            else send({ what: 'file', file: next.value }, [next.value.bytes.buffer]);
          } catch (error) {
            breakOff(error);
          }
        };
        worker.addEventListener('message', ({ data }: MessageEvent<FromArchiveWorker>) => {
          if (data.what === 'more') void feed();
          else if (data.what === 'written') resolve(data.written);
          else if (data.what === 'stopped') reject(reason);
          else reject(failed(data.failure === 'full', data.reason));
        });
        worker.addEventListener('error', (event) => {
          event.preventDefault();
          reject(failed(false, event.message));
        });
        send({ what: 'begin', order });
      });
    } catch (error) {
      worker.terminate();
      if (order.destination.to === 'private') await removePrivate(order.heading.name);
      throw error;
    } finally {
      clearTimeout(patience);
      signal.removeEventListener('abort', stop);
      worker.terminate();
      await source.return?.().catch(() => undefined);
    }
  };
