import { describe, expect, it } from 'vitest';
import { AppError, type ErrorCode } from '../../src/core/errors.ts';
import { readHere } from '../../src/imports/reader.ts';
import { takeIn } from '../../src/imports/take-in.ts';
import { sentenceOf } from '../../src/text/errors.ts';
import { aBlock, aPhoto, id, make, NEW_YEAR } from '../store/make.ts';
import { openWindow } from '../store/window.ts';
import { bagOf, sum, type ZipFile } from '../support/hostile-zip.ts';
import { archiveOf, type Contents, fileOf, jpegOf, pathOf, payloadOf, photoFields } from './archives.ts';

const picture = jpegOf('rope line');
const FOLDER = 'blockworth-20260101-000000-1of1/';
const good: Contents = { records: [aBlock(), aPhoto(photoFields(picture))], pictures: [picture] };
const sound = (): ZipFile[] => bagOf(payloadOf(good));
const text = (words: string): Uint8Array => Buffer.from(words);
const added = (file: Partial<ZipFile> & { name: string }): ZipFile[] => [...sound(), { bytes: text('x'), ...file }];
const changed = (end: string, change: Partial<ZipFile>): ZipFile[] =>
  sound().map((file) => (file.name.endsWith(end) ? { ...file, ...change } : file));
/** A bag whose checksums agree with what was put in. */
const withPayload = (path: string, bytes: Uint8Array): ZipFile[] =>
  bagOf(payloadOf({ ...good, named: new Map([[path, bytes]]) }));
/** A photograph of a known hash that is in order by every checksum. */
function pictured(bytes: Uint8Array): ZipFile[] {
  const photo = aPhoto({ ...photoFields(bytes), id: id(9) });
  return bagOf(payloadOf({ records: [aBlock(), photo], pictures: [bytes] }));
}

async function png(width: number, height: number): Promise<Uint8Array> {
  const { PNG } = await import('pngjs');
  const bytes = PNG.sync.write(new PNG({ width: 1, height: 1 }));
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  return bytes;
}

interface Hostile {
  readonly what: string;
  readonly files: () => readonly ZipFile[] | Promise<readonly ZipFile[]>;
  readonly code: ErrorCode;
  /** What the sentence must name; null where the file as a whole is at fault. */
  readonly names: string | null;
}

const svg = text('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>');
const bomb = new Uint8Array(30 * 2 ** 20);
const records = 'data/records/block-001.json';
const own = '{"format":"blockworth-records","version":1,"type":"block","records":[{"__proto__":{"deleted":null}}]}';

