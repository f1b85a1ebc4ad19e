import { AppError } from '../core/errors.ts';
import type { ArchiveReader, OpenedArchive, Picture } from '../imports/reader.ts';
import type { ImportQuestion, ImportReply } from './import-messages.ts';

type Question = ImportQuestion extends infer Q ? (Q extends { id: number } ? Omit<Q, 'id'> : never) : never;
type Answer = Extract<ImportReply, { what: 'opened' | 'picture' }>;

const startImportWorker = (): Worker =>
  new Worker(new URL('./import.worker.ts', import.meta.url), { type: 'module', name: 'import' });

/** Reads archives in a worker, one question at a time; `close` ends it, whatever it is at. */
export function readInWorker(startWorker = startImportWorker): ArchiveReader {
  let worker: Worker | undefined;
  let number = 0;
  const waiting = new Map<number, { answer: (reply: Answer) => void; fail: (error: unknown) => void }>();

  function end(error: unknown): void {
    worker?.terminate();
    worker = undefined;
    for (const { fail } of waiting.values()) fail(error);
    waiting.clear();
  }

  function started(): Worker {
    const fresh = startWorker();
    fresh.addEventListener('message', ({ data }: MessageEvent<ImportReply>) => {
      const asked = waiting.get(data.id);
      waiting.delete(data.id);
      if (data.what === 'opened' || data.what === 'picture') asked?.answer(data);
      else if (data.what === 'refused') {
        asked?.fail(new AppError(data.code, { facts: data.facts, cause: new Error(data.reason) }));
      } else asked?.fail(new Error(data.reason));
    });
    fresh.addEventListener('error', (event) => {
      event.preventDefault();
      // The commonest way a reader dies is for want of memory.
      end(new AppError('archive-cut-off', { cause: new Error(event.message) }));
    });
    return fresh;
  }

  function ask(question: Question): Promise<Answer> {
    return new Promise((answer, fail) => {
      worker ??= started();
      number += 1;
      waiting.set(number, { answer, fail });
      worker.postMessage({ ...question, id: number } as ImportQuestion);
    });
  }

  return {
    async open(files, passphrase, nowMs) {
      const reply = await ask({ ask: 'open', files, passphrase, nowMs });
      return (reply as { archive: OpenedArchive | 'locked' }).archive;
    },
    async picture(sha256) {
      return ((await ask({ ask: 'picture', sha256 })) as { picture: Picture }).picture;
    },
    close: () => end(new DOMException('The archive was closed.', 'AbortError')),
  };
}
