import { afterEach, describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { withFields } from '../../src/core/changes.ts';
import { TEXT_FIELDS } from '../../src/core/merge-words.ts';
import { type AnyRecord, type Fields, RECORDS, type RecordType } from '../../src/core/records.ts';
import { previewOf } from '../../src/imports/preview.ts';
import type { OpenedArchive } from '../../src/imports/reader.ts';
import { noteBackup, noteTakenIn } from '../../src/parts/backup.ts';
import { BackupLine } from '../../src/parts/backup-line.tsx';
import { BlockRow } from '../../src/parts/block-row.tsx';
import { DiligenceFields } from '../../src/parts/diligence-fields.tsx';
import { Gone } from '../../src/parts/gone.tsx';
import { OtherWords } from '../../src/parts/other-words.tsx';
import { KeptTwice, useKeptTwice } from '../../src/screens/keeping/kept-twice.tsx';
import { PreviewOf } from '../../src/screens/keeping/preview-of.tsx';
import { createKeeping } from '../../src/store/persist.ts';
import type { Store } from '../../src/store/store.ts';
import { howLongAgo, roughSpan } from '../../src/text/ages.ts';
import { aBlock, aPhoto, at, id, make } from '../store/make.ts';
import { act, type Drawn, drawn, NOW, openedStore } from '../support/dom.tsx';

let page: Drawn;
afterEach(() => page?.clear());

const block = aBlock({ note: 'Ten lots.', stamp: at(1, 'aaaaaaaa') });
const mine = withFields(block, { note: 'Scorched.' }, at(10, 'aaaaaaaa'));
const theirs = withFields(block, { note: 'Smells of smoke.' }, at(11, 'bbbbbbbb'));

async function twoNotes(): Promise<Store> {
  const store = await openedStore();
  await store.join('first', [mine]);
  await store.join('second', [theirs]);
  return store;
}
function Twice() {
  return <KeptTwice words={useKeptTwice()} />;
}
const note = (): string | undefined => page.store.get('block', block.id)?.note;

describe('words that two phones wrote apart', () => {
  it('are both shown, and either can stand', async () => {
    page = await drawn(<Twice />, await twoNotes());
    expect(page.text()).toContain('Smells of smoke.');
    expect(page.text()).toContain('Scorched.');
    page.press('Use these');
    expect(note()).toBe('Scorched.');
    expect(page.text()).not.toContain('Also written');
    act(() => void page.store.undo());
    expect(note()).toBe('Smells of smoke.');
    expect(page.text()).toContain('Also written');
  });

  it('can stand one below the other, or be put away', async () => {
    page = await drawn(<Twice />, await twoNotes());
    page.press('Add below');
    expect(note()).toBe('Smells of smoke.\nScorched.');
    act(() => void page.store.undo());
    page.press('Put away');
    expect([note(), page.text().includes('Scorched')]).toEqual(['Smells of smoke.', false]);
  });

  it('are shown under their own field and under no other', async () => {
    const store = await twoNotes();
    const record = store.find(block.id);
    if (!record) throw new Error('No block.');
    page = await drawn(<OtherWords record={record} path="note" />, store);
    expect(page.text()).toContain('Scorched.');
    page.draw(<OtherWords record={record} path="name" />);
    expect(page.text()).toBe('');
  });
});

describe('the look at a file larger than the room there is', () => {
  it('says so before anything is taken in', async () => {
    const photo = aPhoto({ stamp: at(3, 'bbbbbbbb') });
    const records = [block, photo];
    const archive: OpenedArchive = {
      index: { made: new Date(NOW).toISOString(), isWhole: true, volumes: 1, group: 'g' } as OpenedArchive['index'],
      ...{ volumes: [1], records, kept: [] },
      pictures: new Map([[photo.sha256, { bytes: 500_000 }]]),
    };
    const words = async (free: number): Promise<string> => {
      const keeping = createKeeping({ estimate: async () => ({ usage: 9_000_000 - free, quota: 9_000_000 }) });
      await keeping.look();
      const store: Store = { ...(await openedStore()), keeping };
      const stillOut = { group: 'g', made: archive.index.made, of: 1, volumes: [], pictures: 0 };
      const nothing = () => undefined;
      page = await drawn(
        <PreviewOf
          {...{ archive, stillOut }}
          preview={previewOf(records, store, new Set())}
          onTake={nothing}
          onClose={nothing}
        />,
        store,
      );
      const said = page.text();
      page.clear();
      return said;
    };
    expect(await words(300_000)).toContain('There is room for about 300 kB only.');
    expect(await words(600_000)).not.toContain('There is room');
  });
});

/** A record of any type with what it cannot be read without. */
function anyRecord(type: RecordType, own: string): AnyRecord {
  const record = make(type, { id: own, stamp: at(1, 'aaaaaaaa') }) as AnyRecord;
  const faults = RECORDS[type].safeParse(record).error?.issues ?? [];
  const filled = faults.map(({ path: [field = ''] }) => {
    const name = String(field);
    const value = /Id$/.test(name) ? id(60) : /sha256|thumbnail/.test(name) ? '0'.repeat(64) : 'check';
    return [name, name === 'points' ? [[0.5, 0.5]] : value];
  });
  return { ...record, ...Object.fromEntries(filled) };
}

describe('two answers to one question about a seller', () => {
  it('are both shown under the question', async () => {
    const store = await openedStore();
    const sale = make('sale', { id: id(300), stamp: at(1, 'aaaaaaaa') });
    const [question] = catalogue.dueDiligence;
    const answer = (words: string) => ({ diligence: { [question?.id ?? '']: words } });
    await store.join('first', [withFields(sale, answer('The wardrobe mistress.'), at(10, 'aaaaaaaa'))]);
    await store.join('second', [withFields(sale, answer('A house clearance.'), at(11, 'bbbbbbbb'))]);
    const joined = store.get('sale', sale.id);
    if (!joined) throw new Error('No sale.');
    page = await drawn(<DiligenceFields sale={joined} />, store);
    expect(page.field(question?.ask ?? '').value).toBe('A house clearance.');
    expect(page.text()).toContain('The wardrobe mistress.');
    page.press('Use these');
    expect(store.get('sale', sale.id)?.diligence[question?.id ?? '']).toBe('The wardrobe mistress.');
  });
});

describe('the list of words kept twice', () => {
  it('has every text of every kind of record, each with where it stands', async () => {
    const store = await openedStore();
    let n = 500;
    const paths: string[] = [];
    for (const [type, fields] of Object.entries(TEXT_FIELDS) as [keyof typeof TEXT_FIELDS, readonly string[]][]) {
      for (const field of fields) {
        n += 1;
        const words = (text: string) =>
          ({ [field]: field === 'diligence' ? { seen: text } : text }) as Partial<Fields<typeof type>>;
        const first = anyRecord(type, id(n));
        await store.join('first', [withFields(first, words(`One ${n}.`), at(10, 'aaaaaaaa'))]);
        await store.join('second', [withFields(first, words(`Other ${n}.`), at(11, 'bbbbbbbb'))]);
        paths.push(`One ${n}.`);
      }
    }
    page = await drawn(<Twice />, store);
    for (const words of paths) expect(page.text()).toContain(words);
    expect(page.root.querySelectorAll('ul > li')).toHaveLength(paths.length);
    expect(page.text()).not.toContain('Record,');
  });
});

describe('the look at a file before it is taken in', () => {
  const photo = aPhoto({ stamp: at(3, 'bbbbbbbb'), blockId: id(60) });
  const other = aBlock({ id: id(60), name: 'Cloche', stamp: at(3, 'bbbbbbbb') });
  const records = [theirs, other, photo];
  const archive: OpenedArchive = {
    index: { made: new Date(NOW).toISOString(), isWhole: false, volumes: 2, group: 'g' } as OpenedArchive['index'],
    volumes: [1],
    records,
    kept: [],
    pictures: new Map([[photo.sha256, { bytes: 500_000 }]]),
  };

  it('says what would change, what is missing, and takes all of it or the blocks chosen', async () => {
    const store = await openedStore();
    await store.join('first', [mine]);
    const wanted: (ReadonlySet<string> | null)[] = [];
    const preview = previewOf(records, store, new Set());
    page = await drawn(
      <PreviewOf
        archive={archive}
        preview={preview}
        stillOut={{ group: 'g', made: archive.index.made, of: 2, volumes: [2], pictures: 3 }}
        onTake={(blocks) => wanted.push(blocks)}
        onClose={() => undefined}
      />,
      store,
    );
    expect(page.text()).toContain(
      'File 2 of 2 is not among these. The records are complete; 3 photographs will be missing until it is',
    );
    expect(page.text()).toContain('In 1 place both phones wrote something else.');
    expect(page.text()).toContain('1 photograph to come, 500 kB.');
    expect(page.text()).toContain('made for handing on');
    page.press('Take in what is here');
    const some = page.root.querySelectorAll<HTMLInputElement>('input[type="radio"]')[1];
    act(() => some?.click());
    expect(page.button('Take in 0 blocks').disabled).toBe(true);
    page.tick('Cloche');
    page.press('Take in 1 block');
    expect(wanted).toEqual([null, new Set([other.id])]);
  });
});

describe('the line about the last backup', () => {
  const DAY = 86_400_000;
  it('is quiet while a backup is young or nothing has changed, and speaks when it is a week old', async () => {
    const store = await openedStore();
    // Made two days before, by its id.
    const old = `${(NOW - 2 * DAY)
      .toString(16)
      .padStart(12, '0')
      .replace(/^(.{8})/, '$1-')}-7000-8000-000000000001`;
    await store.join('first', [aBlock({ id: old })]);
    page = await drawn(<BackupLine />, store);
    await drawnAgain();
    expect(page.text()).toContain('Not backed up yet.');
    await noteBackup(store, { at: NOW - 6 * DAY, bytes: 1 });
    await drawnAgain();
    expect(page.text()).toBe('');
    await noteBackup(store, { at: Date.UTC(2025, 11, 1), bytes: 1 });
    await drawnAgain();
    expect(page.text()).toMatch(/^Last backed up 11 months ago, and things have changed since\./);
    await noteBackup(store, { at: NOW - 8 * DAY, bytes: 1 });
    await drawnAgain();
    expect(page.text()).toBe('');
    // What came in from another phone was written before, and is not in that backup all the same.
    await noteTakenIn(store, 3);
    await drawnAgain();
    expect(page.text()).toMatch(/^Last backed up 8 days ago, and things have changed since\./);
  });
});

describe('a block that came without its survey', () => {
  it('stands on the shelf all the same, and its page says what is missing', async () => {
    const store = await openedStore();
    await store.join('first', [aBlock({ name: 'Tall crown' })]);
    page = await drawn(<BlockRow id={id(1)} />, store);
    expect(page.text()).toBe('Tall crownIts survey is not here.');
    page.draw(<Gone blockId={id(1)} />);
    expect(page.text()).toContain('Nothing of it was deleted.');
    page.draw(<Gone blockId={id(2)} />);
    expect(page.text()).toContain('This block is not on this phone.');
  });
});

/** Lets what was looked up arrive and be drawn. */
async function drawnAgain(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 0));
  act(() => undefined);
}

describe('ages and spans', () => {
  it('are said as one says them', () => {
    const at9 = new Date(2026, 9, 17, 9).getTime();
    const ago = (days: number) => howLongAgo(at9 - days * 86_400_000, at9);
    expect([0, 1, 12, 35, 120, 800].map(ago)).toEqual([
      'today',
      'yesterday',
      '12 days ago',
      '5 weeks ago',
      '4 months ago',
      '2 years ago',
    ]);
    expect([360_000, 3 * 3_600_000, 5 * 86_400_000].map(roughSpan)).toEqual(['6 minutes', '3 hours', '5 days']);
  });
});