const HOSTILE: readonly Hostile[] = [
  {
    what: 'a name that climbs out',
    files: () => added({ name: `${FOLDER}../evil.txt` }),
    code: 'archive-strange-name',
    names: 'evil.txt',
  },
  {
    what: 'a name from the root',
    files: () => added({ name: '/etc/passwd' }),
    code: 'archive-strange-name',
    names: '/etc/passwd',
  },
  {
    what: 'a name with a drive',
    files: () => added({ name: 'C:/evil.txt' }),
    code: 'archive-strange-name',
    names: 'C:/evil.txt',
  },
  {
    what: 'a name with backslashes',
    files: () => added({ name: '..\\evil.txt' }),
    code: 'archive-strange-name',
    names: '..\\evil.txt',
  },
  {
    what: 'an archive within',
    files: () => added({ name: `${FOLDER}data/inner.zip` }),
    code: 'archive-strange-name',
    names: 'inner.zip',
  },
  {
    what: 'a second folder',
    files: () => added({ name: 'other/bagit.txt' }),
    code: 'archive-strange-name',
    names: 'other/bagit.txt',
  },
  {
    what: 'a file in no manifest',
    files: () => added({ name: `${FOLDER}data/reports/x.html` }),
    code: 'archive-strange-name',
    names: 'x.html',
  },
  {
    what: 'a name twice',
    files: () => added({ name: `${FOLDER}${records}` }),
    code: 'archive-doubled',
    names: 'block-001.json',
  },
  {
    what: 'a name twice, in capitals',
    files: () => added({ name: `${FOLDER}${records.toUpperCase()}` }),
    code: 'archive-strange-name',
    names: 'BLOCK-001',
  },
  {
    what: 'a link',
    files: () => changed('bag-info.txt', { mode: 0o120777 }),
    code: 'archive-link',
    names: 'bag-info.txt',
  },
  {
    what: 'a device',
    files: () => changed('bag-info.txt', { mode: 0o020666 }),
    code: 'archive-link',
    names: 'bag-info.txt',
  },
  {
    what: 'a locked entry',
    files: () => changed('bag-info.txt', { locked: true }),
    code: 'archive-unknown-way',
    names: 'bag-info.txt',
  },
  {
    what: 'an entry over another',
    files: () => changed('bag-info.txt', { over: `${FOLDER}bagit.txt` }),
    code: 'archive-overlap',
    names: '.txt',
  },
  {
    what: 'another name inside',
    files: () => changed('bag-info.txt', { localName: `${FOLDER}xag-info.txt` }),
    code: 'archive-two-readings',
    names: null,
  },
  {
    what: 'a bomb',
    files: () => added({ name: `${FOLDER}data/tables/blocks.csv`, bytes: bomb, packed: true }),
    code: 'archive-too-large',
    names: 'blocks.csv',
  },
  {
    what: 'a bomb that says it is small',
    files: () => withPacked(bomb, 10),
    code: 'archive-wrong-size',
    names: 'block-001.json',
  },
  {
    what: 'a size that says too much',
    files: () => changed('block-001.json', { packed: true, says: { size: 9000 } }),
    code: 'archive-damaged',
    names: 'block-001.json',
  },
  {
    what: 'an entry beyond the limit',
    files: () => changed('block-001.json', { packed: true, says: { size: 50 * 2 ** 20 } }),
    code: 'archive-too-large',
    names: 'block-001.json',
  },
  {
    what: 'a wrong CRC',
    files: () => changed('block-001.json', { says: { crc: 1 } }),
    code: 'archive-damaged',
    names: 'block-001.json',
  },
  {
    what: 'a wrong hash',
    files: () => changed('block-001.json', { bytes: text('{}') }),
    code: 'archive-damaged',
    names: 'block-001.json',
  },
  {
    what: 'a wrong hash in the manifest itself',
    files: () => changed('/manifest-sha256.txt', { bytes: text('') }),
    code: 'archive-damaged',
    names: 'manifest-sha256.txt',
  },
  {
    what: 'a wrong hash in a tag file that nothing is read from',
    files: () => changed('/manifest-sha512.txt', { bytes: text('') }),
    code: 'archive-damaged',
    names: 'manifest-sha512.txt',
  },
  {
    what: 'one id for two types of record',
    files: () => bagOf(payloadOf({ records: [aBlock(), make('sale', { id: id(1) })] })),
    code: 'archive-doubled',
    names: id(1),
  },
  {
    what: 'a photograph changed',
    files: () => changed('.jpg', { bytes: jpegOf('other one') }),
    code: 'archive-damaged',
    names: '.jpg',
  },
  {
    what: 'a file left out',
    files: () => sound().filter(({ name }) => !name.endsWith('.jpg')),
    code: 'archive-incomplete',
    names: '.jpg',
  },
  {
    what: 'a key __proto__',
    files: () => withPayload('data/records/offer-001.json', text(own)),
    code: 'archive-bad-text',
    names: 'offer-001.json',
  },
  {
    what: 'text nested without end',
    files: () => withPayload('data/records/offer-001.json', text('['.repeat(100_000) + ']'.repeat(100_000))),
    code: 'archive-bad-text',
    names: 'offer-001.json',
  },
  {
    what: 'text that is no UTF-8',
    files: () => withPayload('data/records/offer-001.json', Uint8Array.of(0x22, 0xff, 0x22)),
    code: 'archive-bad-text',
    names: 'offer-001.json',
  },
  { what: 'an SVG with script', files: () => pictured(svg), code: 'archive-bad-picture', names: sum(svg).slice(0, 12) },
  {
    what: 'a JPEG of 100 megapixels',
    files: () => pictured(jpegOf('big', 10_000, 10_000)),
    code: 'archive-picture-too-large',
    names: '.jpg',
  },
  {
    what: 'a PNG of 100 megapixels',
    files: async () => pictured(await png(10_000, 10_000)),
    code: 'archive-picture-too-large',
    names: '.jpg',
  },
  {
    what: 'a photograph cut off',
    files: () => pictured(picture.slice(0, -2)),
    code: 'archive-bad-picture',
    names: '.jpg',
  },
  {
    what: 'a photograph under another hash',
    files: () => bagOf(payloadOf({ ...good, pictures: [], named: new Map([[pathOf(picture), jpegOf('other')]]) })),
    code: 'archive-damaged',
    names: '.jpg',
  },
  {
    what: 'no bag at all',
    files: () => [{ name: 'data/letter.txt', bytes: text('x') }],
    code: 'archive-strange-name',
    names: 'letter.txt',
  },
  // Both would be said on the screen: how long ago, and which files are wanted yet.
  ...['<b>', 'Friday', '2026-13-45T99:99:99Z', ''].map((made) => ({
    what: `a date of making “${made}”`,
    files: () => bagOf(payloadOf({ ...good, made })),
    code: 'archive-bad-text' as const,
    names: 'archive.json',
  })),
  {
    what: 'the fifth volume of one',
    files: () => bagOf(payloadOf({ ...good, volume: 5 })),
    code: 'archive-bad-text',
    names: 'archive.json',
  },
  {
    what: 'an archive of a later layout',
    files: () => bagOf(payloadOf({ ...good, version: 2 })),
    code: 'archive-too-new',
    names: null,
  },
];

