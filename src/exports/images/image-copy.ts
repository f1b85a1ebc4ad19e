import { AppError } from '../../core/errors.ts';
import type { Bytes } from '../../photos/bytes.ts';
import { ascii, join } from '../../photos/bytes.ts';
import { exifPayload, orientationBlock } from '../../photos/containers/container.ts';
import { isNeededToDraw } from '../../photos/containers/jpeg.ts';
import { isJpeg, MARKER, makeSegment, rewriteJpeg } from '../../photos/segments.ts';
import { type PictureWords, xmpPacket } from './xmp.ts';

/** Name of an XMP segment. Source: XMP specification part 3, 1.1.3. */
const XMP_NAME = 'http://ns.adobe.com/xap/1.0/\0';
const MOST_XMP_BYTES = 0xffff - 2 - XMP_NAME.length;

/** The packet, its long texts cut until it fits the one segment that every reader looks into. */
function packetBytes(words: PictureWords): Uint8Array {
  const encoder = new TextEncoder();
  for (let most = 20_000; ; most = Math.floor(most / 2)) {
    const cut = (text: string): string => (text.length > most ? `${text.slice(0, most - 1)}…` : text);
    const bytes = encoder.encode(
      xmpPacket({ ...words, description: cut(words.description), longDescription: cut(words.longDescription) }),
    );
    if (bytes.length <= MOST_XMP_BYTES || most < 100) return bytes;
  }
}

/**
 * A copy of a stored JPEG to be handed on: the same coded picture, pixel for pixel, freed of what camera and phone wrote
 * into it (place, device, maker's notes, captions, a second picture or film behind it), with what the owner says of it
 * as one XMP packet.
 * @param orientation of the pixels, 1 to 8; 1 for a working copy, which lies upright
 * @throws AppError photo-not-an-image for bytes that are no whole JPEG
 */
export function imageCopy(bytes: Bytes, words: PictureWords, orientation = 1): Bytes {
  if (!isJpeg(bytes)) throw new AppError('photo-not-an-image');
  const inserted = [
    ...(orientation > 1 ? [makeSegment(MARKER.app1, exifPayload(orientationBlock(orientation)))] : []),
    makeSegment(MARKER.app1, join([ascii(XMP_NAME), packetBytes(words)])),
  ];
  try {
    return rewriteJpeg(bytes, (segment) => isNeededToDraw(bytes, segment), inserted);
  } catch (cause) {
    throw new AppError('photo-not-an-image', { cause });
  }
}
