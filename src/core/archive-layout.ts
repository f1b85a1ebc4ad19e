import * as z from 'zod/mini';
import { Id, Sha256 } from './records.ts';

/*
 * What lies where in an archive, for the writer and the reader alike.
 *
 * An archive is one or more volumes; each is a ZIP file with one folder in it, and that folder is a BagIt 1.0 bag
 * (RFC 8493) that is complete by itself: it can be checked and brought in alone, in any order, as often as one likes.
 *
 *     blockworth-20261128-154412-1of3/          the same name as the file, without `.zip`
 *       bagit.txt  bag-info.txt  manifest-sha256.txt  manifest-sha512.txt  tagmanifest-…  readme.txt
 *       data/
 *         archive.json                          what this volume is: see `ArchiveIndex`
 *         records/finding-001.json              the records, removed ones included: see `RecordFile`
 *         records/unreadable-001.json           records the writing app could not read, as they lay there
 *         photographs/<sha256>.jpg              working copies, byte for byte; the name is their hash
 *         originals/<sha256>.jpg                camera files, where the owner keeps them
 *         marks/<photo id>.json                 what is drawn on a photograph, as W3C Web Annotations
 *         objects/<block id>.json               the block as Linked Art (JSON-LD)
 *         reports/index.html                    leads to the reports by number and name
 *         reports/<block id>.html               the report, its pictures being those in `photographs`
 *         tables/blocks.csv                     the same once more for a spreadsheet
 *
 * Only `archive.json`, `records`, `photographs` and `originals` are ever read back; the rest is made from them.
 * Thumbnails are not in it: they can be made again. Records lie in every volume, so that any one brings back all that
 * was written down; a photograph lies in one of them.
 */

/** Raised when an older reader would misunderstand the layout; what a record means has its own number, `SCHEMA`. */
export const ARCHIVE_VERSION = 1;
export const ARCHIVE_FORMAT = 'blockworth-archive';
export const RECORDS_FORMAT = 'blockworth-records';
export const UNREADABLE_FORMAT = 'blockworth-unreadable';

/** No volume is larger, in bytes, unless one file alone is: above some 200 MB phones fail. Source: standards notes A6. */
export const MOST_VOLUME_BYTES = 150_000_000;
/** Most records in one file, so that no file comes near the most a reader takes. */
export const MOST_RECORDS_IN_FILE = 2_000;
/** Most bytes of text in one file of records; a single larger record still gets a file. */
export const MOST_RECORD_FILE_BYTES = 8_000_000;

/** Every name in an archive is of these, so that no tool has to decode or fold it. */
const NAME = '[a-z0-9][a-z0-9._-]{0,119}';

export const TAG_FILES = {
  bagit: 'bagit.txt',
  info: 'bag-info.txt',
  manifests: { sha256: 'manifest-sha256.txt', sha512: 'manifest-sha512.txt' },
  tagManifests: { sha256: 'tagmanifest-sha256.txt', sha512: 'tagmanifest-sha512.txt' },
  readme: 'readme.txt',
} as const;

export const PAYLOAD = 'data/';
/** Folders of the payload. */
export const FOLDERS = {
  records: 'data/records/',
  photographs: 'data/photographs/',
  originals: 'data/originals/',
  marks: 'data/marks/',
  objects: 'data/objects/',
  reports: 'data/reports/',
  tables: 'data/tables/',
} as const;
export const INDEX_PATH = 'data/archive.json';

/** File name ending by media type; a camera file of any other type is `.bin`, its type stands in its record. */
export const EXTENSIONS: Readonly<Record<string, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'image/avif': 'avif',
  'image/heic': 'heic',
};
const extensionOf = (mime: string): string => (Object.hasOwn(EXTENSIONS, mime) ? (EXTENSIONS[mime] ?? 'bin') : 'bin');

const numbered = (n: number): string => String(n).padStart(3, '0');
/** The n-th file of a type's records, from 1: `recordsPath('photoMark', 2)` is `data/records/photomark-002.json`. */
export const recordsPath = (type: string, n: number): string =>
  `${FOLDERS.records}${type.toLowerCase()}-${numbered(n)}.json`;
export const unreadablePath = (n: number): string => recordsPath('unreadable', n);
export const photographPath = (sha256: string, mime: string): string =>
  `${FOLDERS.photographs}${sha256}.${extensionOf(mime)}`;
export const originalPath = (sha256: string, mime: string): string =>
  `${FOLDERS.originals}${sha256}.${extensionOf(mime)}`;
export const marksPath = (photoId: string): string => `${FOLDERS.marks}${photoId}.json`;
export const objectPath = (blockId: string): string => `${FOLDERS.objects}${blockId}.json`;
/** Leads to the reports by number and name. */
export const CONTENTS_PATH = `${FOLDERS.reports}index.html`;
export const reportPath = (blockId: string): string => `${FOLDERS.reports}${blockId}.html`;
export const tablePath = (name: string): string => `${FOLDERS.tables}${name}.csv`;

/** What a path inside the bag is to a reader, or null for a name no writer of this version makes. */
export type ArchiveEntry =
  | { readonly kind: 'index' | 'records' | 'unreadable' | 'derived' | 'tag' }
  | { readonly kind: 'photograph' | 'original'; readonly sha256: string };

