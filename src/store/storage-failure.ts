import { AppError } from '../core/errors.ts';

/** The database could not be opened; `cause` says why. */
export class OpenFailed extends Error {
  override readonly name = 'OpenFailed';
}

/** A transaction was ended by the browser, which did not say why. */
export class EndedWithoutReason extends Error {
  override readonly name = 'EndedWithoutReason';
}

/** A transaction neither finished nor failed. */
export class TookTooLong extends Error {
  override readonly name = 'TookTooLong';
}

/**
 * Whether a fresh connection may do better. The browser's database process can die in the background; the old handle
 * then fails for ever with "Connection to Indexed Database server lost" (seen on iPhones), or as closing.
 */
export function isConnectionLost(error: unknown): boolean {
  if (error instanceof OpenFailed) return isConnectionLost(error.cause);
  if (error instanceof EndedWithoutReason || error instanceof TookTooLong) return true;
  if (!(error instanceof DOMException)) return false;
  return ['InvalidStateError', 'UnknownError'].includes(error.name) || /connection.*(lost|clos)/i.test(error.message);
}

/**
 * A storage failure as a code. What is no failure of the storage, a fault of ours, is given back as it came.
 * A full disk sometimes ends a transaction without a reason; after a second try it is told as full.
 */
export function failureOf(error: unknown): unknown {
  const cause = error instanceof OpenFailed ? error.cause : error;
  const name = cause instanceof DOMException ? cause.name : '';
  if (name === 'QuotaExceededError' || error instanceof EndedWithoutReason)
    return new AppError('storage-full', { cause });
  if (name === 'VersionError') return new AppError('reload-needed', { cause });
  if (error instanceof OpenFailed) return new AppError('storage-unavailable', { cause });
  const ours = name === 'DataCloneError' || name === 'DataError';
  return (name !== '' && !ours) || error instanceof TookTooLong ? new AppError('not-saved', { cause }) : error;
}
