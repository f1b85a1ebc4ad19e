import { describe, expect, it } from 'vitest';
import { create, remove, set } from '../../src/store/edits.ts';
import { newDisk } from '../../src/store/memory.ts';
import { createKeeping } from '../../src/store/persist.ts';
import { id } from './make.ts';
import { prepared } from './prepared.ts';
import { openWindow } from './window.ts';

const blockId = id(1);
const startBlock = [create('block', blockId, { name: 'Tall crown' })];

describe('a photograph', () => {
  it('is saved with its bytes, thumbnail, original, record and history in one transaction, and shown only then', async () => {
    const { store, repository, disk } = await openWindow();
    await store.change('a block', startBlock);
    const adding = store.addPhoto(prepared('crown', true), { blockId, view: 'front', caption: 'Scorch' });
    expect(store.photosOf(blockId)).toEqual([]);
    const photo = await adding;
    expect(store.photosOf(blockId)).toEqual([photo]);
    expect(photo).toMatchObject({
      view: 'front',
      caption: 'Scorch',
      focal35: 26,
      bytes: 5,
      original: { name: 'IMG_0001.JPG' },
    });
    const last = repository.commits.at(-1);
    expect([last?.puts.length, last?.photos?.length, last?.changes.length]).toEqual([1, 3, 1]);
    expect([...disk.bytes.keys()].sort()).toEqual([photo.sha256, photo.thumbnail, photo.original?.sha256 ?? ''].sort());
    expect((await store.photoBytes(photo.sha256))?.bytes.byteLength).toBe(5);
  });

  it('waits for its block to be saved first', async () => {
    const { store, repository } = await openWindow();
    void store.change('a block', startBlock);
    await store.addPhoto(prepared('crown'), { blockId });
    expect(repository.commits.map((batch) => batch.puts.map((put) => put.type))).toEqual([['block'], ['photo']]);
  });

  it('that does not fit is refused and leaves nothing behind, while text goes on being saved', async () => {
    const { store, repository, disk } = await openWindow();
    await store.change('a block', startBlock);
    repository.failing = 'storage-full';
    await expect(store.addPhoto(prepared('crown'), { blockId })).rejects.toMatchObject({ code: 'storage-full' });
    repository.failing = null;
    expect(store.photosOf(blockId)).toEqual([]);
    expect(disk.bytes.size).toBe(0);
    expect(store.saving.value).toBe('saved');
    expect(store.undoable.value).toBe('a block');
    await store.change('the name', [set('block', blockId, { name: 'Low crown' })]);
    expect(disk.records.get(blockId)).toMatchObject({ name: 'Low crown' });
    expect(disk.records.size).toBe(1);
  });

  it('without a byte in it is refused', async () => {
    const { store } = await openWindow();
    await store.change('a block', startBlock);
    const empty = { ...prepared('crown'), bytes: new ArrayBuffer(0) };
    await expect(store.addPhoto(empty, { blockId })).rejects.toMatchObject({ code: 'photo-empty' });
  });

  it('that was removed keeps its bytes while undo may want them, and frees them at the next start', async () => {
    const disk = newDisk();
    const { store } = await openWindow({ disk });
    await store.change('a block', startBlock);
    const kept = await store.addPhoto(prepared('crown'), { blockId });
    const gone = await store.addPhoto(prepared('brim'), { blockId });
    await store.change('removing the photograph', [remove(gone.id)]);
    expect(disk.bytes.size).toBe(4);
    store.undo();
    await store.settled();
    expect((await store.photoBytes(gone.sha256))?.bytes.byteLength).toBe(4);
    await store.change('removing the photograph', [remove(gone.id)]);

    const next = await openWindow({ disk });
    expect(await next.store.sweep()).toBe(2);
    expect([...disk.bytes.keys()].sort()).toEqual([kept.sha256, kept.thumbnail].sort());
    expect(await next.store.sweep()).toBe(0);
  });

  it('shared by two records keeps its bytes until both are gone', async () => {
    const disk = newDisk();
    const { store } = await openWindow({ disk });
    await store.change('two blocks', [...startBlock, create('block', id(2), {})]);
    const first = await store.addPhoto(prepared('crown'), { blockId });
    await store.addPhoto(prepared('crown'), { blockId: id(2) });
    await store.change('removing the photograph', [remove(first.id)]);
    expect(await (await openWindow({ disk })).store.sweep()).toBe(0);
    await store.change('removing the block', [remove(id(2))]);
    expect(await (await openWindow({ disk })).store.sweep()).toBe(2);
  });

  it('can be undone like anything else', async () => {
    const { store } = await openWindow();
    await store.change('a block', startBlock);
    await store.addPhoto(prepared('crown'), { blockId });
    expect(store.undo()?.label).toBe('a photograph');
    expect(store.photosOf(blockId)).toEqual([]);
  });

  it('once saved has the browser asked to keep what is here, once', async () => {
    let asked = 0;
    const storage = {
      persisted: async () => false,
      estimate: async () => ({ usage: 1, quota: 100 }),
      async persist() {
        asked += 1;
        return false;
      },
    };
    const keeping = createKeeping(storage);
    const { store } = await openWindow({ keeping });
    await store.change('a block', startBlock);
    expect([asked, keeping.persistence.value]).toEqual([0, 'notAsked']);
    await store.addPhoto(prepared('crown'), { blockId });
    await store.addPhoto(prepared('brim'), { blockId });
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect([asked, store.keeping.persistence.value]).toEqual([1, 'refused']);
  });
});
