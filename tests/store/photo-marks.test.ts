import { describe, expect, it } from 'vitest';
import { create, remove } from '../../src/store/edits.ts';
import { id } from './make.ts';
import { openWindow } from './window.ts';

const blockId = id(1);
const photoId = id(4);
const mark = (n: number, of = photoId) =>
  create('photoMark', id(n), { blockId, photoId: of, shape: 'point', points: [[0.5, 0.25]] });

describe('marks on a photograph', () => {
  it('are listed with their photograph and their block, oldest first', async () => {
    const { store } = await openWindow();
    await store.change('a block', [create('block', blockId, {}), mark(21), mark(20), mark(22, id(5))]);
    expect(store.marksOnPhoto(photoId).map((m) => m.id)).toEqual([id(20), id(21)]);
    expect(store.photoMarksOf(blockId)).toHaveLength(3);
  });

  it('go with their photograph and come back with it, and leave the marks of others alone', async () => {
    const { store } = await openWindow();
    const fields = { blockId, sha256: '0'.repeat(64), thumbnail: '1'.repeat(64) };
    await store.change('a block', [create('block', blockId, {}), create('photo', photoId, fields)]);
    await store.change('marks', [mark(20), mark(21), mark(22, id(5))]);
    await store.change('removing the photograph', [remove(photoId)]);
    expect(store.marksOnPhoto(photoId)).toEqual([]);
    expect(store.photoMarksOf(blockId).map((m) => m.id)).toEqual([id(22)]);
    store.undo();
    expect(store.marksOnPhoto(photoId)).toHaveLength(2);
  });

  it('must lie on the picture', async () => {
    const { store } = await openWindow();
    const off = create('photoMark', id(20), { blockId, photoId, shape: 'point', points: [[1.2, 0.5]] });
    expect(() => store.change('a mark', [off])).toThrow(/photoMark.points/);
    const none = create('photoMark', id(20), { blockId, photoId, shape: 'point', points: [] });
    expect(() => store.change('a mark', [none])).toThrow(/photoMark.points/);
  });
});
