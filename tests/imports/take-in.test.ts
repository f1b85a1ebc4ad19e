import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import { canonical } from '../../src/core/canonical.ts';
import { removed, withFields } from '../../src/core/changes.ts';
import { AppError } from '../../src/core/errors.ts';
import { otherWordsIn } from '../../src/core/merge-words.ts';
import type { AnyRecord } from '../../src/core/records.ts';
import { STILL_OUT_NOTE, stillOutFrom } from '../../src/imports/journal.ts';
import { previewOf } from '../../src/imports/preview.ts';
import { readHere } from '../../src/imports/reader.ts';
import { takeIn } from '../../src/imports/take-in.ts';
import { remove, set } from '../../src/store/edits.ts';
import type { Repository } from '../../src/store/repository.ts';
import { createStore, type Store } from '../../src/store/store.ts';
import { idbKeeper } from '../contracts/idb-keeper.ts';
import { aBlock, aFinding, aPhoto, aSurvey, at, DEVICE, id, make, NEW_YEAR, newIds } from '../store/make.ts';
import { openWindow, type Window } from '../store/window.ts';
import { bagOf, sum } from '../support/hostile-zip.ts';
import { archiveOf, type Contents, fileOf, jpegOf, payloadOf, photoFields } from './archives.ts';

const NOW = NEW_YEAR + 60_000;
const THERE = 'othrphon';
const pictures = ['front', 'tip', 'rope line', 'collar'].map((words) => jpegOf(words));
const block = aBlock({ stamp: at(1, THERE), note: 'Dry.' });
const survey = aSurvey({ stamp: at(1, THERE) });
const finding = aFinding({ stamp: at(1, THERE), number: 1 });
const photos = pictures.map((picture, n) => aPhoto({ ...photoFields(picture), id: id(40 + n), stamp: at(2, THERE) }));
const other = aBlock({ id: id(60), name: 'Pillbox', stamp: at(3, THERE) });
const records: readonly AnyRecord[] = [block, survey, finding, ...photos, other];
const whole: Contents = { records, pictures };

const going = () => ({ signal: new AbortController().signal, onStep: () => undefined });

async function opened(file: File | readonly File[], passphrase: string | null = null, nowMs = NOW) {
  const reader = readHere();
  const archive = await reader.open(Array.isArray(file) ? file : [file], passphrase, nowMs);
  if (archive === 'locked') throw new Error('Locked.');
  return { reader, archive };
}

/** Takes a file in whole, or only some blocks. */
async function taken(store: Store, file: File | readonly File[], blocks: ReadonlySet<string> | null = null) {
  const { reader, archive } = await opened(file);
  return takeIn(archive, blocks, { store, reader, label: 'the restore' }, going());
}
const stateOf = ({ disk }: Window) => canonical([[...disk.records.values()], [...disk.bytes.keys()].sort()]);

