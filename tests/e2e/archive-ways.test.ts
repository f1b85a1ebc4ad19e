import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { archiveOf, jpegOf, photoFields } from '../imports/archives.ts';
import { aBlock, aPhoto, aSurvey, at, id } from '../store/make.ts';
import { hasAge, openWithAge } from '../support/age.ts';
import { bagFaults } from '../support/bag-faults.ts';
import { freshDevice, openBrowser } from '../support/phone.ts';
import { bagIn, textOf } from '../support/read-zip.ts';
import { storedAll } from '../support/stored.ts';
import { toolsRequired } from '../support/tools.mjs';
import { axeFaults } from './axe.ts';
import { type HandedFile, type Hands, handsOn } from './hands.ts';
import { arrive } from './screens.ts';

const THERE = 'othrphon';
const PASSPHRASE = 'buckram felt Übergröße lime';
const pictures = Array.from({ length: 12 }, (_, n) => jpegOf(`photograph ${n}`));
const records = [
  aBlock({ name: 'Tall crown', stamp: at(1, THERE) }),
  aSurvey({ stamp: at(1, THERE) }),
  ...pictures.map((picture, n) => aPhoto({ ...photoFields(picture), id: id(100 + n), stamp: at(2, THERE) })),
];

let browser: Browser;
let folder: string;
let source: HandedFile;
let locked: HandedFile;

beforeAll(async () => {
  browser = await openBrowser();
  folder = await mkdtemp(join(tmpdir(), 'blockworth-ways-'));
  const archive = archiveOf({ records, pictures });
  source = { name: 'source.zip', mimeType: 'application/zip', buffer: Buffer.from(await archive.arrayBuffer()) };
});
afterAll(async () => {
  await browser.close();
  await rm(folder, { recursive: true, force: true });
});

async function atKeeping(page: Page): Promise<Hands> {
  const hands = handsOn(page);
  await hands.shelf.open(inject('url'));
  await hands.shelf.lookAtABlock.waitFor();
  await arrive(page, '/keeping');
  return hands;
}
async function takeIn({ keeping, tap }: Hands): Promise<void> {
  await keeping.chooseFiles([source]);
  await tap(keeping.takeItIn);
  await keeping.takenIn.waitFor();
}
async function saved(page: Page, { keeping, tap }: Hands): Promise<HandedFile> {
  await keeping.save.waitFor({ timeout: 60_000 });
  const [download] = await Promise.all([page.waitForEvent('download'), tap(keeping.save)]);
  return {
    name: download.suggestedFilename(),
    mimeType: 'application/octet-stream',
    buffer: await readFile(await download.path()),
  };
}

describe('a locked backup', () => {
  it('is made with a passphrase that is typed twice, or once where it can be seen', async () => {
    const { page, seen, close } = await freshDevice(browser);
    const hands = await atKeeping(page);
    const { keeping } = hands;
    await takeIn(hands);
    await hands.tap(keeping.lock);
    expect(await keeping.showTyped.count()).toBe(1);
    await keeping.passphrase.fill('felt');
    await keeping.again.fill('felt');
    await page.getByText('At least 10 letters').waitFor();
    await keeping.passphrase.fill(PASSPHRASE);
    await page.getByText('The two are not the same yet.').waitFor();
    expect(await keeping.prepare.isDisabled()).toBe(true);
    expect(await axeFaults(page)).toEqual([]);
    await hands.tap(keeping.showTyped);
    expect([await keeping.passphrase.inputValue(), await keeping.again.count()]).toEqual([PASSPHRASE, 0]);
    await hands.tap(keeping.prepare);
    locked = await saved(page, hands);
    expect(locked.name).toMatch(/-1of1\.zip\.age$/);
    await keeping.backedUpToday.waitFor();
    expect(seen.faults).toEqual([]);
    await close();
  });

  it.skipIf(!toolsRequired && !hasAge)('opens with the age program to a valid bag with all of it', async () => {
    const [from, to] = [join(folder, locked.name), join(folder, 'opened.zip')];
    await writeFile(from, locked.buffer);
    openWithAge(folder, from, to, PASSPHRASE);
    const { files } = await bagIn(new Blob([new Uint8Array(await readFile(to))]));
    expect(bagFaults(files)).toEqual([]);
    expect(JSON.parse(textOf(files.get('data/records/photo-001.json'))).records).toHaveLength(pictures.length);
  });

  it('is opened here with its passphrase only, and says so of another', async () => {
    const { page, seen, close } = await freshDevice(browser);
    const hands = await atKeeping(page);
    const { keeping } = hands;
    await keeping.chooseFiles([locked]);
    await keeping.itsPassphrase.fill('something else entirely');
    await hands.tap(keeping.openIt);
    await keeping.refused(/does not open the file\. Nothing was changed; try again/).waitFor({ timeout: 60_000 });
    expect((await storedAll(page)).records).toEqual([]);
    await keeping.itsPassphrase.fill(PASSPHRASE);
    await hands.tap(keeping.openIt);
    await keeping.takeItIn.waitFor({ timeout: 60_000 });
    await hands.tap(keeping.takeItIn);
    await keeping.takenIn.waitFor();
    expect((await storedAll(page)).bytes).toHaveLength(pictures.length);
    expect(seen.faults).toEqual([]);
    await close();
  });
});

