import { type Bytes, hasText, u16 } from '../bytes.ts';
import { isJpeg, MARKER, makeSegment, readSegments, rewriteJpeg, type Segment } from '../segments.ts';
import { type Container, exifPayload, exifShell, orientationBlock } from './container.ts';

/** Start of frame: 0xC0–0xCF without the tables for Huffman (C4), reserved (C8) and arithmetic coding (CC). */
const isFrame = ({ marker }: Segment): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

const headOf = (bytes: Uint8Array): readonly Segment[] => readSegments(bytes, { beforeScan: true }).segments;

const isExif = (bytes: Uint8Array, { marker, start }: Segment): boolean =>
  marker === MARKER.app1 && hasText(bytes, start, 'Exif\0');

/**
 * Whether a decoder needs the segment: coded data, and of the application segments only JFIF, the colour profile and
 * Adobe's colour transform. A list of what stays, because what cameras and phones add has no end.
 */
export function isNeededToDraw(bytes: Uint8Array, { marker, start }: Segment): boolean {
  if (marker === MARKER.comment) return false;
  if (marker < MARKER.app0 || marker > MARKER.app15) return true;
  return (
    (marker === MARKER.app0 && hasText(bytes, start, 'JFIF\0')) ||
    (marker === MARKER.app2 && hasText(bytes, start, 'ICC_PROFILE\0')) ||
    (marker === MARKER.app14 && hasText(bytes, start, 'Adobe'))
  );
}

export const jpeg: Container = {
  mime: 'image/jpeg',
  recognises: isJpeg,
  size(bytes) {
    const frame = headOf(bytes).find(isFrame);
    return frame ? { height: u16(bytes, frame.start + 1), width: u16(bytes, frame.start + 3) } : null;
  },
  isWhole: (bytes) => readSegments(bytes).end !== null,
  cameraBlock(bytes) {
    const exif = headOf(bytes).find((segment) => isExif(bytes, segment));
    return exif ? exifShell(bytes.subarray(exif.start, exif.end)) : null;
  },
  withoutMetadata: (bytes: Bytes, orientation) =>
    rewriteJpeg(
      bytes,
      (segment) => isNeededToDraw(bytes, segment),
      orientation > 1 ? [makeSegment(MARKER.app1, exifPayload(orientationBlock(orientation)))] : [],
    ),
};
