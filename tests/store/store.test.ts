import { effect } from '@preact/signals';
import { describe, expect, it, vi } from 'vitest';
import { changedPaths, latestStamp, stampAt } from '../../src/core/changes.ts';
import { parseStamp } from '../../src/core/clock.ts';
import { AppError } from '../../src/core/errors.ts';
import { type AnyRecord, SETTINGS_ID } from '../../src/core/records.ts';
import { create, remove, set, setSettings } from '../../src/store/edits.ts';
import { newDisk } from '../../src/store/memory.ts';
import { aBlock, at, DEVICE, id, NEW_YEAR } from './make.ts';
import { channels, openWindow } from './window.ts';

const YEAR = 365 * 86_400_000;
const blockId = id(1);
const surveyId = id(2);
const startBlock = [
  create('block', blockId, { name: 'Tall crown' }),
  create('survey', surveyId, { blockId, begun: '2026-01-01T00:00:00Z' }),
];
const finding = (n: number) => create('finding', id(10 + n), { blockId, surveyId, number: n, kind: 'check' });
const codeOf = (error: unknown) => (error instanceof AppError ? error.code : error);

describe('a change', () => {
  it('shows at once and is on the disk when its promise resolves, with one row of history for each record', async () => {
    const { store, disk } = await openWindow();
    const saved = store.change('a block', startBlock);
    expect(store.blocks.value).toMatchObject([{ name: 'Tall crown' }]);
    expect(store.saving.value).toBe('saving');
    expect(disk.records.size).toBe(0);
    await saved;
    expect(store.saving.value).toBe('saved');
    expect(disk.records.get(blockId)).toEqual(store.get('block', blockId));
    expect(disk.changes).toEqual([
      { at: at(0), id: blockId, paths: ['name'], device: DEVICE },
      { at: at(0), id: surveyId, paths: ['blockId', 'begun'], device: DEVICE },
    ]);
  });

  it('is one transaction, whatever it touches', async () => {
    const { store, repository } = await openWindow();
    await store.change('a block', [...startBlock, finding(1), finding(2)]);
    expect(repository.commits).toHaveLength(1);
    expect(repository.commits[0]?.puts).toHaveLength(4);
  });

  it('that fits no record changes nothing and says what is wrong', async () => {
    const { store, repository } = await openWindow();
    await store.change('a block', startBlock);
    const bad = [
      [set('block', id(99), { name: 'x' })],
      [set('block', surveyId, { name: 'x' })],
      [set('block', blockId, { surveyor: 'x' } as never)],
      [set('survey', surveyId, { measures: { heightMm: Number.NaN } })],
      [set('block', blockId, { note: 'half' }), create('block', blockId, {})],
    ];
    for (const edits of bad) await expect(async () => store.change('a slip', edits)).rejects.toThrow(Error);
    expect(store.get('block', blockId)?.note).toBe('');
    expect(repository.commits).toHaveLength(1);
    expect(store.undoable.value).toBe('a block');
  });

  it('that says what is there already is no change', async () => {
    const { store, repository } = await openWindow();
    await store.change('a block', startBlock);
    await store.change('the name', [set('block', blockId, { name: 'Tall crown' })]);
    expect(repository.commits).toHaveLength(1);
    expect(store.undoable.value).toBe('a block');
  });

  it('before loading is refused: it would hide what lies on the disk', async () => {
    const { store } = await openWindow();
    const { createStore } = await import('../../src/store/store.ts');
    const early = createStore({ repository: store.repository, now: () => 0, newId: store.newId, device: DEVICE });
    expect(() => early.change('too early', startBlock)).toThrow(/loaded/);
  });

  it('of the settings makes their record at the first choice, and leaves the rest unchosen', async () => {
    const { store } = await openWindow();
    expect(store.settings.value).toMatchObject({ id: SETTINGS_ID, currency: 'GBP' });
    await store.change('the currency', [setSettings({ currency: 'EUR' })]);
    expect(store.settings.value.currency).toBe('EUR');
    expect(changedPaths(undefined, store.settings.value)).toEqual(['currency']);
  });

  it('with more records than one transaction takes is saved in several, each with its history', async () => {
    const { store, repository, disk } = await openWindow();
    const many = Array.from({ length: 600 }, (_, n) => create('mark', id(5000 + n), { blockId, kind: 'label' }));
    await store.change('a wall of labels', many);
    expect(repository.commits.map((batch) => batch.puts.length)).toEqual([240, 240, 120]);
    for (const { puts, changes } of repository.commits) {
      expect(changes.map((row) => row.id)).toEqual(puts.map((put) => put.id));
    }
    expect(disk.records.size).toBe(600);
  });
});

