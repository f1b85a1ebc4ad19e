import { describe, expect, it } from 'vitest';
import { AppError } from '../../src/core/errors.ts';
import { reportPictures } from '../../src/parts/report-pictures.ts';
import { reduce } from '../../src/photos/reduce.ts';
import type { ReduceReply, ReduceRequest } from '../../src/photos/reduce-messages.ts';
import { createReducer, type ReduceWorker } from '../../src/photos/reducer.ts';
import { inPage } from '../../src/photos/surface.ts';
import { withExif } from '../support/exif.ts';
import { CORNERS, cornersOf, isNear, scene } from '../support/test-pictures.ts';

const CORNER_NAMES = Object.keys(CORNERS) as (keyof typeof CORNERS)[];
const TARGET = { longSidePx: 1200, quality: 0.82 };

/** Size and corners of a JPEG as the browser itself sees them. */
async function seen(jpeg: ArrayBuffer | undefined) {
  if (!jpeg) throw new Error('There is no picture.');
  const { width, height } = await createImageBitmap(new Blob([jpeg]));
  const corners = await cornersOf(jpeg);
  return { width, height, inPlace: CORNER_NAMES.filter((name) => isNear(corners[name], CORNERS[name])) };
}

/** Workers that answer when told; what happened to them is written down. */
function workshop(hands: number) {
  const log: string[] = [];
  const asked: { say: (reply: ReduceReply) => void; die: () => void }[] = [];
  let inPageNow = 0;
  const control = new AbortController();
  const make = createReducer(
    {
      startWorker: () => {
        log.push('start');
        const worker: ReduceWorker = {
          onmessage: null,
          onerror: null,
          terminate: () => log.push('end'),
          postMessage: (request: ReduceRequest) => {
            log.push(`asked for ${request.target.longSidePx}`);
            asked.push({
              say: (data) => worker.onmessage?.call(worker as Worker, new MessageEvent('message', { data })),
              die: () => worker.onerror?.call(worker as Worker, new ErrorEvent('error', { message: 'gone' })),
            });
          },
        };
        return worker;
      },
      reduceInPage: async (_source, _upright, { longSidePx }) => {
        inPageNow += 1;
        log.push(`${longSidePx} in page, ${inPageNow} at once`);
        await new Promise((done) => setTimeout(done, 1));
        inPageNow -= 1;
        return new Blob(['made in page']);
      },
      hands,
    },
    control.signal,
  );
  const take = (longSidePx: number) => make(new Blob([]), null, { longSidePx, quality: 0.8 });
  return { log, asked, control, take };
}

const done = (words: string): ReduceReply => ({ what: 'done', jpeg: new TextEncoder().encode(words).buffer });
const soon = () => new Promise((next) => setTimeout(next, 0));
const wordsIn = (jpeg: ArrayBuffer | undefined): string => new TextDecoder().decode(jpeg);

describe('a picture made smaller', () => {
  // Source: Exif 2.32, tag 0x0112, by the four coloured corners; 5000 px are more than twice 1200, 2000 px are not.
  it('lies upright in the size asked for, however large it was and whether or not its size was known', async () => {
    for (const [width, height] of [
      [1500, 2000],
      [3750, 5000],
    ] as const)
      for (const upright of [{ width, height }, null]) {
        const bytes = withExif(await scene(width, height, { orientation: 6 }), { orientation: 6 });
        const jpeg = await reduce(new Blob([bytes], { type: 'image/jpeg' }), upright, TARGET, inPage);
        expect(await seen(await jpeg.arrayBuffer())).toEqual({ width: 900, height: 1200, inPlace: CORNER_NAMES });
      }
  });
});

