import { workingImage } from './decode.ts';
import type { Answer, Given, JobName } from './pixel-jobs.ts';
import type { PictureSent, PixelQuestion, PixelReply } from './pixel-messages.ts';

/** A photograph by a key of its own (the hash of its bytes), read only when the worker does not have it. */
export interface PictureSource {
  readonly key: string;
  readonly load: () => Promise<{ readonly bytes: ArrayBuffer; readonly mime: string }>;
}

export interface PixelOptions {
  /** Of several questions waiting under one topic only the newest is asked: a dragged point costs one answer. */
  readonly topic?: string;
  /** Aborted: no answer, and work already begun is broken off. */
  readonly signal?: AbortSignal;
  readonly onStage?: (name: string, share: number) => void;
}

export interface PixelWork {
  /**
   * Has a job done on one photograph, or two for the jobs that need two.
   * @returns undefined when a newer question took this one's place, or the signal aborted it
   * @throws when the photograph cannot be read or the worker cannot run
   */
  ask<J extends JobName>(
    job: J,
    photos: readonly PictureSource[],
    given: Given<J>,
    options?: PixelOptions,
  ): Promise<Answer<J> | undefined>;
  /** Ends the worker and frees its pictures; the next question starts another. */
  rest(): void;
  /** Time the last answered job took in the worker, decoding included, ms. */
  readonly lastMs: () => number;
}

interface Waiting {
  readonly job: JobName;
  readonly photos: readonly PictureSource[];
  readonly given: unknown;
  readonly options: PixelOptions;
  readonly answer: (value: never) => void;
  readonly fail: (error: unknown) => void;
}

/** Between two taps on a photograph pass seconds; after this the memory is worth more than the start saved. */
const IDLE_MS = 20_000;

/**
 * Asks the pixel worker one question at a time. A photograph is decoded once and stays in the worker with the planes
 * reckoned from it until a question about another comes. Work begun cannot hear a cancel, so the worker is ended for it.
 */
export function createPixelWork(startWorker: () => Worker): PixelWork {
  let worker: Worker | undefined;
  let current: (Waiting & { readonly id: number }) | undefined;
  let idle: ReturnType<typeof setTimeout> | undefined;
  let number = 0;
  let lastMs = 0;
  let decodeInPage = false;
  let known = new Set<string>();
  const waiting: Waiting[] = [];

  function end(): void {
    worker?.terminate();
    worker = undefined;
    known = new Set();
  }

  function settle(how: (job: Waiting) => void): void {
    const job = current;
    current = undefined;
    if (job) how(job);
    next();
  }

  function listen(started: Worker): Worker {
    started.addEventListener('message', ({ data }: MessageEvent<PixelReply>) => {
      if (data.id !== current?.id) return;
      if (data.what === 'stage') current.options.onStage?.(data.name, data.share);
      else if (data.what === 'done') {
        lastMs = data.ms;
        settle((job) => job.answer(data.answer as never));
      } else if (data.what === 'unable' && !decodeInPage) {
        decodeInPage = true;
        known = new Set();
        void send(current);
      } else {
        // What was sent may not have been opened.
        known = new Set();
        settle((job) => job.fail(new Error(data.what === 'failed' ? data.reason : 'No canvas here.')));
      }
    });
    started.addEventListener('error', (event) => {
      event.preventDefault();
      end();
      settle((job) => job.fail(new Error(`The pixel worker failed: ${event.message}`)));
    });
    return started;
  }

  async function picture({ key, load }: PictureSource): Promise<PictureSent> {
    const { bytes, mime } = await load();
    if (!decodeInPage) return { key, bytes, mime };
    const { data, width, height } = await workingImage(bytes, mime, (w, h) =>
      Object.assign(document.createElement('canvas'), { width: w, height: h }),
    );
    return { key, pixels: data.buffer as ArrayBuffer, width, height };
  }

  async function send(job: Waiting & { readonly id: number }): Promise<void> {
    try {
      const missing = job.photos.filter(({ key }) => !known.has(key));
      const pictures = await Promise.all(missing.map(picture));
      if (current?.id !== job.id) return;
      worker ??= listen(startWorker());
      const photos = job.photos.map(({ key }) => key);
      const question: PixelQuestion = { id: job.id, job: job.job, photos, pictures, given: job.given };
      worker.postMessage(
        question,
        pictures.map((sent) => ('pixels' in sent ? sent.pixels : sent.bytes)),
      );
      known = new Set(photos);
    } catch (error) {
      if (current?.id === job.id) settle(() => job.fail(error));
    }
  }

  function next(): void {
    if (current) return;
    clearTimeout(idle);
    const first = waiting.shift();
    if (!first) {
      idle = setTimeout(end, IDLE_MS);
      return;
    }
    number += 1;
    current = { ...first, id: number };
    void send(current);
  }

  function drop(job: Waiting): void {
    const place = waiting.indexOf(job);
    if (place >= 0) waiting.splice(place, 1);
    job.answer(undefined as never);
  }

  return {
    lastMs: () => lastMs,
    ask<J extends JobName>(job: J, photos: readonly PictureSource[], given: Given<J>, options: PixelOptions = {}) {
      return new Promise<Answer<J> | undefined>((answer, fail) => {
        const { topic, signal } = options;
        if (signal?.aborted) {
          answer(undefined);
          return;
        }
        for (const older of [...waiting]) if (topic !== undefined && older.options.topic === topic) drop(older);
        const asked: Waiting = { job, photos, given, options, answer: answer as (value: never) => void, fail };
        signal?.addEventListener('abort', () => {
          if (waiting.includes(asked)) drop(asked);
          else if (current?.answer === asked.answer) {
            end();
            settle((stopped) => stopped.answer(undefined as never));
          }
        });
        waiting.push(asked);
        next();
      });
    },
    rest() {
      clearTimeout(idle);
      for (const job of [...waiting]) drop(job);
      end();
      const job = current;
      current = undefined;
      job?.answer(undefined as never);
    },
  };
}
