import 'fake-indexeddb/auto';
import { signal } from '@preact/signals';
import { type DBSchema, openDB } from 'idb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { AppError } from '../../src/core/errors.ts';
import { Connection, type ConnectionOptions } from '../../src/store/connection.ts';
import type { RepositoryStatus } from '../../src/store/repository.ts';

interface Notes extends DBSchema {
  notes: { key: string; value: string };
}

let count = 0;
const newName = () => `connection-${++count}`;

function connect(name: string, version = 1, waits: Partial<ConnectionOptions<Notes>> = {}) {
  const status = signal<RepositoryStatus>('closed');
  const seen: RepositoryStatus[] = [];
  status.subscribe((value) => seen.push(value));
  const upgrade: ConnectionOptions<Notes>['upgrade'] = (db, from) => {
    if (from === 0) db.createObjectStore('notes');
  };
  const connection = new Connection<Notes>({ name, version, upgrade, status, ...waits });
  const write = (value: string) => connection.write(['notes'], (tx) => tx.objectStore('notes').put(value, 'note'));
  const read = () => connection.read(['notes'], (tx) => tx.objectStore('notes').get('note'));
  return { connection, status, seen, write, read };
}

type Raw = IDBTransaction & { abort(): void };
/** Has the next `times` write transactions tampered with before their job sees them. */
function tamper(times: number, how: (tx: Raw, db: IDBDatabase) => void): void {
  vi.restoreAllMocks();
  const open = IDBDatabase.prototype.transaction;
  let left = times;
  vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
    const tx = open.apply(this, args);
    if (args[1] === 'readwrite' && left-- > 0) how(tx, this);
    return tx;
  });
}
const abortBecause = (reason: DOMException | null) => (tx: Raw) => {
  Object.defineProperty(tx, 'error', { get: () => reason });
  queueMicrotask(() => tx.abort());
};
const codeOf = (promise: Promise<unknown>) =>
  promise.then(
    () => 'saved',
    (error) => (error instanceof AppError ? error.code : error),
  );

afterEach(() => vi.restoreAllMocks());

describe('a connection to the database', () => {
  it('tells a full disk by its reason, which only the transaction knows, and stays usable', async () => {
    const { write, read } = connect(newName());
    await write('before');
    tamper(1, abortBecause(new DOMException('', 'QuotaExceededError')));
    expect(await codeOf(write('lost'))).toBe('storage-full');
    expect(await read()).toBe('before');
    await write('after');
    expect(await read()).toBe('after');
  });

  it('tries a transaction ended without a reason once more, then tells it as a full disk', async () => {
    const once = connect(newName());
    tamper(1, abortBecause(null));
    expect(await codeOf(once.write('kept'))).toBe('saved');
    expect(await once.read()).toBe('kept');
    tamper(2, abortBecause(null));
    expect(await codeOf(once.write('lost'))).toBe('storage-full');
  });

  it('opens anew when the browser has dropped the handle, and once more only', async () => {
    const { write, read } = connect(newName());
    await write('before');
    tamper(1, (_, db) => {
      db.close();
      throw new DOMException(
        'Connection to Indexed Database server lost. Refresh the page to try again',
        'UnknownError',
      );
    });
    expect(await codeOf(write('kept'))).toBe('saved');
    expect(await read()).toBe('kept');
    tamper(2, () => {
      throw new DOMException('The database connection is closing.', 'InvalidStateError');
    });
    expect(await codeOf(write('lost'))).toBe('not-saved');
    expect(await read()).toBe('kept');
  });

  it('finds out on waking that its handle is dead, and renews it', async () => {
    const { connection, write, read } = connect(newName());
    let dead: IDBDatabase | undefined;
    tamper(1, (_, db) => {
      dead = db;
    });
    await write('before');
    dead?.close();
    await connection.wake('notes');
    vi.restoreAllMocks();
    expect(await read()).toBe('before');
  });

  it('leaves nothing of a transaction whose page was killed halfway', async () => {
    const { connection, read, write } = connect(newName());
    await write('before');
    const half = connection.write(['notes'], async (tx) => {
      await tx.objectStore('notes').put('half', 'note');
      tx.abort();
      await tx.objectStore('notes').put('other half', 'note');
    });
    expect(await codeOf(half)).not.toBe('saved');
    expect(await read()).toBe('before');
  });

  it('passes on what the job itself throws, and undoes what it did', async () => {
    const { connection, read } = connect(newName());
    const job = connection.write(['notes'], async (tx) => {
      await tx.objectStore('notes').put('half', 'note');
      throw new AppError('record-too-new');
    });
    expect(await codeOf(job)).toBe('record-too-new');
    expect(await read()).toBeUndefined();
    const ours = connection.write(['notes'], () => Promise.reject(new Error('a slip of ours')));
    await expect(ours).rejects.toThrow('a slip of ours');
  });

  it('gives up a transaction that never ends', async () => {
    const { write } = connect(newName(), 1, { writeWithinMs: 20 });
    tamper(2, (tx) => {
      tx.addEventListener = () => undefined;
      tx.abort = () => undefined;
    });
    expect(await codeOf(write('lost'))).toBe('not-saved');
  });

  it('finishes its writing, then steps aside for a newer app, and writes no more', async () => {
    const name = newName();
    const old = connect(name);
    await old.write('before');
    const writing = old.write('last');
    const next = connect(name, 2);
    expect(await next.read()).toBe('last');
    expect(await codeOf(writing)).toBe('saved');
    expect(old.status.value).toBe('reload-needed');
    expect(await codeOf(old.write('late'))).toBe('reload-needed');
    expect(await next.read()).toBe('last');
  });

  it('is closed only when everything begun is on the disk', async () => {
    const name = newName();
    const { connection, write } = connect(name);
    await write('before');
    let saved = 'not yet';
    void codeOf(write('last')).then((code) => {
      saved = code;
    });
    await connection.close();
    expect(saved).toBe('saved');
    expect(await codeOf(write('late'))).toBe('not-saved');
    expect(await connect(name).read()).toBe('last');
  });

  it('says so while another window holds the storage, and goes on when it lets go', async () => {
    const name = newName();
    const stubborn = await openDB<Notes>(name, 1, { upgrade: (db) => void db.createObjectStore('notes') });
    const { read, status, seen } = connect(name, 2, { blockedAfterMs: 10 });
    const reading = read();
    await vi.waitFor(() => expect(status.value).toBe('close-other-windows'));
    stubborn.close();
    expect(await reading).toBeUndefined();
    expect(seen).toEqual(['closed', 'opening', 'close-other-windows', 'open']);
  });

  it('takes a long silence for a window in the way, because a queued request hears nothing', async () => {
    const name = newName();
    const stubborn = await openDB<Notes>(name, 1, { upgrade: (db) => void db.createObjectStore('notes') });
    const { read, status } = connect(name, 2, { blockedAfterMs: 60_000, silentAfterMs: 10 });
    const reading = read();
    await vi.waitFor(() => expect(status.value).toBe('close-other-windows'));
    stubborn.close();
    await reading;
  });

  it('tells an older app that it must reload', async () => {
    const name = newName();
    const next = connect(name, 2);
    await next.write('newer');
    await next.connection.close();
    expect(await codeOf(connect(name, 1).read())).toBe('reload-needed');
  });

  it('tells where there is no database to be had', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('not in this window', 'SecurityError');
    });
    expect(await codeOf(connect(newName()).read())).toBe('storage-unavailable');
  });
});
