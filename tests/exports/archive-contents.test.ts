import { describe, expect, it } from 'vitest';
import { ArchiveIndex, entryAt, RecordFile, UnreadableFile } from '../../src/core/archive-layout.ts';
import { canonical } from '../../src/core/canonical.ts';
import { mergeRecords } from '../../src/core/merge.ts';
import type { AnyRecord } from '../../src/core/records.ts';
import { prepareArchive } from '../../src/exports/archive/index.ts';
import { readRecord } from '../../src/store/migrations.ts';
import { at, id, make } from '../store/make.ts';
import {
  archiveOf,
  benchWith,
  NAMES,
  picture,
  type Shelf,
  smallShelf,
  wholeShelf,
} from '../support/archive-fixture.ts';
import { bagFaults } from '../support/bag-faults.ts';
import { bagIn, textOf } from '../support/read-zip.ts';
import { sha256Hex } from '../support/sha256.ts';

type Files = ReadonlyMap<string, Uint8Array>;
const signal = new AbortController().signal;
const onProgress = () => undefined;

async function only(archive: Promise<readonly File[]>): Promise<Files> {
  const [file, ...others] = await archive;
  if (!file || others.length > 0) throw new Error('One volume was expected.');
  return (await bagIn(file)).files;
}

/** Every record in a bag as an app that brings it in reads it. */
function recordsIn(files: Files): AnyRecord[] {
  const records: AnyRecord[] = [];
  for (const [path, bytes] of files) {
    if (entryAt(path)?.kind !== 'records') continue;
    for (const raw of RecordFile.parse(JSON.parse(textOf(bytes))).records) {
      const outcome = readRecord(raw);
      if (!('record' in outcome)) throw new Error(`${path}: ${outcome.why}`);
      records.push(outcome.record);
    }
  }
  return records;
}
const indexOf = (files: Files) => ArchiveIndex.parse(JSON.parse(textOf(files.get('data/archive.json'))));
const sorted = (records: readonly AnyRecord[]): string[] => records.map(canonical).sort();

describe('an archive of the whole shelf', () => {
  const shelf = smallShelf();

  it('gives every record back as it was stored, removed ones included', async () => {
    expect(sorted(recordsIn(await only(archiveOf(shelf))))).toEqual(sorted(shelf.records));
  });

  it('holds every photograph and camera file byte for byte under its hash, and no thumbnail', async () => {
    const files = await only(archiveOf(shelf));
    const held = [...files].flatMap(([path, bytes]) => {
      const entry = entryAt(path);
      return entry?.kind === 'photograph' || entry?.kind === 'original' ? [{ ...entry, found: sha256Hex(bytes) }] : [];
    });
    expect(held.map(({ found }) => found)).toEqual(held.map(({ sha256 }) => sha256));
    expect(held.map(({ sha256 }) => sha256).sort()).toEqual(shelf.photos.map(({ sha256 }) => sha256).sort());
  });

  it('holds nothing its own layout does not know', async () => {
    for (const path of (await only(archiveOf(shelf))).keys()) expect(entryAt(path), path).not.toBeNull();
  });

  it('says in its index what it holds and where', async () => {
    const files = await only(archiveOf(shelf));
    const index = indexOf(files);
    expect(index).toMatchObject({ volume: 1, volumes: 1, isWhole: true, scope: { kind: 'shelf' }, missing: [] });
    expect(index.counts).toMatchObject({ block: 2, finding: 3, photo: 3, settings: 1 });
    for (const { path, bytes } of [...index.photographs, ...index.originals])
      expect(files.get(path)?.length, path).toBe(bytes);
  });

  it('is the same bytes when it is made again of the same at the same moment', async () => {
    const [first, second] = [await archiveOf(shelf), await archiveOf(shelf)];
    expect(new Uint8Array(await (second[0] as File).arrayBuffer())).toEqual(
      new Uint8Array(await (first[0] as File).arrayBuffer()),
    );
  });

  it('keeps what this app cannot read as it lay there, and the bytes it names', async () => {
    const stray = picture(77);
    const { tools, disk } = benchWith({ ...shelf, photos: [...shelf.photos, stray] });
    const tooNew = { id: id(900), type: 'block', schema: 99, deep: { list: [1, 'two', null] }, sha: stray.sha256 };
    disk.records.set(id(900), tooNew);
    disk.records.set(id(901), { id: id(901), type: 'block', schema: 1, name: 5 });
    const { ready } = await prepareArchive(wholeShelf, tools, { onProgress, signal });
    const { files } = await bagIn(ready[0]?.file as File);
    const { records } = UnreadableFile.parse(JSON.parse(textOf(files.get('data/records/unreadable-001.json'))));
    expect(records.map(({ raw }) => raw)).toEqual([tooNew, { id: id(901), type: 'block', schema: 1, name: 5 }]);
    expect(records.map(({ state }) => state)).toEqual(['too-new', 'unreadable']);
    expect(files.get(`data/photographs/${stray.sha256}.jpg`)).toEqual(new Uint8Array(stray.bytes));
    expect(indexOf(files).counts.unreadable).toBe(2);
  });

  it('is made without a photograph that is damaged or was never here, and says which', async () => {
    const { tools, disk } = benchWith(shelf);
    const [lost, damaged] = shelf.photos as [(typeof shelf.photos)[0], (typeof shelf.photos)[0]];
    disk.bytes.delete(lost.sha256);
    disk.bytes.set(damaged.sha256, { ...damaged, bytes: new Uint8Array([1, 2, 3]).buffer });
    const { ready, missing } = await prepareArchive(wholeShelf, tools, { onProgress, signal });
    const expected = [
      { sha256: lost.sha256, why: 'absent' },
      { sha256: damaged.sha256, why: 'damaged' },
    ];
    expect(missing).toEqual(expected);
    const { files } = await bagIn(ready[0]?.file as File);
    expect(indexOf(files).missing).toEqual(expected);
    expect(bagFaults(files)).toEqual([]);
  });

  it('of an empty shelf is a valid bag too', async () => {
    const files = await only(archiveOf({ records: [], photos: [] }));
    expect(bagFaults(files)).toEqual([]);
    expect(indexOf(files).counts).toEqual({});
  });

  it('splits very many records into files none of which is large', async () => {
    const many: Shelf = {
      photos: [],
      records: Array.from({ length: 4500 }, (_, n) =>
        make('offer', { id: id(n + 1), blockId: id(1), note: `Offer ${n}` }),
      ),
    };
    const files = await only(archiveOf(many));
    expect([...files.keys()].filter((path) => path.startsWith('data/records/offer-'))).toHaveLength(3);
    expect(recordsIn(files)).toHaveLength(4500);
  });
});

