import type { Crop } from '../core/before-after.ts';
import { planeMap } from '../core/plane-map.ts';
import type { PixelWork } from '../workers/pixels.ts';
import { pixelWork } from './pixel-work.ts';

/** Two JPEGs of one size that show the same part of a block. */
export interface AlignedCrops {
  readonly before: ArrayBuffer;
  readonly after: ArrayBuffer;
  readonly width: number;
  readonly height: number;
}

export interface AlignedPair {
  readonly before: { readonly sha256: string };
  readonly after: { readonly sha256: string };
  /** In shares, from before to after. */
  readonly h: readonly number[];
  readonly crop: Crop;
}

/**
 * What both photographs of a pair show, the after bent onto the before, as files to be printed. Made when asked for and
 * never stored: the photographs stay what they are.
 * @returns undefined when the bytes of one are not on this device, or the map is none
 * @throws the signal's reason when cancelled
 */
export async function alignedCrops(
  { before, after, h, crop }: AlignedPair,
  photoBytes: (sha256: string) => Promise<{ readonly bytes: ArrayBuffer; readonly mime: string } | undefined>,
  signal: AbortSignal,
  work: Pick<PixelWork, 'ask'> = pixelWork,
): Promise<AlignedCrops | undefined> {
  const map = planeMap(h);
  const stored = await Promise.all([photoBytes(before.sha256), photoBytes(after.sha256)]);
  if (!map || stored.some((one) => !one)) return undefined;
  const sources = [before, after].map(({ sha256 }, i) => ({
    key: sha256,
    // The buffer is handed over; the store may keep its own.
    load: async () => ({ bytes: stored[i]?.bytes.slice(0) ?? new ArrayBuffer(0), mime: stored[i]?.mime ?? '' }),
  }));
  const made = await work.ask('alignedCrops', sources, { map, crop }, { signal });
  signal.throwIfAborted();
  if (!made) return undefined;
  const [{ width, height }] = made;
  const [first, second] = await Promise.all(made.map(jpegOf));
  return first && second ? { before: first, after: second, width, height } : undefined;
}

async function jpegOf(img: { readonly data: Uint8ClampedArray; readonly width: number; readonly height: number }) {
  const { data, width, height } = img;
  const canvas = Object.assign(document.createElement('canvas'), { width, height });
  canvas.getContext('2d')?.putImageData(new ImageData(data as Uint8ClampedArray<ArrayBuffer>, width, height), 0, 0);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.88));
  // Phones do not wait for the collector.
  Object.assign(canvas, { width: 0, height: 0 });
  return blob?.arrayBuffer();
}
