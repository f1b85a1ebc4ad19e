/*
 * Names and places that must not be said, as they turn up in somebody's own words: for reports, which take them out, and
 * archives for others, which keep the whole text back.
 */

/** Openings of a name that are none, and months, which are names as well: taken out, a date would go with them. */
const NO_NAMES = new Set(
  'The And For Mrs Miss Mister Sir Dame Doctor Prof January February March April May June July August September October November December'.split(
    ' ',
  ),
);

/** Large-lettered words of a name, for it comes back in notes as “Odile said …”; three letters or more. */
export const wordsOfName = (name: string): string[] =>
  [...name.normalize('NFC').matchAll(/\p{Lu}[\p{L}’'-]{2,}/gu)].map(([word]) => word);

/** Whether a word of a name points to somebody, as “Mrs” and “April” do not. */
export const isTelling = (word: string): boolean => !NO_NAMES.has(word);

/** Scripts that put no space between words: a name has no edge there, and two signs are a whole one. */
const UNSPACED = /[\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Thai}\p{sc=Lao}\p{sc=Khmer}\p{sc=Myanmar}]/u;

const trimmed = (text: string): string => text.trim().normalize('NFC');
/** Whether there is enough of a text to look for it. */
const isEnough = (text: string): boolean => text.length > (UNSPACED.test(text) ? 1 : 2);

/** As it may be spelt: either apostrophe, a blank or a hyphen, accents as signs of their own or left away (as in file names). */
function spelt(text: string): string {
  const apart = text.normalize('NFD');
  const forms = new Set([text, apart, apart.replace(/\p{M}+/gu, '')]);
  return [...forms]
    .map((form) =>
      form
        .replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
        .replace(/['’ʼ]/g, "['’ʼ]")
        .replace(/[\s-]+/g, '[\\s-]+'),
    )
    .join('|');
}

/** One expression for any of some texts where they stand as words of their own; null for none. Too short ones are left out. */
export function anyOf(texts: readonly string[], flags: string): RegExp | null {
  const found = [...new Set(texts.map(trimmed).filter(isEnough))].sort((a, b) => b.length - a.length);
  if (found.length === 0) return null;
  const [unspaced, spaced] = [
    found.filter((text) => UNSPACED.test(text)),
    found.filter((text) => !UNSPACED.test(text)),
  ];
  const ways = [
    ...(spaced.length > 0 ? [`(?<![\\p{L}\\p{N}])(?:${spaced.map(spelt).join('|')})(?![\\p{L}\\p{M}\\p{N}])`] : []),
    ...unspaced.map(spelt),
  ];
  return new RegExp(ways.join('|'), flags);
}