describe('a failed save', () => {
  it('keeps everything in memory, says why, and goes with the next change', async () => {
    const { store, repository, disk } = await openWindow();
    repository.failing = 'storage-full';
    const failed = store.change('a block', startBlock);
    await expect(failed).rejects.toMatchObject({ code: 'storage-full' });
    expect(store.saving.value).toMatchObject({ failed: { code: 'storage-full' } });
    expect(store.blocks.value).toHaveLength(1);
    repository.failing = null;
    await store.change('the name', [set('block', blockId, { name: 'Low crown' })]);
    expect(store.saving.value).toBe('saved');
    expect(disk.records.get(blockId)).toMatchObject({ name: 'Low crown' });
    expect(disk.records.has(surveyId)).toBe(true);
    expect(new Set(disk.changes.map((row) => row.id))).toEqual(new Set([blockId, surveyId]));
  });

  it('can be tried again by hand, and tells if that fails too', async () => {
    const { store, repository, disk } = await openWindow();
    repository.failing = 'not-saved';
    await store.change('a block', startBlock).catch(codeOf);
    await expect(store.retry()).rejects.toMatchObject({ code: 'not-saved' });
    repository.failing = null;
    await store.retry();
    expect(store.saving.value).toBe('saved');
    expect(disk.records.size).toBe(2);
  });

  it('needs no reader for its promise', async () => {
    const unhandled = vi.fn();
    process.on('unhandledRejection', unhandled);
    const { store, repository } = await openWindow();
    repository.failing = 'not-saved';
    void store.change('a block', startBlock);
    await store.settled();
    await new Promise((resolve) => setTimeout(resolve, 5));
    process.off('unhandledRejection', unhandled);
    expect(unhandled).not.toHaveBeenCalled();
    expect(store.saving.value).toMatchObject({ failed: { code: 'not-saved' } });
  });

  it('of a record that a newer app has rewritten holds up no other', async () => {
    const { store, disk } = await openWindow();
    await store.change('a block', startBlock);
    disk.records.set(blockId, { ...aBlock(), schema: 99 });
    const renamed = store.change('the name', [set('block', blockId, { name: 'Low crown' })]);
    const noted = store.change('the survey', [set('survey', surveyId, { note: 'Dry.' })]);
    await expect(renamed).rejects.toMatchObject({ code: 'record-too-new' });
    await noted;
    expect(disk.records.get(surveyId)).toMatchObject({ note: 'Dry.' });
    expect(disk.records.get(blockId)).toMatchObject({ schema: 99, name: 'Tall crown' });
  });

  it('writes one transaction at a time, and what comes meanwhile in the next', async () => {
    const { store, repository } = await openWindow();
    await store.change('a block', startBlock);
    for (const name of ['L', 'Lo', 'Low']) void store.change('the name', [set('block', blockId, { name })]);
    await store.settled();
    const names = repository.commits.slice(1).map((batch) => batch.puts.map((put) => (put as { name?: string }).name));
    expect(names).toEqual([['L'], ['Low']]);
    expect(repository.commits.at(-1)?.changes).toHaveLength(1);
  });
});

