import { AppError, type ErrorCode } from '../../src/core/errors.ts';
import { createMemoryRepository, type MemoryDisk, newDisk } from '../../src/store/memory.ts';
import type { Batch, Repository } from '../../src/store/repository.ts';
import { type Channel, createStore, type Store, type StoreOptions } from '../../src/store/store.ts';
import { DEVICE, NEW_YEAR, newIds } from './make.ts';

/** A repository whose commits can be made to fail, and are counted. */
export function moody(repository: Repository) {
  const mood = {
    failing: null as ErrorCode | null,
    commits: [] as Batch[],
    ...repository,
    async commit(batch: Batch) {
      mood.commits.push(batch);
      if (mood.failing) throw new AppError(mood.failing);
      return repository.commit(batch);
    },
  };
  return mood;
}

/** Channels of one origin: each hears all others, a moment later. */
export function channels(): () => Channel {
  const listeners: ((event: MessageEvent) => void)[] = [];
  return () => {
    let own: ((event: MessageEvent) => void) | undefined;
    return {
      postMessage(data) {
        for (const listener of listeners) {
          if (listener !== own) queueMicrotask(() => listener({ data: structuredClone(data) } as MessageEvent));
        }
      },
      addEventListener(_, listener) {
        own = listener;
        listeners.push(listener);
      },
    };
  };
}

export interface Window {
  readonly store: Store;
  readonly repository: ReturnType<typeof moody>;
  readonly disk: MemoryDisk;
  /** The wall clock, which tests may set. */
  readonly wall: { ms: number };
}

let windows = 0;

/** A window of the app on a disk in memory, loaded. */
export async function openWindow(
  on: Partial<StoreOptions> & { disk?: MemoryDisk; nowMs?: number } = {},
): Promise<Window> {
  const { disk = newDisk(), nowMs = NEW_YEAR, ...options } = on;
  const wall = { ms: nowMs };
  windows += 1;
  const repository = moody(createMemoryRepository(disk));
  const store = createStore({
    repository,
    now: () => wall.ms,
    newId: newIds(windows * 1000),
    device: DEVICE,
    ...options,
  });
  await store.load();
  return { store, repository, disk, wall };
}
