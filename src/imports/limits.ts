/**
 * What an archive may ask of a phone, checked against what it declares and again while unpacking, because declared sizes
 * lie. Source: standards notes D2; an archive of ours stores its files unpacked, a ratio of 1.
 */
export const LIMITS = {
  entries: 20_000,
  entryBytes: 40 * 2 ** 20,
  totalBytes: 2 * 2 ** 30,
  /** Of unpacked to packed; small files may well be packed tighter. */
  ratio: 100,
  ratioFromBytes: 2 ** 20,
  records: 200_000,
  jsonDepth: 64,
  /** Of an age file, as a power of two: 18 takes a quarter of a gigabyte, more would end a phone's page. */
  scryptWork: 18,
} as const;
