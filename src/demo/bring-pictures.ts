import type { PhotoScale } from '../core/records.ts';
import type { Store } from '../store/store.ts';
import { measuredPictures } from './measured-pictures.ts';
import { type ExamplePicture, examplePictures } from './pictures.ts';

type Prepared = Parameters<Store['addPhoto']>[0];

export interface PictureMeans {
  /** The file's bytes. Rejects with a TypeError when nothing can be fetched now, otherwise when what came is not this file. */
  readonly fetch: (file: string, sha256: string) => Promise<Blob>;
  /** The intake every photograph goes through. */
  readonly prepare: (file: Blob) => Promise<Prepared>;
  readonly signal: AbortSignal;
  readonly onProgress: (here: number, of: number) => void;
}

/** Opening hours of the invented sale, when they were taken. */
const TAKEN = { offset: '+01:00', from: 'camera' } as const;
const takenAt = (index: number): string => `2026-10-17T10:${String(index % 60).padStart(2, '0')}:00`;

/** The block of the example a picture is of; undefined once it was taken away. */
const blockOf = (store: Store, { lot }: ExamplePicture) =>
  store.blocks.peek().find((block) => block.example && block.objectNumber === lot);

/** Pictures whose block is here and which it does not show yet. */
function missing(store: Store): readonly ExamplePicture[] {
  return examplePictures.filter((picture) => {
    const block = blockOf(store, picture);
    return block && !store.photosOf(block.id).some(({ caption }) => caption === picture.caption);
  });
}

function scaleOf({ file, aboveMm = 0 }: ExamplePicture): PhotoScale | null {
  const scale = measuredPictures[file]?.scale;
  return scale ? { ...scale, featureAboveMm: aboveMm } : null;
}

/**
 * Adds the photographs of the example that are not there yet, one after another, as photographs like any other: stored
 * bytes, thumbnail, view, finding and scale. None of them is a step of undo: taking the example away takes them along.
 * @returns how many could not be fetched; they may be asked for again
 * @throws AppError when a photograph cannot be stored, and the signal's reason when aborted
 */
export async function bringPictures(store: Store, means: PictureMeans): Promise<number> {
  const wanted = missing(store);
  const { length } = examplePictures;
  let left = wanted.length;
  means.onProgress(length - left, length);
  for (const picture of wanted) {
    const sha256 = measuredPictures[picture.file]?.sha256;
    if (!sha256) throw new Error(`Nothing is known of the example picture ${picture.file}.`);
    const bytes = await means.fetch(picture.file, sha256).catch((error: unknown) => error);
    means.signal.throwIfAborted();
    // Without signal the next would fail as well; one file that came wrong keeps no other back.
    if (bytes instanceof TypeError) return left;
    if (!(bytes instanceof Blob)) continue;
    const prepared = await means.prepare(bytes);
    means.signal.throwIfAborted();
    await add(store, picture, prepared);
    left -= 1;
    means.onProgress(length - left, length);
  }
  return left;
}

async function add(store: Store, picture: ExamplePicture, prepared: Prepared): Promise<void> {
  // The block may have been taken away while its picture was on the way.
  const block = blockOf(store, picture);
  if (!block) return;
  const { view, shows, stage = 'before', caption, file } = picture;
  const finding = shows && store.findingsOf(block.id).find(({ kind }) => kind === shows);
  const taken = { local: takenAt(examplePictures.indexOf(picture)), ...TAKEN };
  const focal35 = measuredPictures[file]?.focal35 ?? null;
  const fields = { blockId: block.id, view, stage, caption, findingId: finding ? finding.id : null };
  await store.addPhoto({ ...prepared, taken, focal35 }, { ...fields, scale: scaleOf(picture) }, null);
}
