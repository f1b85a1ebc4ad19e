import { signal } from '@preact/signals';
import { Workbox } from 'workbox-window';

/** `unknown` until asked; `ready` once every file is here; `cannot` where the browser has no service worker. */
export const offline = signal<'unknown' | 'preparing' | 'ready' | 'cannot'>('unknown');
/** A new version waits to be let in. */
export const updateWaiting = signal(false);
/** The owner accepted it; all windows will reload. */
export const updating = signal(false);

let workbox: Workbox | undefined;

/** Registers the service worker of a built app and watches for updates. An update is offered, never forced. */
export async function goOffline(): Promise<void> {
  if (!('serviceWorker' in navigator) || !import.meta.env.PROD) {
    offline.value = 'cannot';
    return;
  }
  offline.value = 'preparing';
  workbox = new Workbox('./sw.js', { scope: './', updateViaCache: 'none' });
  workbox.addEventListener('waiting', () => {
    updateWaiting.value = true;
  });
  workbox.addEventListener('controlling', (event) => {
    if (event.isUpdate || updating.value) location.reload();
  });
  try {
    const registration = await workbox.register();
    document.addEventListener('visibilitychange', () => {
      if (!document.hidden) registration?.update().catch(() => undefined);
    });
    await navigator.serviceWorker.ready;
    offline.value = 'ready';
  } catch {
    // No signal at the very first visit, or a host without the file: the app works, it is only not kept.
    offline.value = 'unknown';
  }
}

/**
 * Lets the waiting version in, once everything is saved.
 * @param settled resolves when nothing is unsaved; the update waits for it
 */
export async function acceptUpdate(settled: Promise<unknown>): Promise<void> {
  updating.value = true;
  await settled;
  const waiting = (await navigator.serviceWorker.getRegistration())?.waiting;
  if (waiting) waiting.postMessage({ type: 'SKIP_WAITING' });
  else workbox?.messageSkipWaiting();
  // `controllerchange` does not come in some installed apps; then reload by ourselves.
  setTimeout(() => location.reload(), 2500);
}
