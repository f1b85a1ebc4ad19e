import { hasText, textAt, u32 } from '../bytes.ts';
import type { Container, Size } from './container.ts';

/** Brands of still pictures in ISO boxes. Source: ISO/IEC 23008-12 (HEIF) and the AVIF specification, from memory. */
const HEIC_BRANDS = ['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'hevm', 'hevs', 'mif1', 'msf1'];
const AVIF_BRANDS = ['avif', 'avis'];

function brandsOf(bytes: Uint8Array): string[] {
  if (!hasText(bytes, 4, 'ftyp')) return [];
  const end = Math.min(u32(bytes, 0), bytes.length, 256);
  const brands = [textAt(bytes, 8, 4)];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(textAt(bytes, at, 4));
  return brands;
}

/** The `meta` box, where everything about the pictures stands. */
function metaOf(bytes: Uint8Array): Uint8Array | null {
  for (let at = 0; at + 8 <= bytes.length; ) {
    const length = u32(bytes, at);
    if (hasText(bytes, at + 4, 'meta')) return bytes.subarray(at, Math.min(at + length, bytes.length));
    if (length < 8) return null;
    at += length;
  }
  return null;
}

/** The largest `ispe` (extent) property: tiles and thumbnails have smaller ones of their own. */
function size(bytes: Uint8Array): Size | null {
  const meta = metaOf(bytes);
  if (!meta) return null;
  let largest: Size | null = null;
  for (let at = meta.indexOf(0x69); at >= 0; at = meta.indexOf(0x69, at + 1)) {
    if (!hasText(meta, at, 'ispe') || at + 16 > meta.length) continue;
    const [width, height] = [u32(meta, at + 8), u32(meta, at + 12)];
    if (!largest || width * height > largest.width * largest.height) largest = { width, height };
  }
  return largest;
}

function inBoxes(mime: string, brands: readonly string[]): Container {
  return {
    mime,
    recognises: (bytes) => brandsOf(bytes).some((brand) => brands.includes(brand)),
    size,
    // A box format may end anywhere after its media data; the decoder finds out.
    isWhole: (bytes) => metaOf(bytes) !== null,
    // EXIF is stored as an item found by tables, so the reader needs the whole file.
    cameraBlock: (bytes) => bytes,
    // Taking an item out moves every offset in those tables: not done here.
    withoutMetadata: null,
  };
}

export const avif = inBoxes('image/avif', AVIF_BRANDS);
export const heic = inBoxes('image/heic', HEIC_BRANDS);
