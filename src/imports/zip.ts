import {
  BlobReader,
  configure,
  type Entry,
  ERR_AMBIGUOUS_ARCHIVE,
  ERR_INVALID_CRC32,
  ERR_INVALID_UNCOMPRESSED_SIZE,
  ERR_OVERLAPPING_ENTRY,
  type FileEntry,
  ZipReader,
} from '@zip.js/zip.js/lib/zip-core-native.js';
import { AppError, type ErrorCode } from '../core/errors.ts';
import { LIMITS } from './limits.ts';
import { refusal } from './refuse.ts';

// Its own workers would be started from blobs, which our content policy forbids; this runs in a worker already.
configure({ useWebWorkers: false });

const OPTIONS = {
  strictness: 'strict',
  // Names are checked here, so that the refusal can say which.
  filenameValidation: 'tolerant',
  checkSignature: true,
  checkOverlappingEntry: true,
  useWebWorkers: false,
} as const;

/** A ZIP file whose directory has been checked; contents are checked as they are read. */
export interface OpenZip {
  /** Sizes by name, as declared. */
  readonly sizes: ReadonlyMap<string, number>;
  /** @throws AppError naming the entry when it is not what the directory says, or larger than allowed */
  read(name: string): Promise<Uint8Array<ArrayBuffer>>;
}

const STORED = 0;
const DEFLATED = 8;
const FILE_TYPE = 0xf000;
const REGULAR_FILE = 0x8000;
const FOLDER = 0x4000;
/** Bytes of a local file header before the name. Source: APPNOTE 4.3.7. */
const LOCAL_HEADER = 30;

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

function codeOf(error: unknown): ErrorCode {
  const message = messageOf(error);
  if (message === ERR_INVALID_CRC32) return 'archive-damaged';
  if (message === ERR_INVALID_UNCOMPRESSED_SIZE) return 'archive-wrong-size';
  if (message === ERR_OVERLAPPING_ENTRY) return 'archive-overlap';
  return message === ERR_AMBIGUOUS_ARCHIVE ? 'archive-two-readings' : 'archive-damaged';
}

/** The name that stands twice, if that is why the directory was refused. */
async function doubledName(file: Blob): Promise<string | undefined> {
  const reader = new ZipReader(new BlobReader(file), { ...OPTIONS, strictness: 'balanced' });
  try {
    const names = (await reader.getEntries()).map(({ filename }) => filename);
    return names.find((name, i) => names.indexOf(name) < i);
  } catch {
    return undefined;
  } finally {
    await reader.close();
  }
}

async function entriesOf(file: Blob): Promise<Entry[]> {
  const reader = new ZipReader(new BlobReader(file), OPTIONS);
  const entries: Entry[] = [];
  try {
    for await (const entry of reader.getEntriesGenerator()) {
      entries.push(entry);
      if (entries.length > LIMITS.entries) throw refusal('archive-too-many', file instanceof File ? file.name : '');
    }
    return entries;
  } catch (cause) {
    if (cause instanceof AppError) throw cause;
    if (messageOf(cause) !== ERR_AMBIGUOUS_ARCHIVE) throw new AppError('archive-cut-off', { cause });
    const doubled = await doubledName(file);
    if (doubled !== undefined) throw refusal('archive-doubled', doubled, {}, cause);
    throw refusal('archive-two-readings', file instanceof File ? file.name : '', {}, cause);
  }
}

/** @throws AppError for an entry that no archive of ours can hold, judged by the directory alone */
function checkEntry(entry: Entry): void {
  const { filename, compressedSize, uncompressedSize, compressionMethod } = entry;
  const type = (entry.externalFileAttributes >>> 16) & FILE_TYPE;
  if (type !== 0 && type !== REGULAR_FILE && type !== FOLDER) throw refusal('archive-link', filename);
  if (entry.encrypted) throw refusal('archive-unknown-way', filename);
  if (compressionMethod !== STORED && compressionMethod !== DEFLATED) throw refusal('archive-unknown-way', filename);
  if (uncompressedSize > LIMITS.entryBytes) throw refusal('archive-too-large', filename);
  if (uncompressedSize > LIMITS.ratioFromBytes && uncompressedSize > compressedSize * LIMITS.ratio) {
    throw refusal('archive-too-large', filename);
  }
}

function checkTogether(entries: readonly Entry[]): void {
  let total = 0;
  const folded = new Set<string>();
  for (const entry of entries) {
    const { filename, uncompressedSize } = entry;
    checkEntry(entry);
    total += uncompressedSize;
    if (total > LIMITS.totalBytes) throw refusal('archive-too-large', filename);
    const name = filename.normalize('NFC').toLowerCase();
    if (folded.has(name)) throw refusal('archive-doubled', filename);
    folded.add(name);
  }
  const ranges = entries
    .map(({ filename, offset, rawFilename, compressedSize }) => ({
      filename,
      from: offset,
      to: offset + LOCAL_HEADER + rawFilename.length + compressedSize,
    }))
    .sort((a, b) => a.from - b.from);
  ranges.forEach(({ filename, from }, i) => {
    if (i > 0 && from < (ranges[i - 1]?.to ?? 0)) throw refusal('archive-overlap', filename);
  });
}

/** Takes what is unpacked and breaks off beyond what was declared or allowed. */
function measured(name: string, declared: number) {
  const most = Math.min(LIMITS.entryBytes, declared);
  const bytes = new Uint8Array(most);
  let size = 0;
  const sink = new WritableStream<Uint8Array>({
    write(chunk) {
      if (size + chunk.length > most) throw refusal('archive-wrong-size', name);
      bytes.set(chunk, size);
      size += chunk.length;
    },
  });
  return {
    sink,
    whole(): Uint8Array<ArrayBuffer> {
      if (size !== declared) throw refusal('archive-wrong-size', name);
      return bytes;
    },
  };
}

/**
 * Opens a ZIP file and checks its whole directory before anything is unpacked.
 * @param checkName throws for a name that may not be in it; the name of a folder ends with `/`
 * @throws AppError archive-… naming the entry that is in the way
 */
export async function openZip(file: Blob, checkName: (name: string) => void): Promise<OpenZip> {
  const entries = await entriesOf(file);
  for (const { filename } of entries) checkName(filename);
  checkTogether(entries);
  const files = new Map<string, FileEntry>();
  for (const entry of entries) if (!entry.directory) files.set(entry.filename, entry);
  return {
    sizes: new Map([...files].map(([name, { uncompressedSize }]) => [name, uncompressedSize])),
    async read(name) {
      const entry = files.get(name);
      if (!entry) throw refusal('archive-incomplete', name);
      const { sink, whole } = measured(name, entry.uncompressedSize);
      try {
        await entry.getData(sink, OPTIONS);
        return whole();
      } catch (cause) {
        throw cause instanceof AppError ? cause : refusal(codeOf(cause), name, {}, cause);
      }
    },
  };
}
