import type { ErrorCode, Facts } from '../core/errors.ts';
import type { OpenedArchive, Picture } from '../imports/reader.ts';

export type ImportQuestion = { readonly id: number } & (
  | {
      readonly ask: 'open';
      readonly files: readonly Blob[];
      readonly passphrase: string | null;
      readonly nowMs: number;
    }
  | { readonly ask: 'picture'; readonly sha256: string }
);

export type ImportReply = { readonly id: number } & (
  | { readonly what: 'opened'; readonly archive: OpenedArchive | 'locked' }
  | { readonly what: 'picture'; readonly picture: Picture }
  | { readonly what: 'refused'; readonly code: ErrorCode; readonly facts: Facts; readonly reason: string }
  | { readonly what: 'failed'; readonly reason: string }
);
