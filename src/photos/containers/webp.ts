import { ascii, type Bytes, hasText, join, textAt, u16le, u32le } from '../bytes.ts';
import { type Container, exifPayload, exifShell, orientationBlock, type Size, tiffOf } from './container.ts';

interface Chunk {
  readonly name: string;
  readonly at: number;
  readonly start: number;
  readonly end: number;
  /** After the byte that makes the length even. */
  readonly next: number;
}

/** Source: WebP container specification (RFC 9649), sections 2.3 to 2.7. */
function chunksOf(bytes: Uint8Array): Chunk[] {
  const chunks: Chunk[] = [];
  const stop = Math.min(bytes.length, 8 + u32le(bytes, 4));
  for (let at = 12; at + 8 <= stop; ) {
    const start = at + 8;
    const end = start + u32le(bytes, at + 4);
    if (end > stop) break;
    const next = Math.min(end + (end & 1), bytes.length);
    chunks.push({ name: textAt(bytes, at, 4), at, start, end, next });
    at = end + (end & 1);
  }
  return chunks;
}

const NEEDED = new Set(['VP8X', 'VP8 ', 'VP8L', 'ALPH', 'ICCP', 'ANIM', 'ANMF']);
/** Bits of VP8X that promise an EXIF and an XMP chunk. */
const HAS_EXIF = 0x08;
const HAS_XMP = 0x04;

const u24le = (bytes: Uint8Array, at: number): number => u16le(bytes, at) + (bytes[at + 2] ?? 0) * 0x10000;

const sizes: { readonly [name: string]: (bytes: Uint8Array, start: number) => Size } = {
  VP8X: (bytes, start) => ({ width: u24le(bytes, start + 4) + 1, height: u24le(bytes, start + 7) + 1 }),
  'VP8 ': (bytes, start) => ({ width: u16le(bytes, start + 6) & 0x3fff, height: u16le(bytes, start + 8) & 0x3fff }),
  VP8L: (bytes, start) => ({
    width: (u16le(bytes, start + 1) & 0x3fff) + 1,
    height: ((u32le(bytes, start + 1) >>> 14) & 0x3fff) + 1,
  }),
};

const little32 = (n: number): Bytes => Uint8Array.of(n, n >>> 8, n >>> 16, n >>> 24);

export const webp: Container = {
  mime: 'image/webp',
  recognises: (bytes) => hasText(bytes, 0, 'RIFF') && hasText(bytes, 8, 'WEBP'),
  size(bytes) {
    // The first chunk may run past a slice or a cut file; its header is enough.
    return sizes[textAt(bytes, 12, 4)]?.(bytes, 20) ?? null;
  },
  isWhole: (bytes) => bytes.length >= 8 + u32le(bytes, 4) && chunksOf(bytes).length > 0,
  cameraBlock(bytes) {
    const exif = chunksOf(bytes).find(({ name }) => name === 'EXIF');
    return exif ? exifShell(exifPayload(tiffOf(bytes.subarray(exif.start, exif.end)))) : null;
  },
  withoutMetadata(bytes: Bytes, orientation) {
    const turned = orientation > 1;
    const kept = chunksOf(bytes)
      .filter(({ name }) => NEEDED.has(name))
      .map(({ name, at, start, next }) => {
        const chunk = bytes.slice(at, next);
        const flags = start - at;
        if (name === 'VP8X') chunk[flags] = ((chunk[flags] ?? 0) & ~(HAS_EXIF | HAS_XMP)) | (turned ? HAS_EXIF : 0);
        return chunk;
      });
    const block = orientationBlock(orientation);
    const body = join([ascii('WEBP'), ...kept, ...(turned ? [ascii('EXIF'), little32(block.length), block] : [])]);
    return join([ascii('RIFF'), little32(body.length), body]);
  },
};
