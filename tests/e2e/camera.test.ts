import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { freshDevice, openBrowser, type Phone } from '../support/phone.ts';
import { seenPicture } from '../support/photograph.ts';
import { storedRecords } from '../support/stored.ts';
import { CORNERS } from '../support/test-pictures.ts';
import { cameraArgs, type Rgb, writeClip } from '../support/y4m.ts';
import { handsOn } from './hands.ts';

/** The machine may be busy. */
const SOON = { timeout: 15_000 };
const [WIDTH, HEIGHT] = [480, 640];
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'blockworth-camera-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const CORNER = [CORNERS.topLeft, CORNERS.topRight, CORNERS.bottomLeft, CORNERS.bottomRight] as const;
/** A colour in each quarter, and a fine weave in the middle that only a sharp lens keeps. */
function sharpScene(x: number, y: number): Rgb {
  const corner = CORNER[(x < WIDTH / 2 ? 0 : 1) + (y < HEIGHT / 2 ? 0 : 2)] as Rgb;
  const isMiddle = Math.abs(x - WIDTH / 2) < 120 && Math.abs(y - HEIGHT / 2) < 160;
  if (!isMiddle) return corner;
  const grain = 128 + 90 * Math.sign(Math.sin(x * 0.9 + 3 * Math.sin(y / 37)) + Math.sin(y * 1.3));
  return [grain, grain * 0.8, grain * 0.6];
}
/** The same, far out of focus: thrice the mean of the 15 pixels around, in both directions. */
const blurredScene = (() => {
  const planes = [0, 1, 2].map((channel) => {
    let plane = Float32Array.from(
      { length: WIDTH * HEIGHT },
      (_, i) => sharpScene(i % WIDTH, Math.floor(i / WIDTH))[channel] ?? 0,
    );
    for (let turn = 0; turn < 3; turn++) plane = spread(spread(plane, 1), WIDTH);
    return plane;
  });
  return function blurred(x: number, y: number): Rgb {
    const [r = 0, g = 0, b = 0] = planes.map((plane) => plane[y * WIDTH + x] ?? 0);
    return [r, g, b];
  };
})();
/** Each value the mean of 15 that lie `step` apart; at the border it stays. */
function spread(plane: Float32Array<ArrayBuffer>, step: number): Float32Array<ArrayBuffer> {
  return plane.map((own, i) => {
    if (i < 7 * step || i >= plane.length - 7 * step) return own;
    let sum = 0;
    for (let k = -7; k <= 7; k++) sum += plane[i + k * step] as number;
    return sum / 15;
  });
}

/** Counts how often the page asks for the camera and keeps what it was given. */
const watchCamera = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const seen = { asked: 0, tracks: [] as MediaStreamTrack[] };
    Object.assign(globalThis, { seenCamera: seen });
    const { mediaDevices } = navigator;
    const ask = mediaDevices.getUserMedia.bind(mediaDevices);
    mediaDevices.getUserMedia = async (wishes) => {
      seen.asked += 1;
      const stream = await ask(wishes);
      seen.tracks.push(...stream.getTracks());
      return stream;
    };
  });
const camera = (page: Page): Promise<{ asked: number; states: string[] }> =>
  page.evaluate(() => {
    const { asked, tracks } = (globalThis as unknown as { seenCamera: { asked: number; tracks: MediaStreamTrack[] } })
      .seenCamera;
    return { asked, states: tracks.map(({ readyState }) => readyState) };
  });
