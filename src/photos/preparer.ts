import { AppError } from '../core/errors.ts';
import { afterAwake } from './awake.ts';
import type { Wishes } from './prepare.ts';
import type { PhotoStage, PreparedPhoto } from './prepared-photo.ts';
import { unlessAborted } from './unless-aborted.ts';
import type { PrepareReply, PrepareRequest } from './worker-messages.ts';

/** The part of a Worker used here, so that tests can hand in one that hangs. */
export type PhotoWorker = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

export interface Environment {
  readonly startWorker: () => PhotoWorker;
  readonly prepareInPage: (
    file: Blob,
    name: string,
    wishes: Wishes,
    onStage: (stage: PhotoStage) => void,
  ) => Promise<PreparedPhoto>;
  /** Time awake for one photograph, for its EXIF alone, and until an unused worker is ended. Milliseconds. */
  readonly patience: { readonly photo: number; readonly cameraFacts: number; readonly idle: number };
}

export interface Job extends PrepareRequest {
  readonly signal: AbortSignal | undefined;
  readonly onStage: (stage: PhotoStage) => void;
}

type Outcome = PreparedPhoto | 'unable' | 'cameraFactsTooSlow';

/**
 * Does jobs one after another, since two pictures decoded at once are what a phone dies of. Holds at most one worker:
 * started when needed, ended when idle, and ended with its job when that is aborted or takes too long.
 */
export function createPreparer({ startWorker, prepareInPage, patience }: Environment) {
  let worker: PhotoWorker | undefined;
  let workersWork = true;
  let last: Promise<unknown> = Promise.resolve();
  let stopIdling = () => {};

  function endWorker(): void {
    stopIdling();
    worker?.terminate();
    worker = undefined;
  }

  function inWorker(job: Job, wishes: Wishes): Promise<Outcome> {
    stopIdling();
    return new Promise<Outcome>((resolve, reject) => {
      const { signal, onStage } = job;
      const isNew = !worker;
      worker ??= startWorker();
      let heard = false;
      let stopFacts = () => {};
      const settle = (finish: () => void, keepWorker: boolean) => {
        stopPhoto();
        stopFacts();
        signal?.removeEventListener('abort', onAbort);
        if (keepWorker) stopIdling = afterAwake(patience.idle, endWorker);
        else endWorker();
        finish();
      };
      const onAbort = () => settle(() => reject(signal?.reason), false);
      const tooSlow = () => settle(() => reject(new AppError('photo-timeout')), false);
      const stopPhoto = afterAwake(patience.photo, tooSlow);
      signal?.addEventListener('abort', onAbort, { once: true });
      worker.onmessage = ({ data }: MessageEvent<PrepareReply>) => {
        heard = true;
        if (data.what === 'stage') {
          stopFacts();
          if (data.stage === 'cameraFacts')
            stopFacts = afterAwake(patience.cameraFacts, () => settle(() => resolve('cameraFactsTooSlow'), false));
          onStage(data.stage);
        } else if (data.what === 'done') settle(() => resolve(data.photo), true);
        else if (data.what === 'unable') settle(() => resolve('unable'), false);
        else if (data.what === 'refused')
          settle(() => reject(new AppError(data.code, { cause: new Error(data.reason) })), true);
        else settle(() => reject(new Error(data.reason)), false);
      };
      // A worker that never spoke could not be loaded; one that did has died.
      worker.onerror = (event) =>
        settle(() => (isNew && !heard ? resolve('unable') : reject(new Error(event.message))), false);
      worker.postMessage({ file: job.file, name: job.name, wishes } satisfies PrepareRequest);
    });
  }

  async function run(job: Job): Promise<PreparedPhoto> {
    job.signal?.throwIfAborted();
    let { wishes } = job;
    while (workersWork) {
      const outcome = await inWorker(job, wishes);
      if (outcome === 'unable') workersWork = false;
      else if (outcome === 'cameraFactsTooSlow') wishes = { ...wishes, readCameraFacts: false };
      else return outcome;
    }
    return prepareInPage(job.file, job.name, wishes, job.onStage);
  }

  return (job: Job): Promise<PreparedPhoto> => {
    job.onStage('waiting');
    const work = last.then(() => run(job));
    last = work.catch(() => {});
    return unlessAborted(job.signal, work);
  };
}
