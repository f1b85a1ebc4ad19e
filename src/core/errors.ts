/** Everything the device, its storage or a file can do to us. Each code has its sentence in `text/errors.ts`. */
export const ERROR_CODES = [
  'storage-full',
  'quota-low',
  'not-saved',
  'close-other-windows',
  'reload-needed',
  'storage-was-cleared',
  'storage-unavailable',
  'record-too-new',
  'record-unreadable',
  'clock-ahead',
  'photo-damaged',
  'photo-empty',
  'photo-not-an-image',
  'photo-heic',
  'photo-too-large',
  'photo-timeout',
  'export-failed',
  'send-refused',
  'archive-not-ours',
  'archive-too-new',
  'archive-cut-off',
  'archive-strange-name',
  'archive-doubled',
  'archive-two-readings',
  'archive-link',
  'archive-overlap',
  'archive-unknown-way',
  'archive-wrong-size',
  'archive-too-large',
  'archive-too-many',
  'archive-incomplete',
  'archive-damaged',
  'archive-bad-text',
  'archive-bad-picture',
  'archive-picture-too-large',
  'archive-mixed',
  'archive-passphrase',
  'archive-passphrase-work',
  'archive-no-room',
  'schedule-too-long',
  'schedule-failed',
] as const;
export type ErrorCode = (typeof ERROR_CODES)[number];

/** What is worth knowing beside the code: an id, a count, bytes. Never shown raw. */
export type Facts = Readonly<Record<string, string | number>>;

/**
 * The device's fault, not the person's and not ours: a code that the screen turns into a sentence.
 * What is expected in life (a missing scale, an empty field) is a value instead; a fault of ours is a plain `Error`.
 */
export class AppError extends Error {
  override readonly name = 'AppError';
  readonly code: ErrorCode;
  readonly facts: Facts;

  constructor(code: ErrorCode, options: { readonly cause?: unknown; readonly facts?: Facts } = {}) {
    super(code, options.cause === undefined ? undefined : { cause: options.cause });
    this.code = code;
    this.facts = options.facts ?? {};
  }
}
