import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { removed, withFields } from '../../src/core/changes.ts';
import { AppError } from '../../src/core/errors.ts';
import type { AnyRecord, HatBlock } from '../../src/core/records.ts';
import { type ChangeRow, type Kept, MOST_ROWS, type PhotoBytes, type Repository } from '../../src/store/repository.ts';
import { aBlock, aPhoto, at, DEVICE, id } from '../store/make.ts';
import { photoOf } from './photo-of.ts';

/** One storage under test: windows can be opened on it, and rows be put and seen behind the repository's back. */
export interface Keeper {
  open(): Promise<Repository>;
  plant(raw: { readonly id: string }): Promise<void>;
  raw(id: string): Promise<unknown>;
  damage(sha256: string): Promise<void>;
  dispose(): Promise<void>;
}

const row = (record: AnyRecord, stamp = at(0)): ChangeRow => ({
  at: stamp,
  id: record.id,
  paths: ['name'],
  device: DEVICE,
});

/** The promise every keeper of records gives, checked for each of them. */
export function repositoryContract(name: string, makeKeeper: () => Promise<Keeper>): void {
  describe(`the promise of storage, kept ${name}`, () => {
    let keeper: Keeper;
    let repository: Repository;
    beforeEach(async () => {
      keeper = await makeKeeper();
      repository = await keeper.open();
    });
    afterEach(() => keeper.dispose());

    const stored = async () => (await repository.loadAll()).records;
    const codeOf = (promise: Promise<unknown>) =>
      promise.then(
        () => 'no error',
        (error: unknown) => (error instanceof AppError ? error.code : error),
      );

    it('starts empty, with an id of its own that stays', async () => {
      expect(await repository.loadAll()).toEqual({ records: [], unreadable: [] });
      const { device, cleared } = await repository.identity();
      expect(device).toMatch(/^[0-9a-z]{8}$/);
      expect(cleared).toBe(false);
      expect((await (await keeper.open()).identity()).device).toBe(device);
    });

    it('gives a record back as it was, also to another window, with fields a newer app added', async () => {
      const block = { ...aBlock(), tint: { walnut: 2 }, made: { words: '', edtf: null, calendar: 'julian' } };
      expect(await repository.commit({ puts: [block], changes: [row(block)] })).toEqual([block]);
      expect((await (await keeper.open()).loadAll()).records).toEqual([block]);
    });

    it('shares no object with whoever saved', async () => {
      const block = aBlock({ materials: ['lime'] });
      await repository.commit({ puts: [block], changes: [] });
      block.materials.push('alder');
      expect((await stored())[0]).toMatchObject({ materials: ['lime'] });
    });

    it('merges with what another window wrote, and tells the result', async () => {
      const block = aBlock();
      await repository.commit({ puts: [block], changes: [] });
      const other = await keeper.open();
      await other.commit({ puts: [withFields(block, { priceAsked: 6500 }, at(10))], changes: [] });
      const merged = await repository.commit({ puts: [withFields(block, { note: 'Dry.' }, at(11))], changes: [] });
      expect(merged).toMatchObject([{ priceAsked: 6500, note: 'Dry.' }]);
      expect(await stored()).toEqual(merged);
    });

    const keptRow = (raw: unknown, fields: Partial<Kept> = {}): Kept => ({
      ...{ key: `${(raw as { id?: string })?.id ?? ''} 0`, id: (raw as { id?: string })?.id ?? '' },
      ...{ state: 'unreadable', why: 'strange', raw },
      ...fields,
    });

    it('keeps a strange row among the records when its id is free, where a newer app will find it', async () => {
      const strange = { id: id(9), type: 'hatPin', schema: 1 };
      await repository.commit({ puts: [], changes: [], kept: [keptRow(strange)] });
      expect([await keeper.raw(id(9)), await repository.kept()]).toEqual([strange, []]);
      expect((await repository.unreadable()).map(({ raw }) => raw)).toEqual([strange]);
    });

    it('keeps a strange row beside the record whose id it has, once, and gives it to a backup', async () => {
      const block = aBlock();
      await repository.commit({ puts: [block], changes: [] });
      const strange = { ...block, schema: 99 };
      for (let n = 0; n < 2; n++) await repository.commit({ puts: [], changes: [], kept: [keptRow(strange)] });
      expect((await repository.kept()).map(({ raw }) => raw)).toEqual([strange]);
      expect((await repository.loadAll()).unreadable.map(({ raw }) => raw)).toEqual([strange]);
      expect(await stored()).toEqual([block]);
      await repository.commit({ puts: [], changes: [], unkept: [keptRow(strange).key] });
      expect(await repository.kept()).toEqual([]);
    });

    it('keeps what is dated in the future beside the records, though its id is free', async () => {
      const ahead = aBlock();
      await repository.commit({ puts: [], changes: [], kept: [keptRow(ahead, { aheadMs: 900_000 })] });
      expect([await stored(), (await (await keeper.open()).kept()).length]).toEqual([[], 1]);
    });

    it('keeps notes and stand-ins, and lets a stand-in go with its photograph', async () => {
      expect(await repository.note('backup')).toBeNull();
      await repository.setNote('backup', 'yesterday');
      expect(await (await keeper.open()).note('backup')).toBe('yesterday');
      await repository.setNote('backup', null);
      expect(await repository.note('backup')).toBeNull();

      const picture = photoOf('a picture');
      const photo = aPhoto({ sha256: picture.sha256 });
      await repository.commit({ puts: [photo], photos: [picture], changes: [] });
      const small = { bytes: Uint8Array.of(1, 2, 3).buffer, mime: 'image/jpeg' };
      await repository.keepStandIn(photo.thumbnail, small);
      await repository.deletePhotoBytes([picture.sha256]);
      expect(await repository.standIn(photo.thumbnail)).toEqual(small);
      await repository.commit({ puts: [removed(photo, at(50))], changes: [] });
      expect(await repository.deletePhotoBytes([picture.sha256])).toEqual([picture.sha256]);
      expect(await repository.standIn(photo.thumbnail)).toBeUndefined();
    });

    it('saves all of a batch or nothing', async () => {
      const good = aBlock();
      const photo = photoOf('a picture');
      const bad = { ...aBlock({ id: id(2) }), note: () => 'no data' } as unknown as HatBlock;
      await expect(repository.commit({ puts: [good, bad], photos: [photo], changes: [row(good)] })).rejects.toThrow();
      expect(await stored()).toEqual([]);
      expect(await repository.photoKeys()).toEqual([]);
      expect(await repository.changesAfter(0, 10)).toEqual([]);
      await repository.commit({ puts: [good], changes: [] });
      expect(await stored()).toEqual([good]);
    });

    it('appends history in order, to be read on from any place', async () => {
      const rows = [1, 2, 3].map((ms) => row(aBlock(), at(ms)));
      for (const one of rows) await repository.commit({ puts: [], changes: [one] });
      const [first, ...others] = await repository.changesAfter(0, 10);
      expect(first?.row).toEqual(rows[0]);
      expect(others.map((each) => each.row)).toEqual(rows.slice(1));
      expect((await repository.changesAfter(first?.position ?? 0, 1)).map((each) => each.row)).toEqual([rows[1]]);
    });

    it('refuses a batch that no phone writes in one go, a record twice, and bytes under a wrong name', async () => {
      const many = Array.from({ length: MOST_ROWS + 1 }, () => row(aBlock()));
      await expect(repository.commit({ puts: [], changes: many })).rejects.toThrow(/500 rows/);
      await expect(repository.commit({ puts: [aBlock(), aBlock()], changes: [] })).rejects.toThrow(/once/);
      const photo = { ...photoOf('one'), sha256: photoOf('two').sha256 };
      await expect(repository.commit({ puts: [], photos: [photo], changes: [] })).rejects.toThrow(/hash/);
      expect(await repository.photoKeys()).toEqual([]);
    });

    it('gives photographs back byte for byte, and says so when one came to harm, without deleting it', async () => {
      const photo = photoOf('a picture');
      await repository.commit({ puts: [], photos: [photo], changes: [] });
      expect(await repository.photoBytes(photo.sha256)).toEqual(photo);
      expect(await repository.photoBytes('f'.repeat(64))).toBeUndefined();
      await keeper.damage(photo.sha256);
      expect(await codeOf(repository.photoBytes(photo.sha256))).toBe('photo-damaged');
      expect(await repository.photoKeys()).toEqual([photo.sha256]);
    });

    it('frees only the bytes of photographs that are gone', async () => {
      const [picture, thumbnail, original, spare] = ['picture', 'thumbnail', 'original', 'spare'].map(photoOf) as [
        PhotoBytes,
        PhotoBytes,
        PhotoBytes,
        PhotoBytes,
      ];
      const photo = aPhoto({
        sha256: picture.sha256,
        thumbnail: thumbnail.sha256,
        original: { sha256: original.sha256, bytes: 8, mime: 'image/jpeg', name: 'IMG_0001.JPG' },
      });
      const all = [picture, thumbnail, original, spare];
      const keys = all.map((each) => each.sha256);
      await repository.commit({ puts: [photo], photos: all, changes: [] });
      expect(await repository.deletePhotoBytes(keys)).toEqual([spare.sha256]);
      await repository.commit({ puts: [removed(photo, at(10))], changes: [] });
      expect(await repository.deletePhotoBytes([...keys, 'f'.repeat(64)])).toEqual(keys.slice(0, 3));
      expect(await repository.photoKeys()).toEqual([]);
    });

    it('keeps what it cannot read byte for byte, lists it, and lets nobody write over it', async () => {
      const picture = photoOf('picture');
      const newer = { ...aPhoto({ id: id(5), sha256: picture.sha256 }), schema: 99, frames: [1, 2] };
      const broken = { ...aBlock({ id: id(6) }), name: 42 };
      await keeper.plant(newer);
      await keeper.plant(broken);
      const { records, unreadable } = await repository.loadAll();
      expect(records).toEqual([]);
      expect(unreadable).toMatchObject([
        { id: id(5), state: 'too-new', raw: newer },
        { id: id(6), state: 'unreadable', raw: broken },
      ]);
      expect(await repository.unreadable()).toEqual(unreadable);
      expect(await codeOf(repository.commit({ puts: [aPhoto({ id: id(5) })], changes: [] }))).toBe('record-too-new');
      expect(await codeOf(repository.commit({ puts: [aBlock({ id: id(6) })], changes: [] }))).toBe('record-unreadable');
      expect(await keeper.raw(id(5))).toEqual(newer);
      expect(await keeper.raw(id(6))).toEqual(broken);
      await repository.commit({ puts: [], photos: [picture], changes: [] });
      expect(await repository.deletePhotoBytes([picture.sha256])).toEqual([]);
    });

    it('loads the records asked for, and no others', async () => {
      const blocks = [1, 2, 3].map((n) => aBlock({ id: id(n) }));
      await repository.commit({ puts: blocks, changes: [] });
      const { records } = await repository.load([id(3), id(9), id(1)]);
      expect(records.map((record) => record.id).sort()).toEqual([id(1), id(3)]);
    });

    it('lets go when closed', async () => {
      await repository.commit({ puts: [aBlock()], changes: [] });
      await repository.wake();
      await repository.close();
      expect(repository.status.value).toBe('closed');
    });
  });
}