describe('taking an archive in', () => {
  it('brings every record and photograph back as it was, and again changes nothing', async () => {
    const phone = await openWindow({ nowMs: NOW });
    expect(await taken(phone.store, archiveOf(whole))).toMatchObject({ changed: 8, pictures: 4, missingPictures: 0 });
    expect(phone.store.findingsOf(id(1))).toEqual([finding]);
    for (const picture of pictures) {
      expect(new Uint8Array((await phone.store.photoBytes(sum(picture)))?.bytes ?? new ArrayBuffer())).toEqual(picture);
    }
    const before = stateOf(phone);
    const rows = phone.disk.changes.length;
    expect(await taken(phone.store, archiveOf(whole))).toMatchObject({ changed: 0, pictures: 0, missingPictures: 0 });
    expect([stateOf(phone), phone.disk.changes.length]).toEqual([before, rows]);
  });

  it('hears both where a record stands twice in it, whichever comes last', async () => {
    const later = withFields(block, { note: 'Mouldy.' }, at(500, THERE));
    for (const pair of [
      [block, later],
      [later, block],
    ]) {
      const phone = await openWindow({ nowMs: NOW });
      await taken(phone.store, archiveOf({ records: pair }));
      expect(phone.store.get('block', id(1))?.note).toBe('Mouldy.');
      const apart = await openWindow({ nowMs: NOW });
      const volumes = pair.map((record, n) =>
        fileOf(bagOf(payloadOf({ records: [record], volume: n + 1, volumes: 2 })), `${n}.zip`),
      );
      await taken(apart.store, volumes);
      expect(apart.store.get('block', id(1))?.note).toBe('Mouldy.');
    }
  });

  it('can be undone, and leaves what was there before as it was', async () => {
    const phone = await openWindow({ nowMs: NOW });
    await taken(phone.store, archiveOf({ records: [block, survey] }));
    await phone.store.change('a note', [set('block', id(1), { note: 'Damp.' })]);
    const newer = withFields(block, { note: 'Mouldy.', priceAsked: 4500 }, at(61_000, THERE));
    await taken(phone.store, archiveOf({ ...whole, records: [newer, ...records.slice(1)] }));
    expect(phone.store.get('block', id(1))).toMatchObject({ note: 'Mouldy.', priceAsked: 4500 });
    expect(phone.store.undoable.value).toBe('the restore');
    await phone.store.undo()?.saved;
    expect(phone.store.get('block', id(1))).toMatchObject({ note: 'Damp.', priceAsked: null });
    expect(otherWordsIn(phone.store.find(id(1)) as AnyRecord)).toEqual([]);
    expect([phone.store.findingsOf(id(1)), phone.store.photosOf(id(1)), phone.store.blocks.value.length]).toEqual([
      [],
      [],
      1,
    ]);
  });

  it('of chosen blocks brings these with all that belongs to them and their sale, and nothing else', async () => {
    const phone = await openWindow({ nowMs: NOW });
    const sale = make('sale', { id: id(70), stamp: at(1, THERE) });
    const lot = aBlock({ saleId: sale.id, stamp: at(1, THERE) });
    const settings = make('settings', { id: id(71), ownerName: 'Wren', stamp: at(1, THERE) });
    const file = archiveOf({ ...whole, records: [lot, sale, settings, ...records.slice(1)] });
    await taken(phone.store, file, new Set([lot.id]));
    expect([...phone.disk.records.keys()].sort()).toEqual(
      [lot, sale, survey, finding, ...photos].map((one) => one.id).sort(),
    );
  });

  it('says before what it would change', async () => {
    const phone = await openWindow({ nowMs: NOW });
    await taken(phone.store, archiveOf({ records: [block, survey, other] }));
    await phone.store.change('a note', [set('block', id(1), { note: 'Damp.' })]);
    const theirs = [
      withFields(block, { note: 'Mouldy.' }, at(61_000, THERE)),
      finding,
      ...photos,
      removed(other, at(62_000, THERE)),
      aBlock({ id: id(80), name: 'Cloche', stamp: at(9, THERE) }),
    ];
    const preview = previewOf(theirs, phone.store, new Set([sum(pictures[0] as Uint8Array)]));
    expect(preview.blocks.map(({ block: { name }, fate, changes }) => [name, fate, changes])).toEqual([
      ['Pillbox', 'removed', 1],
      ['Tall crown', 'changed', 6],
      ['Cloche', 'new', 1],
    ]);
    expect(preview.blocks[1]?.conflicts.map(({ text }) => text)).toEqual(['Damp.']);
    expect(preview.blocks[1]?.pictures).toHaveLength(3);
  });

  it('keeps rows it cannot read as they came, and finds them again', async () => {
    const newer = { ...aBlock({ id: id(90) }), schema: 99, shape: { turned: true } };
    const strange = { type: 'hatPin', id: id(91), schema: 1 };
    const phone = await openWindow({ nowMs: NOW });
    await taken(phone.store, archiveOf({ records: [block, newer], unreadable: [strange, 'not even a record'] }));
    expect([phone.disk.records.get(id(90)), phone.disk.records.get(id(91))]).toEqual([newer, strange]);
    expect(phone.store.kept.value.map(({ raw }) => raw)).toEqual(['not even a record']);
    await taken(phone.store, archiveOf({ records: [block, { ...newer, note: 'another version' }] }));
    expect(phone.store.kept.value.map(({ raw }) => (raw as { note?: string }).note)).toContain('another version');
    expect(phone.disk.records.get(id(90))).toEqual(newer);
  });

  it('keeps what is dated in the future aside until the clock gets there, and lets no edit here look like the future', async () => {
    const phone = await openWindow({ nowMs: NOW });
    const ahead = withFields(block, { note: 'From next year.' }, at(365 * 86_400_000, THERE));
    await taken(phone.store, archiveOf({ records: [ahead, other] }));
    expect(phone.store.blocks.value.map(({ name }) => name)).toEqual(['Pillbox']);
    expect(phone.store.kept.value.map(({ aheadMs }) => Math.round((aheadMs ?? 0) / 86_400_000))).toEqual([365]);
    await phone.store.change('a note', [set('block', other.id, { note: 'Now.' })]);
    expect(phone.store.find(other.id)?.stamps.note?.slice(0, 12)).toBe(NOW.toString(16).padStart(12, '0'));
    expect(await phone.store.joinKept()).toBe(0);
    phone.wall.ms = NEW_YEAR + 366 * 86_400_000;
    expect(await phone.store.joinKept()).toBe(1);
    expect([phone.store.get('block', id(1))?.note, phone.store.kept.value, phone.disk.kept.size]).toEqual([
      'From next year.',
      [],
      0,
    ]);
  });

  it('takes in the volumes that are there, and remembers what the others hold until they are in too', async () => {
    const listed = new Map([1, 2, 3].map((n) => [n, pictures.slice(n - 1, n === 3 ? 4 : n)]));
    const [first, second, third] = [...listed].map(([volume, those]) => {
      const contents = { records, pictures: those, volume, volumes: 3, listed };
      return fileOf(bagOf(payloadOf(contents), `blockworth-20260101-000000-${volume}of3`));
    }) as [File, File, File];
    const phone = await openWindow({ nowMs: NOW });
    const out = async () =>
      stillOutFrom(await phone.store.repository.note(STILL_OUT_NOTE)).map(({ volumes, of, pictures: many }) => ({
        ...{ volumes, of, many },
      }));
    expect(await taken(phone.store, second)).toMatchObject({ changed: 8, pictures: 1, missingPictures: 3 });
    expect(await out()).toEqual([{ volumes: [1, 3], of: 3, many: 3 }]);
    // One block of another volume, whose photographs are not the ones that lack.
    await taken(phone.store, first, new Set([other.id]));
    expect(await out()).toEqual([{ volumes: [1, 3], of: 3, many: 3 }]);
    expect(await taken(phone.store, [first, second])).toMatchObject({ changed: 0, pictures: 1, missingPictures: 2 });
    expect(await out()).toEqual([{ volumes: [3], of: 3, many: 2 }]);
    await taken(phone.store, third);
    expect(await phone.store.repository.note(STILL_OUT_NOTE)).toBeNull();
    const stranger = archiveOf({ ...whole, group: 'urn:uuid:another' });
    await expect(opened([first, stranger])).rejects.toMatchObject({ code: 'archive-mixed' });
  });
});

