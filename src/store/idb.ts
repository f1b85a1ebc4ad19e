import { signal } from '@preact/signals';
import type { DBSchema, IDBPObjectStore, StoreNames } from 'idb';
import { AppError } from '../core/errors.ts';
import { sha256 } from '../photos/sha256.ts';
import { Connection, type ConnectionOptions } from './connection.ts';
import { newDeviceId } from './device.ts';
import { readRecord } from './migrations.ts';
import type { ReadRecord } from './read-record.ts';
import {
  bytesNeededBy,
  type ChangeRow,
  checkBatch,
  isThereAlready,
  type Kept,
  liesAmongRecords,
  type Repository,
  type RepositoryStatus,
  settled,
  sorted,
} from './repository.ts';

/**
 * Which stores exist. Raise `VERSION` and extend `upgrade` to change that; what a record *means* has its own number,
 * `SCHEMA`, and its own steps. `bytes` has no index and holds ArrayBuffers, never a Blob: reading a blob through an
 * index killed a phone browser, and blobs came back unreadable (standards: WebKit bug 292142 and others).
 */
interface Stores extends DBSchema {
  records: { key: string; value: unknown };
  bytes: { key: string; value: { bytes: ArrayBuffer; mime: string } };
  changes: { key: number; value: ChangeRow };
  meta: { key: string; value: string };
  /** From version 2 on. */
  kept: { key: string; value: Kept };
  standIns: { key: string; value: { bytes: ArrayBuffer; mime: string } };
}
const VERSION = 2;
const NOTE = 'note:';
const PAGE = 500;

/** Remembers outside the database that there was data in it. */
export interface Marker {
  isSet(): boolean;
  set(): void;
}

const MARK = 'blockworth-has-data';
/** In local storage; silent where the browser refuses that. */
export const localMarker: Marker = {
  isSet() {
    try {
      return localStorage.getItem(MARK) !== null;
    } catch {
      return false;
    }
  },
  set() {
    try {
      localStorage.setItem(MARK, '1');
    } catch {
      // Then a cleared storage looks like a first start; nothing is lost by it.
    }
  },
};

export interface IdbOptions
  extends Partial<Pick<ConnectionOptions<Stores>, 'blockedAfterMs' | 'silentAfterMs' | 'writeWithinMs'>> {
  readonly name?: string;
  readonly marker?: Marker;
  readonly read?: ReadRecord;
}

