import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ArchiveIndex, entryAt } from '../../src/core/archive-layout.ts';
import { AppError } from '../../src/core/errors.ts';
import { keptArchive, type PreparedVolume, prepareArchive, sent } from '../../src/exports/archive/index.ts';
import { intoVolumes } from '../../src/exports/archive/volumes.ts';
import { archiveHere } from '../../src/workers/archiver.ts';
import { id, make } from '../store/make.ts';
import { benchWith, heavyPicture, type Shelf, wholeShelf } from '../support/archive-fixture.ts';
import { bagFaults, readBagInfo } from '../support/bag-faults.ts';
import { bagIn, textOf } from '../support/read-zip.ts';

const MOST = 400_000;
const onProgress = () => undefined;
const live = () => ({ onProgress, signal: new AbortController().signal });

/** Nine blocks with a photograph of 120 kB each: three to a volume of at most 400 kB would be too much, two are not. */
const heavy: Shelf = (() => {
  const photos = Array.from({ length: 9 }, (_, n) => heavyPicture(n, 120_000));
  return {
    photos,
    records: photos.flatMap(({ sha256, bytes }, n) => [
      make('block', { id: id(n + 1), name: `Block ${n}` }),
      make('photo', {
        ...{ id: id(100 + n), blockId: id(n + 1), sha256, bytes: bytes.byteLength, width: 24, height: 16 },
        thumbnail: 'e'.repeat(64),
      }),
    ]),
  };
})();
const filesOf = (volumes: readonly PreparedVolume[]): File[] => volumes.flatMap(({ file }) => file ?? []);

