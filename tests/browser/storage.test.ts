import { deleteDB, type IDBPDatabase, openDB } from 'idb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { AppError } from '../../src/core/errors.ts';
import { firstWindow } from '../../src/store/alone.ts';
import { create, remove, set } from '../../src/store/edits.ts';
import { createIdbRepository } from '../../src/store/idb.ts';
import { openStore } from '../../src/store/open-store.ts';
import { createKeeping } from '../../src/store/persist.ts';
import { createStore } from '../../src/store/store.ts';
import { idbKeeper } from '../contracts/idb-keeper.ts';
import { photoOf } from '../contracts/photo-of.ts';
import { repositoryContract } from '../contracts/repository.ts';
import { aBlock, aFinding, aSurvey, id, newIds } from '../store/make.ts';
import { prepared } from '../store/prepared.ts';

/** Not in the compiler's library yet. Source: WICG Storage Buckets; Chromium has it from 122. */
interface Buckets {
  open(name: string, options: { readonly quota: number }): Promise<{ readonly indexedDB: IDBFactory }>;
  delete(name: string): Promise<void>;
}
const { storageBuckets } = navigator as Navigator & { readonly storageBuckets: Buckets };

const neverSet = { isSet: () => false, set: () => undefined };

repositoryContract('in a real database', async () => idbKeeper());

const codeOf = (promise: Promise<unknown>) =>
  promise.then(
    () => 'saved',
    (error: unknown) => (error instanceof AppError ? error.code : error),
  );

describe('a full disk', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('refuses a photograph whole, is told as full, and still takes text', async () => {
    // A bucket of its own has its own limit and its own idea of what is left; the origin's is remembered for half a minute.
    const name = `small-${Date.now()}`;
    const bucket = await storageBuckets.open(name, { quota: 300_000 });
    vi.stubGlobal('indexedDB', bucket.indexedDB);
    const keeper = idbKeeper();
    const repository = await keeper.open();
    const [photo, block] = [photoOf('picture '.repeat(100_000)), aBlock()];
    expect(await codeOf(repository.commit({ puts: [block], photos: [photo], changes: [] }))).toBe('storage-full');
    expect(await repository.photoKeys()).toEqual([]);
    expect((await repository.loadAll()).records).toEqual([]);
    await repository.commit({ puts: [block], changes: [] });
    expect((await repository.loadAll()).records).toEqual([block]);
    await keeper.dispose();
    await storageBuckets.delete(name);
  });
});

describe('two windows on one database', () => {
  it('see each other’s changes over a real channel, and both lie on the disk', async () => {
    const keeper = idbKeeper();
    const windows = await Promise.all(
      [1, 2].map(async (n) => {
        const repository = await keeper.open();
        const channel = new BroadcastChannel(keeper.name);
        const options = { repository, channel, now: Date.now, newId: newIds(n * 1000), device: `device0${n}` };
        const store = createStore(options);
        await store.load();
        return { store, channel };
      }),
    );
    const [one, two] = windows.map(({ store }) => store) as [
      (typeof windows)[0]['store'],
      (typeof windows)[0]['store'],
    ];
    await one.change('a block', [create('block', id(1), { name: 'Tall crown' })]);
    await vi.waitFor(() => expect(two.get('block', id(1))?.name).toBe('Tall crown'));
    await Promise.all([
      one.change('the note', [set('block', id(1), { note: 'Dry.' })]),
      two.change('the price', [set('block', id(1), { priceAsked: 6500 })]),
    ]);
    const both = { note: 'Dry.', priceAsked: 6500 };
    await vi.waitFor(() => {
      expect(one.get('block', id(1))).toMatchObject(both);
      expect(two.get('block', id(1))).toMatchObject(both);
    });
    expect(await keeper.raw(id(1))).toMatchObject(both);
    for (const { channel } of windows) channel.close();
    await keeper.dispose();
  });

  it('leave the sweeping to the first', async () => {
    const swept: string[] = [];
    await firstWindow(navigator.locks, async () => swept.push('first'));
    await firstWindow(navigator.locks, async () => swept.push('second'));
    expect(swept.filter((each) => each === 'second')).toEqual([]);
  });
});

