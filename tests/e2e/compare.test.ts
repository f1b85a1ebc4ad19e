import { readFile } from 'node:fs/promises';
import { Window } from 'happy-dom';
import jpeg from 'jpeg-js';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { Img } from '../../src/pixels/types.ts';
import { freshDevice, openBrowser, type Phone } from '../support/phone.ts';
import { storedRecords } from '../support/stored.ts';
import { afterLook, beforeLook, LOOK, truth, worstCornerPx } from '../support/two-looks.ts';
import { type Hands, handsOn } from './hands.ts';

/** The machine may be busy. */
const SOON = { timeout: 30_000 };
const fileOf = (name: string, { data, width, height }: Img) => ({
  ...{ name, mimeType: 'image/jpeg' },
  buffer: Buffer.from(jpeg.encode({ data, width, height }, 92).data),
});

let browser: Browser;
let phone: Phone;
let page: Page;
let hands: Hands;
let block: string;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const alignment = async (): Promise<{ h: number[]; agreement: number; method: string; taps: unknown[] } | undefined> =>
  (await storedRecords(page, 'alignment')).find(({ deleted }) => deleted === null) as never;

/** Where the screen shows, in shares of the frame, what lies at a place of the after photograph. */
const shownAt = (place: readonly [number, number]): Promise<[number, number]> =>
  page.evaluate(([x, y]) => {
    const bent = [...document.querySelectorAll<HTMLElement>('main div')].find(({ style }) =>
      style.transform.startsWith('matrix3d'),
    );
    const frame = bent?.parentElement?.parentElement;
    if (!bent || !frame) throw new Error('Nothing is laid over anything.');
    const at = new DOMMatrix(getComputedStyle(bent).transform).transformPoint(new DOMPoint(x, y));
    return [at.x / at.w / frame.clientWidth, at.y / at.w / frame.clientHeight];
  }, place);

describe('a view before and after the work', () => {
  it('is lined up by itself, to under a pixel at the corners', async () => {
    phone = await freshDevice(browser);
    page = phone.page;
    hands = handsOn(page);
    await hands.shelf.open(inject('url'));
    await hands.glance({ shape: 'domeCrown', wood: 'lime', price: '45' });
    block = String((await storedRecords(page, 'block'))[0]?.id);
    await page.goto(`${inject('url')}#/block/${block}`);
    await hands.choose([fileOf('before.jpg', beforeLook())]);
    await hands.block.photograph.first().waitFor();
    await page.getByRole('combobox', { name: 'Where it stands', exact: true }).selectOption('ready');
    await hands.type(page.getByRole('textbox', { name: 'Why without the test?', exact: true }), 'for show only');
    await hands.tap(page.getByRole('button', { name: /, all the same$/ }));
    await hands.choose([fileOf('after.jpg', afterLook())]);
    await hands.tap(page.getByRole('link', { name: 'Before beside after', exact: true }));
    await hands.tap(page.getByRole('button', { name: 'Line them up', exact: true }));
    await expect.poll(alignment, SOON).toBeDefined();
    const found = await alignment();
    expect(found).toMatchObject({ method: 'features', taps: [] });
    expect(worstCornerPx(found?.h ?? [])).toBeLessThan(1);
    expect(found?.agreement).toBeGreaterThan(0.35);
  });

  it('is shown so on screen: a place of the after stands where the before has it', async () => {
    const slider = page.getByRole('slider', { name: 'Where before ends and after begins' });
    await slider.waitFor();
    // Taken from the middle: inside what both show.
    const [a, b] = [
      [430, 320],
      [610, 460],
    ] as const;
    const [one, two] = [await shownAt(truth(a)), await shownAt(truth(b))];
    // The frame shows a part of the before; between two places its scale must be that of the before itself.
    const crop = await page.evaluate(() => {
      const before = document.querySelector<HTMLElement>('main img[alt="Before"]')?.parentElement?.style;
      return ['inlineSize', 'blockSize', 'insetInlineStart', 'insetBlockStart'].map(
        (name) => Number.parseFloat((before as unknown as Record<string, string>)[name] ?? '') / 100,
      );
    });
    const [wide = 1, high = 1, left = 0, top = 0] = crop;
    for (const [place, shown] of [
      [a, one],
      [b, two],
    ] as const) {
      const wanted = [(place[0] / LOOK.width) * wide + left, (place[1] / LOOK.height) * high + top];
      expect(Math.abs(shown[0] - (wanted[0] ?? 0)) * LOOK.width).toBeLessThan(1);
      expect(Math.abs(shown[1] - (wanted[1] ?? 0)) * LOOK.height).toBeLessThan(1);
    }
    await slider.focus();
    await slider.press('ArrowRight');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toBe('51 % before');
    await page.getByRole('radio', { name: 'Fade', exact: true }).check();
    await page.getByRole('slider', { name: 'From after to before' }).waitFor();
    expect(phone.seen.faults).toEqual([]);
  });

  it('can be lined up by four taps, roughly set', async () => {
    await hands.tap(page.getByRole('button', { name: 'Tap four places', exact: true }));
    const places = [
      [150, 120],
      [800, 140],
      [780, 600],
      [170, 580],
    ] as const;
    const tap = async (side: 'before' | 'after', [x, y]: readonly [number, number]): Promise<void> => {
      const picture = page.locator(`[data-picture="${side}"]`);
      await picture.scrollIntoViewIfNeeded();
      const box = await picture.boundingBox();
      if (!box) throw new Error(`The ${side} is not to be seen.`);
      await picture.tap({ position: { x: (x / LOOK.width) * box.width, y: (y / LOOK.height) * box.height } });
    };
    for (const [i, place] of places.entries()) {
      await tap('before', place);
      const [x, y] = truth(place);
      await tap('after', [x + (i % 2 === 0 ? 8 : -8), y - 6]);
    }
    await hands.tap(page.getByRole('button', { name: 'Line up by these', exact: true }));
    await expect.poll(async () => (await alignment())?.method, SOON).toBe('taps');
    const found = await alignment();
    expect(found?.taps).toHaveLength(4);
    expect(worstCornerPx(found?.h ?? [])).toBeLessThan(1);
    expect((await storedRecords(page, 'alignment')).filter(({ deleted }) => deleted === null)).toHaveLength(1);
  });

  it('goes into the report as two pictures of one size, cut from the stored ones', async () => {
    await page.goto(`${inject('url')}#/block/${block}/report`);
    await page.getByText('The part both show').waitFor();
    const { path } = await hands.takeReport();
    const { document } = new Window({ url: 'about:blank' });
    document.write(await readFile(path, 'utf8'));
    const images = [...document.querySelectorAll('figure.pair img')];
    const sizes = images.map((image) => {
      const [, base64 = ''] = /^data:image\/jpeg;base64,(.+)$/.exec(image.getAttribute('src') ?? '') ?? [];
      const { width, height } = jpeg.decode(Buffer.from(base64, 'base64'), { useTArray: true });
      return [width, height];
    });
    expect(sizes).toHaveLength(2);
    expect(sizes[0]).toEqual(sizes[1]);
    expect(sizes[0]?.[0]).toBeGreaterThan(600);
    const photos = await storedRecords(page, 'photo');
    const words = document.querySelector('figure.pair')?.textContent ?? '';
    for (const { sha256 } of photos) expect(words).toContain(`SHA-256 ${sha256}`);
    expect(phone.seen.faults).toEqual([]);
  });
});
