import jpeg from 'jpeg-js';
import { catalogue } from '../../src/catalogue/index.ts';
import type { AnyRecord, Fields } from '../../src/core/records.ts';
import { type ArchiveTools, type ArchiveWish, prepareArchive } from '../../src/exports/archive/index.ts';
import { type Keep, memoryKeep } from '../../src/exports/archive/keep.ts';
import { createMemoryRepository, newDisk } from '../../src/store/memory.ts';
import type { PhotoBytes } from '../../src/store/repository.ts';
import { archiveHere } from '../../src/workers/archiver.ts';
import { at, DEVICE, id, make, NEW_YEAR } from '../store/make.ts';
import { sha256Hex } from './sha256.ts';

/** A small real JPEG, another for every number; its hash not computed by the code under test. */
export function picture(n: number, width = 24, height = 16): PhotoBytes {
  const data = new Uint8Array(width * height * 4).map((_, i) => (i * 31 + n * 97 + ((i * n) >> 3)) & 0xff);
  const bytes = new Uint8Array(jpeg.encode({ data, width, height }, 80).data);
  return { sha256: sha256Hex(bytes), bytes: bytes.slice().buffer, mime: 'image/jpeg' };
}

/** As `picture`, grown to so many bytes by noise that no reader looks into: what counts is its weight. */
export function heavyPicture(n: number, weight: number): PhotoBytes {
  const bytes = new Uint8Array(weight);
  let state = (n + 1) * 2654435761;
  for (let i = 0; i < weight; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    bytes[i] = state >>> 24;
  }
  bytes.set(new Uint8Array(picture(n).bytes));
  return { sha256: sha256Hex(bytes), bytes: bytes.buffer, mime: 'image/jpeg' };
}

export interface Shelf {
  readonly records: readonly AnyRecord[];
  readonly photos: readonly PhotoBytes[];
}

export const NAMES = { seller: 'Odile Marsh', owner: 'Bertil Quay', surveyor: 'T. Fenn' } as const;

const photoFields = ({ sha256, bytes, mime }: PhotoBytes): Partial<Fields<'photo'>> => ({
  ...{ sha256, bytes: bytes.byteLength, mime, width: 24, height: 16, thumbnail: 'f'.repeat(64) },
  taken: { local: '2026-10-17T11:42:09', offset: '+01:00', from: 'camera' },
});

/**
 * A small shelf with one of everything that goes into an archive: two blocks of a sale with survey, findings, marks,
 * story, photographs and what is drawn on them; a private seller; text in several scripts and text a spreadsheet would
 * run; a removed finding; a camera file.
 */
