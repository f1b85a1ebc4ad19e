import { effect } from '@preact/signals';
import { v7 } from 'uuid';
import { firstWindow } from './alone.ts';
import { createIdbRepository } from './idb.ts';
import { createKeeping } from './persist.ts';
import type { RepositoryStatus } from './repository.ts';
import { createStore, type Store } from './store.ts';

/**
 * Opens this device's storage and reads it into a store.
 * @param now Unix milliseconds
 * @param onStatus hears how opening goes; `close-other-windows` means that it waits for another window
 * @throws AppError storage-unavailable or reload-needed
 */
export async function openStore(now: () => number, onStatus?: (status: RepositoryStatus) => void): Promise<Store> {
  const repository = createIdbRepository();
  const stop = effect(() => onStatus?.(repository.status.value));
  const { device } = await repository.identity();
  const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel('blockworth') : undefined;
  const keeping = createKeeping(navigator.storage);
  const store = createStore({
    ...{ repository, now, device, keeping },
    newId: () => v7(),
    ...(channel && { channel }),
    makeThumbnail: async (copy) => (await import('../photos/thumbnail-again.ts')).thumbnailAgain(copy),
  });
  await store.load();
  stop();

  // What must not hold up the first screen: freeing bytes, measuring. Neither failing is worth a word.
  firstWindow(navigator.locks, () => store.sweep()).catch(() => undefined);
  keeping.look().catch(() => undefined);
  store.joinKept().catch(() => undefined);
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden) wake(store, false);
  });
  addEventListener('pageshow', (event) => {
    if (event.persisted) wake(store, true);
  });
  return store;
}

/** After a stay in the background: renews a dead connection, reads what a frozen page missed, saves what could not be saved. */
function wake(store: Store, wasFrozen: boolean): void {
  store.repository
    .wake()
    .then(() => (wasFrozen ? store.refresh() : undefined))
    .then(() => (typeof store.saving.value === 'object' ? store.retry() : undefined))
    // What still stands in the way shows at the next save.
    .catch(() => undefined);
}
