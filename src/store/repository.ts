import type { ReadonlySignal } from '@preact/signals';
import { canonical } from '../core/canonical.ts';
import type { Stamp } from '../core/clock.ts';
import { AppError } from '../core/errors.ts';
import { mergeRecords } from '../core/merge.ts';
import type { AnyRecord } from '../core/records.ts';
import type { Outcome, ReadRecord } from './read-record.ts';

/** Bytes of a photograph under the SHA-256 of exactly these bytes. Never a Blob: some browsers lose those. */
export interface PhotoBytes {
  readonly sha256: string;
  readonly bytes: ArrayBuffer;
  readonly mime: string;
}

/** One line of the history: which paths of which record were written, when, and where. Only ever appended. */
export interface ChangeRow {
  readonly at: Stamp;
  readonly id: string;
  readonly paths: readonly string[];
  readonly device: string;
}

export interface Batch {
  readonly puts: readonly AnyRecord[];
  readonly photos?: readonly PhotoBytes[];
  readonly changes: readonly ChangeRow[];
  /** Brought in and not to be joined yet: kept as they came. */
  readonly kept?: readonly Kept[];
  /** Keys of kept rows that are joined now or no longer wanted. */
  readonly unkept?: readonly string[];
}

/** A row from elsewhere that cannot be joined with what is here: unreadable to this app, or dated too far in the future. */
export interface Kept extends Unreadable {
  /** One for one content, so that bringing it in again doubles nothing. */
  readonly key: string;
}

/** A record kept byte for byte because this app cannot read it. */
export interface Unreadable {
  readonly id: string;
  readonly state: 'too-new' | 'unreadable';
  readonly why: string;
  readonly raw: unknown;
  /** Readable, but dated this far ahead of the clock here, in ms. */
  readonly aheadMs?: number;
}

export interface Loaded {
  readonly records: AnyRecord[];
  readonly unreadable: Unreadable[];
}

export interface Identity {
  /** 8 of [0-9a-z]. */
  readonly device: string;
  /** Data once lay here and is gone, and nobody has said yet that this is known. */
  readonly cleared: boolean;
}

export interface Space {
  /** Bytes. */
  readonly usage: number;
  readonly quota: number;
}

/** Row limit of one transaction: very large ones hang silently on some phones. */
export const MOST_ROWS = 500;

export type RepositoryStatus =
  | 'opening'
  /** Opening waits for another window to let go; it goes on by itself. */
  | 'close-other-windows'
  | 'open'
  /** A newer app in another window needed the storage; this window must reload. */
  | 'reload-needed'
  | 'closed';

/**
 * Where records and photographs are kept. Every failure is an `AppError`; what is not acknowledged is not kept, and
 * what is acknowledged is kept whole. `tests/contracts/repository.ts` holds every keeper to this.
 */
export interface Repository {
  readonly status: ReadonlySignal<RepositoryStatus>;
  /** This device's id, made at the first call and kept. */
  identity(): Promise<Identity>;
  /** Forgets that the storage was once cleared: the owner has been told. */
  acknowledgeCleared(): Promise<void>;
  /** Everything, removed records included; among the unreadable also the kept rows, so that a backup has them. */
  loadAll(): Promise<Loaded>;
  /** Those of the ids that are there. */
  load(ids: readonly string[]): Promise<Loaded>;
  /**
   * Writes one batch of at most 500 rows, all or nothing, and only resolves once it is on the disk. Records are merged
   * with what lies there (another window may have written since), never written over it.
   * @returns the records as they now lie there
   * @throws AppError storage-full, not-saved; record-too-new or record-unreadable if one of them may not be replaced
   */
  commit(batch: Batch): Promise<AnyRecord[]>;
  /**
   * @returns undefined if these bytes never came here
   * @throws AppError photo-damaged if they no longer match their hash; they are left where they are
   */
  photoBytes(sha256: string): Promise<PhotoBytes | undefined>;
  /** Hashes of all bytes kept. */
  photoKeys(): Promise<string[]>;
  /**
   * Deletes those of the bytes that no record needs, decided in the same transaction. A removed photograph does not
   * need its bytes; a record that cannot be read needs every hash it names.
   * @returns the hashes deleted
   */
  deletePhotoBytes(sha256s: readonly string[]): Promise<string[]>;
  /**
   * Rows kept beside the records. One that is merely unreadable and whose id is free lies among the records instead,
   * where a newer app will find it.
   */
  kept(): Promise<Kept[]>;
  /** Bytes made here in place of ones that never came: a thumbnail after a restore. Not checked by hash. */
  standIn(sha256: string): Promise<Pick<PhotoBytes, 'bytes' | 'mime'> | undefined>;
  keepStandIn(sha256: string, bytes: Pick<PhotoBytes, 'bytes' | 'mime'>): Promise<void>;
  /** A line this device keeps for itself: when it was last backed up, which import was cut off. */
  note(name: string): Promise<string | null>;
  setNote(name: string, text: string | null): Promise<void>;
  /** Records this app cannot read, for showing and exporting. */
  unreadable(): Promise<Unreadable[]>;
  /** History in order, from after a position (0: from the start). A retried save may repeat a row. */
  changesAfter(position: number, limit: number): Promise<{ position: number; row: ChangeRow }[]>;
  /** Null where the browser does not say. */
  estimate(): Promise<Space | null>;
  /** To be called when the page comes back from the background: tests the connection and renews a dead one. */
  wake(): Promise<void>;
  /** Finishes what is being written, then lets go. */
  close(): Promise<void>;
}