const PATTERNS: readonly (readonly [RegExp, (match: RegExpExecArray) => ArchiveEntry])[] = [
  [/^data\/archive\.json$/, () => ({ kind: 'index' })],
  [/^data\/records\/unreadable-\d{3,6}\.json$/, () => ({ kind: 'unreadable' })],
  [/^data\/records\/[a-z]{1,40}-\d{3,6}\.json$/, () => ({ kind: 'records' })],
  [/^data\/photographs\/([0-9a-f]{64})\.[a-z0-9]{1,5}$/, ([, sha256 = '']) => ({ kind: 'photograph', sha256 })],
  [/^data\/originals\/([0-9a-f]{64})\.[a-z0-9]{1,5}$/, ([, sha256 = '']) => ({ kind: 'original', sha256 })],
  [new RegExp(`^data/(marks|objects|reports|tables)/${NAME}$`), () => ({ kind: 'derived' })],
  [/^(bagit|bag-info|readme|manifest-sha(256|512)|tagmanifest-sha(256|512))\.txt$/, () => ({ kind: 'tag' })],
];

/** @param path inside the bag's folder, with `/`: `data/archive.json` */
export function entryAt(path: string): ArchiveEntry | null {
  for (const [pattern, entry] of PATTERNS) {
    const match = pattern.exec(path);
    if (match) return entry(match);
  }
  return null;
}

/**
 * Name of a volume's file without its ending, and of the folder in it.
 * @param made RFC 3339, UTC: `blockworth-20261128-154412-1of3`
 */
export function volumeName(made: string, volume: number, volumes: number): string {
  const digits = made.replace(/\D/g, '');
  return `blockworth-${digits.slice(0, 8)}-${digits.slice(8, 14)}-${volume}of${volumes}`;
}
/** What the folder in a volume may be called; owners rename files, so a reader need not insist on `volumeName`. */
export const isFolderName = (name: string): boolean => new RegExp(`^${NAME}$`).test(name);

export const ZIP_ENDING = '.zip';
/** A volume encrypted with a passphrase in the age format, version 1. */
export const AGE_ENDING = '.zip.age';

const Count = z.int().check(z.gte(0));
/** A photograph's bytes in an archive: `path` inside the bag of volume `volume`. */
const Held = z.object({ sha256: Sha256, bytes: Count, mime: z.string(), path: z.string(), volume: z.int() });

/** What an archive holds: everything, the blocks named, or those of one sale. */
const Scope = z.union([
  z.object({ kind: z.literal('shelf') }),
  z.object({ kind: z.literal('blocks'), ids: z.array(Id) }),
  z.object({ kind: z.literal('sale'), id: Id }),
]);
export type ArchiveScope = z.infer<typeof Scope>;

/** `data/archive.json`: the same in all volumes of an archive but for `volume` and `missing`. */
export const ArchiveIndex = z
  .object({
    format: z.literal(ARCHIVE_FORMAT),
    version: z.int(),
    /** Of the records in it: the newest `SCHEMA` the writing app knew. */
    schema: z.int(),
    /** One per archive, the same in all its volumes: `urn:uuid:…`. */
    group: z.string(),
    /** RFC 3339, UTC. Checked, since whoever brings it in is told how long ago that was. */
    made: z.string().check(
      z.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,3})?Z$/),
      z.refine((made) => Number.isFinite(Date.parse(made))),
    ),
    /** Id of the device that wrote it. */
    device: z.string(),
    catalogue: z.string(),
    scope: Scope,
    /**
     * Whether private names, places, prices and camera files are in it. Without them it is for handing on: what was left
     * out is blank in the records and carries no stamp, so bringing it in never overwrites what is known elsewhere.
     */
    isWhole: z.boolean(),
    volume: z.int().check(z.gte(1)),
    volumes: z.int().check(z.gte(1)),
    /** Records by type, removed and unreadable ones included, in the whole archive. */
    counts: z.record(z.string(), Count),
    /** Every photograph and camera file of the whole archive, whichever volume it lies in. */
    photographs: z.array(Held),
    originals: z.array(Held),
    /** Of those, what this volume should hold and does not: never came to the device, or no longer matches its hash. */
    missing: z.array(z.object({ sha256: Sha256, why: z.enum(['absent', 'damaged']) })),
  })
  .check(z.refine(({ volume, volumes }) => volume <= volumes));
export type ArchiveIndex = z.infer<typeof ArchiveIndex>;
export type HeldBytes = z.infer<typeof Held>;

/** `data/records/<type>-<nnn>.json`: records of one type as they are stored, one a line, oldest id first. */
export const RecordFile = z.object({
  format: z.literal(RECORDS_FORMAT),
  version: z.int(),
  type: z.string(),
  records: z.array(z.unknown()),
});

/** `data/records/unreadable-<nnn>.json`: what the writing app kept without understanding it. */
export const UnreadableFile = z.object({
  format: z.literal(UNREADABLE_FORMAT),
  version: z.int(),
  records: z.array(
    z.object({ id: z.string(), state: z.enum(['too-new', 'unreadable']), why: z.string(), raw: z.unknown() }),
  ),
});
