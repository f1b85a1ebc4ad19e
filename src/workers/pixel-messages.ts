import type { JobName } from './pixel-jobs.ts';

/** To the worker: one job on one or two photographs it has been given, or will be with this message. */
export interface PixelQuestion {
  readonly id: number;
  readonly job: JobName;
  /** Keys of the photographs, in the job's order; all others are forgotten. */
  readonly photos: readonly string[];
  /** Those the worker has not seen yet. */
  readonly pictures: readonly PictureSent[];
  readonly given: unknown;
}

/** A file's bytes, or pixels where the worker cannot decode; either way the buffer is handed over, not copied. */
export type PictureSent =
  | { readonly key: string; readonly bytes: ArrayBuffer; readonly mime: string }
  | { readonly key: string; readonly pixels: ArrayBuffer; readonly width: number; readonly height: number };

/** From the worker: any number of stages, then one of the others. */
export type PixelReply =
  | { readonly id: number; readonly what: 'stage'; readonly name: string; readonly share: number }
  | { readonly id: number; readonly what: 'done'; readonly answer: unknown; readonly ms: number }
  /** No canvas in workers here: the page has to decode. */
  | { readonly id: number; readonly what: 'unable' }
  | { readonly id: number; readonly what: 'failed'; readonly reason: string };
