import { createHash } from 'node:crypto';
import { cp, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { serve } from '../../src/serve/serve.mjs';
import { buildApp } from '../support/build-app.ts';
import { freshDevice, leaving, NO_SERVER, openBrowser, PHONE, readyWithoutSignal } from '../support/phone.ts';
import { photograph } from '../support/photograph.ts';
import { storedRecords } from '../support/stored.ts';
import { handsOn } from './hands.ts';
import { addresses, arrive } from './screens.ts';

/** Enough pixels for a picture where only its way is looked at. */
const SMALL = { width: 600, height: 800 };
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** The example's photographs: kept apart, and only once it was opened. */
const EXAMPLE = /^example\//;

/** Files a phone needs: not the maps, not the service worker, which the browser keeps itself, not the example. */
async function filesOf(dist: string, folder = /^(?!example\/)/): Promise<Record<string, string>> {
  const entries = await readdir(dist, { recursive: true, withFileTypes: true });
  const paths = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  const named = paths.map((path) => [relative(dist, path).replaceAll('\\', '/'), path] as const);
  const files = named.filter(([name]) => folder.test(name) && !/\.map$|^sw\.js$/.test(name));
  return Object.fromEntries(
    await Promise.all(files.map(async ([name, path]) => [name, sha256(await readFile(path))] as const)),
  );
}

/** Every cached file by its path under the scope, with the hash of what the cache holds. */
const cachedFiles = (page: Page, scope: string, cacheName = 'blockworth-files'): Promise<Record<string, string>> =>
  page.evaluate(
    async ({ scope, cacheName }) => {
      const found: Record<string, string> = {};
      for (const name of (await caches.keys()).filter((one) => one === cacheName)) {
        const cache = await caches.open(name);
        for (const request of await cache.keys()) {
          const body = (await (await cache.match(request))?.arrayBuffer()) ?? new ArrayBuffer(0);
          const digest = [...new Uint8Array(await crypto.subtle.digest('SHA-256', body))];
          const { origin, pathname } = new URL(request.url);
          found[(origin + pathname).slice(scope.length)] = digest
            .map((byte) => byte.toString(16).padStart(2, '0'))
            .join('');
        }
      }
      return found;
    },
    { scope, cacheName },
  );

/** Which build a page runs; `next-version.vite.config.ts` marks the second. */
const versionOf = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.documentElement.dataset.version);

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe('without signal', () => {
  it('has every file of the build on the phone, and opens every screen with the server dead', async () => {
    const server = await serve(inject('dist'));
    const { page, seen, close } = await freshDevice(browser, PHONE, { keepsFiles: true, examplePictures: true });
    const hands = handsOn(page);
    await hands.shelf.open(server.url);
    await hands.tap(hands.shelf.openTheExample);
    await hands.shelf.blocks.first().waitFor();
    await hands.shelf.readyWithoutSignal.waitFor();
    expect(await cachedFiles(page, server.url)).toEqual(await filesOf(inject('dist')));
    const pictures = await filesOf(inject('dist'), EXAMPLE);
    expect(Object.keys(pictures).length).toBeGreaterThan(20);
    await expect.poll(() => cachedFiles(page, server.url, 'blockworth-example'), { timeout: 60_000 }).toEqual(pictures);
    await hands.shelf.picturesComing.waitFor({ state: 'detached' });
    expect(seen.faults).toEqual([]);

    await server.close();
    await page.reload();
    await hands.tap(hands.shelf.blocks.first());
    await hands.choose([{ name: 'front.jpg', mimeType: 'image/jpeg', buffer: await photograph(page, SMALL) }]);
    await hands.block.photograph.first().waitFor();
    const screens = await addresses(page);
    for (const { hash } of screens) await arrive(page, hash);
    expect(screens.length).toBeGreaterThan(20);

    // Not only from the page that was open: each address can be where the app starts.
    const { hash } = screens.find(({ name }) => name === '/block/:id') ?? {};
    await page.goto(`${server.url}?from=home#${hash}`);
    await hands.block.answer.waitFor();
    expect(leaving(seen, server.url)).toEqual([]);
    expect(seen.faults.filter((fault) => !NO_SERVER.test(fault))).toEqual([]);
    await close();
  });

  it('opens the example without its photographs where they cannot be had, and brings them when asked again', {
    timeout: 180_000,
  }, async () => {
    const server = await serve(inject('dist'));
    const { page, context, seen, close } = await freshDevice(browser);
    const hands = handsOn(page);
    await hands.shelf.open(server.url);
    await hands.tap(hands.shelf.openTheExample);
    await hands.shelf.picturesMissing.waitFor();
    await context.unrouteAll();
    await hands.tap(hands.shelf.fetchPictures);
    await hands.shelf.picturesMissing.waitFor({ state: 'detached' });
    const stored = async (): Promise<number> =>
      (await storedRecords(page, 'photo')).filter(({ deleted }) => deleted === null).length;
    const pictures = Object.keys(await filesOf(inject('dist'), EXAMPLE)).length;
    await expect.poll(stored, { timeout: 120_000 }).toBe(pictures);

    await hands.tap(hands.shelf.takeAway);
    await hands.shelf.isEmpty.waitFor();
    await expect.poll(stored).toBe(0);
    await expect.poll(() => cachedFiles(page, server.url, 'blockworth-example')).toEqual({});
    expect(seen.faults).toEqual([]);
    await close();
    await server.close();
  });

  it('works the same under a path of a host', async () => {
    const server = await serve(inject('dist'), { base: '/some/where/' });
    const { page, seen, close } = await freshDevice(browser, PHONE, { keepsFiles: true });
    const hands = handsOn(page);
    await hands.shelf.open(server.url);
    await hands.glance({ shape: 'domeCrown', wood: 'lime', price: '45' });
    await hands.saved();
    await readyWithoutSignal(page);
    expect(await cachedFiles(page, server.url)).toEqual(await filesOf(inject('dist')));
    await server.close();
    await page.goto(server.url);
    await hands.tap(hands.shelf.blocks.first());
    await hands.block.answer.waitFor();
    expect(seen.requests.filter((request) => /^http/.test(request) && !request.startsWith(server.url))).toEqual([]);
    expect(seen.faults.filter((fault) => !NO_SERVER.test(fault))).toEqual([]);
    await close();
  });
});

