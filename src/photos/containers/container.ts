import { type Bytes, join, u16 } from '../bytes.ts';

/** One file format a photograph may come in: how it is known, measured, and freed of what it says about its maker. */
export interface Container {
  readonly mime: string;
  /** By the first bytes, never by name or declared type. */
  recognises(bytes: Uint8Array): boolean;
  /** Pixels as coded, before any rotation, read without decoding; null when the header does not say. */
  size(bytes: Uint8Array): Size | null;
  /** False when the file stops before its own end. */
  isWhole(bytes: Uint8Array): boolean;
  /** What the EXIF reader is given: as little of the file as it needs; null when there is no EXIF. */
  cameraBlock(bytes: Bytes): Bytes | null;
  /**
   * The same coded picture without anything but what drawing it needs: no EXIF, XMP, captions, comments, maker's
   * notes, second pictures or trailers, so no position either. Keeps the orientation. Null where this app cannot.
   */
  withoutMetadata: ((bytes: Bytes, orientation: number) => Bytes) | null;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** EXIF data (a TIFF block) that says the orientation, 1 to 8, and nothing else. Source: Exif 2.32, 4.6.4; tag 0x0112. */
export const orientationBlock = (orientation: number): Bytes =>
  Uint8Array.of(0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0);

const EXIF_NAME = Uint8Array.of(0x45, 0x78, 0x69, 0x66, 0, 0);
/** A TIFF block as the payload of a JPEG APP1 segment: `Exif`, two zeros, the block. */
export const exifPayload = (tiff: Uint8Array): Bytes => join([EXIF_NAME, tiff]);

/** A JPEG shell around one EXIF payload, with no picture in it: the smallest file the EXIF reader accepts. */
export const exifShell = (payload: Uint8Array): Bytes | null =>
  payload.length > 0xfffd
    ? null
    : join([
        Uint8Array.of(0xff, 0xd8, 0xff, 0xe1, (payload.length + 2) >> 8, (payload.length + 2) & 0xff),
        payload,
        Uint8Array.of(0xff, 0xd9),
      ]);

/** The TIFF block of data that may or may not begin with the `Exif` name: both are met in WebP files. */
export const tiffOf = (data: Uint8Array): Uint8Array => (u16(data, 0) === 0x4578 ? data.subarray(6) : data);