/** A share sheet in place of the phone's, which a test cannot tap: closed, refusing, then taking the file. */
function stubSharing(takes: boolean): void {
  const ends = [new DOMException('Closed.', 'AbortError'), new DOMException('Too large.', 'NotAllowedError'), null];
  const shared: unknown[] = [];
  Object.assign(globalThis, { shared });
  Object.assign(Navigator.prototype, {
    canShare: () => takes,
    async share({ files }: { files: File[] }) {
      if (!navigator.userActivation.isActive) throw new DOMException('No tap.', 'InvalidStateError');
      shared.push(files.map(({ name, size, type }) => ({ name, hasBytes: size > 1000, type })));
      const end = ends[shared.length - 1];
      if (end) throw end;
    },
  });
}
const shared = (page: Page) => page.evaluate(() => (globalThis as unknown as { shared: unknown[] }).shared);

describe('sending a backup', () => {
  it('takes two steps, survives a closed and a refusing share sheet, and counts only once it was taken', async () => {
    const { page, seen, close } = await freshDevice(browser);
    await page.addInitScript(stubSharing, true);
    const hands = await atKeeping(page);
    const { keeping } = hands;
    await takeIn(hands);
    await hands.tap(keeping.prepare);
    await keeping.send.waitFor();
    expect(await shared(page)).toEqual([]);
    await hands.tap(keeping.send);
    await page.getByText('Not sent.').waitFor();
    await hands.tap(keeping.send);
    await keeping.refused(/did not take this file to send\. Save it instead/).waitFor();
    await keeping.never.waitFor();
    await hands.tap(keeping.send);
    await page.getByText('is on its way.').waitFor();
    await keeping.backedUpToday.waitFor();
    const file = { name: expect.stringMatching(/-1of1\.zip$/), hasBytes: true, type: 'application/zip' };
    expect(await shared(page)).toEqual([[file], [file], [file]]);
    expect(seen.faults).toEqual([]);
    await close();
  });

  it('is not offered where the phone shares no such file', async () => {
    const { page, close } = await freshDevice(browser);
    await page.addInitScript(stubSharing, false);
    const hands = await atKeeping(page);
    await takeIn(hands);
    await hands.tap(hands.keeping.prepare);
    await hands.keeping.save.waitFor();
    expect(await hands.keeping.send.count()).toBe(0);
    await close();
  });
});

/** Holds back what is asked of the reader after so many photographs, as a slow phone would, until `goOn` is called. */
function slowReader(after: number): void {
  const held: (() => void)[] = [];
  let asked = 0;
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (this: Worker, ...given: unknown[]) {
    const send = (): void => Reflect.apply(postMessage, this, given);
    if ((given[0] as { ask?: string }).ask === 'picture' && ++asked > after) held.push(send);
    else send();
  };
  Object.assign(globalThis, {
    goOn() {
      Worker.prototype.postMessage = postMessage;
      for (const send of held) send();
    },
  });
}
const goOn = (page: Page) => page.evaluate(() => (globalThis as unknown as { goOn: () => void }).goOn());

describe('leaving Keeping', () => {
  it('lets an import go on among its photographs, shows how far it is, and says when it is done', async () => {
    const { page, seen, close } = await freshDevice(browser);
    await page.addInitScript(slowReader, 5);
    const hands = await atKeeping(page);
    await hands.keeping.chooseFiles([source]);
    await hands.tap(hands.keeping.takeItIn);
    await page.getByText('Photograph 5 of 12…').waitFor();
    await arrive(page, '/');
    await hands.shelf.underWay('Taking a file in: photograph 5 of 12').waitFor();
    expect(await axeFaults(page)).toEqual([]);
    expect((await storedAll(page)).records).toEqual([]);
    // Coming back changes nothing about it either.
    await arrive(page, '/keeping');
    await page.getByText('Photograph 5 of 12…').waitFor();
    await arrive(page, '/');
    await goOn(page);
    await hands.shelf.underWay('The file is taken in.').waitFor();
    await hands.shelf.block('Tall crown').waitFor();
    await hands.tap(hands.shelf.see);
    await hands.keeping.takenIn.waitFor();
    const { records: rows, bytes, notes } = await storedAll(page);
    expect([rows.length, bytes.length, notes]).toEqual([records.length, pictures.length, []]);
    await arrive(page, '/');
    expect(await hands.shelf.underWay('The file is taken in.').count()).toBe(0);
    expect(seen.faults).toEqual([]);
    await close();
  });

  it('lets it be stopped later, and then leaves everything as it was', async () => {
    const { page, close } = await freshDevice(browser);
    await page.addInitScript(slowReader, 5);
    const hands = await atKeeping(page);
    await hands.keeping.chooseFiles([source]);
    await hands.tap(hands.keeping.takeItIn);
    await page.getByText('Photograph 5 of 12…').waitFor();
    await arrive(page, '/');
    await arrive(page, '/keeping');
    await hands.tap(hands.keeping.stopTaking);
    await goOn(page);
    await hands.keeping.choose.waitFor();
    expect(await storedAll(page)).toEqual({ records: [], bytes: [], changes: 0, notes: [] });
    await close();
  });
});
