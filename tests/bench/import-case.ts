import type { AnyRecord } from '../../src/core/records.ts';
import { previewOf } from '../../src/imports/preview.ts';
import { readHere } from '../../src/imports/reader.ts';
import { takeIn } from '../../src/imports/take-in.ts';
import { createMemoryRepository } from '../../src/store/memory.ts';
import { createStore, type Store } from '../../src/store/store.ts';
import { payloadOf, photoFields } from '../imports/archives.ts';
import { aBlock, aFinding, aPhoto, at, id, NEW_YEAR, newIds } from '../store/make.ts';
import { bagOf, zipOf } from '../support/hostile-zip.ts';

export { photographOf } from '../imports/archives.ts';

const NOW = NEW_YEAR + 60_000;

/** Photo records and their blocks, ten photographs to a block. */
export function photoRecords(pictures: readonly Uint8Array[], from: number): AnyRecord[] {
  return pictures.flatMap((picture, i) => {
    const n = from + i;
    const block = id(100_000 + Math.floor(n / 10));
    const photo = aPhoto({ ...photoFields(picture), id: id(200_000 + n), blockId: block, stamp: at(2, 'othrphon') });
    return n % 10 === 0
      ? [aBlock({ id: block, name: `Block ${n / 10 + 1}`, stamp: at(1, 'othrphon') }), photo]
      : [photo];
  });
}

export const volumeOf = (
  records: readonly AnyRecord[],
  pictures: readonly Uint8Array[],
  volume: number,
  volumes: number,
): Uint8Array<ArrayBuffer> =>
  zipOf(bagOf(payloadOf({ records, pictures, volume, volumes }), `blockworth-20260101-000000-${volume}of${volumes}`));

async function emptyStore(keepsBytes: boolean): Promise<Store> {
  const memory = createMemoryRepository();
  const dropping: typeof memory = { ...memory, commit: ({ photos: _, ...batch }) => memory.commit(batch) };
  const repository = keepsBytes ? memory : dropping;
  const store = createStore({ repository, now: () => NOW, newId: newIds(1), device: 'benchdev' });
  await store.load();
  return store;
}

/** 200 blocks of 9 findings, and the same as another phone has worked on them: every other record changed. */
export async function twoShelves(): Promise<{ store: Store; theirs: AnyRecord[] }> {
  const store = await emptyStore(true);
  const records: AnyRecord[] = [];
  for (let n = 0; n < 200; n++) {
    const block = id(300_000 + n);
    records.push(aBlock({ id: block, name: `Block ${n}`, stamp: at(1, 'othrphon') }));
    for (let k = 0; k < 9; k++) {
      const note = `Seen from the side, ${k}.`;
      records.push(
        aFinding({ id: id(400_000 + n * 10 + k), blockId: block, number: k + 1, note, stamp: at(1, 'othrphon') }),
      );
    }
  }
  await store.join('first', records);
  const theirs = records.map(
    (record, n) =>
      (n % 2 === 0
        ? record
        : { ...record, note: 'Other.', stamps: { ...record.stamps, note: at(9, 'othrphon') } }) as AnyRecord,
  );
  return { store, theirs };
}

export const preview = ({ store, theirs }: Awaited<ReturnType<typeof twoShelves>>) =>
  previewOf(theirs, store, new Set());
export const join = ({ store, theirs }: Awaited<ReturnType<typeof twoShelves>>) => store.join('second', theirs);

/** Opens volumes and takes everything in, every check done, bytes thrown away: what reading costs without a disk to write. */
export async function readVolumes(
  files: readonly Blob[],
): Promise<{ openMs: number; takeMs: number; pictures: number }> {
  const store = await emptyStore(false);
  const reader = readHere();
  const begun = performance.now();
  const archive = await reader.open(files, null, NOW);
  if (archive === 'locked') throw new Error('Locked.');
  const openMs = performance.now() - begun;
  const controls = { signal: new AbortController().signal, onStep: () => undefined };
  const { pictures } = await takeIn(archive, null, { store, reader, label: 'bench' }, controls);
  return { openMs, takeMs: performance.now() - begun - openMs, pictures };
}
