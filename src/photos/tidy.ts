/**
 * Runs a job and then frees every bitmap and canvas it made through the realm's own makers.
 *
 * The compression library leaves them to the collector: per 12-megapixel photograph two times 48 MB that a phone
 * does not get back in time. Only for a worker that does one job at a time: whatever else was made meanwhile is freed too.
 */
export async function freeingPixels<Result>(job: () => Promise<Result>): Promise<Result> {
  const { createImageBitmap: decode, OffscreenCanvas: Canvas } = globalThis;
  const made: (ImageBitmap | OffscreenCanvas)[] = [];
  globalThis.createImageBitmap = async (...given: unknown[]) => {
    const bitmap = await Reflect.apply(decode, globalThis, given);
    made.push(bitmap);
    return bitmap;
  };
  globalThis.OffscreenCanvas = class extends Canvas {
    constructor(width: number, height: number) {
      super(width, height);
      made.push(this);
    }
  };
  try {
    return await job();
  } finally {
    globalThis.createImageBitmap = decode;
    globalThis.OffscreenCanvas = Canvas;
    for (const pixels of made) {
      if (pixels instanceof Canvas) Object.assign(pixels, { width: 0, height: 0 });
      else pixels.close();
    }
  }
}
