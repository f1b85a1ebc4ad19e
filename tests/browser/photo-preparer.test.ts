import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { prepareInPage } from '../../src/photos/in-page.ts';
import type { PreparedPhoto } from '../../src/photos/prepared-photo.ts';
import { createPreparer, type PhotoWorker } from '../../src/photos/preparer.ts';
import type { PrepareReply, PrepareRequest } from '../../src/photos/worker-messages.ts';
import { workingCopy } from '../../src/photos/working-copy.ts';
import { segment, withExif } from '../support/exif.ts';
import { CORNERS, cornersOf, isNear, scene } from '../support/test-pictures.ts';

const PHOTO = { sha256: 'made in a worker' } as PreparedPhoto;
const IN_PAGE = { sha256: 'made in the page' } as PreparedPhoto;
const wishes = { keepOriginal: false, keepPosition: false, readCameraFacts: true };

/** Workers that answer as told; what happened to them is written down. */
function workshop(answer: (request: PrepareRequest, say: (reply: PrepareReply) => void, worker: PhotoWorker) => void) {
  const log: string[] = [];
  const prepare = createPreparer({
    startWorker: () => {
      log.push('start');
      const worker: PhotoWorker = {
        onmessage: null,
        onerror: null,
        terminate: () => log.push('end'),
        postMessage: (request: PrepareRequest) => {
          log.push(request.wishes.readCameraFacts ? request.name : `${request.name} without EXIF`);
          const say = (data: PrepareReply) =>
            worker.onmessage?.call(worker as Worker, new MessageEvent('message', { data }));
          answer(request, say, worker);
        },
      };
      return worker;
    },
    prepareInPage: async (_file, name) => {
      log.push(`${name} in page`);
      return IN_PAGE;
    },
    patience: { photo: 30_000, cameraFacts: 3000, idle: 10_000 },
  });
  const take = (name: string, signal?: AbortSignal): Promise<PreparedPhoto> =>
    prepare({ file: new Blob([name]), name, wishes, signal, onStage: () => {} });
  return { log, take };
}

describe('the preparer', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('hands one photograph at a time to one worker and ends it after ten seconds of rest', async () => {
    const waiting: (() => void)[] = [];
    const { log, take } = workshop((_, say) => waiting.push(() => say({ what: 'done', photo: PHOTO })));
    const [first, second] = [take('one'), take('two')];
    await vi.advanceTimersByTimeAsync(100);
    expect(log).toEqual(['start', 'one']);
    waiting.shift()?.();
    await first;
    await vi.advanceTimersByTimeAsync(100);
    waiting.shift()?.();
    await second;
    expect(log).toEqual(['start', 'one', 'two']);
    await vi.advanceTimersByTimeAsync(9500);
    expect(log).not.toContain('end');
    await vi.advanceTimersByTimeAsync(1000);
    expect(log.at(-1)).toBe('end');
  });

  it('takes the photograph without its EXIF when reading that takes more than three seconds', async () => {
    const { log, take } = workshop((request, say) => {
      say({ what: 'stage', stage: 'cameraFacts' });
      if (!request.wishes.readCameraFacts) say({ what: 'done', photo: PHOTO });
    });
    const photo = take('slow');
    await vi.advanceTimersByTimeAsync(3300);
    expect(await photo).toBe(PHOTO);
    expect(log).toEqual(['start', 'slow', 'end', 'start', 'slow without EXIF']);
  });

  it('gives a photograph up after half a minute, worker and all, and goes on with the next', async () => {
    const { log, take } = workshop((request, say) => {
      if (request.name === 'next') say({ what: 'done', photo: PHOTO });
    });
    const stuck = expect(take('stuck')).rejects.toMatchObject({ code: 'photo-timeout' });
    const next = take('next');
    await vi.advanceTimersByTimeAsync(30_500);
    await stuck;
    expect(await next).toBe(PHOTO);
    expect(log).toEqual(['start', 'stuck', 'end', 'start', 'next']);
  });

  it('works in the page, for good, once workers turn out to have no canvas or cannot be loaded', async () => {
    for (const refuse of [
      (_: PrepareRequest, say: (reply: PrepareReply) => void) => say({ what: 'unable' }),
      (_: PrepareRequest, __: unknown, worker: PhotoWorker) =>
        worker.onerror?.call(worker as Worker, new ErrorEvent('error')),
    ]) {
      const { log, take } = workshop(refuse);
      expect(await take('one')).toBe(IN_PAGE);
      expect(await take('two')).toBe(IN_PAGE);
      expect(log).toEqual(['start', 'one', 'end', 'one in page', 'two in page']);
    }
  });

  it('reports a refusal with its code, keeps the worker, and a fault of ours as such', async () => {
    const { log, take } = workshop((request, say) =>
      request.name === 'bad'
        ? say({ what: 'refused', code: 'photo-heic', reason: 'no decoder' })
        : say({ what: 'failed', reason: 'a slip' }),
    );
    await expect(take('bad')).rejects.toMatchObject({ code: 'photo-heic' });
    await expect(take('other')).rejects.toThrow('a slip');
    expect(log).toEqual(['start', 'bad', 'other', 'end']);
  });

  it('never begins a photograph that was called off while it waited', async () => {
    const { log, take } = workshop(() => {});
    const stop = new AbortController();
    const results = Promise.allSettled([take('under way', stop.signal), take('waiting', stop.signal)]);
    await vi.advanceTimersByTimeAsync(10);
    stop.abort(new Error('enough'));
    expect((await results).map((result) => result.status)).toEqual(['rejected', 'rejected']);
    await vi.advanceTimersByTimeAsync(10);
    expect(log).toEqual(['start', 'under way', 'end']);
  });
});

