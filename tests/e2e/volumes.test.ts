import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../src/serve/serve.mjs';
import { archiveOf, photoFields, photographOf } from '../imports/archives.ts';
import { aBlock, aPhoto, at, id } from '../store/make.ts';
import { bagFaults } from '../support/bag-faults.ts';
import { buildApp } from '../support/build-app.ts';
import { holdAt } from '../support/moment.ts';
import { freshDevice, keptDevice, openBrowser, type Phone } from '../support/phone.ts';
import { bagIn } from '../support/read-zip.ts';
import { type Held, storedAll } from '../support/stored.ts';
import { axeFaults } from './axe.ts';
import { type HandedFile, type Hands, handsOn } from './hands.ts';
import { arrive } from './screens.ts';

const THERE = 'othrphon';
/** Two blocks of four photographs: three files of an archive of at most 1.5 MB. */
const pictures = Array.from({ length: 8 }, (_, n) => photographOf(n, 400_000));
const records = [1, 2].flatMap((n) => [
  aBlock({ id: id(n), name: `Block ${n}`, stamp: at(1, THERE) }),
  ...pictures
    .slice((n - 1) * 4, n * 4)
    .map((picture, k) => aPhoto({ ...photoFields(picture), id: id(100 * n + k), blockId: id(n), stamp: at(2, THERE) })),
]);
const FILES = 3;

let browser: Browser;
let folder: string;
let url: string;
let closeServer: () => Promise<void>;
let source: HandedFile;
/** The files of the backup made below, and what the phone that made it holds. */
let files: readonly HandedFile[] = [];
let held: Held;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'blockworth-volumes-'));
  buildApp(join(folder, 'dist'), 'tests/support/small-volumes.vite.config.ts');
  const server = await serve(join(folder, 'dist'));
  ({ url } = server);
  closeServer = server.close;
  browser = await openBrowser();
  const archive = archiveOf({ records, pictures });
  source = { name: 'source.zip', mimeType: 'application/zip', buffer: Buffer.from(await archive.arrayBuffer()) };
});
afterAll(async () => {
  await browser.close();
  await closeServer();
  await rm(folder, { recursive: true, force: true });
});

/** Opens the app on a device and goes to Keeping. */
async function atKeeping(page: Page): Promise<Hands> {
  const hands = handsOn(page);
  await hands.shelf.open(url);
  await hands.shelf.lookAtABlock.waitFor();
  await arrive(page, '/keeping');
  return hands;
}
async function newPhone(): Promise<Phone & { readonly hands: Hands }> {
  const phone = await freshDevice(browser);
  return { ...phone, hands: await atKeeping(phone.page) };
}
async function takeIn({ keeping, tap }: Hands, chosen: readonly HandedFile[]): Promise<void> {
  await keeping.chooseFiles(chosen);
  await tap(keeping.takeItIn);
  await keeping.takenIn.waitFor();
}
async function saved(page: Page, { keeping, tap }: Hands, n: number): Promise<HandedFile> {
  const [download] = await Promise.all([page.waitForEvent('download'), tap(keeping.saveFile(n))]);
  return {
    name: download.suggestedFilename(),
    mimeType: 'application/zip',
    buffer: await readFile(await download.path()),
  };
}
/** Without history and notes, which are a device's own. */
const contentsOf = ({ records: rows, bytes }: Held) => ({ rows, bytes });