describe('looking up', () => {
  it('finds the parts of a block in their order, and only the live ones', async () => {
    const { store } = await openWindow();
    await store.change('a block', [...startBlock, finding(2), finding(1)]);
    await store.change('a later survey', [
      create('survey', id(3), { blockId, begun: '2026-02-01T00:00:00Z', stage: 'after' }),
    ]);
    expect(store.findingsOf(blockId).map((each) => each.number)).toEqual([1, 2]);
    expect(store.surveyOf(blockId)?.stage).toBe('after');
    expect(store.surveysOf(blockId).map((each) => each.id)).toEqual([surveyId, id(3)]);
    await store.change('the first finding', [remove(id(11))]);
    expect(store.findingsOf(blockId).map((each) => each.number)).toEqual([2]);
    expect(store.records.finding.value.size).toBe(1);
    expect(store.all('finding').value).toHaveLength(1);
    expect(store.get('finding', id(11))).toBeUndefined();
  });

  it('never gives a finding’s number to another, even when the finding is gone', async () => {
    const { store, disk } = await openWindow();
    await store.change('a block', [...startBlock, finding(1), finding(2)]);
    await store.change('the last finding', [remove(id(12))]);
    expect(store.nextFindingNumber(blockId)).toBe(3);
    expect((await openWindow({ disk })).store.nextFindingNumber(blockId)).toBe(3);
    expect(store.nextFindingNumber(id(99))).toBe(1);
  });

  it('wakes only who reads what changed', async () => {
    const { store } = await openWindow();
    await store.change('two blocks', [...startBlock, create('block', id(50), { name: 'Brim' })]);
    const runs = { findings: 0, other: 0, block: 0, list: 0 };
    const count = (reader: keyof typeof runs, read: () => unknown) =>
      effect(() => {
        read();
        runs[reader] += 1;
      });
    count('findings', () => store.findingsOf(blockId));
    count('other', () => store.findingsOf(id(50)));
    count('block', () => store.get('block', blockId));
    count('list', () => store.blocks.value);
    await store.change('a finding', [finding(1)]);
    expect(runs).toEqual({ findings: 2, other: 1, block: 1, list: 1 });
    await store.change('the name', [set('block', blockId, { name: 'Low crown' })]);
    expect(runs).toEqual({ findings: 2, other: 1, block: 2, list: 2 });
    expect(store.findingsOf(blockId)).toBe(store.findingsOf(blockId));
  });

  it('lists what a sale and a finding have, and follows a block from sale to sale', async () => {
    const { store } = await openWindow();
    await store.change('a sale', [...startBlock, finding(1), create('sale', id(60), {}), create('sale', id(61), {})]);
    await store.change('its sale', [set('block', blockId, { saleId: id(60) })]);
    await store.change('an offer', [create('offer', id(62), { blockId, saleId: id(60), amount: 4000 })]);
    expect(store.blocksOf(id(60)).map((each) => each.id)).toEqual([blockId]);
    expect(store.offersAt(id(60))).toEqual(store.offersOf(blockId));
    await store.change('its sale', [set('block', blockId, { saleId: id(61) })]);
    expect([store.blocksOf(id(60)).length, store.blocksOf(id(61)).length]).toEqual([0, 1]);
  });
});

describe('removing', () => {
  it('takes a block with all that belongs to it, as tombstones on the disk', async () => {
    const { store, disk } = await openWindow();
    await store.change('a block', [...startBlock, finding(1), create('mark', id(30), { blockId, kind: 'label' })]);
    await store.change('another', [create('block', id(50), { name: 'Brim' })]);
    await store.change('removing the block', [remove(blockId)]);
    expect(store.blocks.value.map((each) => each.id)).toEqual([id(50)]);
    expect(store.findingsOf(blockId)).toEqual([]);
    const gone = [...disk.records.values()].filter((raw) => (raw as AnyRecord).deleted !== null);
    expect(gone).toHaveLength(4);
  });

  it('takes the example’s blocks with the example sale, and leaves the owner’s own', async () => {
    const { store } = await openWindow();
    const saleId = id(60);
    await store.change('a sale', [
      create('sale', saleId, { example: true }),
      create('block', id(50), { saleId, example: true }),
      create('finding', id(51), { blockId: id(50), surveyId, kind: 'check' }),
      create('block', blockId, { saleId }),
    ]);
    await store.change('removing the example', [remove(saleId)]);
    expect(store.blocks.value.map((each) => each.id)).toEqual([blockId]);
    expect(store.records.finding.value.size).toBe(0);
    store.undo();
    expect(store.blocks.value).toHaveLength(2);
    expect(store.records.finding.value.size).toBe(1);
  });
});

