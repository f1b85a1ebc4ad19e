// npm run bench -- --browser: the built app in Chromium, once as fast as this machine is and once with the processor
// throttled to a quarter, which is nearer a phone. Medians of several runs on fresh profiles. Measured, never asserted.
import { spawnSync } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { serve } from '../../src/serve/serve.mjs';
import { launchArgs, needBrowser } from '../support/browser.mjs';
import { load } from './bundle.mjs';

const PHONE = { viewport: { width: 360, height: 740 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true };
const RUNS = 5;

const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1];
const line = (what, values) => {
  if (values.some((one) => !Number.isFinite(one))) throw new Error(`${what}: ${values}`);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const figure = `${Math.round(median(values))}`.padStart(7);
  console.log(`${what.padEnd(62)}${figure}   ${Math.round(low)}–${Math.round(high)}   ${loadavg()[0].toFixed(1)}`);
};

const { handsOn, photograph } = await load('tests/bench/hands.ts');
const { forecastCase } = await load('tests/bench/cases.ts');
const { buildApp } = await load('tests/support/build-app.ts');
const folder = await mkdtemp(join(tmpdir(), 'blockworth-bench-'));
const dist = join(folder, 'dist');
buildApp(dist);

async function device(name, slower) {
  const context = await chromium.launchPersistentContext(join(folder, name), {
    ...PHONE,
    executablePath: needBrowser(),
    args: launchArgs,
  });
  const page = context.pages()[0];
  const throttle = await context.newCDPSession(page);
  await throttle.send('Emulation.setCPUThrottlingRate', { rate: slower });
  return { context, page };
}

const paint = (page) =>
  page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN);
/** Time since the page began until the shelf's first link is there and painted. */
const usable = (page) =>
  page.evaluate(
    () =>
      new Promise((done) => {
        const look = () => {
          const link = [...document.querySelectorAll('a')].find((a) => a.textContent.trim() === 'Look at a block');
          if (link) requestAnimationFrame(() => done(performance.now()));
          else setTimeout(look, 2);
        };
        look();
      }),
  );

async function starts(slower) {
  const first = { paint: [], usable: [] };
  const again = { paint: [], usable: [] };
  for (let run = 0; run < RUNS; run += 1) {
    const name = `start-${slower}-${run}`;
    let server = await serve(dist);
    const { url } = server;
    const open = async (figures, before = async () => undefined) => {
      const { context, page } = await device(name, slower);
      await before(context);
      // The browser's own first page is not ours to count.
      await page.waitForTimeout(2000);
      await page.goto(url, { waitUntil: 'commit' });
      figures.usable.push(await usable(page));
      figures.paint.push(await paint(page));
      return { context, page };
    };
    const { context, page } = await open(first);
    await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    await page.waitForFunction(() => navigator.serviceWorker.controller || caches.keys().then((k) => k.length > 0));
    await page.waitForTimeout(500);
    await context.close();
    await server.close();
    server = undefined;
    const offline = await open(again, (one) => one.setOffline(true));
    await offline.context.close();
  }
  line(`first visit, server near: first paint, ×${slower}`, first.paint);
  line(`first visit, server near: shelf usable, ×${slower}`, first.usable);
  line(`cold start offline, server gone: first paint, ×${slower}`, again.paint);
  line(`cold start offline, server gone: shelf usable, ×${slower}`, again.usable);
}

/** Watches the page's long tasks and the time from input to next paint (Event Timing). */
const watch = (page) =>
  page.evaluate(() => {
    globalThis.seen = { tasks: [], events: [] };
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) globalThis.seen.tasks.push(entry.duration);
    }).observe({ type: 'longtask', buffered: false });
    new PerformanceObserver((list) => {
      for (const { interactionId, duration, name } of list.getEntries()) {
        if (interactionId) globalThis.seen.events.push([name, duration]);
      }
    }).observe({ type: 'event', durationThreshold: 16, buffered: false });
  });

