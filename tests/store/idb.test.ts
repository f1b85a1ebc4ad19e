import 'fake-indexeddb/auto';
import { deleteDB, openDB } from 'idb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createIdbRepository, localMarker, type Marker } from '../../src/store/idb.ts';
import { idbKeeper } from '../contracts/idb-keeper.ts';
import { photoOf } from '../contracts/photo-of.ts';
import { aBlock, id } from './make.ts';

function rememberingMarker(): Marker {
  let isSet = false;
  return {
    isSet: () => isSet,
    set() {
      isSet = true;
    },
  };
}

afterEach(() => vi.unstubAllGlobals());

describe('the database', () => {
  it('notices that it was cleared, also after a restart, until the owner knows', async () => {
    const marker = rememberingMarker();
    const name = 'cleared';
    const first = createIdbRepository({ name, marker });
    expect((await first.identity()).cleared).toBe(false);
    await first.commit({ puts: [aBlock()], changes: [] });
    await first.close();
    await deleteDB(name);

    const second = createIdbRepository({ name, marker });
    expect((await second.identity()).cleared).toBe(true);
    await second.close();
    const third = createIdbRepository({ name, marker });
    expect((await third.identity()).cleared).toBe(true);
    await third.acknowledgeCleared();
    expect((await third.identity()).cleared).toBe(false);
    await third.close();
    await deleteDB(name);
  });

  it('does not take a first start for a clearing', async () => {
    const marker = rememberingMarker();
    const repository = createIdbRepository({ name: 'first-start', marker });
    await repository.identity();
    expect(marker.isSet()).toBe(false);
    await repository.close();
    const again = createIdbRepository({ name: 'first-start', marker });
    expect((await again.identity()).cleared).toBe(false);
    await again.close();
  });

  it('remembers in local storage, and does without where that is refused', () => {
    const kept = new Map<string, string>();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    });
    expect(localMarker.isSet()).toBe(false);
    localMarker.set();
    expect(localMarker.isSet()).toBe(true);
    vi.stubGlobal('localStorage', {
      getItem: () => {
        throw new DOMException('', 'SecurityError');
      },
      setItem: () => {
        throw new DOMException('', 'SecurityError');
      },
    });
    localMarker.set();
    expect(localMarker.isSet()).toBe(false);
  });

  it('keeps bytes as plain buffers, with no index and no blob anywhere', async () => {
    const keeper = idbKeeper();
    const repository = await keeper.open();
    const photo = photoOf('a picture');
    await repository.commit({ puts: [], photos: [photo], changes: [] });
    const db = await openDB(keeper.name);
    const tx = db.transaction([...db.objectStoreNames]);
    for (const store of db.objectStoreNames) expect([...tx.objectStore(store).indexNames]).toEqual([]);
    const row = await tx.objectStore('bytes').get(photo.sha256);
    expect(Object.keys(row).sort()).toEqual(['bytes', 'mime']);
    expect(Object.prototype.toString.call(row.bytes)).toBe('[object ArrayBuffer]');
    db.close();
    await keeper.dispose();
  });

  it('asks for the disk, not for a promise, whenever it writes', async () => {
    const keeper = idbKeeper();
    const repository = await keeper.open();
    const opened = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await repository.identity();
    await repository.commit({ puts: [aBlock()], photos: [photoOf('a picture')], changes: [] });
    await repository.deletePhotoBytes([photoOf('a picture').sha256]);
    const writes = opened.mock.calls.filter(([, mode]) => mode === 'readwrite');
    expect(writes).toHaveLength(3);
    for (const [, , options] of writes) expect(options).toEqual({ durability: 'strict' });
    opened.mockRestore();
    await keeper.dispose();
  });

  it('opens what an earlier app left, with everything in it, and has room for what came since', async () => {
    const name = 'from-version-1';
    // The stores of version 1 as they were, written out: the app's own code knows only today's.
    const old = await openDB(name, 1, {
      upgrade(db) {
        db.createObjectStore('records', { keyPath: 'id' });
        for (const store of ['bytes', 'meta']) db.createObjectStore(store);
        db.createObjectStore('changes', { autoIncrement: true });
      },
    });
    const photo = photoOf('a picture');
    await old.put('records', aBlock());
    await old.put('bytes', { bytes: photo.bytes, mime: photo.mime }, photo.sha256);
    await old.put('meta', 'oldphone', 'device');
    old.close();
    const repository = createIdbRepository({ name, marker: rememberingMarker() });
    expect((await repository.loadAll()).records).toEqual([aBlock()]);
    expect((await repository.identity()).device).toBe('oldphone');
    expect(await repository.photoBytes(photo.sha256)).toEqual(photo);
    await repository.setNote('backup', 'today');
    expect([await repository.note('backup'), await repository.kept()]).toEqual(['today', []]);
    await repository.close();
    await deleteDB(name);
  });

  it('loads more records than fit one page', async () => {
    const keeper = idbKeeper();
    const repository = await keeper.open();
    const db = await openDB(keeper.name);
    const tx = db.transaction('records', 'readwrite');
    for (let n = 1; n <= 1001; n++) void tx.store.put(aBlock({ id: id(n) }));
    await tx.done;
    db.close();
    const { records } = await repository.loadAll();
    expect(new Set(records.map((record) => record.id)).size).toBe(1001);
    await keeper.dispose();
  });
});
