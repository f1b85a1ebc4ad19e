import { signal } from '@preact/signals';
import { AppError } from '../core/errors.ts';
import { sha256 } from '../photos/sha256.ts';
import { newDeviceId } from './device.ts';
import { readRecord } from './migrations.ts';
import type { ReadRecord } from './read-record.ts';
import {
  bytesNeededBy,
  type ChangeRow,
  checkBatch,
  type Identity,
  isThereAlready,
  type Kept,
  liesAmongRecords,
  type PhotoBytes,
  type Repository,
  type RepositoryStatus,
  settled,
  sorted,
} from './repository.ts';

/** What a memory repository keeps; several may share one, as windows share a database. */
export interface MemoryDisk {
  readonly records: Map<string, unknown>;
  readonly bytes: Map<string, PhotoBytes>;
  readonly changes: ChangeRow[];
  readonly kept: Map<string, Kept>;
  readonly standIns: Map<string, Pick<PhotoBytes, 'bytes' | 'mime'>>;
  readonly notes: Map<string, string>;
  device: string | null;
  cleared: boolean;
}

export const newDisk = (): MemoryDisk => ({
  records: new Map(),
  bytes: new Map(),
  changes: [],
  kept: new Map(),
  standIns: new Map(),
  notes: new Map(),
  device: null,
  cleared: false,
});

/**
 * Keeps everything until the page closes: for a window that may not store anything, and for tests. Rows are cloned in
 * and out, so nobody shares an object with storage, just as in a database.
 */
export function createMemoryRepository(disk = newDisk(), read: ReadRecord = readRecord): Repository {
  const status = signal<RepositoryStatus>('open');
  const rows = (ids?: readonly string[]) =>
    structuredClone(ids ? ids.flatMap((id) => disk.records.get(id) ?? []) : [...disk.records.values()]);

  const keptRows = () => structuredClone([...disk.kept.values()]);
  const loadAll = async () => {
    const { records, unreadable } = sorted(rows(), read);
    return { records, unreadable: [...unreadable, ...keptRows()] };
  };

  return {
    status,
    async identity(): Promise<Identity> {
      disk.device ??= newDeviceId();
      return { device: disk.device, cleared: disk.cleared };
    },
    async acknowledgeCleared() {
      disk.cleared = false;
    },
    loadAll,
    load: async (ids) => sorted(rows(ids), read),
    async commit(batch) {
      await checkBatch(batch, sha256);
      const merged = batch.puts.map((put) => structuredClone(settled(disk.records.get(put.id), put, read)));
      for (const record of merged) disk.records.set(record.id, record);
      for (const photo of batch.photos ?? []) disk.bytes.set(photo.sha256, structuredClone(photo));
      disk.changes.push(...structuredClone(batch.changes));
      for (const key of batch.unkept ?? []) disk.kept.delete(key);
      for (const row of structuredClone(batch.kept ?? [])) {
        const there = disk.records.get(row.id);
        if (liesAmongRecords(row, there)) disk.records.set(row.id, row.raw);
        else if (!isThereAlready(row, there)) disk.kept.set(row.key, row);
      }
      return structuredClone(merged);
    },
    async photoBytes(key) {
      const photo = structuredClone(disk.bytes.get(key));
      if (photo && (await sha256(photo.bytes)) !== key) throw new AppError('photo-damaged', { facts: { sha256: key } });
      return photo;
    },
    photoKeys: async () => [...disk.bytes.keys()],
    async deletePhotoBytes(keys) {
      const needed = new Set([...disk.records.values()].flatMap((raw) => bytesNeededBy(raw, read)));
      for (const key of disk.standIns.keys()) if (!needed.has(key)) disk.standIns.delete(key);
      return keys.filter((key) => !needed.has(key) && disk.bytes.delete(key));
    },
    kept: async () => keptRows(),
    standIn: async (key) => structuredClone(disk.standIns.get(key)),
    async keepStandIn(key, bytes) {
      disk.standIns.set(key, structuredClone(bytes));
    },
    note: async (name) => disk.notes.get(name) ?? null,
    async setNote(name, text) {
      if (text === null) disk.notes.delete(name);
      else disk.notes.set(name, text);
    },
    unreadable: async () => (await loadAll()).unreadable,
    changesAfter: async (position, limit) =>
      disk.changes.slice(position, position + limit).map((row, i) => ({ position: position + i + 1, row })),
    estimate: async () => null,
    wake: async () => undefined,
    async close() {
      status.value = 'closed';
    },
  };
}
