import { type PassphraseFault, SHORTEST_PASSPHRASE } from '../core/passphrase.ts';

/*
 * Words around volumes encrypted with a passphrase. They are files in the age format, version 1, written in the archive
 * worker (`workers/archive-volume.ts`); any age program opens them.
 */

/** To be shown beside the field, before it is used: nobody can help afterwards. */
export const PASSPHRASE_CAUTION =
  'Write the passphrase down and keep it apart from the phone. It is stored nowhere: without it nobody can open this backup again, and what is only in it is lost.';

const FAULTS: Readonly<Record<PassphraseFault, string>> = {
  tooShort: `Take at least ${SHORTEST_PASSPHRASE} signs: four or five words that do not belong together.`,
  oneSign: 'This is the same few signs over and over. Take four or five words that do not belong together.',
  notTheSame: 'The two are not the same. Type it once more.',
};
export const passphraseSentence = (fault: PassphraseFault): string => FAULTS[fault];
