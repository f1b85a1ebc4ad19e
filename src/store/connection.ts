import type { Signal } from '@preact/signals';
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames, unwrap } from 'idb';
import { AppError } from '../core/errors.ts';
import type { RepositoryStatus } from './repository.ts';
import { EndedWithoutReason, failureOf, isConnectionLost, OpenFailed, TookTooLong } from './storage-failure.ts';

export interface ConnectionOptions<S extends DBSchema> {
  readonly name: string;
  readonly version: number;
  readonly upgrade: (db: IDBPDatabase<S>, oldVersion: number) => void;
  readonly status: Signal<RepositoryStatus>;
  /** When another window is seen to hold the storage, and when a silent wait is taken for the same, in ms. */
  readonly blockedAfterMs?: number;
  readonly silentAfterMs?: number;
  /** How long a write may take before the connection is given up, in ms. */
  readonly writeWithinMs?: number;
}

type Stores<S extends DBSchema> = readonly StoreNames<S>[];
export type Writing<S extends DBSchema> = IDBPTransaction<S, StoreNames<S>[], 'readwrite'>;
export type Reading<S extends DBSchema> = IDBPTransaction<S, StoreNames<S>[], 'readonly'>;

/**
 * One connection to a database for the whole page. Opens on first use, reopens when the browser drops it, tries once
 * more on a fresh handle, and steps aside for a newer app in another window after finishing what it writes.
 * Inside a job await nothing but the transaction: it commits as soon as it has no request to wait for.
 */
export class Connection<S extends DBSchema> {
  readonly #options: ConnectionOptions<S>;
  readonly #running = new Set<Promise<unknown>>();
  #opening: Promise<IDBPDatabase<S>> | undefined;
  #steppingAside = false;

  constructor(options: ConnectionOptions<S>) {
    this.#options = options;
  }

  read<T>(stores: Stores<S>, job: (tx: Reading<S>) => Promise<T>): Promise<T> {
    return this.#run((db) => {
      const tx = db.transaction([...stores], 'readonly');
      tx.done.catch(() => undefined);
      return job(tx);
    });
  }

  /** Resolves only when the transaction is on the disk. Whatever the job throws aborts it whole. */
  write<T>(stores: Stores<S>, job: (tx: Writing<S>) => Promise<T>): Promise<T> {
    return this.#run(async (db) => {
      const tx = db.transaction([...stores], 'readwrite', { durability: 'strict' });
      const ended = endOf(tx, this.#options.writeWithinMs ?? 10_000);
      try {
        const [result] = await Promise.all([job(tx), ended]);
        return result;
      } catch (error) {
        abort(tx);
        // A request only says that it was aborted; its transaction knows why, a full disk for one.
        const reason: unknown = await ended.catch((why: unknown) => why);
        const isEcho = error instanceof DOMException && error.name === 'AbortError';
        throw isEcho ? (reason ?? error) : error;
      }
    });
  }

  /** Tests the handle after a stay in the background; reading renews it if it is dead. */
  async wake(store: StoreNames<S>): Promise<void> {
    if (this.#opening && !this.#steppingAside) await this.read([store], (tx) => tx.objectStore(store).count());
  }

  async close(): Promise<void> {
    await this.#stepAside('closed');
  }

  async #run<T>(job: (db: IDBPDatabase<S>) => Promise<T>): Promise<T> {
    if (this.#steppingAside) {
      throw new AppError(this.#options.status.value === 'closed' ? 'not-saved' : 'reload-needed');
    }
    const running = this.#twice(job);
    this.#running.add(running);
    try {
      return await running;
    } catch (error) {
      throw failureOf(error);
    } finally {
      this.#running.delete(running);
    }
  }

  async #twice<T>(job: (db: IDBPDatabase<S>) => Promise<T>): Promise<T> {
    try {
      return await job(await this.#open());
    } catch (error) {
      if (!isConnectionLost(error)) throw error;
      await this.#drop();
      return job(await this.#open());
    }
  }

  #open(): Promise<IDBPDatabase<S>> {
    this.#opening ??= this.#openNow();
    return this.#opening;
  }

  async #openNow(): Promise<IDBPDatabase<S>> {
    const { name, version, upgrade, status, blockedAfterMs = 1500, silentAfterMs = 5000 } = this.#options;
    const hold = () => {
      status.value = 'close-other-windows';
    };
    status.value = 'opening';
    // A request queued behind a blocked one gets no event at all, so silence is told as well, only later.
    const waits = [setTimeout(hold, silentAfterMs)];
    try {
      const db = await openDB<S>(name, version, {
        upgrade,
        blocked: () => waits.push(setTimeout(hold, blockedAfterMs)),
        blocking: () => void this.#stepAside('reload-needed'),
        terminated: () => {
          this.#opening = undefined;
        },
      });
      status.value = 'open';
      return db;
    } catch (cause) {
      this.#opening = undefined;
      status.value = 'closed';
      throw new OpenFailed(`Cannot open ${name}.`, { cause });
    } finally {
      for (const wait of waits) clearTimeout(wait);
    }
  }

  async #stepAside(status: RepositoryStatus): Promise<void> {
    this.#steppingAside = true;
    await Promise.allSettled(this.#running);
    await this.#drop();
    this.#options.status.value = status;
  }

  async #drop(): Promise<void> {
    const opening = this.#opening;
    this.#opening = undefined;
    try {
      (await opening)?.close();
    } catch {
      // It never opened, or is dead already: there is nothing to close.
    }
  }
}

/** Resolves when the transaction is committed, rejects with why it was not. Never left unhandled. */
function endOf(tx: { readonly done: Promise<void>; abort(): void }, withinMs: number): Promise<void> {
  const raw = unwrap(tx as unknown as IDBPTransaction<unknown, string[], 'readwrite'>);
  const ended = new Promise<void>((resolve, reject) => {
    let late = setTimeout(() => {
      const giveUp = () => reject(new TookTooLong(`No end within ${withinMs} ms.`));
      // If it cannot be aborted it has just ended, and its event is on the way; a dead one sends none.
      if (abort(tx)) giveUp();
      else late = setTimeout(giveUp, 1000);
    }, withinMs);
    raw.addEventListener('complete', () => {
      clearTimeout(late);
      resolve();
    });
    raw.addEventListener('abort', () => {
      clearTimeout(late);
      reject(raw.error ?? new EndedWithoutReason('No reason given.'));
    });
  });
  ended.catch(() => undefined);
  tx.done.catch(() => undefined);
  return ended;
}

/** False if the transaction has ended already. */
function abort(tx: { abort(): void }): boolean {
  try {
    tx.abort();
    return true;
  } catch {
    return false;
  }
}