describe('two phones', () => {
  /** Both have the same block; then each goes its way. */
  async function pair(): Promise<[Window, Window]> {
    const [a, b] = [
      await openWindow({ nowMs: NOW, device: 'aaaaaaaa' }),
      await openWindow({ nowMs: NOW, device: 'bbbbbbbb' }),
    ];
    for (const phone of [a, b]) await taken(phone.store, archiveOf({ ...whole, records: records.slice(0, 7) }));
    return [a, b];
  }
  const backUp = ({ disk }: Window): File =>
    archiveOf({ records: structuredClone([...disk.records.values()]), pictures });
  const everything = ({ disk }: Window) =>
    canonical([...disk.records.values()].sort((x, y) => ((x as AnyRecord).id < (y as AnyRecord).id ? -1 : 1)));

  it('bring a removed block back whole when a finding of it was worked on elsewhere, and agree in the end', async () => {
    const [a, b] = await pair();
    await a.store.change('the block', [remove(id(1))]);
    b.wall.ms += 5000;
    await b.store.change('a note', [set('finding', id(3), { note: 'Opens when damp.' })]);
    const [fromA, fromB] = [backUp(a), backUp(b)];
    a.wall.ms += 9000;
    b.wall.ms += 9000;
    for (const [phone, file] of [
      [a, fromB],
      [b, fromA],
    ] as const) {
      await taken(phone.store, file);
      expect(phone.store.get('block', id(1))).toBeDefined();
      expect(phone.store.findingsOf(id(1)).map(({ note }) => note)).toEqual(['Opens when damp.']);
      expect([phone.store.surveysOf(id(1)).length, phone.store.photosOf(id(1)).length]).toEqual([1, 4]);
    }
    await taken(a.store, backUp(b));
    await taken(b.store, backUp(a));
    expect(everything(a)).toBe(everything(b));
    expect((await taken(a.store, backUp(b))).changed).toBe(0);
  });

  it('bring it back too for a finding made earlier that the remover never saw', async () => {
    const [a] = await pair();
    const unseen = aFinding({ id: id(501), number: 2, stamp: at(60_500, 'bbbbbbbb') });
    a.wall.ms += 5000;
    await a.store.change('the block', [remove(id(1))]);
    await taken(a.store, archiveOf({ records: [unseen] }));
    expect(a.store.get('block', id(1))).toBeDefined();
    expect(a.store.findingsOf(id(1))).toHaveLength(2);
  });

  it('let a removal stand that nobody worked against', async () => {
    const [a, b] = await pair();
    a.wall.ms += 5000;
    await a.store.change('the block', [remove(id(1))]);
    await taken(b.store, backUp(a));
    expect([b.store.get('block', id(1)), b.store.findingsOf(id(1)), b.store.photosOf(id(1))]).toEqual([
      undefined,
      [],
      [],
    ]);
  });
});

