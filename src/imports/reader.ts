import type { ArchiveIndex } from '../core/archive-layout.ts';
import { AppError } from '../core/errors.ts';
import { mergeRecords } from '../core/merge.ts';
import type { AnyRecord } from '../core/records.ts';
import type { Kept } from '../store/repository.ts';
import { refusal } from './refuse.ts';
import { isLocked, unlocked } from './unlock.ts';
import { openVolume, type Volume } from './volume.ts';

/** The volumes of one archive that were chosen, as far as the page needs to know of them. */
export interface OpenedArchive {
  readonly index: Omit<ArchiveIndex, 'volume'>;
  /** Numbers of the volumes chosen. */
  readonly volumes: readonly number[];
  readonly records: readonly AnyRecord[];
  readonly kept: readonly Kept[];
  readonly pictures: ReadonlyMap<string, { readonly bytes: number }>;
}

export interface Picture {
  readonly bytes: ArrayBuffer;
  readonly mime: string;
}

/** Reads archives, here or in a worker of its own. */
export interface ArchiveReader {
  /**
   * @param nowMs by the clock here
   * @returns 'locked' when a passphrase is wanted and none was given
   * @throws AppError archive-…, naming the entry in the way
   */
  open(files: readonly Blob[], passphrase: string | null, nowMs: number): Promise<OpenedArchive | 'locked'>;
  /** A photograph of what was opened last, checked by hash and header. @throws AppError naming the entry */
  picture(sha256: string): Promise<Picture>;
  close(): void;
}

/**
 * Records lie in every volume, the same in each; where two differ all the same, both are heard.
 * @throws AppError archive-doubled for an id that two types of record lay claim to
 */
function joinedRecords(volumes: readonly Volume[]): AnyRecord[] {
  const records = new Map<string, AnyRecord>();
  for (const record of volumes.flatMap((volume) => volume.records)) {
    const other = records.get(record.id);
    if (other && other.type !== record.type) throw refusal('archive-doubled', record.id);
    records.set(record.id, other ? mergeRecords(other, record) : record);
  }
  return [...records.values()];
}

function joined(volumes: readonly Volume[]): OpenedArchive {
  const [first] = volumes;
  if (!first) throw new AppError('archive-not-ours');
  if (volumes.some(({ index }) => index.group !== first.index.group)) throw new AppError('archive-mixed');
  const numbers = [...new Set(volumes.map(({ index }) => index.volume))].sort((a, b) => a - b);
  const kept = new Map(volumes.flatMap((volume) => volume.kept.map((row) => [row.key, row] as const)));
  return {
    index: first.index,
    volumes: numbers,
    records: joinedRecords(volumes),
    kept: [...kept.values()],
    pictures: new Map(volumes.flatMap(({ pictures }) => [...pictures])),
  };
}

/** Reads on this very thread: for the worker, for tests, and for a page whose browser starts no worker. */
export function readHere(): ArchiveReader {
  let volumes: readonly Volume[] = [];
  return {
    async open(files, passphrase, nowMs) {
      const opened: Volume[] = [];
      for (const file of files) {
        if (!(await isLocked(file))) opened.push(await openVolume(file, nowMs));
        else if (passphrase === null) return 'locked';
        else opened.push(await openVolume(await unlocked(file, passphrase), nowMs));
      }
      volumes = opened;
      return joined(opened);
    },
    async picture(sha256) {
      const volume = volumes.find(({ pictures }) => pictures.has(sha256));
      if (!volume) throw new Error(`${sha256} is in none of the volumes.`);
      return volume.picture(sha256);
    },
    close() {
      volumes = [];
    },
  };
}