const setHidden = (page: Page, hidden: boolean): Promise<void> =>
  page.evaluate((value) => {
    Object.defineProperty(document, 'hidden', { value, configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  }, hidden);

const parts = (page: Page) => ({
  finder: page.locator('video'),
  shutter: page.getByRole('button', { name: /^Take the photograph: / }),
  shot: (name: string) => page.getByRole('list', { name: 'Shot list' }).getByRole('button', { name, exact: true }),
  saved: (view: string) => page.getByRole('status').filter({ hasText: `${view}: saved on this phone` }),
  stage: (name: string) => page.getByRole('radio', { name, exact: true }),
  question: page.getByText(/ – take it again\?/),
});

/** A device with one block, its camera open in the page. */
async function atTheCamera(browser: Browser): Promise<Phone & { readonly block: string }> {
  const phone = await freshDevice(browser);
  const { page } = phone;
  await watchCamera(page);
  const hands = handsOn(page);
  await hands.shelf.open(inject('url'));
  await hands.glance({ shape: 'domeCrown', wood: 'lime', price: '45' });
  const block = String((await storedRecords(page, 'block'))[0]?.id);
  await page.goto(`${inject('url')}#/block/${block}`);
  await hands.tap(page.getByRole('link', { name: 'Camera in the page', exact: true }));
  return { ...phone, block };
}

async function withCamera(
  scene: (x: number, y: number) => Rgb,
  visit: (phone: Phone & { readonly block: string }) => Promise<void>,
): Promise<void> {
  const clip = join(folder, `${scene.name}.y4m`);
  await writeClip(clip, WIDTH, HEIGHT, scene);
  const browser = await openBrowser(cameraArgs(clip));
  try {
    await visit(await atTheCamera(browser));
  } finally {
    await browser.close();
  }
}

describe('the camera in the page', () => {
  it('takes shot after shot through the list of views, in the colours the lens saw', async () => {
    await withCamera(sharpScene, async ({ page, seen, block }) => {
      const at = parts(page);
      await at.shot('Three-quarter, not taken yet').waitFor();
      await at.shutter.tap();
      await at.saved('Three-quarter').waitFor();
      await at.shot('Three-quarter, taken').waitFor();
      await expect.poll(() => at.shot('Top, not taken yet').getAttribute('aria-pressed')).toBe('true');
      await at.shutter.tap();
      await at.shot('Top, taken').waitFor();
      await at.shot('Marks, not taken yet').tap();
      await at.shutter.tap();
      await at.shot('Marks, taken').waitFor();

      const photos = await storedRecords(page, 'photo');
      expect(photos.map(({ view, stage }) => [view, stage])).toEqual([
        ['threeQuarter', 'before'],
        ['top', 'before'],
        ['marks', 'before'],
      ]);
      for (const photo of photos) {
        expect([photo.width, photo.height]).toEqual([WIDTH, HEIGHT]);
        expect(photo.taken).toMatchObject({ from: 'thisPhone' });
      }
      await expect.poll(() => camera(page)).toEqual({ asked: 1, states: ['live'] });

      await page.goto(`${inject('url')}#/block/${block}/photo/${photos[0]?.id}`);
      const { width, height, ...corners } = await seenPicture(page.getByRole('main').getByRole('img').first());
      expect([width, height]).toEqual([WIDTH, HEIGHT]);
      for (const [corner, colour] of Object.entries(CORNERS)) {
        const found = corners[corner as keyof typeof corners];
        for (const [channel, value] of colour.entries())
          expect(Math.abs((found[channel] ?? 0) - value), `${corner} came as ${found}`).toBeLessThanOrEqual(6);
      }
      // Left the screen: the lens is off.
      await expect.poll(async () => (await camera(page)).states).toEqual(['ended']);
      expect(seen.faults).toEqual([]);
    });
  });

  it('says nothing of a sharp photograph, and lays the before picture under the after', async () => {
    await withCamera(sharpScene, async ({ page }) => {
      const at = parts(page);
      await at.shutter.tap();
      await at.shot('Three-quarter, taken').waitFor();
      await at.stage('After').check();
      const ghost = page.getByRole('img', { name: 'The before photograph, to line up with' });
      await ghost.waitFor();
      const seen = await ghost.evaluate((image) => {
        const [picture, video] = [
          image.getBoundingClientRect(),
          document.querySelector('video')?.getBoundingClientRect(),
        ];
        return { opacity: getComputedStyle(image.parentElement as Element).opacity, picture, video };
      });
      expect(Number(seen.opacity)).toBeCloseTo(0.4);
      expect(seen.picture).toEqual(seen.video);
      await page.getByRole('slider', { name: 'Strength of the before picture' }).fill('0.8');
      await expect
        .poll(() => ghost.evaluate((image) => getComputedStyle(image.parentElement as Element).opacity))
        .toBe('0.8');
      await page.getByRole('button', { name: 'Hide the ghost', exact: true }).tap();
      await ghost.waitFor({ state: 'detached' });
      await at.shutter.tap();
      await at.saved('Three-quarter').waitFor();
      await expect
        .poll(() => storedRecords(page, 'photo'), SOON)
        .toMatchObject([{ stage: 'before' }, { view: 'threeQuarter', stage: 'after' }]);
      await page.waitForTimeout(1500);
      expect(await at.question.count()).toBe(0);
    });
  });

  it('asks whether to take a blurred one again, keeps it until the new one is saved, and can be told to keep it', async () => {
    await withCamera(blurredScene, async ({ page }) => {
      const at = parts(page);
      await at.shutter.tap();
      await at.saved('Three-quarter').waitFor();
      await page.getByText('Blurred – take it again?').waitFor();
      const [first] = await storedRecords(page, 'photo');
      await page.getByRole('button', { name: 'Take it again: Three-quarter' }).tap();
      await expect.poll(() => at.shot('Three-quarter, taken').getAttribute('aria-pressed')).toBe('true');
      expect((await storedRecords(page, 'photo'))[0]?.deleted).toBeNull();
      await at.shutter.tap();
      await expect
        .poll(async () => (await storedRecords(page, 'photo')).map(({ deleted }) => deleted === null), SOON)
        .toEqual([false, true]);
      expect((await storedRecords(page, 'photo'))[0]?.id).toBe(first?.id);
      await page.getByText('Blurred – take it again?').waitFor();
      await page.getByRole('button', { name: 'Keep it: Three-quarter' }).tap();
      expect(await at.question.count()).toBe(0);
      expect((await storedRecords(page, 'photo')).filter(({ deleted }) => deleted === null)).toHaveLength(1);
    });
  });

  it('lets go of the lens when the page is hidden and takes it up once when it is back', async () => {
    await withCamera(sharpScene, async ({ page }) => {
      const at = parts(page);
      await expect.poll(() => camera(page), SOON).toEqual({ asked: 1, states: ['live'] });
      await setHidden(page, true);
      await expect.poll(async () => (await camera(page)).states).toEqual(['ended']);
      await expect.poll(() => at.shutter.isDisabled()).toBe(true);
      await setHidden(page, false);
      // Browsers tell of a return in up to three ways at once.
      await page.evaluate(() => {
        dispatchEvent(new Event('focus'));
        dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }));
      });
      await expect.poll(() => camera(page), SOON).toEqual({ asked: 2, states: ['ended', 'live'] });
      await at.shutter.tap();
      await at.saved('Three-quarter').waitFor();
    });
  });
});

