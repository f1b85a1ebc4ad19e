import { parse } from 'exifr/dist/lite.esm.mjs';
import type { Photo } from '../core/records.ts';

/** What a camera wrote about a picture, as far as this app has a use for it. */
export interface CameraFacts {
  readonly taken: Photo['taken'];
  /** EXIF orientation, 1 to 8. The browser turns the picture; this is kept for the original and for looking into faults. */
  readonly orientation: number | null;
  readonly focal35: number | null;
  readonly position: Photo['position'];
}

export const noFacts: CameraFacts = { taken: null, orientation: null, focal35: null, position: null };

const text = (value: unknown): string => (typeof value === 'string' ? value.trim() : '');
const within = (value: unknown, least: number, most: number): number | null =>
  typeof value === 'number' && value >= least && value <= most ? value : null;

/**
 * Camera time as local text. Cameras whose clock was never set write zeros or spaces: null.
 * Source: Exif 2.32, DateTimeOriginal (0x9003) `YYYY:MM:DD HH:MM:SS` and OffsetTimeOriginal (0x9011) `±HH:MM`.
 */
export function takenOf(dateTime: unknown, offset: unknown): Photo['taken'] {
  const [, year, month, day, time] =
    /^(\d{4})[:-](0[1-9]|1[0-2])[:-](0[1-9]|[12]\d|3[01])[ T]((?:[01]\d|2[0-3]):[0-5]\d:[0-5]\d)/.exec(
      text(dateTime),
    ) ?? [];
  if (!time || Number(year) < 1) return null;
  const [zone] = /^[+-](?:0\d|1[0-4]):[0-5]\d$/.exec(text(offset)) ?? [];
  return { local: `${year}-${month}-${day}T${time}`, offset: zone ?? null, from: 'camera' };
}

const GPS = ['GPSLatitudeRef', 'GPSLatitude', 'GPSLongitudeRef', 'GPSLongitude'];

function positionOf(latitude: unknown, longitude: unknown): Photo['position'] {
  const [north, east] = [within(latitude, -90, 90), within(longitude, -180, 180)];
  return north === null || east === null ? null : { latitude: north, longitude: east };
}

/**
 * Reads EXIF. Unreadable, malformed or absent data give nulls, never an error; it may take long on hostile data, so
 * the caller watches the clock. Position in decimal degrees (WGS 84 as cameras write it), not even looked at unless
 * `keepPosition`. Local time stays text: the reader would otherwise make a moment of it in this phone's zone.
 */
export async function readCameraFacts(block: Uint8Array, keepPosition: boolean): Promise<CameraFacts> {
  try {
    const tags = await parse(block, {
      reviveValues: false,
      translateValues: false,
      ifd0: ['Orientation'],
      exif: ['DateTimeOriginal', 'OffsetTimeOriginal', 'FocalLengthIn35mmFormat'],
      gps: keepPosition ? GPS : false,
    });
    if (!tags) return noFacts;
    const orientation = within(tags.Orientation, 1, 8);
    return {
      taken: takenOf(tags.DateTimeOriginal, tags.OffsetTimeOriginal),
      orientation: orientation !== null && Number.isInteger(orientation) ? orientation : null,
      // 0 is how a camera says that it does not know. Source: Exif 2.32, FocalLengthIn35mmFilm (0xA405).
      focal35: within(tags.FocalLengthIn35mmFormat, 1, 10_000),
      position: keepPosition ? positionOf(tags.latitude, tags.longitude) : null,
    };
  } catch {
    return noFacts;
  }
}