describe('undo', () => {
  it('names and takes back the last change, then the one before, as new changes with later stamps', async () => {
    const { store, disk } = await openWindow();
    await store.change('a block', startBlock);
    await store.change('the stage', [set('survey', surveyId, { stage: 'after' })]);
    const stamp = stampAt(store.surveyOf(blockId) as AnyRecord, 'stage');
    expect(store.undoable.value).toBe('the stage');
    const undone = store.undo();
    expect(undone?.label).toBe('the stage');
    await undone?.saved;
    expect(disk.records.get(surveyId)).toMatchObject({ stage: 'before' });
    expect(stampAt(store.surveyOf(blockId) as AnyRecord, 'stage') > stamp).toBe(true);
    expect(store.undo()?.label).toBe('a block');
    expect(store.blocks.value).toEqual([]);
    expect(store.undoable.value).toBeNull();
    expect(store.undo()).toBeUndefined();
  });

  it('brings back with a photograph how it was lined up; the other photograph stayed', async () => {
    const { store } = await openWindow();
    const [before, after, lined] = [id(40), id(41), id(42)];
    const photo = (own: string) => create('photo', own, { blockId, sha256: '0'.repeat(64), thumbnail: '1'.repeat(64) });
    await store.change('a block', [
      ...startBlock,
      photo(before),
      photo(after),
      create('alignment', lined, { blockId, beforeId: before, afterId: after }),
    ]);
    await store.change('removing the photograph', [remove(after)]);
    expect(store.alignmentsOf(blockId)).toEqual([]);
    expect(store.photosOf(blockId).map((one) => one.id)).toEqual([before]);
    store.undo();
    expect(store.alignmentsOf(blockId).map((one) => one.id)).toEqual([lined]);
  });

  it('brings a removed block back with its survey and findings', async () => {
    const { store } = await openWindow();
    await store.change('a block', [...startBlock, finding(1)]);
    await store.change('removing the block', [remove(blockId)]);
    store.undo();
    expect(store.blocks.value).toHaveLength(1);
    expect(store.findingsOf(blockId)).toHaveLength(1);
    expect(store.surveyOf(blockId)?.id).toBe(surveyId);
  });

  it('takes typing in one field as one step, and stops at a pause, another field, or a tap', async () => {
    const { store, wall } = await openWindow();
    await store.change('a block', startBlock);
    const type = (text: string) => void store.change('the note', [set('block', blockId, { note: text })]);
    for (const text of ['D', 'Dr', 'Dry']) {
      wall.ms += 200;
      type(text);
    }
    wall.ms += 2000;
    type('Dry.');
    void store.change('the name', [set('block', blockId, { name: 'Low crown' })]);
    void store.change('copyable', [set('block', blockId, { copyable: false })]);
    void store.change('copyable', [set('block', blockId, { copyable: true })]);
    const block = () => store.get('block', blockId);
    store.undo();
    expect(block()?.copyable).toBe(false);
    store.undo();
    store.undo();
    expect(block()).toMatchObject({ copyable: true, name: 'Tall crown', note: 'Dry.' });
    store.undo();
    expect(block()?.note).toBe('Dry');
    store.undo();
    expect(block()?.note).toBe('');
    expect(store.undoable.value).toBe('a block');
  });

  it('takes taps on the + of one measure as one step', async () => {
    const { store, wall } = await openWindow();
    await store.change('a block', startBlock);
    for (const heightMm of [140, 141, 142]) {
      wall.ms += 300;
      void store.change('a measure', [set('survey', surveyId, { measures: { heightMm } })]);
    }
    store.undo();
    expect(store.surveyOf(blockId)?.measures).toEqual({});
  });

  it('begins a new step with what is typed after it', async () => {
    const { store, wall } = await openWindow();
    await store.change('a block', startBlock);
    const type = (note: string) => void store.change('the note', [set('block', blockId, { note })]);
    type('Dry');
    wall.ms += 2000;
    type('Dry and dusty');
    store.undo();
    type('Dry!');
    store.undo();
    expect(store.get('block', blockId)?.note).toBe('Dry');
  });

  it('of a new block takes along what another window has added to it', async () => {
    const disk = newDisk();
    const connect = channels();
    const one = await openWindow({ disk, channel: connect() });
    const two = await openWindow({ disk, channel: connect() });
    await one.store.change('a block', startBlock);
    await vi.waitFor(() => expect(two.store.blocks.value).toHaveLength(1));
    await two.store.change('a finding', [finding(1)]);
    await vi.waitFor(() => expect(one.store.findingsOf(blockId)).toHaveLength(1));
    one.store.undo();
    expect(one.store.findingsOf(blockId)).toEqual([]);
  });

  it('passes over a step that leads nowhere, and keeps what another window wrote since', async () => {
    const disk = newDisk();
    const connect = channels();
    const one = await openWindow({ disk, channel: connect() });
    const two = await openWindow({ disk, channel: connect() });
    await one.store.change('a block', startBlock);
    await vi.waitFor(() => expect(two.store.blocks.value).toHaveLength(1));
    await one.store.change('the name', [set('block', blockId, { name: 'Low crown' })]);
    await vi.waitFor(() => expect(two.store.get('block', blockId)?.name).toBe('Low crown'));
    await two.store.change('the name', [set('block', blockId, { name: 'Wide crown' })]);
    await vi.waitFor(() => expect(one.store.get('block', blockId)?.name).toBe('Wide crown'));
    expect(one.store.undo()?.label).toBe('a block');
    expect(one.store.blocks.value).toEqual([]);
  });
});