/** A file of records that is a bomb, and says it is small. */
function withPacked(bytes: Uint8Array, size: number): ZipFile[] {
  return changed('block-001.json', { bytes, packed: true, says: { size } });
}

async function attempt(file: File) {
  const { store, disk } = await openWindow({ nowMs: NEW_YEAR + 1000 });
  const reader = readHere();
  const work = async (): Promise<void> => {
    const archive = await reader.open([file], null, NEW_YEAR + 1000);
    if (archive === 'locked') throw new Error('Not locked, but asks for a passphrase.');
    const controls = { signal: new AbortController().signal, onStep: () => undefined };
    await takeIn(archive, null, { store, reader, label: 'the import' }, controls);
  };
  const error: unknown = await work().then(
    () => 'taken in',
    (why: unknown) => why,
  );
  return { error, store, disk };
}

describe('an archive from a stranger', () => {
  it('is taken in when it is sound', async () => {
    const { error, disk } = await attempt(archiveOf(good));
    expect(error).toBe('taken in');
    expect([disk.records.size, [...disk.bytes.keys()]]).toEqual([2, [sum(picture)]]);
  });

  it.each(HOSTILE)('with $what is refused by name, and nothing of it is written', async ({ files, code, names }) => {
    const { error, disk, store } = await attempt(fileOf(await files()));
    expect(error).toBeInstanceOf(AppError);
    expect((error as AppError).code).toBe(code);
    const sentence = sentenceOf(error);
    if (names !== null) expect(sentence).toContain(names);
    expect(sentence).not.toMatch(/[{}]/);
    expect([disk.records.size, disk.bytes.size, disk.kept.size, disk.notes.size]).toEqual([0, 0, 0, 0]);
    expect(store.undoable.value).toBeNull();
  });

  it('cut off anywhere is refused, and nothing of it is written', async () => {
    const whole = new Uint8Array(await archiveOf(good).arrayBuffer());
    for (const share of [0, 0.01, 0.3, 0.6, 0.9, 0.999]) {
      const { error, disk } = await attempt(new File([whole.slice(0, Math.floor(whole.length * share))], 'cut.zip'));
      expect((error as AppError).code).toBe('archive-cut-off');
      expect([disk.records.size, disk.bytes.size]).toEqual([0, 0]);
    }
  });

  it('with something before or behind it is refused: another tool could read another archive', async () => {
    const whole = new Uint8Array(await archiveOf(good).arrayBuffer());
    for (const parts of [
      [text('stub'), whole],
      [whole, whole],
    ]) {
      const { error, disk } = await attempt(new File(parts as Uint8Array<ArrayBuffer>[], 'two.zip'));
      expect(error).toBeInstanceOf(AppError);
      expect(disk.records.size).toBe(0);
    }
  });

  it('does not get a name past the eye by turning its direction, or by its length', async () => {
    const { error } = await attempt(fileOf(added({ name: `${FOLDER}data/\u202egnp.${'a'.repeat(300)}\n` })));
    expect(sentenceOf(error)).not.toMatch(/[\u202e\n]/);
    expect(sentenceOf(error).length).toBeLessThan(300);
  });
});
