// Part of npm run bench -- --archive and -- --import: one volume of 300 photographs of 400 kB taken into the built app in
// Chromium, and a backup made of it, with the memory of all its processes and the page's longest task. Measured, never
// asserted. Needs 1 GB of disk for a minute.
import { spawnSync } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { serve } from '../../src/serve/serve.mjs';
import { launchArgs, needBrowser } from '../support/browser.mjs';
import { load } from './bundle.mjs';

const PHOTOS = 300;
const BYTES = 400_000;
const total = PHOTOS * BYTES;

const bench = await load('tests/bench/import-case.ts');
const { handsOn } = await load('tests/bench/hands.ts');
const { buildApp } = await load('tests/support/build-app.ts');
const folder = await mkdtemp(join(tmpdir(), 'blockworth-bench-archive-'));
const profile = join(folder, 'profile');

/** Memory of all processes of this browser, MB. */
function memory() {
  const { stdout } = spawnSync('ps', ['-eo', 'rss=,args=', '-ww'], { encoding: 'utf8' });
  const lines = stdout.split('\n').filter((line) => line.includes(`--user-data-dir=${profile}`));
  return lines.reduce((sum, line) => sum + Number.parseInt(line, 10), 0) / 1024;
}

/** Does a piece of work and says how long it took, how much memory on top, and the page's longest task meanwhile. */
async function measured(page, what, bytes, work) {
  await page.evaluate(() => {
    globalThis.tasks = [];
    globalThis.observer?.disconnect();
    globalThis.observer = new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) globalThis.tasks.push(entry.duration);
    });
    globalThis.observer.observe({ type: 'longtask' });
  });
  const base = memory();
  let most = base;
  const watch = setInterval(() => {
    most = Math.max(most, memory());
  }, 150);
  const begun = performance.now();
  await work();
  const ms = performance.now() - begun;
  clearInterval(watch);
  const longest = await page.evaluate(() => Math.max(0, ...globalThis.tasks));
  const speed = bytes > 0 ? `${(bytes / 1000 / ms).toFixed(0).padStart(4)} MB/s` : ''.padStart(9);
  console.log(
    `${what.padEnd(52)}${ms.toFixed(0).padStart(7)} ms ${speed}  ${Math.round(most - base)} MB on top, longest task ${Math.round(longest)} ms, load ${loadavg()[0].toFixed(1)}`,
  );
}

try {
  const pictures = Array.from({ length: PHOTOS }, (_, n) => bench.photographOf(n, BYTES));
  const source = join(folder, 'source.zip');
  await writeFile(source, bench.volumeOf(bench.photoRecords(pictures, 0), pictures, 1, 1));
  const dist = join(folder, 'dist');
  buildApp(dist);
  const server = await serve(dist);
  const context = await chromium.launchPersistentContext(profile, { executablePath: needBrowser(), args: launchArgs });
  context.setDefaultTimeout(120_000);
  const page = context.pages()[0];
  const { keeping } = handsOn(page);
  await page.goto(`${server.url}#/keeping`);
  await keeping.never.waitFor();
  // What a first visit still fetches is not what is measured.
  await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
  console.log(`\n${PHOTOS} photographs, ${(total / 1e6).toFixed(0)} MB, in Chromium`);
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), keeping.choose.click()]);
  await measured(page, 'file chosen → preview', 0, async () => {
    await chooser.setFiles([source]);
    await keeping.takeItIn.waitFor();
  });
  await measured(page, 'taken in: checked, hashed twice, written', total, async () => {
    await keeping.takeItIn.click();
    await keeping.takenIn.waitFor();
  });
  await measured(page, 'backup: read, hashed, written to private files', total, async () => {
    await keeping.prepare.click();
    await keeping.save.waitFor();
  });
  await context.close();
  await server.close();
} finally {
  await rm(folder, { recursive: true, force: true });
}