describe('a new version', () => {
  let live: string;
  let next: string;
  beforeAll(async () => {
    [live = '', next = ''] = await Promise.all(
      ['live', 'next'].map((one) => mkdtemp(join(tmpdir(), `blockworth-${one}-`))),
    );
    await cp(inject('dist'), live, { recursive: true });
    buildApp(next, 'tests/support/next-version.vite.config.ts');
  });
  afterAll(() => Promise.all([live, next].map((folder) => rm(folder, { recursive: true, force: true }))));

  it('is offered, not forced; the old one works on meanwhile; let in, it finds everything as it was', async () => {
    const server = await serve(live);
    const { page, context, seen, close } = await freshDevice(browser, PHONE, { keepsFiles: true });
    const hands = handsOn(page);
    await hands.shelf.open(server.url);
    await hands.glance({ shape: 'domeCrown', wood: 'lime', price: '45' });
    await hands.saved();
    await readyWithoutSignal(page);
    await page.goto(server.url);
    const before = await hands.shelf.blocks.first().textContent();
    const old = await cachedFiles(page, server.url);

    await rm(live, { recursive: true });
    await cp(next, live, { recursive: true });
    await page.reload();
    await hands.shelf.newVersion.waitFor();
    expect(await versionOf(page)).toBeUndefined();
    await page.reload();
    await hands.shelf.newVersion.waitFor();
    expect(await versionOf(page)).toBeUndefined();
    // Code this page has not loaded yet is gone from the host; the old version still has its own.
    await arrive(page, '/handbook/calculators');
    expect(await versionOf(page)).toBeUndefined();
    const other = await context.newPage();
    await other.goto(server.url);

    await arrive(page, '/');
    await hands.tap(hands.shelf.useItNow);
    await expect.poll(() => versionOf(page).catch(() => undefined), { timeout: 15_000 }).toBe('next');
    await expect.poll(() => versionOf(other).catch(() => undefined), { timeout: 15_000 }).toBe('next');
    await hands.shelf.blocks.first().waitFor();
    await expect.poll(() => hands.shelf.blocks.first().textContent()).toBe(before);
    expect(await hands.shelf.newVersion.count()).toBe(0);

    const now = await cachedFiles(page, server.url);
    expect(now).toEqual(await filesOf(next));
    expect(now['index.html']).not.toBe(old['index.html']);
    expect(leaving(seen, server.url)).toEqual([]);
    expect(seen.faults).toEqual([]);
    await close();
    await server.close();
  });

  it('is refused while half of it is on the host, and the old one stays', async () => {
    await rm(live, { recursive: true });
    await cp(inject('dist'), live, { recursive: true });
    const server = await serve(live);
    const { page, close } = await freshDevice(browser, PHONE, { keepsFiles: true });
    const hands = handsOn(page);
    await hands.shelf.open(server.url);
    await readyWithoutSignal(page);
    // A deploy caught in the middle: the new worker and page are there, the files they name are not.
    for (const name of ['sw.js', 'index.html']) await cp(join(next, name), join(live, name));
    const installed = page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      const failed = new Promise<string>((resolve) => {
        registration.addEventListener('updatefound', () => {
          const { installing } = registration;
          installing?.addEventListener('statechange', () => resolve(installing.state));
        });
      });
      await registration.update();
      return failed;
    });
    expect(await installed).toBe('redundant');
    await page.reload();
    await hands.shelf.isEmpty.waitFor();
    expect(await versionOf(page)).toBeUndefined();
    expect(await hands.shelf.newVersion.count()).toBe(0);
    await close();
    await server.close();
  });
});
