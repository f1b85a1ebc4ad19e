import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { type ArchiveWish, prepareArchive } from '../../src/exports/archive/index.ts';
import { memoryKeep } from '../../src/exports/archive/keep.ts';
import { archiveTools } from '../../src/parts/archive-tools.ts';
import { createMemoryRepository, newDisk } from '../../src/store/memory.ts';
import { createStore } from '../../src/store/store.ts';
import { DEVICE, id, make, NEW_YEAR, newIds } from '../store/make.ts';
import { NAMES, type Shelf, smallShelf, wholeShelf } from '../support/archive-fixture.ts';
import { bagFaults } from '../support/bag-faults.ts';
import { bagIn, textOf } from '../support/read-zip.ts';

/** The archive the app itself makes of a shelf, reports and all. */
async function appArchive({ records, photos }: Shelf, wish: Partial<ArchiveWish> = {}) {
  const disk = newDisk();
  for (const record of records) disk.records.set(record.id, record);
  for (const photo of photos) disk.bytes.set(photo.sha256, photo);
  const now = () => NEW_YEAR;
  const store = createStore({ repository: createMemoryRepository(disk), now, newId: newIds(), device: DEVICE });
  await store.load();
  const tools = archiveTools({ store, catalogue, now, own: { pace: signal({}), tallies: signal({}) } }, memoryKeep());
  const { ready } = await prepareArchive({ ...wholeShelf, ...wish }, tools, {
    onProgress: () => undefined,
    signal: new AbortController().signal,
  });
  return bagIn(ready[0]?.file as File);
}

const shelf = smallShelf();
const reportPath = `data/reports/${id(10)}.html`;

describe('the report of a block in an archive', () => {
  it('is there for every block that was looked at, and only those', async () => {
    const { files } = await appArchive(shelf);
    expect(bagFaults(files)).toEqual([]);
    expect([...files.keys()].filter((path) => path.startsWith('data/reports/'))).toEqual([
      reportPath,
      'data/reports/index.html',
    ]);
  });

  it('shows the photographs that lie beside it, and needs nothing from elsewhere', async () => {
    const { files } = await appArchive(shelf);
    const report = textOf(files.get(reportPath));
    const sources = [...report.matchAll(/<img src="([^"]+)"/g)].map(([, source = '']) => source);
    expect(sources).toHaveLength(2);
    for (const source of sources) {
      const path = new URL(source, `https://bag.invalid/${reportPath}`).pathname.slice(1);
      expect(files.has(path), source).toBe(true);
    }
    expect(report).not.toMatch(/<script(?! type="application\/json")|src="https?:|data:image/);
    expect(report.length).toBeLessThan(300_000);
  });

  it('is found from a page that lists number and name', async () => {
    const { files } = await appArchive(shelf);
    const page = textOf(files.get('data/reports/index.html'));
    const [, link = ''] = /LP-014<\/td><td><a href="([^"]+)">Cloche/.exec(page) ?? [];
    expect(new URL(link, 'https://bag.invalid/data/reports/index.html').pathname).toBe(`/${reportPath}`);
  });

  it('says prices in a whole archive and neither prices nor private names in one for others', async () => {
    const whole = textOf((await appArchive(shelf)).files.get(reportPath));
    expect(whole).toContain('£42.50');
    expect(whole).toContain(NAMES.seller);
    const { files } = await appArchive(shelf, { isWhole: false });
    for (const [path, bytes] of files) {
      const text = new TextDecoder().decode(bytes);
      for (const secret of [NAMES.seller, 'Odile', NAMES.owner, 'Quay Street', '£42.50'])
        expect(text.includes(secret), `${secret} in ${path}`).toBe(false);
    }
  });

  it('says nothing in one for others that its records keep back, of whichever block it was private', async () => {
    const [cloche, brim, survey] = [id(10), id(11), id(30)];
    const records = [
      ...(shelf.records.map((record) => {
        if (record.id === survey) return { ...record, reason: 'Peregrine Vole asked', note: 'Kit held the lamp' };
        if (record.id === cloche) return { ...record, note: 'Fetched from Quay Street' };
        return record;
      }) as Shelf['records']),
      make('statement', {
        id: id(71),
        blockId: brim,
        party: 'Peregrine Vole',
        partyIsPrivate: true,
        place: 'Otter Lane',
      }),
      make('statement', { id: id(72), blockId: brim, party: 'Kit Zo\u00ebl', partyIsPrivate: true }),
      make('finding', {
        id: id(43),
        blockId: cloche,
        surveyId: survey,
        number: 4,
        kind: 'check',
        zone: 'base',
        note: 'Otter Lane',
      }),
      make('finding', {
        id: id(44),
        blockId: cloche,
        surveyId: survey,
        number: 5,
        kind: 'check',
        zone: 'base',
        note: 'Zoe\u0308l saw it',
      }),
    ];
    const { files } = await appArchive({ ...shelf, records }, { isWhole: false });
    expect(files.has(reportPath)).toBe(true);
    for (const [path, bytes] of files) {
      const text = new TextDecoder().decode(bytes).normalize('NFC');
      for (const secret of [
        'Peregrine',
        'Vole',
        'Kit held',
        'Quay Street',
        'Otter Lane',
        'Zo\u00ebl',
        'Lanthorn Playhouse wardrobe',
      ])
        expect(text.includes(secret), `${secret} in ${path}`).toBe(false);
    }
  });
});
