import { createHash } from 'node:crypto';
import { deflateRawSync } from 'node:zlib';

/*
 * ZIP files and bags written byte by byte, true or lying, by nothing the app uses. Sources: APPNOTE 6.3.10 (ZIP),
 * sections 4.3.7 (local header), 4.3.12 (directory), 4.3.16 (end); RFC 8493 (BagIt).
 */

export interface ZipFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly packed?: boolean;
  /** What the headers say in place of the truth. */
  readonly says?: { readonly size?: number; readonly crc?: number };
  /** Unix file type and mode, as a Unix tool writes it. */
  readonly mode?: number;
  /** Lies where the file of this name lies, without bytes of its own. */
  readonly over?: string;
  /** The local header's own name, where it differs from the directory's. */
  readonly localName?: string;
  readonly locked?: boolean;
}

const TABLE = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (TABLE[(crc ^ byte) & 0xff] as number) ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

const u16 = (n: number): number[] => [n & 0xff, (n >>> 8) & 0xff];
const u32 = (n: number): number[] => [...u16(n), ...u16(n >>> 16)];
const UTF8_NAMES = 0x0800;
const LOCKED = 0x0001;
/** 1 January 2026, midnight, in the format of the disk operating system of 1981. */
const DATE = [0x00, 0x00, 0x21, 0x5c];

/** A ZIP file that is as true or as false as its parts. */
export function zipOf(files: readonly ZipFile[]): Uint8Array<ArrayBuffer> {
  const parts: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  const places = new Map<string, number>();
  let at = 0;
  for (const { name, bytes, packed = false, says = {}, mode, over, localName = name, locked = false } of files) {
    const data = packed ? deflateRawSync(bytes, { level: 9 }) : bytes;
    const sizes = [...u32(says.crc ?? crc32(bytes)), ...u32(data.length), ...u32(says.size ?? bytes.length)];
    const common = (title: Uint8Array): number[] => [
      ...u16(20),
      ...u16(UTF8_NAMES | (locked ? LOCKED : 0)),
      ...u16(packed ? 8 : 0),
      ...DATE,
      ...sizes,
      ...u16(title.length),
      ...u16(0),
    ];
    const title = Buffer.from(name);
    const place = over === undefined ? at : (places.get(over) ?? 0);
    if (over === undefined) {
      const localTitle = Buffer.from(localName);
      const local = Buffer.concat([Buffer.from([...u32(0x04034b50), ...common(localTitle)]), localTitle, data]);
      places.set(name, at);
      parts.push(local);
      at += local.length;
    }
    directory.push(
      Buffer.concat([
        Buffer.from([
          ...u32(0x02014b50),
          ...u16(mode === undefined ? 20 : (3 << 8) | 20),
          ...common(title),
          ...u16(0),
          ...u16(0),
          ...u16(0),
          ...u32(mode === undefined ? 0 : (mode << 16) >>> 0),
          ...u32(place),
        ]),
        title,
      ]),
    );
  }
  const central = Buffer.concat(directory);
  const end = [...u32(0x06054b50), ...u32(0), ...u16(files.length), ...u16(files.length)];
  const whole = Buffer.concat([
    ...parts,
    central,
    Buffer.from([...end, ...u32(central.length), ...u32(at), ...u16(0)]),
  ]);
  return new Uint8Array(whole);
}

export const sum = (bytes: Uint8Array, algorithm = 'sha256'): string =>
  createHash(algorithm).update(bytes).digest('hex');

/** Files of a bag that is in order: payload by path, tag files around it. */
export function bagOf(payload: ReadonlyMap<string, Uint8Array>, folder = 'blockworth-20260101-000000-1of1'): ZipFile[] {
  const manifest = (files: ReadonlyMap<string, Uint8Array>, algorithm: string): Uint8Array =>
    Buffer.from([...files].map(([path, bytes]) => `${sum(bytes, algorithm)}  ${path}\n`).join(''));
  const octets = [...payload.values()].reduce((total, { length }) => total + length, 0);
  const tags = new Map<string, Uint8Array>([
    ['bagit.txt', Buffer.from('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n')],
    ['bag-info.txt', Buffer.from(`Payload-Oxum: ${octets}.${payload.size}\n`)],
    ['manifest-sha256.txt', manifest(payload, 'sha256')],
    ['manifest-sha512.txt', manifest(payload, 'sha512')],
  ]);
  const tagManifests = ['sha256', 'sha512'].map(
    (algorithm) => [`tagmanifest-${algorithm}.txt`, manifest(tags, algorithm)] as const,
  );
  return [...tags, ...tagManifests, ...payload].map(([path, bytes]) => ({ name: `${folder}/${path}`, bytes }));
}
