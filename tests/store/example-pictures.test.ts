import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { bringPictures, type PictureMeans } from '../../src/demo/bring-pictures.ts';
import { lanthorn } from '../../src/demo/lanthorn.ts';
import { measuredPictures } from '../../src/demo/measured-pictures.ts';
import { openExample } from '../../src/demo/open-example.ts';
import { examplePictures } from '../../src/demo/pictures.ts';
import { remove } from '../../src/store/edits.ts';
import { createMemoryRepository } from '../../src/store/memory.ts';
import { createStore, type Store } from '../../src/store/store.ts';
import { DEVICE, NEW_YEAR, newIds } from './make.ts';
import { prepared } from './prepared.ts';

const folder = new URL('../../public/example/', import.meta.url);
const files = readdirSync(folder);
const bytesOf = (name: string): Buffer => readFileSync(new URL(name, folder));

/**
 * Size of a JPEG, and how many segments a person or camera could be told by: FFE1 (EXIF, XMP), FFED (IPTC), FFFE
 * (comment). Source: ITU-T T.81, tables B.1 and B.2.
 */
function headOf(bytes: Buffer): { width: number; height: number; metadata: number } {
  let at = 2;
  let metadata = 0;
  let size = { width: 0, height: 0 };
  for (; bytes[at] === 0xff && bytes[at + 1] !== 0xda; at += 2 + bytes.readUInt16BE(at + 2)) {
    const marker = bytes[at + 1] ?? 0;
    if ([0xe1, 0xed, 0xfe].includes(marker)) metadata += 1;
    if ([0xc0, 0xc2].includes(marker)) size = { width: bytes.readUInt16BE(at + 7), height: bytes.readUInt16BE(at + 5) };
  }
  return { ...size, metadata };
}

describe('the files of the example’s photographs', () => {
  it('are those the example names, each as it was measured', () => {
    expect(files.sort()).toEqual(examplePictures.map(({ file }) => `${file}.jpg`).sort());
    const hashes = files.map((name) => [
      name.replace('.jpg', ''),
      createHash('sha256').update(bytesOf(name)).digest('hex'),
    ]);
    expect(Object.fromEntries(hashes)).toEqual(
      Object.fromEntries(Object.entries(measuredPictures).map(([file, { sha256 }]) => [file, sha256])),
    );
  });

  it('are JPEGs of at most 60 kB, four to three, without metadata', () => {
    for (const name of files) {
      const bytes = bytesOf(name);
      const { width, height, metadata } = headOf(bytes);
      expect([name, bytes.length <= 60_000, metadata]).toEqual([name, true, 0]);
      expect(width / height).toBeCloseTo(4 / 3, 2);
      expect(width).toBeGreaterThanOrEqual(900);
    }
  });

  it('show a view and a finding there is', () => {
    const lots = new Map<string, { readonly findings: readonly { readonly kind: string }[] }>(
      [...lanthorn.lots, ...lanthorn.box].map((lot) => [lot.number, lot]),
    );
    for (const { lot, view, shows } of examplePictures) {
      expect(catalogue.views).toHaveProperty(view);
      const kinds = lots.get(lot)?.findings.map(({ kind }) => kind);
      expect(kinds).toBeDefined();
      if (shows) expect(kinds).toContain(shows);
    }
    for (const lot of lanthorn.lots) {
      const views = examplePictures.filter((picture) => picture.lot === lot.number);
      expect([lot.number, views.length >= 3]).toEqual([lot.number, true]);
    }
  });
});