describe('an archive too large for one file', () => {
  it('comes in volumes, each a valid bag no larger than was asked, that together hold each photograph once', async () => {
    const shelf = heavy;
    const { tools } = benchWith(shelf, { most: MOST });
    const { ready, volumes, left } = await prepareArchive(wholeShelf, tools, live());
    expect({ volumes: volumes > 2, left, ready: ready.length }).toEqual({ volumes: true, left: 0, ready: volumes });
    const found: string[] = [];
    const groups = new Set<string | undefined>();
    for (const [i, file] of filesOf(ready).entries()) {
      expect(file.size).toBeLessThanOrEqual(MOST);
      const { files } = await bagIn(file);
      expect(bagFaults(files)).toEqual([]);
      const info = new Map(readBagInfo(files.get('bag-info.txt') as Uint8Array));
      expect(info.get('Bag-Count')).toBe(`${i + 1} of ${volumes}`);
      groups.add(info.get('Bag-Group-Identifier'));
      const index = ArchiveIndex.parse(JSON.parse(textOf(files.get('data/archive.json'))));
      for (const path of files.keys()) {
        const entry = entryAt(path);
        if (entry?.kind !== 'photograph') continue;
        found.push(entry.sha256);
        expect(index.photographs.find(({ sha256 }) => sha256 === entry.sha256)?.volume).toBe(i + 1);
      }
      // Any one volume brings back all that was written down.
      expect(JSON.parse(textOf(files.get('data/records/block-001.json'))).records).toHaveLength(9);
    }
    expect(found.sort()).toEqual(shelf.photos.map(({ sha256 }) => sha256).sort());
    expect(groups.size).toBe(1);
  });

  it('keeps the files of a block together and links the pictures of other volumes', async () => {
    const shelf = heavy;
    const { tools } = benchWith(shelf, { most: MOST });
    const { ready } = await prepareArchive(wholeShelf, tools, live());
    for (const file of filesOf(ready)) {
      const { files } = await bagIn(file);
      for (const [path, bytes] of files) {
        if (!path.startsWith('data/objects/')) continue;
        const [shown] = JSON.parse(textOf(bytes)).representation[0].digitally_shown_by;
        expect(files.has(shown.identified_by[0].content.replace('..', 'data'))).toBe(true);
      }
    }
  });

  it('goes on after the page was ended, with the volumes that were whole, and forgets those that were not', async () => {
    const { tools, keep } = benchWith(heavy, { most: MOST });
    let written = 0;
    const killed: typeof tools.archiver = async (order, payload, signal) => {
      if (++written > 2) throw new Error('The page is gone.');
      return tools.archiver(order, payload, signal);
    };
    await expect(prepareArchive(wholeShelf, { ...tools, archiver: killed }, live())).rejects.toThrow('gone');
    const kept = await keptArchive(keep);
    expect(kept?.ready.map(({ volume }) => volume)).toEqual([1, 2]);
    const names: string[] = [];
    const counted: typeof tools.archiver = (order, payload, signal) => {
      names.push(order.heading.name);
      return tools.archiver(order, payload, signal);
    };
    const { ready, made, volumes } = await prepareArchive(wholeShelf, { ...tools, archiver: counted }, live());
    expect(names).toHaveLength(volumes - 2);
    expect(made).toBe(kept?.made);
    for (const file of filesOf(ready)) expect(bagFaults((await bagIn(file)).files)).toEqual([]);
  });

  it('goes on with a locked one only with the passphrase that opens what is there', async () => {
    const bench = benchWith(heavy, { most: MOST });
    const asked: string[] = [];
    const opens = async (file: File, passphrase: string): Promise<boolean> => {
      asked.push(file.name);
      return passphrase === 'calico straw buckram';
    };
    let written = 0;
    const unlocked: typeof bench.tools.archiver = async (order, payload, signal) => {
      if (++written === 2) throw new Error('The page is gone.');
      // Locking is not what is looked at here, and takes long.
      return bench.tools.archiver({ ...order, passphrase: null }, payload, signal);
    };
    const tools = { ...bench.tools, opens, archiver: unlocked };
    const locked = { ...wholeShelf, passphrase: 'calico straw buckram' };
    await expect(prepareArchive(locked, tools, live())).rejects.toThrow('gone');
    const kept = await keptArchive(bench.keep);
    expect([kept?.wish.isLocked, kept?.isFull, kept?.ready.length]).toEqual([true, false, 1]);
    // A page that knows nothing of the one before.
    const next = { ...tools, keep: { ...bench.keep, passphrases: new Map() } };
    const other = { ...locked, passphrase: 'something else' };
    await expect(prepareArchive(other, next, live())).rejects.toMatchObject({ code: 'archive-passphrase' });
    const { ready, made, volumes } = await prepareArchive(locked, next, live());
    expect([made, ready.length]).toEqual([kept?.made, volumes]);
    expect(asked).toEqual([ready[0]?.name, ready[0]?.name]);
    expect(JSON.stringify(await bench.keep.read())).not.toContain('calico');
  });

  it('is made anew when the records have changed since', async () => {
    const shelf = heavy;
    const { tools, disk } = benchWith(shelf, { most: MOST });
    await prepareArchive(wholeShelf, tools, live());
    disk.records.set(id(999), make('block', { id: id(999), name: 'New' }));
    let begun = 0;
    const counted: typeof tools.archiver = (...given) => {
      begun += 1;
      return tools.archiver(...given);
    };
    const { ready, volumes } = await prepareArchive(wholeShelf, { ...tools, archiver: counted }, live());
    expect(begun).toBe(volumes);
    expect(ready).toHaveLength(volumes);
  });

  it('leaves nothing when it is stopped, at whatever photograph', async () => {
    for (const stopAt of [0, 1, 4, 8]) {
      const { tools, keep } = benchWith(heavy, { most: MOST });
      const control = new AbortController();
      const work = prepareArchive(wholeShelf, tools, {
        signal: control.signal,
        onProgress: ({ stage, done }) => {
          if (stage === 'writing' && done === stopAt) control.abort();
        },
      });
      expect(await work.catch((error: unknown) => error)).toBe(control.signal.reason);
      expect(await keptArchive(keep)).toBeNull();
    }
  });

  it('hands over what fits and goes on once that is sent, when the phone is nearly full', async () => {
    const shelf = heavy;
    const bench = benchWith(shelf, { most: MOST });
    const { keep } = bench;
    let files: File[] = [];
    const full = new AppError('storage-full');
    let room = 2;
    const tools = {
      ...bench.tools,
      archiver: async (...given: Parameters<typeof bench.tools.archiver>) => {
        if (room === 0) throw full;
        room -= 1;
        return bench.tools.archiver(...given);
      },
    };
    let rounds = 0;
    for (;;) {
      const { ready, left, volumes } = await prepareArchive(wholeShelf, tools, live());
      files = [...files, ...filesOf(ready)];
      for (const volume of ready) {
        await sent(volume, keep);
        room += 1;
      }
      rounds += 1;
      if (left === 0) {
        expect(files).toHaveLength(volumes);
        break;
      }
    }
    expect(rounds).toBeGreaterThan(1);
    expect(new Set(files.map(({ name }) => name)).size).toBe(files.length);
    expect(await keptArchive(keep)).toBeNull();
    room = 0;
    await expect(prepareArchive(wholeShelf, tools, live())).rejects.toBe(full);
  });

  it('counts every photograph once, and up', async () => {
    const { tools } = benchWith(heavy, { most: MOST });
    const counts: number[] = [];
    await prepareArchive(wholeShelf, tools, {
      signal: new AbortController().signal,
      onProgress: ({ stage, done, of }) => {
        if (stage !== 'writing') return;
        counts.push(done);
        expect(of).toBe(9);
      },
    });
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(counts.at(-1)).toBe(9);
  });
});

