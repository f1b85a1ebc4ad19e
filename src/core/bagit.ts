/*
 * Text of the tag files of a BagIt 1.0 bag. Source: RFC 8493; section numbers below are its own.
 */

export const ALGORITHMS = ['sha256', 'sha512'] as const;
export type Algorithm = (typeof ALGORITHMS)[number];

/** Path inside the bag, with `/`, and the hashes of the file in lower-case hex. */
export interface Hashed {
  readonly path: string;
  readonly hashes: Readonly<Record<Algorithm, string>>;
}

/** The bag declaration: these two lines and nothing else, no byte order mark. (2.1.1) */
export const BAG_DECLARATION = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n';

/** Only line ends and `%` itself are encoded in a path. (2.1.3) */
const encodedPath = (path: string): string =>
  path.replaceAll('%', '%25').replaceAll('\n', '%0A').replaceAll('\r', '%0D');

/**
 * A payload or tag manifest: hash, two spaces, path, as `sha256sum -c` reads it too. (2.1.3, 2.2.1)
 * @param files each once; in the order they are to stand
 */
export const manifest = (files: readonly Hashed[], algorithm: Algorithm): string =>
  files.map(({ path, hashes }) => `${hashes[algorithm]}  ${encodedPath(path)}\n`).join('');

/** Longest line of `bag-info.txt` that is recommended. (2.2.2) */
const LONGEST_LINE = 79;

/** One element, folded where it is long: the lines after the first begin with a space. (2.2.2) */
function element(label: string, value: string): string {
  if (/[:\r\n]/.test(label) || label.trim() !== label || label === '') throw new Error(`${label} is no label.`);
  const words = `${label}: ${value.replace(/\s+/g, ' ').trim()}`.split(' ');
  const lines: string[] = [];
  let line = words.shift() ?? '';
  for (const word of words) {
    if (line.length + 1 + word.length <= LONGEST_LINE) line += ` ${word}`;
    else {
      lines.push(line);
      line = `  ${word}`;
    }
  }
  return `${[...lines, line].join('\n')}\n`;
}

/** `bag-info.txt`; an element without a value is left out. A label may stand twice. (2.2.2) */
export const bagInfo = (elements: readonly (readonly [label: string, value: string])[]): string =>
  elements.map(([label, value]) => (value.trim() === '' ? '' : element(label, value))).join('');

/** `Payload-Oxum`: octets and number of the payload files, so that a short bag shows without hashing. (2.2.2) */
export const payloadOxum = (octets: number, files: number): string => `${octets}.${files}`;