describe('an archive of some blocks', () => {
  const shelf = smallShelf();

  it('holds those blocks with all that belongs to them and their sale, and nothing of the others', async () => {
    const files = await only(archiveOf(shelf, { scope: { kind: 'blocks', ids: [id(11)] } }));
    expect(recordsIn(files).map((record) => record.id)).toEqual([id(11), id(52), id(20)]);
    expect(indexOf(files).photographs).toHaveLength(1);
  });

  it('of one sale holds the sale and its blocks', async () => {
    const other = make('block', { id: id(12), name: 'Elsewhere' });
    const files = await only(
      archiveOf({ ...shelf, records: [...shelf.records, other] }, { scope: { kind: 'sale', id: id(20) } }),
    );
    const ids = new Set(recordsIn(files).map((record) => record.id));
    expect(ids.has(id(10)) && ids.has(id(11)) && ids.has(id(20))).toBe(true);
    expect(ids.has(id(12))).toBe(false);
  });
});

describe('an archive for others', () => {
  const shelf = smallShelf();
  const handedOn = () => only(archiveOf(shelf, { isWhole: false }));

  it('names nobody who is private, in no file and in no form', async () => {
    const files = await handedOn();
    for (const [path, bytes] of files) {
      const text = new TextDecoder().decode(bytes);
      for (const secret of [NAMES.seller, 'Odile', 'Marsh', NAMES.owner, 'Bertil', 'Quay Street', 'Under the stage'])
        expect(text.includes(secret), `${secret} in ${path}`).toBe(false);
    }
  });

  it('holds no price, no place of a photograph, no camera file, no settings, nothing removed', async () => {
    const files = await handedOn();
    const records = recordsIn(files);
    expect(records.filter(({ type }) => ['offer', 'job', 'settings'].includes(type))).toEqual([]);
    expect(records.filter(({ deleted }) => deleted !== null)).toEqual([]);
    const block = records.find((record) => record.id === id(10));
    expect(block).toMatchObject({
      name: 'Cloche “Ünder-Ø” №5 帽',
      priceAsked: null,
      newPrice: null,
      maker: 'unsigned',
    });
    const photo = records.find((record) => record.id === id(50));
    expect(photo).toMatchObject({ position: null, original: null, caption: 'From the front, raking light' });
    expect([...files.keys()].filter((path) => path.includes('originals'))).toEqual([]);
    expect(textOf(files.get('data/tables/blocks.csv'))).not.toMatch(/42\.5|180/);
    expect(new TextDecoder().decode(files.get('bag-info.txt'))).not.toContain('Lanthorn');
  });

  it('overwrites nothing where the records are known, whichever way round they are joined', async () => {
    const theirs = new Map(recordsIn(await handedOn()).map((record) => [record.id, record]));
    let joined = 0;
    for (const mine of shelf.records) {
      const other = theirs.get(mine.id);
      if (!other) continue;
      joined += 1;
      expect(canonical(mergeRecords(mine, other))).toBe(canonical(mine));
      expect(canonical(mergeRecords(other, mine))).toBe(canonical(mine));
    }
    expect(joined).toBeGreaterThan(10);
  });

  it('keeps back words of others that were kept from a merge, where they name somebody', async () => {
    const block = shelf.records.find((record) => record.id === id(11)) as AnyRecord;
    const withWords = {
      ...block,
      otherWords: {
        maker: [{ at: at(3, 'device01'), text: `${NAMES.owner} made it` }],
        note: [{ at: at(3, 'device01'), text: 'Dry and sound' }],
      },
    } as AnyRecord;
    const records = shelf.records.map((record) => (record === block ? withWords : record));
    const out = recordsIn(await only(archiveOf({ ...shelf, records }, { isWhole: false })));
    expect(out.find((record) => record.id === id(11))?.otherWords).toEqual({
      note: [{ at: at(3, 'device01'), text: 'Dry and sound' }],
    });
  });
});