async function photographTaken(slower, picture) {
  const path = join(folder, 'IMG_0412.jpg');
  await writeFile(path, picture);
  const shown = [];
  const saved = [];
  const tasks = [];
  for (let run = 0; run < RUNS; run += 1) {
    const server = await serve(dist);
    const { context, page } = await device(`photo-${slower}-${run}`, slower);
    const hands = handsOn(page);
    await hands.shelf.open(server.url);
    await hands.glance({ shape: 'puzzle', wood: 'lime', price: '45' });
    await page.goto(page.url().replace(/\/look$/, ''));
    await hands.look.gallery.waitFor();
    await page.waitForTimeout(1500);
    await watch(page);
    await page.evaluate(() => {
      addEventListener(
        'change',
        () => {
          globalThis.chosen = performance.now();
          const look = () => {
            const image = [...document.querySelectorAll('main img')].find(
              (one) => one.complete && one.naturalWidth > 0,
            );
            if (image) globalThis.shownAfter ??= performance.now() - globalThis.chosen;
            const said = document.body.textContent.includes('Photograph saved on this phone');
            if (said && image) globalThis.savedAfter = performance.now() - globalThis.chosen;
            else setTimeout(look, 4);
          };
          look();
        },
        { capture: true, once: true },
      );
    });
    // By its path: bytes handed over the wire would cost the page a second that no phone spends.
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), hands.look.gallery.click()]);
    await chooser.setFiles(path);
    await page.waitForFunction(() => globalThis.savedAfter !== undefined, undefined, { timeout: 60_000 });
    shown.push(await page.evaluate(() => globalThis.shownAfter));
    saved.push(await page.evaluate(() => globalThis.savedAfter));
    tasks.push(Math.max(0, ...(await page.evaluate(() => globalThis.seen.tasks))));
    await context.close();
    await server.close();
  }
  const size = `${(picture.length / 1e6).toFixed(1)} MB, 12 MP`;
  line(`photograph (${size}) chosen → seen, ×${slower}`, shown);
  line(`photograph chosen → saved, ×${slower}`, saved);
  line(`  longest task of the page meanwhile, ×${slower}`, tasks);
}

async function typing(slower) {
  const worst = [];
  const tasks = [];
  for (let run = 0; run < RUNS; run += 1) {
    const server = await serve(dist);
    const { context, page } = await device(`typing-${slower}-${run}`, slower);
    const hands = handsOn(page);
    await hands.shelf.open(server.url);
    await hands.glance({ shape: 'puzzle', wood: 'lime', price: '45' });
    await hands.tap(hands.look.walk);
    await hands.walk.station('nose').waitFor();
    await page.goto(`${page.url().replace(/\/walk.*$/, '')}/walk/tape`);
    await hands.walk.measure('circRopeMm').waitFor();
    await page.waitForTimeout(1500);
    await watch(page);
    for (const [id, text] of [
      ['circRopeMm', '571.5'],
      ['lengthMm', '198.5'],
      ['widthMm', '164.5'],
    ]) {
      await hands.walk.measure(id).tap();
      await page.keyboard.type(text, { delay: 120 });
    }
    await page.waitForTimeout(1000);
    const { events, tasks: long } = await page.evaluate(() => globalThis.seen);
    worst.push(Math.max(0, ...events.map(([, duration]) => duration)));
    tasks.push(Math.max(0, ...long));
    await context.close();
    await server.close();
  }
  line(`typing measures in the walk: slowest input → paint, ×${slower}`, worst);
  line(`  longest task of the page meanwhile, ×${slower}`, tasks);
}

/**
 * The forecast as shipped, at a quarter of the speed: the throttle holds the page's thread only, so the worker's script is
 * run there, on a page that does nothing else.
 */
