import { readFileSync } from 'node:fs';
import jpeg from 'jpeg-js';
import { PNG } from 'pngjs';

/** Decodes a JPEG or PNG file to RGBA bytes. */
export function readPhoto(file: string): { data: Uint8ClampedArray; width: number; height: number } {
  const bytes = readFileSync(file);
  const { data, width, height } = file.endsWith('.png')
    ? PNG.sync.read(bytes)
    : jpeg.decode(bytes, { useTArray: true, maxMemoryUsageInMB: 2048 });
  return { data: new Uint8ClampedArray(data.buffer, data.byteOffset, data.byteLength), width, height };
}
