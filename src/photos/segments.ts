import { type Bytes, join, u16 } from './bytes.ts';

/** Second byte of the markers this app names. Source: ITU-T T.81, table B.1. */
export const MARKER = { app0: 0xe0, app1: 0xe1, app2: 0xe2, app14: 0xee, app15: 0xef, comment: 0xfe } as const;
const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;

/** One marker segment of a JPEG file; all numbers are offsets into the file. */
export interface Segment {
  readonly marker: number;
  /** Of the marker's 0xFF. */
  readonly at: number;
  /** Of the payload, after marker and length. */
  readonly start: number;
  readonly end: number;
  /** Where the segment stops: `end`, or for a scan the end of its coded data. */
  readonly next: number;
}

export interface JpegSegments {
  /** In file order, without the start and end of image. */
  readonly segments: readonly Segment[];
  /** Offset after the end-of-image marker; null when the file is cut off before it. What follows is no picture. */
  readonly end: number | null;
}

export const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === SOI && bytes[2] === 0xff;

/** Restart markers and TEM stand alone, without a length. */
const standsAlone = (marker: number): boolean => (marker >= 0xd0 && marker <= 0xd7) || marker === 0x01;

/** Next 0xFF followed by a marker, skipping what a decoder skips: padding, stray bytes, stuffed zeros, restarts. */
function findMarker(bytes: Uint8Array, from: number): number {
  let at = bytes.indexOf(0xff, from);
  while (at >= 0 && at + 1 < bytes.length) {
    const marker = bytes[at + 1] as number;
    if (marker !== 0x00 && marker !== 0xff && !standsAlone(marker)) return at;
    at = bytes.indexOf(0xff, marker === 0xff ? at + 1 : at + 2);
  }
  return bytes.length;
}

/**
 * Lists the segments of a JPEG file. Reads only lengths, so it is safe on any bytes and takes one pass.
 * A length that runs past the file, or no end-of-image marker, gives `end: null` with what was read so far.
 * With `beforeScan` it stops there, for those who need the head of the file only; then `end` is null as well.
 * Source: ITU-T T.81 Annex B.
 */
export function readSegments(bytes: Uint8Array, { beforeScan = false } = {}): JpegSegments {
  const segments: Segment[] = [];
  for (let at = findMarker(bytes, 2); at < bytes.length; ) {
    const marker = bytes[at + 1] as number;
    if (marker === EOI) return { segments, end: at + 2 };
    if (marker === SOS && beforeScan) break;
    const start = at + 4;
    const end = at + 2 + u16(bytes, at + 2);
    if (end < start || end > bytes.length) break;
    const following = findMarker(bytes, end);
    segments.push({ marker, at, start, end, next: marker === SOS ? following : end });
    at = following;
  }
  return { segments, end: null };
}

/** A segment ready to be put into a file. Throws when the payload exceeds the 65,533 bytes a length can say. */
export function makeSegment(marker: number, payload: Uint8Array): Bytes {
  const length = payload.length + 2;
  if (length > 0xffff) throw new Error(`A JPEG segment holds at most 65533 bytes, got ${payload.length}.`);
  return join([Uint8Array.of(0xff, marker, length >> 8, length & 0xff), payload]);
}

/**
 * The same picture with other segments around it: coded data is copied, never decoded.
 * @param keep says of each segment whether it stays
 * @param insert made by `makeSegment`; they follow the JFIF segment, which has to come first
 * Anything after the end of the image is left out. Throws on a file that is cut off.
 */
export function rewriteJpeg(
  bytes: Uint8Array,
  keep: (segment: Segment) => boolean,
  insert: readonly Uint8Array[] = [],
): Bytes {
  const { segments, end } = readSegments(bytes);
  if (end === null) throw new Error('The JPEG file is cut off before its end marker.');
  const kept = segments.filter(keep);
  const leading = kept[0]?.marker === MARKER.app0 ? 1 : 0;
  const cut = ({ at, next }: Segment) => bytes.subarray(at, next);
  return join([
    Uint8Array.of(0xff, SOI),
    ...kept.slice(0, leading).map(cut),
    ...insert,
    ...kept.slice(leading).map(cut),
    Uint8Array.of(0xff, EOI),
  ]);
}
