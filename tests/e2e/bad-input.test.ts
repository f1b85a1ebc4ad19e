import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { ERROR_SENTENCES } from '../../src/text/errors.ts';
import { freshDevice, leaving, openBrowser, PHONE, readyWithoutSignal } from '../support/phone.ts';
import { photograph } from '../support/photograph.ts';
import { fillStorage, putStored, storedRecords } from '../support/stored.ts';
import { type HandedFile, type Hands, handsOn } from './hands.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const jpeg = (name: string, buffer: Buffer): HandedFile => ({ name, mimeType: 'image/jpeg', buffer });

/** The head of an HEIC file: an `ftyp` box with its brands. Source: ISO/IEC 14496-12, 4.3; 23008-12, B.4.1. */
const heicHead = Buffer.concat([
  Buffer.from([0, 0, 0, 24]),
  Buffer.from('ftypheic\0\0\0\0mif1heic', 'latin1'),
  Buffer.alloc(4096, 7),
]);

async function withABlock(hands: Hands): Promise<string> {
  await hands.shelf.open(inject('url'));
  await hands.glance({ shape: 'domeCrown', wood: 'lime', price: '45' });
  await hands.saved();
  const address = hands.page.url().replace(/\/look$/, '');
  await hands.page.goto(address);
  await hands.block.answer.waitFor();
  return address;
}

describe('files that are no photographs', () => {
  it('are each refused with their sentence; the good one among them is kept, and so is all that was there', async () => {
    const { page, seen, close } = await freshDevice(browser);
    const hands = handsOn(page);
    await hands.shelf.open(inject('url'));
    const good = await photograph(page, { width: 600, height: 800 });
    await withABlock(hands);
    await hands.choose([
      jpeg('cut-off.jpg', good.subarray(0, Math.floor(good.length / 3))),
      jpeg('empty.jpg', Buffer.alloc(0)),
      { name: 'from-a-phone.heic', mimeType: 'image/heic', buffer: heicHead },
      jpeg('letter.jpg', Buffer.from('Dear Sir, the blocks are in the loft.')),
      jpeg('front.jpg', good),
    ]);
    await hands.block.photograph.first().waitFor();
    const told = await hands.look.failures.locator('li').allTextContents();
    expect(told).toEqual([
      `cut-off.jpg ${ERROR_SENTENCES['photo-not-an-image']}`,
      `empty.jpg ${ERROR_SENTENCES['photo-empty']}`,
      `from-a-phone.heic ${ERROR_SENTENCES['photo-heic']}`,
      `letter.jpg ${ERROR_SENTENCES['photo-not-an-image']}`,
    ]);
    await hands.saved();
    expect(await storedRecords(page, 'photo')).toHaveLength(1);
    expect(await storedRecords(page, 'block')).toMatchObject([{ blockType: 'domeCrown', priceAsked: 4500 }]);
    expect(leaving(seen, inject('url'))).toEqual([]);
    expect(seen.faults).toEqual([]);
    await close();
  });

  it('start no block when the first thing chosen is one of them', async () => {
    const { page, close } = await freshDevice(browser);
    const hands = handsOn(page);
    await hands.shelf.open(inject('url'));
    await hands.tap(hands.shelf.lookAtABlock);
    await hands.choose([jpeg('letter.jpg', Buffer.from('Dear Sir'))]);
    await hands.look.failures.waitFor();
    expect(await storedRecords(page, 'block')).toEqual([]);
    await hands.look.skipThePhotograph.waitFor();
    await close();
  });
});

describe('a full phone', () => {
  it('says that a change is not saved, keeps it in sight, and saves it once there is room', async () => {
    const { page, context, close } = await freshDevice(browser, PHONE, { keepsFiles: true });
    const hands = handsOn(page);
    const devtools = await context.newCDPSession(page);
    const { origin } = new URL(inject('url'));
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 8 << 20 });
    const address = await withABlock(hands);
    await readyWithoutSignal(page);
    expect(await fillStorage(page)).toBeGreaterThan(0);
    await hands.type(hands.block.note, 'smells of camphor');
    await hands.notSaved();
    await hands.tap(hands.block.shelf);
    await hands.shelf.notSaved.waitFor();
    expect(await hands.shelf.notSaved.textContent()).toContain(ERROR_SENTENCES['storage-full']);
    await page.evaluate((to) => location.assign(to), address);
    await expect.poll(() => hands.block.note.inputValue()).toBe('smells of camphor');
    expect(await storedRecords(page, 'block')).toMatchObject([{ note: '' }]);

    await devtools.send('Storage.overrideQuotaForOrigin', { origin });
    await hands.tap(hands.block.shelf);
    await hands.tap(hands.shelf.tryAgain);
    await hands.saved();
    expect(await hands.shelf.notSaved.count()).toBe(0);
    await page.reload();
    await page.goto(address);
    await expect.poll(() => hands.block.note.inputValue()).toBe('smells of camphor');
    await close();
  });
});

