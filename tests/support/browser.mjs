// Finds a Chromium to drive, or installs Debian's when run as root with apt-get. Run directly, it says which.
import { execFileSync, spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge-stable'];
const PLACES = [
  '/usr/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA']
    .flatMap((name) => process.env[name] ?? [])
    .map((folder) => join(folder, 'Google/Chrome/Application/chrome.exe')),
];

const runs = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

/** The path of a Chromium-family browser, or undefined. `CHROME_PATH` wins and must be right. */
export function findBrowser() {
  const chosen = process.env.CHROME_PATH;
  if (chosen) {
    if (!runs(chosen)) throw new Error(`CHROME_PATH is ${chosen}, which is not a program.`);
    return chosen;
  }
  const onPath = (process.env.PATH ?? '').split(delimiter).flatMap((dir) => NAMES.map((name) => join(dir, name)));
  return [...PLACES, ...onPath].find((path) => existsSync(path) && runs(path));
}

/** Flags for a quiet, closed, headless run; the sandbox goes only where root makes it impossible. */
export const launchArgs = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Installs Debian packages when root and apt-get are there; true when done. */
export function aptInstall(...packages) {
  if (process.getuid?.() !== 0 || spawnSync('apt-get', ['--version']).status !== 0) return false;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  execFileSync('apt-get', ['update', '-qq'], { env, stdio: ['ignore', 'ignore', 'inherit'] });
  execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], {
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  return true;
}

/** As `findBrowser`, installing Debian's Chromium if need and permission are there. */
export function needBrowser() {
  const found = findBrowser();
  if (found) return found;
  if (aptInstall('chromium', 'fonts-dejavu-core')) {
    const installed = findBrowser();
    if (installed) return installed;
  }
  throw new Error('No Chromium found. Install Chrome or Chromium, or set CHROME_PATH to one.');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    console.log(`Browser for the tests: ${needBrowser()}`);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  }
}