describe('the photographs of a report', () => {
  const stored = async (sha256: string) => {
    const mime = 'image/jpeg';
    if (sha256 === 'held upright')
      return { bytes: withExif(await scene(1500, 2000, { orientation: 6 }), { orientation: 6 }).buffer, mime };
    if (sha256 === 'a drawing')
      return { bytes: (await scene(300, 200, { type: 'image/png' })).buffer, mime: 'image/png' };
    if (sha256 === 'cut off') return { bytes: (await scene(1500, 2000)).buffer.slice(0, 600), mime };
    if (sha256 === 'no picture') return { bytes: new TextEncoder().encode('words').buffer, mime };
    if (sha256 === 'damaged') throw new AppError('photo-damaged');
    return undefined;
  };

  it('are made in workers of this browser, upright JPEGs of the size wished for', async () => {
    const control = new AbortController();
    const picture = reportPictures(stored, control.signal);
    const made = await Promise.all(
      ['held upright', 'a drawing'].map(async (name) => (await picture(name, { longSidePx: 600 }))?.bytes),
    );
    control.abort();
    expect(await seen(made[0])).toEqual({ width: 450, height: 600, inPlace: CORNER_NAMES });
    // Not enlarged.
    expect(await seen(made[1])).toEqual({ width: 300, height: 200, inPlace: CORNER_NAMES });
  });

  it('stand there as missing, each for itself, where they are damaged, cut off, no picture or not here', async () => {
    const control = new AbortController();
    const picture = reportPictures(stored, control.signal);
    for (const wish of [{ longSidePx: 600 }, {}])
      for (const name of ['damaged', 'cut off', 'no picture', 'not here'])
        expect(await picture(name, wish), name).toBeUndefined();
    expect(await picture('held upright', { longSidePx: 600 })).toBeDefined();
    control.abort();
  });

  it('are not asked for again when the store itself fails: the report then is not written', async () => {
    const picture = reportPictures(() => Promise.reject(new Error('storage')), new AbortController().signal);
    await expect(picture('any')).rejects.toThrow('storage');
  });
});

describe('the workers that make pictures smaller', () => {
  it('are as many as there are hands, and each takes the next when it is done', async () => {
    const { log, asked, take } = workshop(2);
    const all = [1, 2, 3].map(take);
    await soon();
    expect(log).toEqual(['start', 'asked for 1', 'start', 'asked for 2']);
    asked[1]?.say(done('second'));
    expect(wordsIn(await all[1])).toBe('second');
    await soon();
    expect(log.slice(4)).toEqual(['asked for 3']);
    asked[2]?.say({ what: 'undecodable' });
    asked[0]?.say(done('first'));
    expect(wordsIn(await all[0])).toBe('first');
    expect(await all[2]).toBeUndefined();
  });

  it('give the work to the page, one picture at a time and none lost, where they have no canvas or do not load', async () => {
    for (const refuse of ['say', 'die'] as const) {
      const { log, asked, take } = workshop(2);
      const all = [1, 2, 3].map(take);
      await soon();
      for (const worker of asked) refuse === 'say' ? worker.say({ what: 'unable' }) : worker.die();
      expect((await Promise.all(all)).map(wordsIn)).toEqual(Array(3).fill('made in page'));
      expect(log.filter((line) => line.startsWith('asked'))).toHaveLength(2);
      expect(log.filter((line) => line.includes('in page'))).toEqual(
        [1, 2, 3].map((size) => expect.stringMatching(`${size} in page, 1 at once`)),
      );
    }
  });

  it('end with the signal, whatever they are doing, and nothing more is begun', async () => {
    const { log, control, take } = workshop(2);
    const all = Promise.allSettled([1, 2, 3].map(take));
    await soon();
    control.abort(new Error('enough'));
    expect((await all).map((one) => one.status === 'rejected' && one.reason.message)).toEqual(Array(3).fill('enough'));
    await expect(take(4)).rejects.toThrow('enough');
    await soon();
    expect(log).toEqual(['start', 'asked for 1', 'start', 'asked for 2', 'end', 'end']);
  });

  it('say so when they fail, and another takes the place of one that died', async () => {
    const { log, asked, take } = workshop(1);
    const first = take(1);
    await soon();
    asked[0]?.say({ what: 'failed', reason: 'no memory' });
    await expect(first).rejects.toThrow('no memory');
    const second = take(2);
    await soon();
    asked[1]?.die();
    await expect(second).rejects.toThrow('gone');
    const third = take(3);
    await soon();
    asked[2]?.say(done('third'));
    expect(wordsIn(await third)).toBe('third');
    expect(log.filter((line) => line === 'start')).toHaveLength(2);
  });
});
