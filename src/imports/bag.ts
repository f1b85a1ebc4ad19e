import { type ArchiveEntry, entryAt, INDEX_PATH, isFolderName, PAYLOAD, TAG_FILES } from '../core/archive-layout.ts';
import { AppError } from '../core/errors.ts';
import { sha256 } from '../photos/sha256.ts';
import { refusal } from './refuse.ts';
import { openZip } from './zip.ts';

/** A volume whose tag files agree with each other and with what is in it. */
export interface OpenBag {
  /** Every file by its path inside the bag. */
  readonly entries: ReadonlyMap<string, ArchiveEntry>;
  sizeOf(path: string): number;
  /** The bytes of a file, as the manifest wants them. @throws AppError naming the entry */
  read(path: string): Promise<Uint8Array<ArrayBuffer>>;
}

const LINE = /^([0-9a-f]{64})[ \t]+\*?(.+)$/;

/** Path → SHA-256 of a manifest. Source: RFC 8493, 2.1.3. */
function readManifest(bytes: Uint8Array, name: string): Map<string, string> {
  const sums = new Map<string, string>();
  for (const line of new TextDecoder().decode(bytes).split(/\r\n|\n|\r/)) {
    if (line === '') continue;
    const [, sum, path] = LINE.exec(line) ?? [];
    if (!sum || !path) throw refusal('archive-bad-text', name);
    if (sums.has(path)) throw refusal('archive-doubled', path);
    sums.set(path, sum);
  }
  return sums;
}

/** Splits `folder/data/…`; the archive has one folder, and no name our writer would not make. */
function nameChecker() {
  let folder: string | undefined;
  const entries = new Map<string, ArchiveEntry>();
  return {
    entries,
    folder: () => folder ?? '',
    check(name: string): void {
      const slash = name.indexOf('/');
      const first = name.slice(0, slash);
      if (slash < 1 || !isFolderName(first) || (folder !== undefined && first !== folder)) {
        throw refusal('archive-strange-name', name);
      }
      folder = first;
      const path = name.slice(slash + 1);
      if (path === '' || (path.endsWith('/') && /^(data\/)?([a-z]+\/)?$/.test(path))) return;
      const entry = entryAt(path);
      if (!entry) throw refusal('archive-strange-name', name);
      entries.set(path, entry);
    },
  };
}

/** Every file of the payload stands in the manifest and the other way round, so that nothing was added or left out. */
function checkComplete(entries: ReadonlyMap<string, ArchiveEntry>, sums: ReadonlyMap<string, string>): void {
  for (const path of sums.keys()) if (!entries.has(path)) throw refusal('archive-incomplete', path);
  for (const path of entries.keys()) {
    if (path.startsWith(PAYLOAD) && !sums.has(path)) throw refusal('archive-strange-name', path);
  }
}

/**
 * Opens a volume: names, directory, tag files and completeness are checked here, contents when they are read.
 * @throws AppError archive-… naming the entry; archive-not-ours for a ZIP file that is none of ours
 */
export async function openBag(file: Blob): Promise<OpenBag> {
  const names = nameChecker();
  const zip = await openZip(file, names.check);
  const { entries } = names;
  const inZip = (path: string): string => `${names.folder()}/${path}`;
  if (!entries.has(TAG_FILES.bagit) || !entries.has(INDEX_PATH)) throw new AppError('archive-not-ours');
  const tags = TAG_FILES.tagManifests.sha256;
  const tagSums = readManifest(await zip.read(inZip(tags)), tags);

  async function checked(path: string, sum: string | undefined): Promise<Uint8Array<ArrayBuffer>> {
    const bytes = await zip.read(inZip(path));
    if ((await sha256(bytes.buffer)) !== sum) throw refusal('archive-damaged', path);
    return bytes;
  }

  const declared = new TextDecoder().decode(await checked(TAG_FILES.bagit, tagSums.get(TAG_FILES.bagit)));
  if (!/^BagIt-Version: 1\.0\r?\nTag-File-Character-Encoding: UTF-8\r?\n?$/.test(declared)) {
    throw refusal('archive-bad-text', TAG_FILES.bagit);
  }
  const { sha256: name } = TAG_FILES.manifests;
  const sums = readManifest(await checked(name, tagSums.get(name)), name);
  for (const path of tagSums.keys()) if (!entries.has(path)) throw refusal('archive-incomplete', path);
  // Also those nothing is read from: a bag with a changed tag file is not valid (RFC 8493, 3).
  const unread = new Set([TAG_FILES.info, ...tagSums.keys()]);
  for (const path of [TAG_FILES.bagit, name]) unread.delete(path);
  for (const path of unread) await checked(path, tagSums.get(path));
  checkComplete(entries, sums);
  return {
    entries,
    sizeOf: (path) => zip.sizes.get(inZip(path)) ?? 0,
    read: (path) => checked(path, sums.get(path)),
  };
}
