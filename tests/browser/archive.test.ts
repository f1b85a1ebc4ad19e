import { BlobReader, Uint8ArrayWriter, ZipReader } from '@zip.js/zip.js';
import { afterEach, describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import {
  type ArchiveTools,
  discardArchive,
  keepHere,
  keptArchive,
  prepareArchive,
  sent,
} from '../../src/exports/archive/index.ts';
import { createMemoryRepository, newDisk } from '../../src/store/memory.ts';
import { PRIVATE_FOLDER } from '../../src/workers/archive-places.ts';
import { archiveHere, archiveInWorker } from '../../src/workers/archiver.ts';
import { id, make, NEW_YEAR } from '../store/make.ts';

const PHOTO = 200_000;
const PHOTOS = 16;
const MOST = 1_000_000;
const startWorker = (): Worker =>
  new Worker(new URL('../../src/workers/archive.worker.ts', import.meta.url), { type: 'module' });

const hex = (digest: ArrayBuffer): string =>
  Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');

// What is remembered beside the files lies in the device's own notes.
const keep = await keepHere(createMemoryRepository());

/** Photographs of noise on one block; every read of one is counted. */
async function device(): Promise<{ tools: ArchiveTools; reads: () => number }> {
  const disk = newDisk();
  disk.records.set(id(1), make('block', { id: id(1), name: 'Tall crown' }));
  for (let n = 0; n < PHOTOS; n++) {
    const bytes = new Uint8Array(PHOTO);
    for (let at = 0; at < PHOTO; at += 65_536) crypto.getRandomValues(bytes.subarray(at, Math.min(at + 65_536, PHOTO)));
    const sha256 = hex(await crypto.subtle.digest('SHA-256', bytes));
    disk.bytes.set(sha256, { sha256, bytes: bytes.buffer, mime: 'image/jpeg' });
    disk.records.set(
      id(100 + n),
      make('photo', {
        ...{ id: id(100 + n), blockId: id(1), sha256, bytes: PHOTO, width: 10, height: 10 },
        thumbnail: 'a'.repeat(64),
      }),
    );
  }
  const repository = createMemoryRepository(disk);
  let reads = 0;
  let ids = 5000;
  return {
    reads: () => reads,
    tools: {
      storage: {
        ...repository,
        photoBytes(sha256) {
          reads += 1;
          return repository.photoBytes(sha256);
        },
      },
      catalogue,
      now: () => NEW_YEAR,
      newId: () => id(ids++),
      keep,
      report: () => undefined,
      archiver: archiveInWorker(startWorker),
      most: MOST,
    },
  };
}

const whole = { scope: { kind: 'shelf' }, isWhole: true, passphrase: null } as const;
const live = () => ({ onProgress: () => undefined, signal: new AbortController().signal });

async function privateFiles(): Promise<string[]> {
  const root = await navigator.storage.getDirectory();
  const folder = (await root.getDirectoryHandle(PRIVATE_FOLDER, { create: true })) as FileSystemDirectoryHandle & {
    keys(): AsyncIterable<string>;
  };
  const names: string[] = [];
  for await (const name of folder.keys()) names.push(name);
  return names.sort();
}

/** Photographs in a volume whose bytes have the hash they are named by. */
async function soundPhotographs(file: File): Promise<string[]> {
  const reader = new ZipReader(new BlobReader(file), { checkSignature: true, useWebWorkers: false });
  const found: string[] = [];
  for (const entry of await reader.getEntries()) {
    const name = /photographs\/([0-9a-f]{64})\.jpg$/.exec(entry.filename)?.[1];
    if (!name || entry.directory) continue;
    const bytes = await entry.getData(new Uint8ArrayWriter());
    if (hex(await crypto.subtle.digest('SHA-256', bytes)) === name) found.push(name);
  }
  await reader.close();
  return found;
}

afterEach(() => discardArchive(keep));

describe('an archive written beside the page into private files', () => {
  it('comes as files on the disk, in volumes that hold every photograph whole', async () => {
    const { tools, reads } = await device();
    const { ready, volumes, left } = await prepareArchive(whole, tools, live());
    expect(left).toBe(0);
    expect(volumes).toBeGreaterThan(3);
    expect(await privateFiles()).toEqual(ready.map(({ name }) => name));
    const found = (await Promise.all(ready.map(({ file }) => soundPhotographs(file as File)))).flat();
    expect(new Set(found).size).toBe(PHOTOS);
    expect(reads()).toBe(PHOTOS);
    for (const { file, bytes, name } of ready) {
      expect(file).toMatchObject({ size: bytes, name, type: 'application/zip' });
      expect(bytes).toBeLessThanOrEqual(MOST);
    }
  });

  it('asks for a photograph only when the one before is written', async () => {
    const { tools } = await device();
    let held = 0;
    let most = 0;
    const archiver: ArchiveTools['archiver'] = (order, payload, signal) => {
      async function* counted() {
        for await (const file of payload) {
          held += 1;
          most = Math.max(most, held);
          yield file;
          // The worker came back for more: this one is on its way to the disk.
          held -= 1;
        }
      }
      return tools.archiver(order, counted(), signal);
    };
    await prepareArchive(whole, { ...tools, archiver }, live());
    expect(most).toBe(1);
  });

  it('stops at once and leaves nothing, whether it writes or works out a key', async () => {
    for (const passphrase of [null, 'four words that are long enough']) {
      const { tools } = await device();
      const control = new AbortController();
      const work = prepareArchive({ ...whole, passphrase }, tools, {
        signal: control.signal,
        onProgress: ({ stage, done }) => {
          if (stage === 'writing' && done >= (passphrase === null ? 6 : 0)) control.abort();
        },
      });
      expect(await work.catch((error: unknown) => error)).toBe(control.signal.reason);
      expect(await privateFiles()).toEqual([]);
      expect(await keptArchive(keep)).toBeNull();
    }
  });

  it('takes up whole volumes again after the page was ended, and clears away the half one', async () => {
    const { tools, reads } = await device();
    let volumes = 0;
    const ended: ArchiveTools['archiver'] = async (order, payload, signal) => {
      if (++volumes < 3) return tools.archiver(order, payload, signal);
      // What a page that is ended leaves: a file begun and nobody to clear it away.
      const root = await navigator.storage.getDirectory();
      const folder = await root.getDirectoryHandle(PRIVATE_FOLDER);
      const stream = await (await folder.getFileHandle(order.heading.name, { create: true })).createWritable();
      await stream.write('half');
      await stream.close();
      throw new Error('ended');
    };
    await expect(prepareArchive(whole, { ...tools, archiver: ended }, live())).rejects.toThrow('ended');
    expect(await privateFiles()).toHaveLength(3);
    expect((await keptArchive(keep))?.ready).toHaveLength(2);
    const before = reads();
    const { ready } = await prepareArchive(whole, tools, live());
    expect(reads() - before).toBeLessThan(PHOTOS);
    const found = (await Promise.all(ready.map(({ file }) => soundPhotographs(file as File)))).flat();
    expect(new Set(found).size).toBe(PHOTOS);
  });

  it('is taken away volume by volume as it is sent', async () => {
    const { tools } = await device();
    const { ready } = await prepareArchive(whole, tools, live());
    for (const [i, volume] of ready.entries()) {
      await sent(volume, keep);
      expect(await privateFiles()).toHaveLength(ready.length - i - 1);
    }
    expect(await keptArchive(keep)).toBeNull();
  });

  it('is the same on the page itself, for a browser that starts no worker, and in memory where nothing may be stored', async () => {
    const { tools } = await device();
    const inWorker = await prepareArchive(whole, tools, live());
    const names = inWorker.ready.map(({ name, bytes }) => [name, bytes]);
    await discardArchive(keep);
    const onPage = await prepareArchive(whole, { ...tools, archiver: archiveHere() }, live());
    expect(onPage.ready.map(({ name, bytes }) => [name, bytes])).toEqual(names);
    const first = onPage.ready[0]?.file as File;
    const inMemory: ArchiveTools['archiver'] = (order, payload, signal) =>
      tools.archiver({ ...order, destination: { to: 'memory' } }, payload, signal);
    await discardArchive(keep);
    let file: File | null = null;
    const kept: ArchiveTools['archiver'] = async (...given) => {
      const written = await inMemory(...given);
      file ??= written.file;
      return written;
    };
    await prepareArchive(whole, { ...tools, archiver: kept }, live());
    expect((file as File | null)?.size).toBe(first.size);
  });
});
