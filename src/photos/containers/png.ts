import { ascii, type Bytes, hasText, join, textAt, u32 } from '../bytes.ts';
import { type Container, exifPayload, exifShell, orientationBlock, tiffOf } from './container.ts';

interface Chunk {
  readonly name: string;
  readonly at: number;
  readonly start: number;
  readonly end: number;
}

/** Chunks up to and with IEND; a file cut off lacks it. Source: PNG specification (third edition), section 5. */
function chunksOf(bytes: Uint8Array): Chunk[] {
  const chunks: Chunk[] = [];
  for (let at = 8; at + 12 <= bytes.length; ) {
    const end = at + 8 + u32(bytes, at);
    if (end + 4 > bytes.length) break;
    const name = textAt(bytes, at + 4, 4);
    chunks.push({ name, at, start: at + 8, end });
    if (name === 'IEND') break;
    at = end + 4;
  }
  return chunks;
}

/** Besides the critical chunks (capital first letter): colour, transparency, pixel shape, animation. */
const NEEDED = new Set('tRNS gAMA cHRM sRGB iCCP sBIT bKGD pHYs cICP mDCV cLLI acTL fcTL fdAT'.split(' '));
const isNeeded = ({ name }: Chunk): boolean => /^[A-Z]/.test(name) || NEEDED.has(name);

/** Source: PNG specification, annex D: the CRC of ISO 3309, here bit by bit for a chunk of thirty bytes. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

const big32 = (n: number): Bytes => Uint8Array.of(n >>> 24, n >>> 16, n >>> 8, n);

function makeChunk(name: string, data: Uint8Array): Bytes {
  const named = join([ascii(name), data]);
  return join([big32(data.length), named, big32(crc32(named))]);
}

export const png: Container = {
  mime: 'image/png',
  recognises: (bytes) => hasText(bytes, 0, '\x89PNG\r\n\x1a\n'),
  size: (bytes) =>
    hasText(bytes, 12, 'IHDR') && bytes.length >= 24 ? { width: u32(bytes, 16), height: u32(bytes, 20) } : null,
  isWhole: (bytes) => chunksOf(bytes).at(-1)?.name === 'IEND',
  cameraBlock(bytes) {
    const exif = chunksOf(bytes).find(({ name }) => name === 'eXIf');
    return exif ? exifShell(exifPayload(tiffOf(bytes.subarray(exif.start, exif.end)))) : null;
  },
  withoutMetadata(bytes: Bytes, orientation) {
    const [header, ...others] = chunksOf(bytes).filter(isNeeded);
    const cut = ({ at, end }: Chunk) => bytes.subarray(at, end + 4);
    return join([
      bytes.subarray(0, 8),
      ...(header ? [cut(header)] : []),
      ...(orientation > 1 ? [makeChunk('eXIf', orientationBlock(orientation))] : []),
      ...others.map(cut),
    ]);
  },
};
