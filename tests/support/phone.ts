import { spawnSync } from 'node:child_process';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { onTestFailed } from 'vitest';
import { launchArgs, needBrowser } from './browser.mjs';

/** A small phone, held upright: the size every screen must fit. */
export const PHONE = {
  viewport: { width: 360, height: 740 },
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
  locale: 'en-GB',
  timezoneId: 'Europe/London',
  reducedMotion: 'reduce',
} as const;
/** A desk: mouse and keyboard. */
export const DESK = {
  ...PHONE,
  viewport: { width: 1280, height: 800 },
  deviceScaleFactor: 1,
  hasTouch: false,
  isMobile: false,
} as const;
/** The small phone's page with a keyboard and no touch. */
export const KEYS = { ...PHONE, hasTouch: false, isMobile: false } as const;
export type Device = typeof PHONE | typeof DESK | typeof KEYS;

/** Everything a context asked for and everything that went wrong in it. */
export interface Seen {
  readonly requests: string[];
  /** Errors in the console, uncaught errors and breaches of the content policy. */
  readonly faults: string[];
}

export interface Phone {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly seen: Seen;
  close(): Promise<void>;
}

/** What the browser itself says when the server is gone, which is no fault of the app. */
export const NO_SERVER =
  /ERR_CONNECTION_REFUSED|ERR_INTERNET_DISCONNECTED|An unknown error occurred when fetching the script/;

async function watched(context: BrowserContext): Promise<Seen> {
  context.setDefaultTimeout(15_000);
  const seen: Seen = { requests: [], faults: [] };
  const watch = (page: Page): void => {
    page.on('console', (message) => {
      if (message.type() === 'error') seen.faults.push(message.text());
    });
    page.on('pageerror', (error) => seen.faults.push(String(error)));
  };
  context.on('request', (request) => seen.requests.push(request.url()));
  context.on('page', watch);
  for (const page of context.pages()) watch(page);
  await context.addInitScript(() => {
    addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
      console.error(`Content policy: ${violatedDirective} ${blockedURI}`),
    );
  });
  return seen;
}

/** Says where the page stood and what it complained of when a test fails; a device is opened inside its test. */
function tellOnFailure(page: Page, { faults }: Seen): void {
  onTestFailed(async () => {
    const words = await page
      .locator('body')
      .textContent({ timeout: 2000 })
      .catch(() => '(gone)');
    console.error([page.url(), ...faults, words?.slice(0, 400)].join('\n'));
  });
}

/** Addresses that are not of the app's own origin; pictures in memory have none. */
export const leaving = ({ requests }: Seen, url: string): string[] => {
  const { origin } = new URL(url);
  return requests.filter((request) => !/^(blob|data|about):/.test(request) && new URL(request).origin !== origin);
};

/** A camera made of test bars, allowed without asking. */
export const FAKE_CAMERA = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'];

export const openBrowser = (more: readonly string[] = []): Promise<Browser> =>
  chromium.launch({ executablePath: needBrowser(), args: [...launchArgs, ...more] });

/**
 * A device fresh from the box: nothing stored. Files are kept for use without signal only where a test is about that
 * (`keepsFiles`): fetching all of them takes longer than most tests. So are the photographs of the example sale
 * (`examplePictures`); elsewhere what answers for them is not the file, as in a network that wants a login.
 */
export async function freshDevice(
  browser: Browser,
  device: Device = PHONE,
  { keepsFiles = false, examplePictures = false } = {},
): Promise<Phone> {
  const context = await browser.newContext({ ...device, serviceWorkers: keepsFiles ? 'allow' : 'block' });
  if (!examplePictures) await context.route('**/example/*.jpg*', (route) => route.fulfill({ status: 200, body: '' }));
  const seen = await watched(context);
  const page = await context.newPage();
  tellOnFailure(page, seen);
  return { context, page, seen, close: () => context.close() };
}

/** A device that keeps what it has in a folder, over `kill` and start; the app's own files only where `keepsFiles`. */
export async function keptDevice(
  profile: string,
  { offline = false, keepsFiles = true } = {},
): Promise<Phone & { kill(): Promise<void> }> {
  const context = await chromium.launchPersistentContext(profile, {
    ...PHONE,
    offline,
    serviceWorkers: keepsFiles ? 'allow' : 'block',
    executablePath: needBrowser(),
    args: launchArgs,
  });
  const seen = await watched(context);
  const page = context.pages()[0] ?? (await context.newPage());
  tellOnFailure(page, seen);
  return {
    ...{ context, page, seen },
    close: () => context.close(),
    /** As a phone that drops dead: its processes are found by the profile folder and ended without a word. */
    async kill() {
      const gone = new Promise<void>((resolve) => context.once('close', () => resolve()));
      for (const id of processesOf(profile)) process.kill(id, 'SIGKILL');
      await gone;
    },
  };
}

function processesOf(profile: string): number[] {
  const { stdout } = spawnSync('ps', ['-eo', 'pid=,args=', '-ww'], { encoding: 'utf8' });
  const ids = stdout
    .split('\n')
    .filter((line) => line.includes(`--user-data-dir=${profile}`))
    .map((line) => Number.parseInt(line, 10));
  if (ids.length === 0) throw new Error(`No browser runs on ${profile}.`);
  return ids;
}

/** Resolves when the service worker has every file and is in control from the next load on. */
export const readyWithoutSignal = (page: Page): Promise<unknown> =>
  page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
