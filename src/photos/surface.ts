/** A drawing surface for one picture, in a worker or in the page. */
export interface Surface {
  readonly context: Pick<CanvasRenderingContext2D, 'drawImage' | 'fillRect'> & { fillStyle: unknown };
  toJpeg(quality: number): Promise<Blob>;
  /** Gives the pixels back at once: phones do not wait for the collector. */
  free(): void;
}

export type MakeSurface = (width: number, height: number) => Surface;

function need<Context>(context: Context | null): Context {
  if (!context) throw new Error('This browser gives no 2D context here.');
  return context;
}

/** For workers. Throws where OffscreenCanvas has no 2D context (iOS before 16.4). */
export const offscreen: MakeSurface = (width, height) => {
  const canvas = new OffscreenCanvas(width, height);
  return {
    context: need(canvas.getContext('2d')),
    toJpeg: (quality) => canvas.convertToBlob({ type: 'image/jpeg', quality }),
    free: () => Object.assign(canvas, { width: 0, height: 0 }),
  };
};

/** Whether `offscreen` works here. */
export function canDrawOffscreen(): boolean {
  try {
    offscreen(1, 1).free();
    return true;
  } catch {
    return false;
  }
}

/** For the page, where every browser has a canvas. */
export const inPage: MakeSurface = (width, height) => {
  const canvas = Object.assign(document.createElement('canvas'), { width, height });
  return {
    context: need(canvas.getContext('2d')),
    toJpeg: (quality) =>
      new Promise((resolve, reject) =>
        canvas.toBlob(
          (blob) => (blob ? resolve(blob) : reject(new Error('The canvas gave no picture.'))),
          'image/jpeg',
          quality,
        ),
      ),
    free: () => Object.assign(canvas, { width: 0, height: 0 }),
  };
};
