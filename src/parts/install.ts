import { signal } from '@preact/signals';

interface InstallPrompt extends Event {
  prompt(): Promise<{ outcome: 'accepted' | 'dismissed' }>;
}

let waiting: InstallPrompt | undefined;

/** The browser offers to install; the offer is kept until the owner wants it. */
export const canInstall = signal(false);

addEventListener('beforeinstallprompt', (event) => {
  event.preventDefault();
  waiting = event as InstallPrompt;
  canInstall.value = true;
});
addEventListener('appinstalled', () => {
  waiting = undefined;
  canInstall.value = false;
});

/** Asks the browser to put the app on the home screen. */
export async function install(): Promise<void> {
  const prompt = waiting;
  waiting = undefined;
  canInstall.value = false;
  await prompt?.prompt();
}

export const isInstalled = (): boolean => matchMedia('(display-mode: standalone)').matches;

/** Only where there is no install offer to catch and the way in is by hand. */
export const onIphone = (): boolean => 'standalone' in navigator;

const SEEN = 'blockworth-ready-seen';
const read = (): boolean => {
  try {
    return localStorage.getItem(SEEN) !== null;
  } catch {
    return true;
  }
};

/** "Ready without signal" is said once. */
export const readyNoticeSeen = signal(read());

export function seeReadyNotice(): void {
  readyNoticeSeen.value = true;
  try {
    localStorage.setItem(SEEN, '1');
  } catch {
    // Without local storage it is said again next time; nothing depends on it.
  }
}
