import type { Locator, Page } from 'playwright-core';
import { withExif } from './exif.ts';
import { CORNERS } from './test-pictures.ts';

/** What the camera wrote beside the picture; the place must not come out of the app again. */
export const CAMERA = {
  orientation: 6,
  dateTimeOriginal: '2026:10:17 11:42:09',
  offsetTimeOriginal: '+01:00',
  focal35: 26,
  gps: { latitude: 51.17725, longitude: -2.98764 },
} as const;

/** Pixels of a usual phone camera, held upright. */
const UPRIGHT = { width: 3024, height: 4032 };

/**
 * A photograph as a phone held upright takes it: stored lying (orientation 6 of Exif 2.32, 4.6), a colour in each corner,
 * grain enough to weigh some megabytes. Drawn by the browser.
 */
export async function photograph(page: Page, { width, height } = UPRIGHT): Promise<Buffer> {
  const draw = async ({ corners, width, height }: typeof UPRIGHT & { corners: typeof CORNERS }): Promise<string> => {
    const canvas = new OffscreenCanvas(height, width);
    const context = canvas.getContext('2d');
    if (!context) throw new Error('No 2D context.');
    // Upright drawing laid on its side: what is at its right edge is stored as row 0.
    context.setTransform(0, -1, 1, 0, 0, width);
    context.fillStyle = '#998877';
    context.fillRect(0, 0, width, height);
    for (let i = 0; i < 3000; i++) {
      context.strokeStyle = `hsl(${20 + (i % 30)} 45% ${25 + (i % 50)}%)`;
      context.lineWidth = 0.7 + (i % 5);
      context.beginPath();
      context.moveTo((i * 97) % width, (i * 31) % height);
      context.lineTo((i * 53) % width, (i * 71) % height);
      context.stroke();
    }
    const places = { topLeft: [0, 0], topRight: [1, 0], bottomLeft: [0, 1], bottomRight: [1, 1] } as const;
    for (const [name, [right, low]] of Object.entries(places)) {
      context.fillStyle = `rgb(${corners[name as keyof typeof corners].join(' ')})`;
      context.fillRect((right * width * 2) / 3, (low * height * 2) / 3, width / 3, height / 3);
    }
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 });
    const bytes = new Uint8Array(await blob.arrayBuffer());
    let text = '';
    for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    return btoa(text);
  };
  const base64 = await page.evaluate(draw, { corners: CORNERS, width, height });
  return Buffer.from(withExif(Buffer.from(base64, 'base64'), CAMERA));
}

/** Size and corner colours of a picture the page shows, as a person would see it. */
export const seenPicture = (picture: Locator) =>
  picture.evaluate(async (image) => {
    if (!(image instanceof HTMLImageElement)) throw new Error(`A picture was expected, got ${image.tagName}.`);
    await image.decode();
    const { naturalWidth: width, naturalHeight: height } = image;
    const context = new OffscreenCanvas(width, height).getContext('2d');
    if (!context) throw new Error('No 2D context.');
    context.drawImage(image, 0, 0);
    const at = (x: number, y: number): [number, number, number] => {
      const [r = 0, g = 0, b = 0] = context.getImageData(Math.floor(width * x), Math.floor(height * y), 1, 1).data;
      return [r, g, b];
    };
    return {
      width,
      height,
      topLeft: at(1 / 6, 1 / 6),
      topRight: at(5 / 6, 1 / 6),
      bottomLeft: at(1 / 6, 5 / 6),
      bottomRight: at(5 / 6, 5 / 6),
    };
  });
