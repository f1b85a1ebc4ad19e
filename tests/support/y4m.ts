import { writeFile } from 'node:fs/promises';

export type Rgb = readonly [number, number, number];

const byte = (value: number): number => Math.max(0, Math.min(255, Math.round(value)));

/** Luma and colour differences of video. Source: ITU-R BT.601, 8 bit, limited range. */
function yCbCr([r, g, b]: Rgb): Rgb {
  const [red, green, blue] = [r / 255, g / 255, b / 255];
  return [
    byte(16 + 65.481 * red + 128.553 * green + 24.966 * blue),
    byte(128 - 37.797 * red - 74.203 * green + 112 * blue),
    byte(128 + 112 * red - 93.786 * green - 18.214 * blue),
  ];
}

/**
 * Writes a clip of one still picture, as Chromium's stand-in camera plays it: a line of text, then raw planes, colour at
 * half the size. Width and height must be even.
 */
export async function writeClip(
  file: string,
  width: number,
  height: number,
  colourAt: (x: number, y: number) => Rgb,
): Promise<void> {
  const half = { width: width / 2, height: height / 2 };
  if (!Number.isInteger(half.width) || !Number.isInteger(half.height))
    throw new Error(`A clip came as ${width} × ${height}, expected even numbers.`);
  const luma = Buffer.alloc(width * height);
  const blue = Buffer.alloc(half.width * half.height);
  const red = Buffer.alloc(half.width * half.height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const [l, cb, cr] = yCbCr(colourAt(x, y));
      luma[y * width + x] = l;
      const at = (y >> 1) * half.width + (x >> 1);
      blue[at] = cb;
      red[at] = cr;
    }
  const frame = [Buffer.from('FRAME\n'), luma, blue, red];
  const head = Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420\n`);
  await writeFile(file, Buffer.concat([head, ...frame, ...frame]));
}

/** Flags that put a clip in place of the camera and say yes to its use. */
export const cameraArgs = (clip: string): string[] => [
  '--use-fake-ui-for-media-stream',
  '--use-fake-device-for-media-stream',
  `--use-file-for-fake-video-capture=${clip}`,
];
