import {
  ARCHIVE_FORMAT,
  ARCHIVE_VERSION,
  ArchiveIndex,
  INDEX_PATH,
  RecordFile,
  UnreadableFile,
} from '../core/archive-layout.ts';
import { canonical } from '../core/canonical.ts';
import { TOLERANCE_MS } from '../core/clock.ts';
import { AppError } from '../core/errors.ts';
import type { AnyRecord } from '../core/records.ts';
import { sha256 } from '../photos/sha256.ts';
import { aheadOf } from '../store/joiner.ts';
import { readRecord } from '../store/migrations.ts';
import type { Kept } from '../store/repository.ts';
import { openBag } from './bag.ts';
import { readJson } from './json.ts';
import { LIMITS } from './limits.ts';
import { checkPicture } from './picture.ts';
import { refusal } from './refuse.ts';

/** One volume, its records read and its photographs ready to be. */
export interface Volume {
  readonly index: ArchiveIndex;
  readonly records: readonly AnyRecord[];
  /** Rows that cannot be joined: too new, unreadable, or dated in the future. */
  readonly kept: readonly Kept[];
  /** Bytes by hash that lie in this volume. */
  readonly pictures: ReadonlyMap<string, { readonly bytes: number }>;
  /** @throws AppError naming the entry when it is no photograph or not the one it should be */
  picture(hash: string): Promise<{ readonly bytes: ArrayBuffer; readonly mime: string }>;
}

async function readIndex(bytes: Uint8Array): Promise<ArchiveIndex> {
  const value = readJson(bytes, INDEX_PATH);
  const said = value as { readonly format?: unknown; readonly version?: unknown } | null;
  if (said?.format !== ARCHIVE_FORMAT) throw new AppError('archive-not-ours');
  if (typeof said.version === 'number' && said.version > ARCHIVE_VERSION) throw new AppError('archive-too-new');
  const index = ArchiveIndex.safeParse(value);
  if (!index.success) throw refusal('archive-bad-text', INDEX_PATH);
  return index.data;
}

const idOf = (raw: unknown): string => String((raw as { readonly id?: unknown } | null)?.id ?? '');

async function keptRow(raw: unknown, row: Pick<Kept, 'state' | 'why' | 'aheadMs'>): Promise<Kept> {
  const id = idOf(raw);
  const hash = await sha256(new TextEncoder().encode(canonical(raw)).buffer);
  return { key: `${id} ${hash.slice(0, 16)}`, id, raw, ...row };
}

/** Sorts raw rows into what can be joined and what is kept as it came; no row is dropped. */
async function sortedRows(rows: readonly unknown[], nowMs: number): Promise<Pick<Volume, 'records' | 'kept'>> {
  const records: AnyRecord[] = [];
  const kept: Kept[] = [];
  for (const raw of rows) {
    const outcome = readRecord(raw);
    if (!('record' in outcome)) {
      kept.push(await keptRow(raw, outcome));
      continue;
    }
    const aheadMs = aheadOf(outcome.record, nowMs);
    if (aheadMs <= TOLERANCE_MS) records.push(outcome.record);
    else kept.push(await keptRow(raw, { state: 'unreadable', why: 'dated in the future', aheadMs }));
  }
  return { records, kept };
}

/**
 * Opens a volume and reads its records.
 * @param nowMs stamps further ahead of it than clocks may differ are not joined
 * @throws AppError archive-… ; nothing has been written anywhere
 */
export async function openVolume(file: Blob, nowMs: number): Promise<Volume> {
  const bag = await openBag(file);
  const index = await readIndex(await bag.read(INDEX_PATH));
  const rows: unknown[] = [];
  const paths = new Map<string, string>();
  for (const [path, entry] of bag.entries) {
    if (entry.kind === 'records' || entry.kind === 'unreadable') {
      const value = readJson(await bag.read(path), path);
      if (entry.kind === 'records') {
        const read = RecordFile.safeParse(value);
        if (!read.success) throw refusal('archive-bad-text', path);
        for (const row of read.data.records) rows.push(row);
      } else {
        const read = UnreadableFile.safeParse(value);
        if (!read.success) throw refusal('archive-bad-text', path);
        for (const { raw } of read.data.records) rows.push(raw);
      }
      if (rows.length > LIMITS.records) throw refusal('archive-too-large', path);
    } else if (entry.kind === 'photograph' || entry.kind === 'original') paths.set(entry.sha256, path);
  }
  const pictures = new Map([...paths].map(([hash, path]) => [hash, { bytes: bag.sizeOf(path) }]));
  return {
    index,
    ...(await sortedRows(rows, nowMs)),
    pictures,
    async picture(hash) {
      const path = paths.get(hash);
      if (path === undefined) throw new Error(`${hash} is not in this volume.`);
      const bytes = await bag.read(path);
      if ((await sha256(bytes.buffer)) !== hash) throw refusal('archive-damaged', path);
      return { bytes: bytes.buffer, ...checkPicture(bytes, path) };
    },
  };
}
