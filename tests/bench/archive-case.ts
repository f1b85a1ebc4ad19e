import { createHash } from 'node:crypto';
import { closeSync, openSync, unlinkSync, writeSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { catalogue } from '../../src/catalogue/index.ts';
import type { AnyRecord } from '../../src/core/records.ts';
import { type ArchiveTools, prepareArchive } from '../../src/exports/archive/index.ts';
import { memoryKeep } from '../../src/exports/archive/keep.ts';
import { sha256 } from '../../src/photos/sha256.ts';
import type { OpenPlace } from '../../src/workers/archive-places.ts';
import { archiveHere } from '../../src/workers/archiver.ts';
import { DEVICE, id, make, NEW_YEAR } from '../store/make.ts';

/** Photographs of noise as files named by their hash, twenty to a block, with the records that name them. */
export async function makeShelf(folder: string, photos: number, bytes: number): Promise<AnyRecord[]> {
  const records: AnyRecord[] = [];
  const noise = new Uint8Array(bytes);
  let state = 1;
  for (let i = 0; i < bytes; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    noise[i] = state >>> 24;
  }
  for (let n = 0; n < photos; n++) {
    const block = 1 + Math.floor(n / 20);
    if (n % 20 === 0) records.push(make('block', { id: id(block), name: `Block ${block}`, blockType: 'domeCrown' }));
    new DataView(noise.buffer).setUint32(0, n);
    const hash = createHash('sha256').update(noise).digest('hex');
    await writeFile(join(folder, `${hash}.jpg`), noise);
    records.push(
      make('photo', {
        ...{ id: id(10_000 + n), blockId: id(block), sha256: hash, bytes, width: 2048, height: 1536 },
        thumbnail: 'a'.repeat(64),
      }),
    );
  }
  return records;
}

/** Writes where a phone would write to its private files. */
const filePlace =
  (folder: string): OpenPlace =>
  async (name) => {
    const path = join(folder, name);
    const file = openSync(path, 'w');
    let bytes = 0;
    return {
      write(chunk) {
        writeSync(file, chunk);
        bytes += chunk.length;
      },
      async close() {
        closeSync(file);
        return { bytes, file: null };
      },
      async abort() {
        closeSync(file);
        unlinkSync(path);
      },
    };
  };

export interface ArchiveRun {
  readonly ms: number;
  readonly volumes: number;
  readonly bytes: number;
  readonly largest: number;
}

/** Prepares the archive of a shelf made above; each photograph is read and checked as storage does. */
export async function archiveRun(records: readonly AnyRecord[], from: string, to: string): Promise<ArchiveRun> {
  const tools: ArchiveTools = {
    storage: {
      loadAll: async () => ({ records, unreadable: [] }),
      async photoBytes(hash) {
        const bytes = new Uint8Array(await readFile(join(from, `${hash}.jpg`))).buffer;
        if ((await sha256(bytes)) !== hash) throw new Error(`${hash} is damaged.`);
        return { bytes, mime: 'image/jpeg' };
      },
      photoKeys: async () => [],
      identity: async () => ({ device: DEVICE }),
      estimate: async () => null,
    },
    catalogue,
    now: () => NEW_YEAR,
    newId: () => id(1),
    report: () => undefined,
    archiver: archiveHere(filePlace(to)),
    keep: { ...memoryKeep(), lasts: true },
  };
  const begun = performance.now();
  const { ready, volumes } = await prepareArchive(
    { scope: { kind: 'shelf' }, isWhole: true, passphrase: null },
    tools,
    { onProgress: () => undefined, signal: new AbortController().signal },
  );
  const sizes = ready.map(({ bytes }) => bytes);
  return {
    ms: performance.now() - begun,
    volumes,
    bytes: sizes.reduce((sum, bytes) => sum + bytes, 0),
    largest: Math.max(...sizes),
  };
}