describe('a backup too large for one file', () => {
  it('comes in several, each a valid bag, and counts as made once all have left', async () => {
    const { page, hands, seen, close } = await newPhone();
    await takeIn(hands, [source]);
    await hands.tap(hands.keeping.prepare);
    await hands.keeping.saveFile(FILES).waitFor();
    const made: HandedFile[] = [];
    for (let n = 1; n <= FILES; n += 1) {
      await hands.keeping.never.waitFor();
      made.push(await saved(page, hands, n));
    }
    await hands.keeping.backedUpToday.waitFor();
    files = made;
    expect(made.map(({ name }) => name.replace(/^blockworth-\d{8}-\d{6}-/, ''))).toEqual([
      '1of3.zip',
      '2of3.zip',
      '3of3.zip',
    ]);
    for (const { buffer } of made) {
      expect(buffer.length).toBeLessThanOrEqual(1_500_000);
      expect(bagFaults((await bagIn(new Blob([new Uint8Array(buffer)]))).files)).toEqual([]);
    }
    held = await storedAll(page);
    expect(await axeFaults(page)).toEqual([]);
    await hands.tap(hands.keeping.arrived);
    await hands.keeping.prepare.waitFor();
    expect(seen.faults).toEqual([]);
    await close();
  });

  it('is taken in from all its files at once', async () => {
    const { page, hands, close } = await newPhone();
    await takeIn(hands, [...files].reverse());
    expect(contentsOf(await storedAll(page))).toEqual(contentsOf(held));
    await close();
  });

  it('without one of them says what will be missing, remembers it, and is whole with that one later', async () => {
    const { page, hands, close } = await newPhone();
    const [one, two, three] = files as [HandedFile, HandedFile, HandedFile];
    await hands.keeping.chooseFiles([three, one]);
    await hands.keeping.stillOut('File 2 of 3 is not among these.').waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await hands.tap(hands.keeping.takeInPart);
    await hands.keeping.takenIn.waitFor();
    const part = await storedAll(page);
    expect(part.records).toEqual(held.records);
    expect(part.bytes.length).toBeLessThan(held.bytes.length);
    const missing = held.bytes.length - part.bytes.length;
    const words = `File 2 of 3 made today: ${missing === 1 ? 'one photograph is' : `${missing} photographs are`} missing`;
    await hands.keeping.stillOut(words).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await page.reload();
    await hands.keeping.stillOut(words).waitFor();
    await arrive(page, '/');
    await hands.shelf.photographsWait.waitFor();
    await arrive(page, '/keeping');
    await hands.keeping.chooseFiles([two]);
    await hands.tap(hands.keeping.takeItIn);
    await hands.keeping.takenIn.waitFor();
    expect(await hands.keeping.stillOut('').count()).toBe(0);
    expect(contentsOf(await storedAll(page))).toEqual(contentsOf(held));
    await close();
  });

  it('goes on with the second file on a phone that dropped dead while writing it', async () => {
    const profile = join(folder, 'profile');
    const first = await keptDevice(profile, { keepsFiles: false });
    const { reached } = await holdAt(first.page, { does: 'says', what: 'file', nth: 2, since: ['begin', 2] });
    const before = await atKeeping(first.page);
    await takeIn(before, [source]);
    await before.keeping.prepare.tap({ noWaitAfter: true });
    await reached;
    await first.kill();

    const { page, close } = await keptDevice(profile, { keepsFiles: false });
    const hands = await atKeeping(page);
    await hands.keeping.cutOff('One file of 3 is whole.').waitFor();
    expect(await axeFaults(page)).toEqual([]);
    const early = await saved(page, hands, 1);
    await hands.tap(hands.keeping.goOn('file 2 of 3'));
    await hands.keeping.saveFile(FILES).waitFor();
    const rest: HandedFile[] = [];
    for (const n of [2, 3]) rest.push(await saved(page, hands, n));
    await hands.keeping.backedUpToday.waitFor();
    const then = await storedAll(page);
    await close();

    const names = [early, ...rest].map(({ name }) => name.slice(0, -'1of3.zip'.length));
    expect(new Set(names).size).toBe(1);
    const other = await newPhone();
    await takeIn(other.hands, [early, ...rest]);
    expect(contentsOf(await storedAll(other.page))).toEqual(contentsOf(then));
    await other.close();
  });

  it('is written straight into picked files where there is no room for it', async () => {
    const phone = await freshDevice(browser);
    const { page } = phone;
    await page.addInitScript(() => {
      StorageManager.prototype.estimate = async () => ({ usage: 950_000, quota: 1_000_000 });
      let asked = 0;
      Object.assign(globalThis, {
        // The first time the person changes their mind.
        async showSaveFilePicker({ suggestedName }: { suggestedName: string }) {
          if (!navigator.userActivation.isActive) throw new DOMException('No tap.', 'SecurityError');
          asked += 1;
          if (asked === 1) throw new DOMException('Closed.', 'AbortError');
          const root = await navigator.storage.getDirectory();
          const place = await root.getDirectoryHandle('stick', { create: true });
          return place.getFileHandle(suggestedName, { create: true });
        },
      });
    });
    const hands = await atKeeping(page);
    await takeIn(hands, [source]);
    await hands.tap(hands.keeping.straight);
    await hands.tap(hands.keeping.prepare);
    await hands.tap(hands.keeping.pickAPlace);
    for (let n = 1; n <= FILES; n += 1) {
      await page.getByText(new RegExp(`Where is blockworth-.*-${n}of3\\.zip to go`)).waitFor();
      await hands.tap(hands.keeping.pickAPlace);
    }
    await hands.keeping.backedUpToday.waitFor();
    const written = await page.evaluate(async () => {
      const root = await navigator.storage.getDirectory();
      const names = async (folder: FileSystemDirectoryHandle): Promise<string[]> => {
        const found: string[] = [];
        for await (const name of (folder as unknown as { keys(): AsyncIterable<string> }).keys()) found.push(name);
        return found.sort();
      };
      const stick = await root.getDirectoryHandle('stick');
      const texts: string[] = [];
      for (const name of await names(stick)) {
        const file = await (await stick.getFileHandle(name)).getFile();
        const bytes = new Uint8Array(await file.arrayBuffer());
        let text = '';
        for (let from = 0; from < bytes.length; from += 0x8000)
          text += String.fromCharCode(...bytes.subarray(from, from + 0x8000));
        texts.push(btoa(text));
      }
      const others = (await names(root)).filter((name) => name !== 'stick');
      const waiting = await Promise.all(others.map(async (name) => names(await root.getDirectoryHandle(name))));
      return { texts, waiting: waiting.flat() };
    });
    expect(written.waiting).toEqual([]);
    expect(written.texts).toHaveLength(FILES);
    const there = written.texts.map((text, n) => ({
      name: `${n + 1}.zip`,
      mimeType: 'application/zip',
      buffer: Buffer.from(text, 'base64'),
    }));
    for (const { buffer } of there) {
      expect(bagFaults((await bagIn(new Blob([new Uint8Array(buffer)]))).files)).toEqual([]);
    }
    const other = await newPhone();
    await takeIn(other.hands, there);
    expect(contentsOf(await storedAll(other.page))).toEqual(contentsOf(await storedAll(page)));
    await other.close();
    await phone.close();
  });
});