export function smallShelf(): Shelf {
  const photos = [picture(1), picture(2), picture(3)];
  const [first, second, third] = photos as [PhotoBytes, PhotoBytes, PhotoBytes];
  const original = picture(4, 40, 30);
  const [cloche, brim, sale, survey, check, photo] = [id(10), id(11), id(20), id(30), id(40), id(50)] as const;
  const records: AnyRecord[] = [
    make('settings', { id: '00000000-0000-7000-8000-000000000001', ownerName: 'Lanthorn Playhouse wardrobe' }),
    make('sale', {
      ...{ id: sale, title: 'Lanthorn Playhouse clear-out', place: 'Under the stage', seller: NAMES.seller },
      when: { words: '17 October 2026', edtf: '2026-10-17' },
    }),
    make('block', {
      ...{
        id: cloche,
        name: 'Cloche “Ünder-Ø” №5 帽',
        objectNumber: 'LP-014',
        blockType: 'domeCrown',
        materials: ['lime'],
      },
      ...{ saleId: sale, priceAsked: 4250, newPrice: 18_000, maker: 'unsigned' },
      made: { words: 'c. 1940s', edtf: '1940~/1949~' },
      note: `=HYPERLINK("https://example.org","tap")\nSecond line, with a comma`,
    }),
    make('block', { id: brim, name: '', blockType: 'domeCrown', saleId: sale }),
    make('survey', {
      ...{ id: survey, blockId: cloche, surveyor: NAMES.surveyor, begun: '2026-10-17T10:00:00Z' },
      measures: { circRopeMm: 572, heightMm: 118.5 },
      noneSeen: { mould: true },
    }),
    make('finding', {
      ...{ id: check, blockId: cloche, surveyId: survey, number: 1, kind: 'check', zone: 'tip' },
      answers: { widthMm: 0.4, depthMm: 6, lengthMm: 42 },
      note: `${NAMES.seller} says it opened last winter`,
    }),
    make('finding', {
      ...{ id: id(41), blockId: cloche, surveyId: survey, number: 2, kind: 'flightHoles', zone: 'base' },
      answers: { count: 7 },
    }),
    {
      ...make('finding', { id: id(42), blockId: cloche, surveyId: survey, number: 3, kind: 'check', zone: 'base' }),
      deleted: at(9),
    },
    make('mark', { id: id(60), blockId: cloche, kind: 'sizeCm', text: '57 +½', zone: 'base' }),
    make('mark', { id: id(61), blockId: cloche, kind: 'workerNames', text: NAMES.owner, zone: 'base' }),
    make('statement', {
      ...{ id: id(70), blockId: cloche, position: 1, party: NAMES.owner, partyIsPrivate: true, place: 'Quay Street' },
      when: { words: 'before 1958', edtf: '../1957' },
    }),
    make('photo', {
      ...{ id: photo, blockId: cloche, view: 'threeQuarter', ...photoFields(first) },
      caption: 'From the front, raking light',
      position: { latitude: 51.17725, longitude: -2.98764 },
      original: { sha256: original.sha256, bytes: original.bytes.byteLength, mime: 'image/jpeg', name: 'IMG_1.jpg' },
    }),
    make('photo', { id: id(51), blockId: cloche, findingId: check, view: 'damageClose', ...photoFields(second) }),
    make('photo', { id: id(52), blockId: brim, view: 'threeQuarter', ...photoFields(third) }),
    make('photoMark', {
      ...{ id: id(80), blockId: cloche, photoId: photo, findingId: check, shape: 'polyline' },
      points: [
        [0.1, 0.2],
        [0.3, 0.25],
        [0.5, 0.4],
      ],
      text: 'runs & widens <here>',
    }),
    make('photoMark', {
      ...{ id: id(81), blockId: cloche, photoId: photo, shape: 'rectangle' },
      points: [
        [0.6, 0.9],
        [0.25, 0.5],
      ],
    }),
    make('photoMark', {
      ...{
        id: id(82),
        blockId: cloche,
        photoId: photo,
        shape: 'ellipse',
        points: [
          [0.2, 0.2],
          [0.4, 0.6],
        ],
      },
    }),
    make('photoMark', { id: id(83), blockId: cloche, photoId: photo, shape: 'point', points: [[0.5, 0.5]] }),
    make('offer', { id: id(90), blockId: cloche, saleId: sale, amount: 3000, what: 'offered' }),
    make('job', { id: id(95), blockId: cloche, treatment: 'record', reference: 'record', actualHours: 0.5 }),
  ];
  return { records, photos: [...photos, original] };
}

export interface Bench {
  readonly tools: ArchiveTools;
  readonly keep: Keep;
  /** The device: change it to see what an archive makes of it. */
  readonly disk: ReturnType<typeof newDisk>;
}

/** A device with the shelf on it, and all that preparing an archive asks for. */
export function benchWith({ records, photos }: Shelf, changed: Partial<ArchiveTools> = {}): Bench {
  const disk = { ...newDisk(), device: DEVICE };
  for (const record of records) disk.records.set(record.id, record);
  for (const photo of photos) disk.bytes.set(photo.sha256, photo);
  const storage = createMemoryRepository(disk);
  const keep = { ...memoryKeep(), lasts: true };
  let n = 5000;
  const tools: ArchiveTools = {
    storage,
    catalogue,
    now: () => NEW_YEAR,
    newId: () => id(n++),
    report: () => undefined,
    archiver: archiveHere(),
    keep,
    ...changed,
  };
  // What lasts is a private file elsewhere; here the memory stands in for it.
  const archiver: ArchiveTools['archiver'] = (order, payload, signal) =>
    tools.archiver({ ...order, destination: { to: 'memory' } }, payload, signal);
  return { tools: { ...tools, archiver }, keep, disk };
}

export const wholeShelf: ArchiveWish = { scope: { kind: 'shelf' }, isWhole: true, passphrase: null };

/** The volumes of an archive as files in memory. */
export async function archiveOf(
  shelf: Shelf = smallShelf(),
  wish: Partial<ArchiveWish> = {},
  changed: Partial<ArchiveTools> = {},
): Promise<File[]> {
  const { tools } = benchWith(shelf, changed);
  const done = await prepareArchive({ ...wholeShelf, ...wish }, tools, {
    onProgress: () => undefined,
    signal: new AbortController().signal,
  });
  return done.ready.flatMap(({ file }) => file ?? []);
}
