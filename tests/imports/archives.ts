import { NEW_YEAR } from '../store/make.ts';
import { bagOf, sum, type ZipFile, zipOf } from '../support/hostile-zip.ts';

/** A whole JPEG of so many pixels by its header, grey or of no use inside: nothing here decodes it. */
export function jpegOf(words: string, width = 8, height = 8): Uint8Array<ArrayBuffer> {
  const comment = Buffer.from(words);
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([0xff, 0xd8, 0xff, 0xfe, 0, comment.length + 2]),
      comment,
      // Start of frame: 8 bits, height, width, one component. Source: ITU-T T.81, B.2.2.
      Buffer.from([0xff, 0xc0, 0, 11, 8, height >> 8, height & 255, width >> 8, width & 255, 1, 1, 0x11, 0]),
      Buffer.from([0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 0x12, 0x34, 0xff, 0xd9]),
    ]),
  );
}

/** A JPEG by its markers, of so many bytes that nothing packs. */
export function photographOf(n: number, size: number): Uint8Array<ArrayBuffer> {
  const head = jpegOf(`photograph ${n}`);
  const bytes = new Uint8Array(size);
  bytes.set(head.subarray(0, -2));
  let seed = n + 1;
  for (let i = head.length - 2; i < size - 2; i++) {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    // No 0xFF: it would begin a marker.
    bytes[i] = (seed >>> 24) & 0x7f;
  }
  bytes.set([0xff, 0xd9], size - 2);
  return bytes;
}

export interface Contents {
  readonly records?: readonly unknown[];
  readonly unreadable?: readonly unknown[];
  /** Photographs by path below `data/`, if not `photographs/<hash>.jpg`. */
  readonly pictures?: readonly Uint8Array[];
  readonly named?: ReadonlyMap<string, Uint8Array>;
  readonly volume?: number;
  readonly volumes?: number;
  readonly group?: string;
  readonly version?: number;
  /** When it says it was made. */
  readonly made?: string;
  /** Photographs by the volume the index says they lie in. */
  readonly listed?: ReadonlyMap<number, readonly Uint8Array[]>;
}

export const pathOf = (picture: Uint8Array): string => `data/photographs/${sum(picture)}.jpg`;
const json = (value: unknown): Uint8Array => Buffer.from(JSON.stringify(value));

/** Payload of an archive in the layout that `core/archive-layout.ts` describes, written without its writer. */
export function payloadOf(contents: Contents): Map<string, Uint8Array> {
  const { records = [], unreadable = [], pictures = [], named, volume = 1, volumes = 1 } = contents;
  const payload = new Map<string, Uint8Array>([
    [
      'data/archive.json',
      json({
        format: 'blockworth-archive',
        version: contents.version ?? 1,
        schema: 1,
        group: contents.group ?? 'urn:uuid:019b76da-a800-7000-8000-00000000aaaa',
        made: contents.made ?? new Date(NEW_YEAR).toISOString(),
        device: 'othrphon',
        catalogue: 'test',
        scope: { kind: 'shelf' },
        isWhole: true,
        volume,
        volumes,
        counts: {},
        photographs: [...(contents.listed ?? [])].flatMap(([volume, those]) =>
          those.map((picture) => ({ ...photoFields(picture), path: pathOf(picture), volume })),
        ),
        originals: [],
        missing: [],
      }),
    ],
  ]);
  const types = new Set(records.map((record) => String((record as { type?: unknown }).type ?? 'stray')));
  for (const type of types) {
    const rows = records.filter((record) => String((record as { type?: unknown }).type ?? 'stray') === type);
    payload.set(
      `data/records/${type.toLowerCase()}-001.json`,
      json({ format: 'blockworth-records', version: 1, type, records: rows }),
    );
  }
  if (unreadable.length > 0) {
    const rows = unreadable.map((raw) => ({ id: '', state: 'unreadable', why: 'as it was', raw }));
    payload.set(
      'data/records/unreadable-001.json',
      json({ format: 'blockworth-unreadable', version: 1, records: rows }),
    );
  }
  for (const picture of pictures) payload.set(pathOf(picture), picture);
  for (const [path, bytes] of named ?? []) payload.set(path, bytes);
  return payload;
}

export const fileOf = (files: readonly ZipFile[], name = 'backup.zip'): File => new File([zipOf(files)], name);
/** A sound archive of these contents. */
export const archiveOf = (contents: Contents): File => fileOf(bagOf(payloadOf(contents)));

/** The record of a photograph with these bytes. */
export const photoFields = (picture: Uint8Array) => ({
  sha256: sum(picture),
  bytes: picture.length,
  mime: 'image/jpeg',
});
