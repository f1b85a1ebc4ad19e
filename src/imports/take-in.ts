import { AppError } from '../core/errors.ts';
import type { AnyRecord } from '../core/records.ts';
import type { PhotoBytes, Repository } from '../store/repository.ts';
import { IMPORT_NOTE, type Store } from '../store/store.ts';
import { type Journal, STILL_OUT_NOTE, type StillOut, stillOutOf, stillOutText } from './journal.ts';
import { chosenFrom, hashesOf } from './preview.ts';
import type { ArchiveReader, OpenedArchive } from './reader.ts';

export interface TakeInStep {
  readonly stage: 'photographs' | 'records';
  readonly done: number;
  readonly of: number;
}

export interface TakenIn {
  /** Records written; 0 when there was nothing new. */
  readonly changed: number;
  readonly pictures: number;
  /** Photographs the records name that are in none of the chosen volumes and not here. */
  readonly missingPictures: number;
  /** Those of them that other volumes hold. */
  readonly stillOut: StillOut;
}

/** Bytes of photographs written in one transaction. */
const BATCH_BYTES = 4_000_000;
/** Rows of one transaction. */
const BATCH_ROWS = 100;

/** Hashes that are here, those wanted from the archive, in its order, and how many it cannot give. */
async function picturesFor(records: readonly AnyRecord[], archive: OpenedArchive, repository: Repository) {
  const here = new Set(await repository.photoKeys());
  const needed = new Set(records.flatMap(hashesOf));
  const wanted = [...archive.pictures.keys()].filter((hash) => needed.has(hash) && !here.has(hash));
  const missing = [...needed].filter((hash) => !here.has(hash) && !archive.pictures.has(hash));
  return { here, wanted, missing: missing.length };
}

/** Copies photographs over, checked one by one. Until a record names them nobody sees them. */
async function copyPictures(
  wanted: readonly string[],
  reader: ArchiveReader,
  repository: Repository,
  signal: AbortSignal,
  onStep: (done: number) => void,
): Promise<void> {
  let batch: PhotoBytes[] = [];
  let bytes = 0;
  // While one batch is on its way to the disk the next is read and checked.
  let writing: Promise<unknown> = Promise.resolve();
  const write = async (): Promise<void> => {
    const photos = batch;
    batch = [];
    bytes = 0;
    await writing;
    if (photos.length > 0) writing = repository.commit({ puts: [], changes: [], photos });
    // Its failure is met at the next turn, and must not be taken for one nobody looks at.
    writing.catch(() => undefined);
  };
  try {
    for (const [i, sha256] of wanted.entries()) {
      signal.throwIfAborted();
      const picture = await reader.picture(sha256);
      batch.push({ sha256, ...picture });
      bytes += picture.bytes.byteLength;
      if (bytes >= BATCH_BYTES || batch.length >= BATCH_ROWS) await write();
      onStep(i + 1);
    }
    await write();
  } finally {
    // Whoever takes the bytes back must not be overtaken by a batch still on its way.
    await writing.catch(() => undefined);
  }
  await writing;
}

/**
 * Takes an opened archive in: first every photograph, each checked, then the records that name them. A photograph that
 * is refused, or a tap on stop, ends it before any record is written, and takes back the bytes. Killed at any moment and
 * done again with the same file it ends the same: bytes lie under their hash, and joining twice changes nothing.
 * @param blocks ids of the blocks wanted; null for everything
 * @throws AppError naming the entry, archive-no-room, storage-full among the records; the signal's reason
 */
export async function takeIn(
  archive: OpenedArchive,
  blocks: ReadonlySet<string> | null,
  { store, reader, label }: { readonly store: Store; readonly reader: ArchiveReader; readonly label: string },
  { signal, onStep }: { readonly signal: AbortSignal; readonly onStep: (step: TakeInStep) => void },
): Promise<TakenIn> {
  const { repository } = store;
  const records = chosenFrom(archive.records, blocks);
  const { here, wanted, missing } = await picturesFor(records, archive, repository);
  const { index, volumes } = archive;
  const journal: Journal = { made: index.made, volumes, of: index.volumes, pictures: wanted.length };
  await repository.setNote(IMPORT_NOTE, JSON.stringify(journal));
  onStep({ stage: 'photographs', done: 0, of: wanted.length });
  try {
    await copyPictures(wanted, reader, repository, signal, (done) =>
      onStep({ stage: 'photographs', done, of: wanted.length }),
    );
    signal.throwIfAborted();
  } catch (error) {
    await repository.deletePhotoBytes(wanted).catch(() => undefined);
    await repository.setNote(IMPORT_NOTE, null).catch(() => undefined);
    const isFull = error instanceof AppError && error.code === 'storage-full';
    throw isFull ? new AppError('archive-no-room', { cause: error }) : error;
  }
  const takes = await store.join(label, records, {
    // Of chosen blocks only: a row nobody can read may belong to any.
    kept: blocks === null ? archive.kept : [],
    onStep: (done, of) => onStep({ stage: 'records', done, of }),
  });
  // Of all that is here by now: an earlier volume may have brought records whose photographs lie in neither.
  const known = archive.records.filter(({ id }) => store.find(id)?.deleted === null);
  const stillOut = stillOutOf(index, known, new Set([...here, ...wanted]));
  await repository.setNote(STILL_OUT_NOTE, stillOutText(await repository.note(STILL_OUT_NOTE), stillOut));
  await repository.setNote(IMPORT_NOTE, null);
  return { changed: takes.length, pictures: wanted.length, missingPictures: missing, stillOut };
}
