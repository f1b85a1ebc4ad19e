import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sharedCrop } from '../../src/core/before-after.ts';
import { inShares, type PlaneMap } from '../../src/core/plane-map.ts';
import { alignedCrops } from '../../src/parts/aligned-crops.ts';
import type { Img } from '../../src/pixels/types.ts';
import { createPixelWork, type PictureSource } from '../../src/workers/pixels.ts';
import { afterLook, beforeLook, LOOK, truth, worstCornerPx } from '../support/two-looks.ts';

const work = createPixelWork(
  () => new Worker(new URL('../../src/workers/pixels.worker.ts', import.meta.url), { type: 'module' }),
);
afterAll(() => work.rest());

let files: Readonly<Record<string, ArrayBuffer>>;
async function file({ data, width, height }: Img, type = 'image/png'): Promise<ArrayBuffer> {
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext('2d')?.putImageData(new ImageData(data as Uint8ClampedArray<ArrayBuffer>, width, height), 0, 0);
  return (await canvas.convertToBlob({ type, quality: 0.9 })).arrayBuffer();
}
const source = (key: string): PictureSource => ({
  key,
  load: async () => ({ bytes: (files[key] as ArrayBuffer).slice(0), mime: 'image/jpeg' }),
});

/** Everything by one factor darker; 0 is black. */
const scaled = (img: Img, factor: number, offset = 0): Img => ({
  ...img,
  data: img.data.map((value, i) => (i % 4 === 3 ? 255 : value * factor + offset)),
});
/** Mean over a square of `reach` pixels to each side. */
function smeared({ data, width, height }: Img, reach: number): Img {
  const out = new Uint8ClampedArray(data.length).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (let c = 0; c < 3; c++) {
        let [sum, n] = [0, 0];
        for (let k = -reach; k <= reach; k++) {
          const [u, v] = [Math.min(width - 1, Math.max(0, x + k)), Math.min(height - 1, Math.max(0, y + k))];
          sum += (data[(y * width + u) * 4 + c] as number) + (data[(v * width + x) * 4 + c] as number);
          n += 2;
        }
        out[(y * width + x) * 4 + c] = sum / n;
      }
  return { data: out, width, height };
}

beforeAll(async () => {
  const [before, after] = [beforeLook(), afterLook()];
  files = {
    before: await file(before, 'image/jpeg'),
    after: await file(after, 'image/jpeg'),
    dark: await file(scaled(before, 0.2), 'image/jpeg'),
    burnt: await file(scaled(before, 1.4, 70), 'image/jpeg'),
    blurred: await file(smeared(smeared(before, 6), 6), 'image/jpeg'),
  };
}, 60_000);

describe('the look at a photograph just taken', () => {
  it.each([
    ['before', []],
    ['dark', ['dark']],
    ['burnt', ['clipped']],
    ['blurred', ['soft']],
  ] as const)('of the one called %s finds %j', async (key, reasons) => {
    const seen = await work.ask('quality', [source(key)], null);
    expect(seen?.reasons).toEqual(reasons);
  });
});

describe('an after photograph laid over a before one', () => {
  const found: { map?: PlaneMap } = {};

  it('lies within half a pixel at the corners, though its check is filled and its light another', async () => {
    const stages: number[] = [];
    const answer = await work.ask('register', [source('before'), source('after')], null, {
      onStage: (_, share) => stages.push(share),
    });
    if (!answer?.ok) throw new Error(`Refused: ${JSON.stringify(answer)}`);
    const map = inShares(answer.H, ...answer.sizes);
    expect(worstCornerPx(map)).toBeLessThan(0.5);
    expect(answer.agreement).toBeGreaterThan(0.35);
    expect(stages.length).toBeGreaterThan(3);
    expect(stages).toEqual([...stages].sort((a, b) => a - b));
    found.map = map;
  }, 30_000);

  it('does so from four places tapped by a finger, ten pixels off', async () => {
    const taps = (
      [
        [150, 120],
        [800, 140],
        [780, 600],
        [170, 580],
      ] as const
    ).map(([x, y], i) => {
      const [tx, ty] = truth([x, y]);
      const off = i % 2 === 0 ? 10 : -10;
      return [
        [x / LOOK.width, y / LOOK.height],
        [(tx + off) / LOOK.width, (ty - off) / LOOK.height],
      ] as const;
    });
    const answer = await work.ask('register', [source('before'), source('after')], taps);
    if (!answer?.ok) throw new Error(`Refused: ${JSON.stringify(answer)}`);
    expect(worstCornerPx(inShares(answer.H, ...answer.sizes))).toBeLessThan(1);
  }, 30_000);

  it('is refused when the two show nothing alike', async () => {
    files = { ...files, other: await file(scaled(beforeLook(), 0, 120)) };
    expect(await work.ask('register', [source('before'), source('other')], null)).toMatchObject({ ok: false });
  }, 30_000);

  it('can be broken off, and the worker still answers', async () => {
    const control = new AbortController();
    const asked = work.ask('register', [source('before'), source('after')], null, { signal: control.signal });
    setTimeout(() => control.abort(), 50);
    expect(await asked).toBeUndefined();
    expect((await work.ask('quality', [source('before')], null))?.verdict).toBe('ok');
  }, 30_000);

  it('is printed as two crops of one size in which the same place lies at the same pixel', async () => {
    if (!found.map) throw new Error('Nothing was lined up.');
    const crop = sharedCrop(found.map);
    const photoBytes = async (key: string) => ({ bytes: files[key] as ArrayBuffer, mime: 'image/jpeg' });
    const pair = { before: { sha256: 'before' }, after: { sha256: 'after' }, h: found.map, crop };
    const made = await alignedCrops(pair, photoBytes, new AbortController().signal, work);
    if (!made) throw new Error('No crops were made.');
    expect(made.width / made.height).toBeCloseTo((crop.width * LOOK.width) / (crop.height * LOOK.height), 2);
    // Laid over each other anew, by the engine that has never seen them: they need no moving any more.
    files = { ...files, one: made.before, two: made.after };
    const again = await work.ask('register', [source('one'), source('two')], null);
    if (!again?.ok) throw new Error('The crops do not look alike.');
    const [h0, h1, h2, h3, h4, h5] = again.H;
    expect([h0, h4].map((v) => Math.abs(v - 1)).every((off) => off < 1e-3)).toBe(true);
    expect([h1, h3].every((off) => Math.abs(off) < 1e-3)).toBe(true);
    expect([h2, h5].every((off) => Math.abs(off) < 0.6)).toBe(true);
    const [a, b] = await Promise.all([made.before, made.after].map((bytes) => createImageBitmap(new Blob([bytes]))));
    expect([a?.width, a?.height, b?.width, b?.height]).toEqual([made.width, made.height, made.width, made.height]);
  }, 30_000);

  it('is not printed when the bytes of one never came to this device', async () => {
    const pair = {
      before: { sha256: 'before' },
      after: { sha256: 'lost' },
      h: [1, 0, 0, 0, 1, 0, 0, 0, 1],
      crop: sharedCrop(null),
    };
    const photoBytes = async (key: string) => (files[key] ? { bytes: files[key], mime: 'image/jpeg' } : undefined);
    expect(await alignedCrops(pair, photoBytes, new AbortController().signal, work)).toBeUndefined();
  });
});
