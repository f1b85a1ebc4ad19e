import type { ErrorCode } from '../core/errors.ts';
import type { Wishes } from './prepare.ts';
import type { PhotoStage, PreparedPhoto } from './prepared-photo.ts';

export interface PrepareRequest {
  readonly file: Blob;
  readonly name: string;
  readonly wishes: Wishes;
}

/** What the worker says back: any number of stages, then one of the others. */
export type PrepareReply =
  | { readonly what: 'stage'; readonly stage: PhotoStage }
  | { readonly what: 'done'; readonly photo: PreparedPhoto }
  /** A file that is no usable photograph. */
  | { readonly what: 'refused'; readonly code: ErrorCode; readonly reason: string }
  /** A fault of ours or of the device. */
  | { readonly what: 'failed'; readonly reason: string }
  /** No canvas in workers here: the page has to do it. */
  | { readonly what: 'unable' };
