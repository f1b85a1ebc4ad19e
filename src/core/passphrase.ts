/**
 * A passphrase as it is used for writing and reading alike: without spaces at its ends, and every accented letter in one
 * form, so that what is typed on another keyboard is the same.
 */
export const asPassphrase = (typed: string): string => typed.normalize('NFC').trim();