describe('a phone that closed the page under the camera', () => {
  const NOTE = 'blockworth-pending-capture';

  it('says that the photograph is lost where it was to be taken, unless it came through after all', async () => {
    const { page, close } = await freshDevice(browser);
    const hands = handsOn(page);
    const buffer = await photograph(page, { width: 600, height: 800 });
    await withABlock(hands);
    await hands.choose([jpeg('front.jpg', buffer)]);
    await hands.block.photograph.first().waitFor();
    await hands.saved();
    // As it was before the photograph came back, on a phone that died before it had written that the note is gone.
    const note = { context: 'newBlock', begunMs: Date.now() - 600_000 };
    const put = (begunMs: number): Promise<void> =>
      page.evaluate(([key, text]) => localStorage.setItem(key, text), [
        NOTE,
        JSON.stringify({ ...note, begunMs }),
      ] as const);
    await put(note.begunMs);
    await page.goto(inject('url'));
    await page.reload();
    await hands.shelf.blocks.first().waitFor();

    await put(Date.now());
    await page.reload();
    await hands.look.lost.waitFor();
    await close();
  });
});

describe('two windows on one block', () => {
  it('each show what the other writes, and neither overwrites the other’s field', async () => {
    const { page, context, close } = await freshDevice(browser);
    const here = handsOn(page);
    const address = await withABlock(here);
    const there = handsOn(await context.newPage());
    await there.page.goto(address);
    await there.block.answer.waitFor();

    await here.type(here.block.name, 'Grandmother’s dome');
    await here.saved();
    await expect.poll(() => there.block.name.inputValue()).toBe('Grandmother’s dome');
    await there.page.bringToFront();
    await there.type(there.block.note, 'from the loft');
    await there.saved();
    await expect.poll(() => here.block.note.inputValue()).toBe('from the loft');
    expect(await storedRecords(page, 'block')).toMatchObject([{ name: 'Grandmother’s dome', note: 'from the loft' }]);
    await close();
  });
});

describe('a clock set years back', () => {
  it('loses nothing, and the later edit still stands over the earlier one', async () => {
    const { page, context, close } = await freshDevice(browser);
    const hands = handsOn(page);
    const address = await withABlock(hands);
    await hands.type(hands.block.name, 'first');
    await hands.saved();
    const [before] = await storedRecords(page, 'block');

    await context.clock.setSystemTime(new Date('2009-02-03T04:05:06Z'));
    await page.reload();
    await hands.block.answer.waitFor();
    expect(await page.evaluate(() => new Date().getFullYear())).toBe(2009);
    await hands.type(hands.block.name, 'second');
    await hands.saved();
    const [after] = await storedRecords(page, 'block');
    const stampOf = (row: typeof before): string => String((row?.stamps as Record<string, string> | undefined)?.name);
    expect(stampOf(after) > stampOf(before)).toBe(true);

    const right = handsOn(await context.newPage());
    await context.clock.setSystemTime(new Date());
    await right.page.goto(address);
    await expect.poll(() => right.block.name.inputValue()).toBe('second');
    await close();
  });
});

describe('what this app does not know', () => {
  it('keeps a record of a later app as it is, lists it, and goes on with the rest', async () => {
    const { page, close } = await freshDevice(browser);
    const hands = handsOn(page);
    const address = await withABlock(hands);
    const [block] = await storedRecords(page, 'block');
    const later = {
      ...block,
      id: '01a00000-0000-7000-8000-000000000abc',
      schema: 99,
      name: 'From later',
      shelfMark: { x: 1 },
    };
    await putStored(page, later);
    await page.goto(inject('url'));
    await hands.shelf.unreadable.waitFor();
    await expect.poll(() => hands.shelf.blocks.count()).toBe(1);
    await hands.tap(hands.menu('Settings'));
    await hands.tap(hands.settings.keeping);
    await hands.settings.unreadable(later.id).waitFor();

    await page.goto(address);
    await hands.type(hands.block.note, 'still works');
    await hands.saved();
    const stored = await storedRecords(page, 'block');
    expect(stored.find(({ id }) => id === later.id)).toEqual(later);
    expect(stored.find(({ id }) => id === block?.id)).toMatchObject({ note: 'still works' });
    await close();
  });

  it('meets a wrong address with a sentence or the shelf, not with an empty page', async () => {
    const { page, seen, close } = await freshDevice(browser);
    const hands = handsOn(page);
    for (const hash of ['/block/01a00000-0000-7000-8000-00000000dead', '/block/%E0%A4%A', '/block/x/walk/y']) {
      await page.goto(`${inject('url')}#${hash}`);
      await page.reload();
      await hands.block.gone.waitFor();
    }
    await page.goto(`${inject('url')}#/nowhere/at/all`);
    await hands.shelf.lookAtABlock.waitFor();
    expect(seen.faults).toEqual([]);
    await close();
  });
});