describe('spreading files over volumes', () => {
  const file = fc.record({ bytes: fc.nat(3_000_000), path: fc.stringMatching(/^[a-z0-9/-]{1,80}$/) });

  it('loses none, doubles none but the shared ones, and keeps to the size unless one file alone is larger', () => {
    fc.assert(
      fc.property(
        fc.array(file, { maxLength: 5 }),
        fc.array(fc.array(file, { maxLength: 6 }), { maxLength: 12 }),
        (few, groups) => {
          const most = 4_000_000;
          const shared = few.map(({ bytes, path }) => ({ path, bytes: bytes % 50_000 }));
          const { volumes } = intoVolumes(shared, groups, most);
          const all = groups.flat();
          const found = volumes.flat().filter((one) => !shared.includes(one));
          expect(found).toEqual(all);
          for (const files of volumes) {
            expect(files.filter((one) => shared.includes(one))).toEqual(shared);
            const own = files.length - shared.length;
            const bytes = files.reduce((sum, one) => sum + one.bytes, 0);
            expect(own <= 1 || bytes < most).toBe(true);
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  it('puts shared files into one volume once they would crowd out the rest', () => {
    const shared = [{ path: 'records', bytes: 3_000_000 }];
    const groups = [[{ path: 'a', bytes: 3_000_000 }], [{ path: 'b', bytes: 3_000_000 }]];
    const { volumes } = intoVolumes(shared, groups, 4_000_000);
    expect(volumes.flat()).toHaveLength(3);
  });
});

describe('an archiver that fails', () => {
  it('says whether the storage is full, and leaves no file', async () => {
    let aborted = 0;
    const place = (error: Error) => async () => ({
      write() {
        throw error;
      },
      close: async () => ({ bytes: 0, file: null }),
      async abort() {
        aborted += 1;
      },
    });
    const order = {
      heading: { name: 'a.zip', folder: 'a', made: '2026-01-01T00:00:00Z', info: [], readme: '' },
      destination: { to: 'memory' },
      passphrase: null,
    } as const;
    const nothing = async function* () {};
    const { signal } = new AbortController();
    const full = new DOMException('No room.', 'QuotaExceededError');
    await expect(archiveHere(place(full))(order, nothing(), signal)).rejects.toMatchObject({ code: 'storage-full' });
    await expect(archiveHere(place(new Error('?')))(order, nothing(), signal)).rejects.toMatchObject({
      code: 'export-failed',
    });
    expect(aborted).toBe(2);
  });
});