async function forecasts(slower) {
  const server = await serve(dist);
  const { context, page } = await device(`forecast-${slower}`, slower);
  await page.goto(server.url);
  const { readdir } = await import('node:fs/promises');
  const script = (await readdir(join(dist, 'assets'))).find((name) => /^forecast.*worker.*\.js$/.test(name));
  for (const [words, looked, count] of [
    ['60 findings, rest looked at', 'everything', 60],
    ['60 findings, rest not looked at', 'nothing', 60],
  ]) {
    const cases = Array.from({ length: 40 }, (_, n) => ({ ...forecastCase(count, looked), seed: n < 30 ? 1 : n }));
    const times = await page.evaluate(
      async ({ script, cases }) => {
        const times = [];
        if (!globalThis.answered) {
          globalThis.addEventListener(
            'message',
            (event) => {
              if (event.data.answer) {
                event.stopImmediatePropagation();
                globalThis.answered();
              } else globalThis.begun = performance.now();
            },
            { capture: true },
          );
          await import(script);
        }
        for (const [id, facts] of cases.entries()) {
          await new Promise((done) => {
            globalThis.answered = () => {
              times.push(performance.now() - globalThis.begun);
              done();
            };
            globalThis.postMessage({ id, facts }, '*');
          });
        }
        return times;
      },
      { script: `./assets/${script}`, cases },
    );
    line(`forecast, ${words}, draws kept, ×${slower}`, times.slice(15, 30));
    line(`forecast, ${words}, draws made anew, ×${slower}`, times.slice(30));
  }
  await context.close();
  await server.close();
}

/** Memory of the page's own process in MB, once it has been told to clear up. */
async function memoryOf(profile, cdp) {
  await cdp.send('HeapProfiler.collectGarbage');
  const { stdout } = spawnSync('ps', ['-eo', 'rss=,args=', '-ww'], { encoding: 'utf8' });
  const sizes = stdout
    .split('\n')
    .filter((line) => line.includes('--type=renderer') && line.includes(profile))
    .map((line) => Number.parseInt(line, 10) / 1000);
  return Math.max(...sizes);
}

/** Thirty photographs one after another, then each on the measuring bench: what stays behind. */
async function thirtyPhotographs(picture) {
  const server = await serve(dist);
  const { context, page } = await device('thirty', 1);
  const cdp = await context.newCDPSession(page);
  const hands = handsOn(page);
  await hands.shelf.open(server.url);
  await hands.glance({ shape: 'puzzle', wood: 'lime', price: '45' });
  const block = page.url().replace(/\/look$/, '');
  await page.goto(block);
  const take = async (from, to) => {
    const paths = [];
    for (let n = from; n < to; n += 1) {
      // The end of a JPEG file is not looked at: thirty different photographs that look the same.
      paths.push(join(folder, `many-${n}.jpg`));
      await writeFile(paths.at(-1), Buffer.concat([picture, Buffer.from([n])]));
    }
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), hands.look.gallery.click()]);
    await chooser.setFiles(paths);
    await page.waitForFunction(() => /photographs saved on this phone/.test(document.body.textContent), undefined, {
      timeout: 180_000,
    });
    await page.waitForTimeout(12_000);
  };
  await take(0, 5);
  const before = await memoryOf('thirty', cdp);
  await take(5, 35);
  const after = await memoryOf('thirty', cdp);
  console.log(`memory of the page: ${before.toFixed(0)} MB after 5 photographs, ${after.toFixed(0)} MB after 30 more`);

  const links = await hands.block.photograph.evaluateAll((all) => all.map((link) => link.href));
  const measured = async (href) => {
    await page.goto(`${href}/measure`);
    await page.getByRole('button', { name: 'Find it for me', exact: true }).click();
    const found = page.getByText('The edges were found.');
    await found.or(page.getByRole('main').getByRole('alert')).first().waitFor({ timeout: 10_000 });
    await page.goto(block);
  };
  for (const href of links.slice(0, 3)) await measured(href);
  const few = await memoryOf('thirty', cdp);
  for (const href of links.slice(3, 33)) await measured(href);
  await page.waitForTimeout(35_000);
  const many = await memoryOf('thirty', cdp);
  console.log(`  on the measuring bench: ${few.toFixed(0)} MB after 3 of them, ${many.toFixed(0)} MB after 30 more`);
  await context.close();
  await server.close();
}

console.log(`\n${''.padEnd(62)} median   range   load   (ms)`);
try {
  const server = await serve(dist);
  const { context, page } = await device('draws', 1);
  await page.goto(server.url);
  const picture = await photograph(page);
  await context.close();
  await server.close();
  await thirtyPhotographs(picture);
  for (const slower of [1, 4]) {
    await starts(slower);
    await photographTaken(slower, picture);
    await typing(slower);
    await forecasts(slower);
  }
} finally {
  await rm(folder, { recursive: true, force: true, maxRetries: 5 });
}
