// npm run bench -- --pdf: a report with 40 photographs as PDF, by the app as it ships in Chromium: time from the tap to the
// file, the processor time it took, the file's size, how far apart the signs of progress are, the page's longest task
// meanwhile, how much memory the browser takes on top, and how soon it stops. Measured, never asserted.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { serve } from '../../src/serve/serve.mjs';
import { launchArgs, needBrowser } from '../support/browser.mjs';
import { load } from './bundle.mjs';

const PHOTOS = 40;
const PHONE = { viewport: { width: 360, height: 740 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true };

const { handsOn } = await load('tests/bench/hands.ts');
const { buildApp } = await load('tests/support/build-app.ts');
const folder = await mkdtemp(join(tmpdir(), 'blockworth-bench-pdf-'));
const dist = join(folder, 'dist');
const profile = join(folder, 'profile');

/** Memory of all processes of this browser, MB. */
function memory() {
  const { stdout } = spawnSync('ps', ['-eo', 'rss=,args=', '-ww'], { encoding: 'utf8' });
  const lines = stdout.split('\n').filter((line) => line.includes(`--user-data-dir=${profile}`));
  return lines.reduce((sum, line) => sum + Number.parseInt(line, 10), 0) / 1024;
}

/** Processor time taken so far by all processes of this browser, ms. */
function processor() {
  const { stdout } = spawnSync('ps', ['-eo', 'pid=,args=', '-ww'], { encoding: 'utf8' });
  const lines = stdout.split('\n').filter((line) => line.includes(`--user-data-dir=${profile}`));
  return lines.reduce((sum, line) => {
    try {
      // Fields 14 and 15 of proc(5), in hundredths of a second, counted behind the name in brackets.
      const fields = readFileSync(`/proc/${Number.parseInt(line, 10)}/stat`, 'utf8')
        .replace(/^.*\) /s, '')
        .split(' ');
      return sum + 10 * (Number(fields[11]) + Number(fields[12]));
    } catch {
      return sum;
    }
  }, 0);
}

/** Gives the app photographs with grain, no two alike, drawn in the page, as the gallery would. */
const take = (page, count) =>
  page.evaluate(async (count) => {
    const files = new DataTransfer();
    for (let n = 0; n < count; n += 1) {
      const canvas = new OffscreenCanvas(2048, 1536);
      const context = canvas.getContext('2d');
      context.fillStyle = `hsl(${n * 9} 30% 55%)`;
      context.fillRect(0, 0, 2048, 1536);
      for (let i = 0; i < 4000; i += 1) {
        context.fillStyle = `hsl(${(i * 7) % 360} 40% ${30 + (i % 40)}% / 0.5)`;
        context.fillRect((i * 7919 + n * 31) % 2048, (i * 104729 + n * 17) % 1536, 40, 26);
      }
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
      files.items.add(new File([blob], `IMG_${n}.jpg`, { type: 'image/jpeg' }));
    }
    const input = [...document.querySelectorAll('input[type=file]')].find((one) => one.multiple);
    input.files = files.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  }, count);

try {
  buildApp(dist);
  const server = await serve(dist);
  const context = await chromium.launchPersistentContext(profile, {
    ...PHONE,
    executablePath: needBrowser(),
    args: launchArgs,
  });
  const page = context.pages()[0];
  const hands = handsOn(page);
  await hands.shelf.open(server.url);
  await hands.glance({ shape: 'domeCrown', wood: 'lime', price: '45' });
  const block = page.url().replace(/\/look$/, '');
  await page.goto(block);
  await hands.look.gallery.waitFor();
  await take(page, PHOTOS);
  await page.waitForFunction((count) => document.querySelectorAll('main a[href*="/photo/"]').length >= count, PHOTOS, {
    timeout: 120_000,
  });
  await page.goto(`${block}/report`);
  await hands.report.file('PDF, for sending and printing').check();
  await page.waitForTimeout(3000);

  await page.evaluate(() => {
    globalThis.seen = { tasks: [], steps: [] };
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) globalThis.seen.tasks.push(entry.duration);
    }).observe({ type: 'longtask' });
    new MutationObserver(() => {
      const bar = document.querySelector('progress');
      const at = bar?.value;
      if (at !== undefined && globalThis.seen.last !== at) {
        globalThis.seen.last = at;
        globalThis.seen.steps.push(performance.now());
      }
      if ([...document.querySelectorAll('button')].some((one) => one.textContent === 'Save the file'))
        globalThis.seen.ready ??= performance.now();
    }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
  });
  const base = memory();
  let most = base;
  const watch = setInterval(() => {
    most = Math.max(most, memory());
  }, 150);
  const worked = processor();
  const begun = await page.evaluate(() => {
    const button = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Prepare the report');
    const now = performance.now();
    button.click();
    return now;
  });
  await page.waitForFunction(() => globalThis.seen.ready, undefined, { timeout: 120_000, polling: 250 });
  const work = processor() - worked;
  clearInterval(watch);
  const { ready, steps, tasks } = await page.evaluate(() => globalThis.seen);
  const gaps = [begun, ...steps, ready].map((at, index, all) => at - (all[index - 1] ?? at));
  const [download] = await Promise.all([page.waitForEvent('download'), hands.report.save.tap()]);
  const file = readFileSync(await download.path());
  console.log(`\nPDF with ${PHOTOS} photographs, in Chromium, load ${loadavg()[0].toFixed(1)}`);
  console.log(`tap → file            ${Math.round(ready - begun)} ms`);
  console.log(`processor time        ${work} ms, all processes of the browser`);
  console.log(`size                  ${(file.length / 1e6).toFixed(1)} MB`);
  console.log(`progress apart        ${Math.round(Math.max(...gaps))} ms at most`);
  console.log(`longest task of page  ${Math.round(Math.max(0, ...tasks))} ms`);
  console.log(`memory on top         ${Math.round(most - base)} MB, all processes of the browser`);

  // Stopped in the middle: from the tap to the button one can begin again with.
  const stops = [];
  for (const after of [200, 600, 1200]) {
    await hands.report.file('One page for any browser').check();
    await hands.report.file('PDF, for sending and printing').check();
    await hands.report.prepare.tap();
    await page.waitForTimeout(after);
    stops.push(
      await page.evaluate(
        () =>
          new Promise((done) => {
            const find = (name) => [...document.querySelectorAll('button')].find((one) => one.textContent === name);
            const begun = performance.now();
            find('Stop')?.click();
            const look = () => (find('Prepare the report') ? done(performance.now() - begun) : setTimeout(look, 2));
            look();
          }),
      ),
    );
  }
  console.log(`stopped after         ${stops.map(Math.round).join(', ')} ms`);
  await context.close();
  await server.close();
} finally {
  await rm(folder, { recursive: true, force: true });
}