describe('where there is no camera', () => {
  it('says so in a sentence and takes a file for the same view and stage', async () => {
    // Says yes for its owner, and has no camera to give.
    const browser = await openBrowser(['--use-fake-ui-for-media-stream']);
    const { page, block, seen } = await atTheCamera(browser);
    const at = parts(page);
    await page
      .getByRole('alert')
      .filter({ hasText: /camera/ })
      .waitFor();
    await expect.poll(() => at.shutter.isDisabled()).toBe(true);
    await at.shot('Back, not taken yet').tap();
    const buffer = Buffer.from(
      await page.evaluate(async () => {
        const canvas = new OffscreenCanvas(320, 240);
        canvas.getContext('2d')?.fillRect(0, 0, 320, 240);
        return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())];
      }),
    );
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Choose from the gallery', exact: true }).tap(),
    ]);
    await chooser.setFiles([{ name: 'back.jpg', mimeType: 'image/jpeg', buffer }]);
    await at.shot('Back, taken').waitFor();
    expect(await storedRecords(page, 'photo')).toMatchObject([{ blockId: block, view: 'back', stage: 'before' }]);
    // A black picture: the look at its light works for files as well.
    await page.getByText(/oo dark to see into the shadows – take it again\?/).waitFor();
    expect(seen.faults).toEqual([]);
    await browser.close();
  });

  it('says that the owner said no, and asks again only when told to', async () => {
    const browser = await openBrowser(['--use-fake-device-for-media-stream', '--deny-permission-prompts']);
    const { page } = await atTheCamera(browser);
    await page.getByRole('alert').filter({ hasText: 'may not use the camera' }).waitFor();
    await setHidden(page, true);
    await setHidden(page, false);
    expect((await camera(page)).asked).toBe(1);
    await page.getByRole('button', { name: 'Try the camera again', exact: true }).tap();
    await expect.poll(async () => (await camera(page)).asked, SOON).toBe(2);
    await browser.close();
  });
});