describe('opening the example', () => {
  let store: Store;
  let fetched: string[];
  const means = (more: Partial<PictureMeans> = {}): PictureMeans => ({
    async fetch(file) {
      fetched.push(file);
      return new Blob([file]);
    },
    prepare: async (file) => prepared(await file.text()),
    signal: new AbortController().signal,
    onProgress: () => undefined,
    ...more,
  });
  const photos = () => [...store.records.photo.value.values()];

  beforeEach(async () => {
    fetched = [];
    store = createStore({
      repository: createMemoryRepository(),
      device: DEVICE,
      now: () => NEW_YEAR,
      newId: newIds(),
    });
    await store.load();
    await openExample(store, catalogue);
  });

  it('brings every picture as a photograph of its block, with view, finding, stage, time and scale', async () => {
    expect(await bringPictures(store, means())).toBe(0);
    expect(photos()).toHaveLength(examplePictures.length);
    const platter = store.blocks.value.find(({ objectNumber }) => objectNumber === 'L09');
    const split = store.findingsOf(platter?.id ?? '').find(({ kind }) => kind === 'split');
    const ofSplit = store.photosOfFinding(split?.id ?? '');
    expect(ofSplit.map(({ view, stage }) => [view, stage])).toEqual([
      ['damageContext', 'before'],
      ['damageClose', 'before'],
      ['damageClose', 'after'],
    ]);
    const [, close] = ofSplit;
    expect(close?.scale).toMatchObject({ kind: 'card', reference: 'bankCard', sizeMm: [85.6, 53.98] });
    expect(close?.scale?.corners).toHaveLength(4);
    expect(close?.taken?.local).toMatch(/^2026-10-17T10:\d\d:00$/);
    expect(await store.photoBytes(close?.sha256 ?? '')).toBeDefined();
  });

  it('is one step of undo with all its photographs', async () => {
    await bringPictures(store, means());
    expect(store.undoable.value).toBe('opening the example sale');
    await store.undo()?.saved;
    expect(store.blocks.value).toEqual([]);
    expect(photos()).toEqual([]);
  });

  it('takes its photographs along when it is taken away, and undo brings them back', async () => {
    await bringPictures(store, means());
    const sales = store.all('sale').value.map(({ id }) => remove(id));
    await store.change('taking the example away', sales);
    expect(photos()).toEqual([]);
    await store.undo()?.saved;
    expect(photos()).toHaveLength(examplePictures.length);
  });

  it('stands without pictures where there is no signal, and brings each only once when there is', async () => {
    const without = means({ fetch: () => Promise.reject(new TypeError('Failed to fetch')) });
    expect(await bringPictures(store, without)).toBe(examplePictures.length);
    expect(store.blocks.value).toHaveLength(18);
    expect(photos()).toEqual([]);

    let calls = 0;
    const broken = means({
      async fetch(file) {
        calls += 1;
        if (calls > 5) throw new TypeError('Failed to fetch');
        return new Blob([file]);
      },
    });
    expect(await bringPictures(store, broken)).toBe(examplePictures.length - 5);
    expect(await bringPictures(store, means())).toBe(0);
    expect(fetched).toHaveLength(examplePictures.length - 5);
    expect(new Set(photos().map(({ caption }) => caption)).size).toBe(examplePictures.length);
    expect(await bringPictures(store, means())).toBe(0);
    expect(fetched).toHaveLength(examplePictures.length - 5);
  });

  it('is not kept from the others by one file that came wrong', async () => {
    const one = means({
      async fetch(file) {
        if (file === 'L01-marks') throw new Error('Not this file.');
        return new Blob([file]);
      },
    });
    expect(await bringPictures(store, one)).toBe(1);
    expect(photos()).toHaveLength(examplePictures.length - 1);
  });

  it('adds nothing to an example taken away while a picture was on its way', async () => {
    const stop = new AbortController();
    const going = means({
      signal: stop.signal,
      prepare: async (file) => {
        stop.abort();
        return prepared(await file.text());
      },
    });
    await expect(bringPictures(store, going)).rejects.toThrow('abort');
    expect(photos()).toEqual([]);
    const undone = means({
      prepare: async (file) => {
        const text = await file.text();
        if (text.startsWith('L01')) {
          const id = store.blocks.value.find(({ objectNumber }) => objectNumber === 'L01')?.id;
          if (id) await store.change('removing the block', [remove(id)]);
        }
        return prepared(text);
      },
    });
    await bringPictures(store, undone);
    const owners = new Set(photos().map(({ blockId }) => blockId));
    expect(owners.size).toBe(17);
  });

  it('counts up from what is there', async () => {
    const told: number[] = [];
    await bringPictures(store, means({ onProgress: (here) => told.push(here) }));
    expect(told).toEqual(Array.from({ length: examplePictures.length + 1 }, (_, i) => i));
  });
});