describe('a database of the first version', () => {
  const photo = photoOf('picture');
  const block = aBlock({ name: 'Tall crown', note: 'Dry.' });
  const change = { at: block.stamps.note ?? '', id: block.id, paths: ['note'], device: block.device };

  /** As the app made it then, with something of everything in it. */
  async function firstVersion(name: string): Promise<IDBPDatabase> {
    const db = await openDB(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore('records', { keyPath: 'id' });
        fresh.createObjectStore('bytes');
        fresh.createObjectStore('changes', { autoIncrement: true });
        fresh.createObjectStore('meta');
      },
    });
    await db.put('records', block);
    await db.put('bytes', { bytes: photo.bytes, mime: photo.mime }, photo.sha256);
    await db.put('changes', change);
    await db.put('meta', 'olddevic', 'device');
    await db.put('meta', '{"at":1,"bytes":2}', 'note:backup');
    return db;
  }

  it('keeps all there was and takes what is new', async () => {
    const keeper = idbKeeper();
    (await firstVersion(keeper.name)).close();
    const repository = await keeper.open();
    expect(await repository.identity()).toEqual({ device: 'olddevic', cleared: false });
    expect(await repository.loadAll()).toEqual({ records: [block], unreadable: [] });
    expect(new Uint8Array((await repository.photoBytes(photo.sha256))?.bytes ?? new ArrayBuffer())).toEqual(
      new Uint8Array(photo.bytes),
    );
    expect((await repository.changesAfter(0, 10)).map(({ row }) => row)).toEqual([change]);
    expect(await repository.note('backup')).toBe('{"at":1,"bytes":2}');
    const row = { key: 'k', id: '', raw: 'from elsewhere', state: 'unreadable', why: 'as it was' } as const;
    await repository.commit({ puts: [], changes: [], kept: [row] });
    expect(await repository.kept()).toEqual([row]);
    await repository.keepStandIn(photo.sha256, { bytes: photo.bytes, mime: photo.mime });
    expect((await repository.standIn(photo.sha256))?.mime).toBe(photo.mime);
    await keeper.dispose();
  });

  it('waits while an old tab holds it, says so, and loses nothing once that tab is closed', async () => {
    const keeper = idbKeeper();
    const oldTab = await firstVersion(keeper.name);
    const repository = createIdbRepository({ name: keeper.name, marker: neverSet, blockedAfterMs: 50 });
    const loading = repository.loadAll();
    await vi.waitFor(() => expect(repository.status.value).toBe('close-other-windows'));
    // The old tab still saves meanwhile.
    const later = aBlock({ id: id(2), name: 'Pillbox' });
    await oldTab.put('records', later);
    oldTab.close();
    expect((await loading).records).toEqual([block, later]);
    expect(repository.status.value).toBe('open');
    await repository.close();
    await keeper.dispose();
  });

  it('is closed to an old tab that comes later, which is told to reload', async () => {
    const keeper = idbKeeper();
    await (await keeper.open()).close();
    await expect(openDB(keeper.name, 1)).rejects.toMatchObject({ name: 'VersionError' });
    await keeper.dispose();
  });
});

describe('a window of the app', () => {
  it('opens, keeps a photograph over a restart, and undoes', async () => {
    const now = () => Date.now();
    const store = await openStore(now);
    const blockId = store.newId();
    await store.change('a block', [create('block', blockId, { name: 'Tall crown' })]);
    const photo = await store.addPhoto(prepared(`crown ${blockId}`), { blockId });

    const again = await openStore(now);
    expect(again.get('block', blockId)?.name).toBe('Tall crown');
    expect(again.photosOf(blockId)).toEqual([photo]);
    const bytes = (await again.photoBytes(photo.sha256))?.bytes;
    expect(new TextDecoder().decode(bytes)).toBe(`crown ${blockId}`);
    await again.change('removing the block', [remove(blockId)]);
    expect(again.photosOf(blockId)).toEqual([]);
    await again.undo()?.saved;
    expect(again.photosOf(blockId)).toHaveLength(1);
    expect(again.newId() > blockId).toBe(true);
    for (const each of [store, again]) await each.repository.close();
    await deleteDB('blockworth');
  });

  it('is told what the browser says about room and keeping', async () => {
    const keeping = createKeeping(navigator.storage);
    await keeping.photoSaved();
    expect(keeping.space.value?.quota).toBeGreaterThan(0);
    expect(['granted', 'refused']).toContain(keeping.persistence.value);
  });
});

describe('two thousand blocks', () => {
  it('load in little more time than the database itself needs to hand them over', async () => {
    const keeper = idbKeeper();
    await keeper.open();
    const nextId = newIds(1);
    const db = await openDB(keeper.name);
    const tx = db.transaction('records', 'readwrite', { durability: 'relaxed' });
    for (let block = 0; block < 2000; block++) {
      const [blockId, surveyId] = [nextId(), nextId()];
      void tx.store.put(aBlock({ id: blockId, materials: ['lime'], note: 'Scorched under the rope line.' }));
      void tx.store.put(aSurvey({ id: surveyId, blockId, measures: { circumferenceMm: 571, heightMm: 142 } }));
      void tx.store.put(aFinding({ id: nextId(), blockId, surveyId, answers: { lengthMm: 64 } }));
    }
    await tx.done;
    const start = performance.now();
    await db.getAll('records');
    const raw = performance.now() - start;
    db.close();

    const repository = createIdbRepository({ name: keeper.name });
    const store = createStore({ repository, now: Date.now, newId: nextId, device: 'device00' });
    const opening = performance.now();
    await store.load();
    const loaded = performance.now() - opening;
    console.info(
      `2,000 blocks, 6,000 records: handed over in ${Math.round(raw)} ms, loaded in ${Math.round(loaded)} ms`,
    );
    expect(store.blocks.value).toHaveLength(2000);
    expect(loaded).toBeLessThan(3 * raw + 1500);
    await repository.close();
    await keeper.dispose();
  });
});