describe('without a canvas in workers', () => {
  it('the page makes the same upright copies', async () => {
    const bytes = withExif(await scene(900, 3000, { orientation: 6 }), { orientation: 6 });
    const photo = await prepareInPage(new Blob([bytes]), '', wishes, () => {});
    expect([photo.width, photo.height, photo.thumbnail.width]).toEqual([614, 2048, 96]);
    const corners = await cornersOf(photo.bytes);
    for (const corner of Object.keys(CORNERS) as (keyof typeof CORNERS)[])
      expect(isNear(corners[corner], CORNERS[corner]), corner).toBe(true);
  });

  it('a picture of 108 megapixels is refused from its header, before anything is decoded', async () => {
    const huge = Uint8Array.from([
      ...[0xff, 0xd8],
      ...segment(0xc0, [8, 9000 >> 8, 9000 & 255, 12_000 >> 8, 12_000 & 255, 1, 1, 0x11, 0]),
      ...segment(0xda, [1, 1, 0, 0, 63, 0]),
      ...[0, 0xff, 0xd9],
    ]);
    const decode = vi.spyOn(globalThis, 'createImageBitmap');
    await expect(prepareInPage(new Blob([huge]), '', wishes, () => {})).rejects.toMatchObject({
      code: 'photo-too-large',
    });
    expect(decode).not.toHaveBeenCalled();
    decode.mockRestore();
  });
});

describe('the memory of a working copy', () => {
  it('is given back at once: every bitmap closed, every canvas emptied', async () => {
    const bytes = await scene(3000, 2000);
    const { createImageBitmap: decode, OffscreenCanvas: Canvas } = globalThis;
    const made: { width: number; height: number }[] = [];
    globalThis.createImageBitmap = async (...given: unknown[]) => {
      const bitmap: ImageBitmap = await Reflect.apply(decode, globalThis, given);
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
      const upright = { width: 3000, height: 2000 };
      const target = { longSidePx: 2048, quality: 0.85 };
      const copy = await workingCopy(new Blob([bytes], { type: 'image/jpeg' }), upright, target);
      expect(copy.type).toBe('image/jpeg');
    } finally {
      Object.assign(globalThis, { createImageBitmap: decode, OffscreenCanvas: Canvas });
    }
    expect(made.length).toBeGreaterThanOrEqual(3);
    expect(made.filter(({ width, height }) => width * height > 0)).toEqual([]);
  });
});
