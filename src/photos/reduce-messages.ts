import type { Size } from './containers/container.ts';
import type { Target } from './reduce.ts';

export interface ReduceRequest {
  readonly source: Blob;
  /** Null where nobody knows it before the picture is decoded. */
  readonly upright: Size | null;
  readonly target: Target;
}

export type ReduceReply =
  | { readonly what: 'done'; readonly jpeg: ArrayBuffer }
  | { readonly what: 'undecodable' }
  | { readonly what: 'failed'; readonly reason: string }
  /** No canvas in workers here: the page has to do it. */
  | { readonly what: 'unable' };