/** Keeps records and photographs in the browser's database. */
export function createIdbRepository({
  name = 'blockworth',
  marker = localMarker,
  read = readRecord,
  ...waits
}: IdbOptions = {}): Repository {
  const status = signal<RepositoryStatus>('closed');
  const connection = new Connection<Stores>({
    name,
    version: VERSION,
    status,
    ...waits,
    upgrade(db, oldVersion) {
      if (oldVersion < 1) {
        db.createObjectStore('records', { keyPath: 'id' });
        db.createObjectStore('bytes');
        db.createObjectStore('changes', { autoIncrement: true });
        db.createObjectStore('meta');
      }
      db.createObjectStore('kept', { keyPath: 'key' });
      db.createObjectStore('standIns');
    },
  });

  const keptRows = () => connection.read(['kept'], (tx) => tx.objectStore('kept').getAll());
  const loadAll = async () => {
    const rows = await connection.read(['records'], (tx) => allOf(tx.objectStore('records')));
    const { records, unreadable } = sorted(rows, read);
    return { records, unreadable: [...unreadable, ...(await keptRows())] };
  };

  return {
    status,
    async identity() {
      return connection.write(['meta'], async (tx) => {
        const meta = tx.objectStore('meta');
        const known = await meta.get('device');
        const device = known ?? newDeviceId();
        if (known === undefined) {
          await meta.put(device, 'device');
          if (marker.isSet()) await meta.put('1', 'cleared');
        }
        return { device, cleared: (await meta.get('cleared')) !== undefined };
      });
    },
    async acknowledgeCleared() {
      await connection.write(['meta'], (tx) => tx.objectStore('meta').delete('cleared'));
    },
    loadAll,
    async load(ids) {
      const rows = await connection.read(['records'], (tx) =>
        Promise.all(ids.map((id) => tx.objectStore('records').get(id))),
      );
      return sorted(
        rows.filter((row) => row !== undefined),
        read,
      );
    },
    async commit(batch) {
      await checkBatch(batch, sha256);
      const { puts, photos = [], changes, kept = [], unkept = [] } = batch;
      const stores: StoreNames<Stores>[] = [
        ...(['records', 'changes'] as const),
        ...(photos.length > 0 ? (['bytes'] as const) : []),
        ...(kept.length + unkept.length > 0 ? (['kept'] as const) : []),
      ];
      const merged = await connection.write(stores, async (tx) => {
        const records = tx.objectStore('records');
        const stored = await Promise.all(puts.map((put) => records.get(put.id)));
        const next = puts.map((put, i) => settled(stored[i], put, read));
        // Each in an async function: a put that throws at once must not leave the others without a catcher.
        await Promise.all([
          ...next.map(async (record) => records.put(record)),
          ...photos.map(({ sha256: key, bytes, mime }) => tx.objectStore('bytes').put({ bytes, mime }, key)),
          ...changes.map((row) => tx.objectStore('changes').add(row)),
          ...unkept.map((key) => tx.objectStore('kept').delete(key)),
          ...kept.map(async (row) => {
            const there = row.id === '' ? undefined : await records.get(row.id);
            if (liesAmongRecords(row, there)) await records.put(row.raw);
            else if (!isThereAlready(row, there)) await tx.objectStore('kept').put(row);
          }),
        ]);
        return next;
      });
      marker.set();
      return merged;
    },
    async photoBytes(key) {
      const row = await connection.read(['bytes'], (tx) => tx.objectStore('bytes').get(key));
      if (!row) return undefined;
      if ((await sha256(row.bytes)) !== key) throw new AppError('photo-damaged', { facts: { sha256: key } });
      return { sha256: key, ...row };
    },
    photoKeys: () => connection.read(['bytes'], (tx) => tx.objectStore('bytes').getAllKeys()),
    async deletePhotoBytes(keys) {
      return connection.write(['records', 'bytes', 'standIns'], async (tx) => {
        const rows = await allOf(tx.objectStore('records'));
        const needed = new Set(rows.flatMap((raw) => bytesNeededBy(raw, read)));
        const bytes = tx.objectStore('bytes');
        const kept = await Promise.all(keys.map((key) => bytes.getKey(key)));
        const free = keys.filter((key, i) => kept[i] !== undefined && !needed.has(key));
        const standIns = tx.objectStore('standIns');
        const idle = (await standIns.getAllKeys()).filter((key) => !needed.has(key));
        await Promise.all([...free.map((key) => bytes.delete(key)), ...idle.map((key) => standIns.delete(key))]);
        return free;
      });
    },
    kept: keptRows,
    standIn: (key) => connection.read(['standIns'], (tx) => tx.objectStore('standIns').get(key)),
    async keepStandIn(key, { bytes, mime }) {
      await connection.write(['standIns'], (tx) => tx.objectStore('standIns').put({ bytes, mime }, key));
    },
    async note(name) {
      return (await connection.read(['meta'], (tx) => tx.objectStore('meta').get(NOTE + name))) ?? null;
    },
    async setNote(name, text) {
      await connection.write(['meta'], async (tx) => {
        if (text === null) await tx.objectStore('meta').delete(NOTE + name);
        else await tx.objectStore('meta').put(text, NOTE + name);
      });
    },
    unreadable: async () => (await loadAll()).unreadable,
    changesAfter: (position, limit) =>
      connection.read(['changes'], async (tx) => {
        const range = IDBKeyRange.lowerBound(position, true);
        const [keys, rows] = await Promise.all([
          tx.objectStore('changes').getAllKeys(range, limit),
          tx.objectStore('changes').getAll(range, limit),
        ]);
        return keys.flatMap((key, i) => (rows[i] ? { position: key, row: rows[i] } : []));
      }),
    async estimate() {
      const { usage, quota } = (await globalThis.navigator?.storage?.estimate?.()) ?? {};
      return usage === undefined || quota === undefined ? null : { usage, quota };
    },
    wake: () => connection.wake('meta'),
    close: () => connection.close(),
  };
}

/** All rows, page by page: one request for everything doubles the memory it takes. */
async function allOf(
  store: Pick<IDBPObjectStore<Stores, ['records'], 'records', 'readonly' | 'readwrite'>, 'getAll'>,
): Promise<unknown[]> {
  const rows: unknown[] = [];
  for (;;) {
    const last = rows.at(-1) as { id: string } | undefined;
    const page = await store.getAll(last ? IDBKeyRange.lowerBound(last.id, true) : null, PAGE);
    rows.push(...page);
    if (page.length < PAGE) return rows;
  }
}