describe('a phone that dies while taking an archive in', () => {
  class Dead extends Error {}

  /** A storage whose page dies before, or right after, its n-th transaction: nothing it says is heard any more. */
  function dying(repository: Repository, n: number, after: boolean) {
    let count = 0;
    const counted =
      <A extends unknown[], R>(write: (...all: A) => Promise<R>) =>
      async (...all: A): Promise<R> => {
        count += 1;
        if (count > n || (count === n && !after)) throw new Dead();
        const result = await write(...all);
        if (count === n) throw new Dead();
        return result;
      };
    return {
      mood: {
        ...repository,
        commit: counted(repository.commit),
        setNote: counted(repository.setNote),
        deletePhotoBytes: counted(repository.deletePhotoBytes),
      },
      count: () => count,
    };
  }

  async function openedOn(repository: Repository): Promise<Store> {
    const store = createStore({ repository, now: () => NOW, newId: newIds(9000), device: DEVICE });
    await store.load();
    return store;
  }

  it('loses nothing and doubles nothing when it is done again, wherever it was cut', async () => {
    const many: AnyRecord[] = [
      ...records,
      ...Array.from({ length: 450 }, (_, n) => aFinding({ id: id(3000 + n), number: n + 2, stamp: at(4, THERE) })),
    ];
    const file = archiveOf({ records: many, pictures });
    const { archive, reader } = await opened(file);
    const mine = aBlock({ note: 'Mine.', stamp: at(50_000) });

    async function run(n: number, after: boolean) {
      const keeper = idbKeeper();
      const first = await keeper.open();
      await first.commit({ puts: [mine], changes: [] });
      const { mood, count } = dying(first, n, after);
      const died = await takeIn(archive, null, { store: await openedOn(mood), reader, label: 'x' }, going()).then(
        () => false,
        () => true,
      );
      await first.close();
      // The next start sweeps what no record needs, unless it knows of the import.
      const second = await keeper.open();
      const store = await openedOn(second);
      const wasTold = (await second.note('import')) !== null;
      await store.sweep();
      const kept = (await second.photoKeys()).length;
      await takeIn(archive, null, { store, reader, label: 'x' }, going());
      const loaded = await second.loadAll();
      const bytes = await second.photoKeys();
      const note = await second.note('import');
      await keeper.dispose();
      return { died, wasTold, kept, steps: count(), note, loaded, bytes };
    }

    const sound = await run(Number.POSITIVE_INFINITY, false);
    expect(sound.died).toBe(false);
    expect(sound.steps).toBeGreaterThan(5);
    for (let n = 1; n <= sound.steps; n++) {
      for (const after of [false, true]) {
        const cut = await run(n, after);
        expect(cut.died).toBe(true);
        expect(canonical(cut.loaded)).toBe(canonical(sound.loaded));
        expect(cut.bytes.sort()).toEqual(sound.bytes.sort());
        expect([cut.note, cut.loaded.records.length]).toEqual([null, many.length]);
        // Told of at the next start, until it is done.
        if (n > 1 && n < sound.steps) expect(cut.wasTold).toBe(true);
      }
    }
  }, 60_000);

  it('keeps the photographs it had brought, so that going on is quick', async () => {
    const keeper = idbKeeper();
    const first = await keeper.open();
    const { archive, reader } = await opened(archiveOf(whole));
    const { mood } = dying(first, 2, true);
    await takeIn(archive, null, { store: await openedOn(mood), reader, label: 'x' }, going()).catch(() => undefined);
    await first.close();
    const second = await keeper.open();
    const store = await openedOn(second);
    expect(await store.sweep()).toBe(0);
    expect(await second.photoKeys()).toHaveLength(4);
    let read = 0;
    const counting = {
      ...reader,
      picture(hash: string) {
        read += 1;
        return reader.picture(hash);
      },
    };
    await takeIn(archive, null, { store, reader: counting, label: 'x' }, going());
    expect(read).toBe(0);
    await keeper.dispose();
  });

  it('that finds no room among its photographs says so and takes back what it had brought', async () => {
    const keeper = idbKeeper();
    const repository = await keeper.open();
    // More than go into one transaction: the first is written, the second finds the disk full.
    const many = Array.from({ length: 130 }, (_, n) => jpegOf(`one of many ${n}`));
    const named = many.map((picture, n) => aPhoto({ ...photoFields(picture), id: id(500 + n), stamp: at(2, THERE) }));
    const { archive, reader } = await opened(archiveOf({ records: [block, survey, ...named], pictures: many }));
    let written = 0;
    const full: Repository = {
      ...repository,
      async commit(batch) {
        if (batch.photos && ++written === 2) throw new AppError('storage-full');
        return repository.commit(batch);
      },
    };
    const store = await openedOn(full);
    const taking = takeIn(archive, null, { store, reader, label: 'x' }, going());
    await expect(taking).rejects.toMatchObject({ code: 'archive-no-room' });
    expect(written).toBe(2);
    expect([await repository.photoKeys(), (await repository.loadAll()).records]).toEqual([[], []]);
    expect(await repository.note('import')).toBeNull();
    await keeper.dispose();
  });

  it('stopped by a tap leaves nothing', async () => {
    const phone = await openWindow({ nowMs: NOW });
    const { archive, reader } = await opened(archiveOf(whole));
    const control = new AbortController();
    const steps: string[] = [];
    const stopping = takeIn(
      archive,
      null,
      { store: phone.store, reader, label: 'x' },
      {
        signal: control.signal,
        onStep: ({ stage, done }) => {
          steps.push(`${stage} ${done}`);
          if (done === 2) control.abort();
        },
      },
    );
    await expect(stopping).rejects.toThrow();
    expect(steps).toEqual(['photographs 0', 'photographs 1', 'photographs 2']);
    expect([phone.disk.records.size, phone.disk.bytes.size, phone.disk.notes.size]).toEqual([0, 0, 0]);
  });
});
