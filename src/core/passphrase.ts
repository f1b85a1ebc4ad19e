/** Fewest signs of a passphrase: four short words. Source: the age format's own notes ask for four to five words. */
export const SHORTEST_PASSPHRASE = 15;

export type PassphraseFault = 'tooShort' | 'oneSign' | 'notTheSame';

/**
 * A passphrase as it is used for writing and reading alike: without spaces at its ends, and every accented letter in one
 * form, so that what is typed on another keyboard is the same.
 */
export const asPassphrase = (typed: string): string => typed.normalize('NFC').trim();

/** What is wrong with a passphrase typed twice, or null. */
export function passphraseFault(typed: string, again: string): PassphraseFault | null {
  const first = asPassphrase(typed);
  if ([...first].length < SHORTEST_PASSPHRASE) return 'tooShort';
  if (new Set(first).size < 3) return 'oneSign';
  return first === asPassphrase(again) ? null : 'notTheSame';
}
