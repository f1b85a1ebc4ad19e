/** Writes EXIF by hand for tests, sharing nothing with the reader under test. Source: TIFF 6.0; Exif 2.32, 4.6. */

export interface ExifWanted {
  readonly orientation?: number;
  /** `YYYY:MM:DD HH:MM:SS`. */
  readonly dateTimeOriginal?: string;
  /** `±HH:MM`. */
  readonly offsetTimeOriginal?: string;
  readonly focal35?: number;
  /** Degrees; written as whole degrees, minutes and hundredths of seconds. */
  readonly gps?: { readonly latitude: number; readonly longitude: number };
  readonly littleEndian?: boolean;
  /** Puts this in place of the offset of the first directory. */
  readonly firstDirectoryAt?: number;
}

type Entry = readonly [tag: number, type: number, count: number, value: readonly number[]];
const ASCII = 2;
const SHORT = 3;
const LONG = 4;
const RATIONAL = 5;

const asciiValue = (text: string): readonly number[] => [...text].map((c) => c.charCodeAt(0)).concat(0);

function degrees(value: number): readonly number[] {
  const hundredths = Math.round(Math.abs(value) * 360_000);
  return [Math.floor(hundredths / 360_000), 1, Math.floor(hundredths / 6000) % 60, 1, hundredths % 6000, 100];
}

/** A TIFF block with what is wanted in its main, Exif and GPS directories. */
export function exifBlock(wanted: ExifWanted): Uint8Array<ArrayBuffer> {
  const little = wanted.littleEndian ?? false;
  const view = new DataView(new ArrayBuffer(2048));
  let end = 8;

  /** Writes one directory at `end` with its longer values behind it; gives its offset. Pointers come as entries. */
  function directory(entries: readonly Entry[]): number {
    const at = end;
    end += 2 + entries.length * 12 + 4;
    view.setUint16(at, entries.length, little);
    entries.forEach(([tag, type, count, value], i) => {
      const entry = at + 2 + i * 12;
      view.setUint16(entry, tag, little);
      view.setUint16(entry + 2, type, little);
      view.setUint32(entry + 4, count, little);
      const width = type === ASCII ? 1 : type === SHORT ? 2 : 4;
      const isLong = width * value.length > 4;
      if (isLong) view.setUint32(entry + 8, end, little);
      let place = isLong ? end : entry + 8;
      for (const number of value) {
        if (width === 1) view.setUint8(place, number);
        else if (width === 2) view.setUint16(place, number, little);
        else view.setUint32(place, number, little);
        place += width;
      }
      if (isLong) end = place + (place & 1);
    });
    return at;
  }

  const { orientation, dateTimeOriginal, offsetTimeOriginal, focal35, gps } = wanted;
  const text = (tag: number, value: string): Entry => [tag, ASCII, value.length + 1, asciiValue(value)];
  const camera: Entry[] = [];
  if (dateTimeOriginal !== undefined) camera.push(text(0x9003, dateTimeOriginal));
  if (offsetTimeOriginal !== undefined) camera.push(text(0x9011, offsetTimeOriginal));
  if (focal35 !== undefined) camera.push([0xa405, SHORT, 1, [focal35]]);
  const place: Entry[] = gps
    ? [
        text(1, gps.latitude < 0 ? 'S' : 'N'),
        [2, RATIONAL, 3, degrees(gps.latitude)],
        text(3, gps.longitude < 0 ? 'W' : 'E'),
        [4, RATIONAL, 3, degrees(gps.longitude)],
      ]
    : [];
  const cameraAt = camera.length ? directory(camera) : 0;
  const placeAt = place.length ? directory(place) : 0;
  const main: Entry[] = [];
  if (orientation !== undefined) main.push([0x0112, SHORT, 1, [orientation]]);
  if (cameraAt) main.push([0x8769, LONG, 1, [cameraAt]]);
  if (placeAt) main.push([0x8825, LONG, 1, [placeAt]]);
  const mainAt = directory(main);

  view.setUint16(0, little ? 0x4949 : 0x4d4d);
  view.setUint16(2, 42, little);
  view.setUint32(4, wanted.firstDirectoryAt ?? mainAt, little);
  return new Uint8Array(view.buffer.slice(0, end));
}

const join = (...parts: readonly (Uint8Array | readonly number[])[]): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(parts.flatMap((part) => [...part]));

/** A JPEG segment with any payload. */
export const segment = (marker: number, payload: Uint8Array | readonly number[]): Uint8Array<ArrayBuffer> =>
  join([0xff, marker, (payload.length + 2) >> 8, (payload.length + 2) & 0xff], payload);

export const exifSegment = (wanted: ExifWanted): Uint8Array<ArrayBuffer> =>
  segment(0xe1, join(asciiValue('Exif'), [0], exifBlock(wanted)));

/** A JPEG with the parts put in right after its start-of-image marker, as cameras do. */
export const withSegments = (jpeg: Uint8Array, ...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> => {
  const length = parts.reduce((sum, part) => sum + part.length, jpeg.length);
  const whole = new Uint8Array(length);
  whole.set(jpeg.subarray(0, 2));
  let at = 2;
  for (const part of [...parts, jpeg.subarray(2)]) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

export const withExif = (jpeg: Uint8Array, wanted: ExifWanted): Uint8Array<ArrayBuffer> =>
  withSegments(jpeg, exifSegment(wanted));

/** A PNG chunk with its checksum. Source: PNG specification, annex D. */
export function pngChunk(name: string, data: Uint8Array): Uint8Array<ArrayBuffer> {
  const named = [...asciiValue(name).slice(0, 4), ...data];
  const crc = named.reduce((sum, byte) => {
    let low = (sum ^ byte) & 0xff;
    for (let bit = 0; bit < 8; bit++) low = low & 1 ? 0xedb88320 ^ (low >>> 1) : low >>> 1;
    return (sum >>> 8) ^ low;
  }, -1);
  const whole = new DataView(new ArrayBuffer(named.length + 8));
  whole.setUint32(0, data.length);
  named.forEach((byte, i) => {
    whole.setUint8(4 + i, byte);
  });
  whole.setInt32(4 + named.length, ~crc);
  return new Uint8Array(whole.buffer);
}

/** A RIFF chunk as WebP has them: little-endian length, padded to even. */
export const riffChunk = (name: string, data: Uint8Array): Uint8Array<ArrayBuffer> => {
  const length = [0, 8, 16, 24].map((shift) => (data.length >> shift) & 255);
  return join(asciiValue(name).slice(0, 4), length, data, data.length % 2 ? [0] : []);
};
