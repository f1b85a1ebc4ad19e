import { describe, expect, it } from 'vitest';
import { createStore } from '../../src/store/store.ts';
import { aPhoto, DEVICE, NEW_YEAR, newIds } from './make.ts';
import { prepared } from './prepared.ts';
import { openWindow } from './window.ts';

describe('a thumbnail that did not come with a restore', () => {
  it('is made once of the working copy, kept, and leaves the record as it is', async () => {
    const { store: first, repository, disk } = await openWindow();
    const photo = await first.addPhoto(prepared('front'), { blockId: aPhoto().blockId });
    disk.bytes.delete(photo.thumbnail);
    let made = 0;
    const open = async () => {
      const store = createStore({
        ...{ repository, now: () => NEW_YEAR, newId: newIds(1), device: DEVICE },
        makeThumbnail: async ({ sha256 }) => {
          made += 1;
          return new TextEncoder().encode(`small ${sha256}`).buffer;
        },
      });
      await store.load();
      return store;
    };
    const store = await open();
    const [one, two] = await Promise.all([store.photoBytes(photo.thumbnail), store.photoBytes(photo.thumbnail)]);
    expect(new TextDecoder().decode(one?.bytes)).toBe(`small ${photo.sha256}`);
    expect([two, made]).toEqual([one, 1]);
    await (await open()).photoBytes(photo.thumbnail);
    expect([made, store.find(photo.id)]).toEqual([1, photo]);
  });

  it('stays missing where its photograph is not here either', async () => {
    const { store } = await openWindow();
    expect(await store.photoBytes('f'.repeat(64))).toBeUndefined();
  });
});