describe('two windows', () => {
  it('see each other’s changes, also those of different fields made at the same moment', async () => {
    const disk = newDisk();
    const connect = channels();
    const one = await openWindow({ disk, channel: connect() });
    await one.store.change('a block', startBlock);
    const two = await openWindow({ disk, channel: connect() });
    await Promise.all([
      one.store.change('the note', [set('block', blockId, { note: 'Dry.' })]),
      two.store.change('the price', [set('block', blockId, { priceAsked: 6500 })]),
    ]);
    await vi.waitFor(() => {
      for (const { store } of [one, two]) {
        expect(store.get('block', blockId)).toMatchObject({ note: 'Dry.', priceAsked: 6500 });
      }
    });
    expect(disk.records.get(blockId)).toEqual(one.store.get('block', blockId));
  });

  it('agree on one value when both write the same field with the same stamp', async () => {
    const disk = newDisk();
    const connect = channels();
    const one = await openWindow({ disk, channel: connect() });
    await one.store.change('a block', startBlock);
    const two = await openWindow({ disk, channel: connect() });
    await Promise.all([
      one.store.change('the note', [set('block', blockId, { note: 'Dry.' })]),
      two.store.change('the note', [set('block', blockId, { note: 'Damp.' })]),
    ]);
    await vi.waitFor(() => expect(one.store.get('block', blockId)).toEqual(two.store.get('block', blockId)));
    expect(disk.records.get(blockId)).toEqual(one.store.get('block', blockId));
  });

  it('hear nothing from a stranger on the channel', async () => {
    const connect = channels();
    const { store } = await openWindow({ channel: connect() });
    const stranger = connect();
    stranger.addEventListener('message', () => undefined);
    for (const message of [null, 7, { changed: 'all' }, { changed: [null, {}] }]) stranger.postMessage(message);
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(store.blocks.value).toEqual([]);
  });

  it('catch up after sleep', async () => {
    const disk = newDisk();
    const one = await openWindow({ disk });
    const two = await openWindow({ disk });
    await one.store.change('a block', startBlock);
    expect(two.store.blocks.value).toEqual([]);
    await two.store.refresh();
    expect(two.store.blocks.value).toHaveLength(1);
  });
});

describe('a wrong clock', () => {
  it('set back by years does not let an old value win', async () => {
    const { store, wall, disk } = await openWindow();
    await store.change('a block', startBlock);
    wall.ms -= 8 * YEAR;
    await store.change('the name', [set('block', blockId, { name: 'Low crown' })]);
    expect(disk.records.get(blockId)).toMatchObject({ name: 'Low crown' });
    const again = await openWindow({ disk, nowMs: wall.ms });
    await again.store.change('the name', [set('block', blockId, { name: 'Wide crown' })]);
    expect(disk.records.get(blockId)).toMatchObject({ name: 'Wide crown' });
  });

  it('set forward by years and then right is told, and later edits still win', async () => {
    const { store, wall, disk } = await openWindow();
    wall.ms += 20 * YEAR;
    await store.change('a block', startBlock);
    const again = await openWindow({ disk, nowMs: NEW_YEAR });
    expect(again.store.aheadMs.value).toBe(20 * YEAR);
    await again.store.change('the name', [set('block', blockId, { name: 'Low crown' })]);
    expect(disk.records.get(blockId)).toMatchObject({ name: 'Low crown' });
    const stamp = latestStamp(again.store.get('block', blockId) as AnyRecord);
    expect(parseStamp(stamp)?.ms).toBe(NEW_YEAR + 20 * YEAR);
    expect(store.aheadMs.value).toBe(0);
  });
});

describe('loading', () => {
  it('lists what it cannot read and works with the rest', async () => {
    const disk = newDisk();
    disk.records.set(id(5), { ...aBlock({ id: id(5) }), schema: 99 });
    disk.records.set(blockId, aBlock());
    const { store } = await openWindow({ disk });
    expect(store.blocks.value.map((each) => each.id)).toEqual([blockId]);
    expect(store.unreadable.value).toMatchObject([{ id: id(5), state: 'too-new' }]);
  });

  it('says when the storage was cleared, until the owner knows', async () => {
    const disk = { ...newDisk(), cleared: true };
    const { store } = await openWindow({ disk });
    expect(store.cleared.value).toBe(true);
    await store.acknowledgeCleared();
    expect(store.cleared.value).toBe(false);
    expect((await openWindow({ disk })).store.cleared.value).toBe(false);
  });

  it('keeps fields of a newer app through an edit and a save', async () => {
    const disk = newDisk();
    disk.records.set(blockId, { ...aBlock(), tint: { walnut: 2 } });
    const { store } = await openWindow({ disk });
    await store.change('the name', [set('block', blockId, { name: 'Low crown' })]);
    expect(disk.records.get(blockId)).toMatchObject({ name: 'Low crown', tint: { walnut: 2 } });
  });
});
