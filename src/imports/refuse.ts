import { AppError, type ErrorCode, type Facts } from '../core/errors.ts';

const LONGEST = 70;

/** A name from a stranger's archive, fit to be shown: without control or direction marks, and not too long. */
export function shownName(name: string): string {
  const plain = name.replace(/[\p{Cc}\p{Cf}]/gu, '·');
  return plain.length > LONGEST ? `${plain.slice(0, LONGEST / 2)}…${plain.slice(-LONGEST / 2)}` : plain;
}

/** The refusal of an archive because of one of its entries. */
export function refusal(code: ErrorCode, entry: string, facts: Facts = {}, cause?: unknown): AppError {
  return new AppError(code, {
    facts: { ...facts, entry: shownName(entry) },
    ...(cause === undefined ? {} : { cause }),
  });
}