/** Sorts raw rows into readable records and the rest. */
export function sorted(rows: readonly unknown[], read: ReadRecord): Loaded {
  const loaded: Loaded = { records: [], unreadable: [] };
  for (const raw of rows) {
    const outcome = read(raw);
    if (isReadable(outcome)) loaded.records.push(outcome.record);
    else loaded.unreadable.push({ id: idOf(raw), state: outcome.state, why: outcome.why, raw });
  }
  return loaded;
}

const isReadable = (outcome: Outcome): outcome is Extract<Outcome, { record: AnyRecord }> => 'record' in outcome;

const idOf = (raw: unknown): string => String((raw as { id?: unknown } | null)?.id ?? '');

/**
 * What to write for a record, given what lies under its id.
 * @throws AppError if that may not be replaced because this app cannot read it
 */
export function settled(stored: unknown, put: AnyRecord, read: ReadRecord): AnyRecord {
  if (stored === undefined) return put;
  const outcome = read(stored);
  if (isReadable(outcome)) return mergeRecords(outcome.record, put);
  const code = outcome.state === 'too-new' ? 'record-too-new' : 'record-unreadable';
  throw new AppError(code, { facts: { id: put.id, why: outcome.why } });
}

/** Whether a kept row goes among the records: its id is free, and no clock stands in its way. */
export const liesAmongRecords = (row: Kept, stored: unknown): boolean =>
  stored === undefined && row.aheadMs === undefined && row.id !== '' && idOf(row.raw) === row.id;

/** Whether the very row is among the records already. */
export const isThereAlready = (row: Kept, stored: unknown): boolean =>
  stored !== undefined && canonical(stored) === canonical(row.raw);

/** @throws Error (ours) for a batch no keeper takes: too many rows, one id twice, bytes under a wrong hash */
export async function checkBatch(
  { puts, photos = [], changes, kept = [], unkept = [] }: Batch,
  hash: (bytes: ArrayBuffer) => Promise<string>,
): Promise<void> {
  const rows = puts.length + photos.length + changes.length + kept.length + unkept.length;
  if (rows > MOST_ROWS) throw new Error(`A batch takes ${MOST_ROWS} rows, got ${rows}.`);
  if (new Set(puts.map((put) => put.id)).size < puts.length) throw new Error('A batch takes each record once.');
  for (const { sha256, bytes } of photos) {
    const found = await hash(bytes);
    if (found !== sha256) throw new Error(`Bytes hash to ${found}, got ${sha256}.`);
  }
}

/** Hashes of the bytes a stored row needs kept. */
export function bytesNeededBy(raw: unknown, read: ReadRecord): string[] {
  const type = (raw as { type?: unknown } | null)?.type;
  const outcome = type === 'photo' ? read(raw) : null;
  if (outcome && isReadable(outcome) && outcome.record.deleted !== null) return [];
  return (
    JSON.stringify(raw, (_, value) => (typeof value === 'bigint' ? null : value))?.match(/\b[0-9a-f]{64}\b/g) ?? []
  );
}
