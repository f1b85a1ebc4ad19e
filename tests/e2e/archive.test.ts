import { readFile } from 'node:fs/promises';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { canonical } from '../../src/core/canonical.ts';
import { jpegOf, payloadOf } from '../imports/archives.ts';
import { bagOf, zipOf } from '../support/hostile-zip.ts';
import { freshDevice, leaving, openBrowser, type Phone } from '../support/phone.ts';
import { photograph } from '../support/photograph.ts';
import { storedBytes, storedRecords } from '../support/stored.ts';
import { type HandedFile, handsOn } from './hands.ts';
import { addresses, arrive } from './screens.ts';

let browser: Browser;
let first: Phone;
let backup: HandedFile;
const before: { rows: string; answer: string; block: string; sha256: string; picture: string } = {
  rows: '',
  answer: '',
  block: '',
  sha256: '',
  picture: '',
};

/** Records as they lie there, in the order of their ids, as one text. */
const rowsOf = async (page: Page): Promise<string> =>
  canonical((await storedRecords(page)).sort((a, b) => (a.id < b.id ? -1 : 1)));

async function answerOf(page: Page, hash: string): Promise<string> {
  await arrive(page, hash);
  const { block } = handsOn(page);
  await block.answer.waitFor();
  return ((await block.answer.textContent()) ?? '').replace(/\s+/g, ' ');
}

async function fileOf(download: Download): Promise<HandedFile> {
  return {
    name: download.suggestedFilename(),
    mimeType: 'application/zip',
    buffer: await readFile(await download.path()),
  };
}

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

/** A phone out of the box, on the Keeping screen. */
async function newPhone(): Promise<Phone & { hands: ReturnType<typeof handsOn> }> {
  const phone = await freshDevice(browser);
  const hands = handsOn(phone.page);
  await hands.shelf.open(inject('url'));
  await hands.shelf.isEmpty.waitFor();
  await arrive(phone.page, '/keeping');
  await hands.keeping.never.waitFor();
  return { ...phone, hands };
}

describe('a shelf that goes to another phone', () => {
  it('is backed up in two steps, and the phone knows when', async () => {
    first = await freshDevice(browser);
    const { page } = first;
    const hands = handsOn(page);
    await hands.shelf.open(inject('url'));
    await hands.tap(hands.shelf.openTheExample);
    await hands.shelf.blocks.first().waitFor();
    before.block = (await addresses(page, { photo: false })).find(({ name }) => name === '/block/:id')?.hash ?? '';
    await arrive(page, before.block);
    const buffer = await photograph(page, { width: 600, height: 800 });
    await hands.choose([{ name: 'front.jpg', mimeType: 'image/jpeg', buffer }]);
    await hands.block.photograph.first().waitFor();
    await hands.saved();
    before.answer = await answerOf(page, before.block);
    before.rows = await rowsOf(page);
    before.sha256 = String((await storedRecords(page, 'photo'))[0]?.sha256);
    before.picture = (await storedBytes(page, before.sha256)).toString('base64');

    await arrive(page, '/keeping');
    // One block for somebody else: without what it cost, and no backup.
    await hands.keeping.never.waitFor();
    await hands.keeping.part.selectOption(`block ${before.block.split('/')[2]}`);
    await hands.tap(hands.keeping.forOthers);
    await hands.tap(hands.keeping.prepareArchive);
    const [given] = await Promise.all([page.waitForEvent('download'), hands.tap(hands.keeping.save)]);
    const words = (await readFile(await given.path())).toString('latin1');
    expect(words).toContain(before.block.split('/')[2]);
    expect(words).not.toMatch(/"priceAsked":\s*[1-9]/);
    await hands.tap(hands.keeping.arrived);
    await hands.keeping.never.waitFor();

    // What was chosen for somebody else is not chosen for the next.
    await hands.tap(hands.keeping.prepare);
    const [download] = await Promise.all([page.waitForEvent('download'), hands.tap(hands.keeping.save)]);
    backup = await fileOf(download);
    expect(backup.name).toMatch(/^blockworth-\d{8}-\d{6}-1of1\.zip$/);
    await hands.keeping.backedUpToday.waitFor();
    expect(first.seen.faults).toEqual([]);
  });

  it('comes whole to a new phone: every record, the photograph, the same answer; again it changes nothing', async () => {
    const { page, hands, seen, close } = await newPhone();
    await hands.keeping.chooseFiles([backup]);
    await hands.tap(hands.keeping.takeItIn);
    await hands.keeping.takenIn.waitFor();
    await expect.poll(() => rowsOf(page)).toBe(before.rows);
    expect((await storedBytes(page, before.sha256)).toString('base64')).toBe(before.picture);
    await expect.poll(() => answerOf(page, before.block)).toBe(before.answer);
    // The thumbnail, which is not in the file, is made again.
    await hands.block.photograph.first().waitFor();

    await arrive(page, '/keeping');
    await hands.keeping.chooseFiles([backup]);
    await hands.keeping.nothingNew.waitFor();
    await expect.poll(() => rowsOf(page)).toBe(before.rows);
    expect([seen.faults, leaving(seen, inject('url'))]).toEqual([[], []]);
    await close();
  });

  it('brings chosen blocks only, and one undo takes them back', async () => {
    const { page, hands, close } = await newPhone();
    await hands.keeping.chooseFiles([backup]);
    await hands.tap(hands.keeping.chosenBlocks);
    await hands.tap(hands.keeping.block(/^L01 /));
    await hands.tap(hands.keeping.takeInOne);
    await hands.keeping.takenIn.waitFor();
    expect((await storedRecords(page, 'block')).length).toBe(1);
    await hands.tap(hands.undo);
    await arrive(page, '/');
    await hands.shelf.isEmpty.waitFor();
    await close();
  });

  it('is refused with the entry’s name when somebody changed it, and nothing of it is kept', async () => {
    const { page, hands, seen, close } = await newPhone();
    const picture = jpegOf('front');
    const files = bagOf(payloadOf({ pictures: [picture] }));
    const hostile = [...files, { name: 'blockworth-20260101-000000-1of1/../../evil.html', bytes: Buffer.from('x') }];
    const file = { name: 'gift.zip', mimeType: 'application/zip', buffer: Buffer.from(zipOf(hostile)) };
    await hands.keeping.chooseFiles([file]);
    await hands.keeping
      .refused(/evil\.html” has a name no Blockworth archive has\. Nothing of it was taken in/)
      .waitFor();
    expect([await storedRecords(page), seen.faults]).toEqual([[], []]);
    await close();
    await first.close();
  });
});
