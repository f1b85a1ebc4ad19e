import { list, opening } from './format.ts';

/** What is wrong with a photograph, as it is said of one. */
const FAULT_WORDS: Readonly<Record<string, string>> = {
  soft: 'blurred',
  shaken: 'blurred by a shake',
  dark: 'too dark to see into the shadows',
  clipped: 'burnt out in the brightest places',
};

/** `Blurred – take it again?`; faults no word is known for are left out, and none at all gives ''. */
export function faultQuestion(faults: readonly string[]): string {
  const words = faults.flatMap((fault) => (Object.hasOwn(FAULT_WORDS, fault) ? [FAULT_WORDS[fault] as string] : []));
  return words.length === 0 ? '' : `${opening(list(words))} – take it again?`;
}
