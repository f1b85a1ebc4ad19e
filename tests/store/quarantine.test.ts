import { expect, it } from 'vitest';
import { create, remove } from '../../src/store/edits.ts';
import { id } from './make.ts';
import { prepared } from './prepared.ts';
import { openWindow } from './window.ts';

const [BLOCK, APART, LOOK, REMINDER] = [id(1), id(5), id(6), id(7)] as const;

/** A block in quarantine, looked at once with a photograph of its paper, its next look in somebody's calendar. */
async function lookedAt() {
  const { store } = await openWindow();
  await store.change('a block', [create('block', BLOCK, {})]);
  const photo = await store.addPhoto(prepared('paper'), { blockId: BLOCK });
  await store.change('quarantine', [
    create('quarantine', APART, { blockId: BLOCK, begunOn: '2025-12-01' }),
    create('quarantineCheck', LOOK, { blockId: BLOCK, quarantineId: APART, on: '2025-12-31', paperPhotoId: photo.id }),
    create('reminder', REMINDER, { forBlockId: BLOCK, key: `${APART}-look-2`, start: '2026-01-30' }),
  ]);
  return { store, photo };
}

it('keeps a look whose photograph is removed', async () => {
  const { store, photo } = await lookedAt();
  await store.change('removing the photograph', [remove(photo.id)]);
  expect(store.quarantineChecksOf(APART)).toHaveLength(1);
});

it('takes the looks away with the quarantine they belong to, and undo brings them back', async () => {
  const { store } = await lookedAt();
  await store.change('removing the quarantine', [remove(APART)]);
  expect(store.quarantineChecksOf(BLOCK)).toEqual([]);
  store.undo();
  expect(store.quarantineChecksOf(BLOCK)).toHaveLength(1);
});

it('remembers what stands in a calendar when the block is gone, so that the next file can take it out', async () => {
  const { store } = await lookedAt();
  await store.change('removing the block', [remove(BLOCK)]);
  expect(store.quarantinesOf(BLOCK)).toEqual([]);
  expect(store.get('reminder', REMINDER)).toMatchObject({ forBlockId: BLOCK });
});
