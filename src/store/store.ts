import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { blank } from '../core/blank.ts';
import { created, latestStamp } from '../core/changes.ts';
import { formatStamp, newClock, parseStamp, resumed, type Stamp, TOLERANCE_MS, tick } from '../core/clock.ts';
import { AppError } from '../core/errors.ts';
import { mergeRecords } from '../core/merge.ts';
import type { AnyRecord, Fields, Photo } from '../core/records.ts';
import type { PreparedPhoto } from '../photos/prepared-photo.ts';
import { type Desk, type Edit, edited, historyOf, type Take, undone } from './edits.ts';
import { aheadOf, createJoiner, type JoinOptions, unreadableOnly } from './joiner.ts';
import { type LookUps, lookUps } from './look-ups.ts';
import { createKeeping, type Keeping } from './persist.ts';
import { faultIn } from './read-record.ts';
import type { Kept, Loaded, PhotoBytes, Repository, RepositoryStatus, Unreadable } from './repository.ts';
import { createSaver, type Saving } from './saver.ts';
import { createShelf } from './shelf.ts';
import { createStandIns } from './stand-ins.ts';
import { createUndoStack } from './undo.ts';

/** The note of an import that is under way or was cut off. */
export const IMPORT_NOTE = 'import';

/** What other windows hear of a save; a BroadcastChannel is one. */
export interface Channel {
  postMessage(message: unknown): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
}

export interface StoreOptions {
  readonly repository: Repository;
  /** Unix milliseconds. */
  readonly now: () => number;
  /** A new UUIDv7, so that ids sort by the time of their making. */
  readonly newId: () => string;
  /** This device's id, from `repository.identity`. */
  readonly device: string;
  readonly channel?: Channel;
  readonly keeping?: Keeping;
  /** Makes a thumbnail of a working copy, for one that did not come with a restore. */
  readonly makeThumbnail?: (copy: PhotoBytes) => Promise<ArrayBuffer>;
}

export type PhotoFields = Pick<Fields<'photo'>, 'blockId'> &
  Partial<Pick<Fields<'photo'>, 'findingId' | 'stepId' | 'view' | 'stage' | 'caption' | 'scale'>>;

/**
 * The records in memory and on this device. A change shows at once and is saved at once; `saving` says whether it is
 * on the disk. Undo is a change too: stamps never go back.
 */
export interface Store extends LookUps {
  /** Reads everything. To be awaited once before anything else. */
  load(): Promise<void>;
  /** Reads again what other windows may have written while this one slept. */
  refresh(): Promise<void>;
  readonly newId: () => string;
  /**
   * @param label what is done, in the words undo shows
   * @returns resolves when saved, rejects with an AppError if the first try fails; need not be awaited
   * @throws Error (ours) for an edit that does not fit the records; nothing is changed then
   */
  change(label: string, edits: readonly Edit[]): Promise<void>;
  /** Takes back the last change made in this window. */
  undo(): { readonly label: string; readonly saved: Promise<void> } | undefined;
  /** What undo would take back, or null. */
  readonly undoable: ReadonlySignal<string | null>;
  readonly saving: ReadonlySignal<Saving>;
  /** Saves again what could not be saved. */
  retry(): Promise<void>;
  /** Resolves when nothing is being written; `saving` then tells how it went. */
  settled(): Promise<void>;
  /**
   * Saves bytes, thumbnail, original and record in one transaction and shows the photograph only then.
   * @param label what undo will call it; null for one that is no step of its own and goes with its block
   * @throws AppError if it could not be saved; nothing is kept of it then
   */
  addPhoto(prepared: PreparedPhoto, fields: PhotoFields, label?: string | null): Promise<Photo>;
  /**
   * Joins records from a backup or another phone with those here, part by part, as one change that undo takes back. Cut
   * off, what was saved is whole, and joining the same again loses and doubles nothing.
   * @returns what it changed
   * @throws AppError if a part could not be saved; it is then tried again as any change is
   */
  join(label: string, incoming: readonly AnyRecord[], options?: JoinOptions): Promise<readonly Take[]>;
  /** Rows from elsewhere that wait: for a newer app, or until the clocks agree. */
  readonly kept: ReadonlySignal<readonly Kept[]>;
  /** Joins those that can be joined by now; with `evenAhead` also what is dated in the future. Returns how many. */
  joinKept(evenAhead?: boolean): Promise<number>;
  /** Records written since a moment, in Unix ms. Not tracked. */
  changedSince(ms: number): number;
  /** Bytes by hash, or of a thumbnail made anew; undefined if they never came to this device. @throws AppError photo-damaged */
  photoBytes(sha256: string): Promise<PhotoBytes | undefined>;
  /**
   * Frees the bytes of photographs that were removed in an earlier run. Only right after `load`, and only in the
   * one window there is: undo in another may still want them. Returns how many.
   */
  sweep(): Promise<number>;
  /** Any record, removed ones included. Not tracked. */
  find(id: string): AnyRecord | undefined;
  /** Every record, removed ones included. Not tracked. */
  everything(): Iterable<AnyRecord>;
  /** Records this app cannot read. They are kept. */
  readonly unreadable: ReadonlySignal<readonly Unreadable[]>;
  /** How far the newest record lies in the future, in ms, if more than a clock may be off; else 0. */
  readonly aheadMs: ReadonlySignal<number>;
  /** There were records here once and the storage is empty now; true until acknowledged, also after a restart. */
  readonly cleared: ReadonlySignal<boolean>;
  /** The owner knows: restored a backup or starts afresh. */
  acknowledgeCleared(): Promise<void>;
  readonly status: ReadonlySignal<RepositoryStatus>;
  /** Room left, and whether the browser promised to keep what is here. */
  readonly keeping: Keeping;
  readonly repository: Repository;
}

export function createStore(options: StoreOptions): Store {
  const { repository, now, newId, device, channel, keeping = createKeeping(undefined) } = options;
  const shelf = createShelf();
  const undoStack = createUndoStack();
  const unreadable = signal<readonly Unreadable[]>([]);
  const aheadMs = signal(0);
  const cleared = signal(false);
  const standIns = createStandIns(repository, options.makeThumbnail);
  let clock = newClock(device);
  let isLoaded = false;

  const saver = createSaver(repository, (stored) => {
    takeIn(stored);
    channel?.postMessage({ changed: stored.map((record) => record.id) });
  });

  /** Joins records from storage with those in memory, which may be ahead of it. */
  function takeIn(records: readonly AnyRecord[]): void {
    let latest: Stamp = '';
    const merged = records.map((record) => {
      const stamp = latestStamp(record);
      if (stamp > latest) latest = stamp;
      const mine = shelf.find(record.id);
      return mine ? mergeRecords(mine, record) : record;
    });
    clock = resumed(clock, latest);
    shelf.put(merged);
  }

  async function readAll(loading: Promise<Loaded>): Promise<void> {
    const loaded = await loading;
    takeIn(loaded.records);
    const ahead = (parseStamp(formatStamp(clock))?.ms ?? 0) - now();
    aheadMs.value = ahead > TOLERANCE_MS ? ahead : 0;
    unreadable.value = unreadableOnly(loaded.unreadable);
    isLoaded = true;
  }

  function desk(): Desk {
    if (!isLoaded) throw new Error('The store must be loaded before it is changed.');
    clock = tick(clock, now());
    return { find: shelf.find, partsOf: shelf.partsOf, stamp: formatStamp(clock), device };
  }

  const joiner = createJoiner({
    ...{ repository, shelf, saver, undoStack, unreadable, now },
    deskPast(stamp) {
      clock = resumed(clock, stamp);
      return desk();
    },
  });

  function show(takes: readonly Take[], at: Desk): Promise<void> {
    if (takes.length === 0) return Promise.resolve();
    const records = takes.map((take) => take.after);
    shelf.put(records);
    const saved = saver.save(records, historyOf(takes, at));
    saved.catch(() => undefined);
    return saved;
  }

  channel?.addEventListener('message', ({ data }) => {
    const ids: unknown = (data as { changed?: unknown } | null)?.changed;
    if (!isLoaded || !Array.isArray(ids)) return;
    repository.load(ids.map(String)).then(
      ({ records }) => takeIn(records),
      // Whatever stands in the way will be met, and told, at the next save.
      () => undefined,
    );
  });

  return {
    ...lookUps(shelf, device),
    repository,
    keeping,
    newId,
    find: shelf.find,
    everything: shelf.everything,
    join: joiner.join,
    kept: joiner.kept,
    joinKept: joiner.joinKept,
    changedSince(ms) {
      let count = 0;
      for (const record of shelf.everything()) if (aheadOf(record, ms) > 0) count += 1;
      return count;
    },
    unreadable,
    aheadMs,
    status: repository.status,
    saving: saver.state,
    undoable: computed(() => undoStack.label.value),
    cleared,
    async acknowledgeCleared() {
      await repository.acknowledgeCleared();
      cleared.value = false;
    },
    async load() {
      cleared.value = (await repository.identity()).cleared;
      await readAll(repository.loadAll());
      await joiner.readKept();
    },
    refresh: () => readAll(repository.loadAll()),
    retry: saver.retry,
    settled: saver.settled,
    async photoBytes(sha256) {
      const bytes = await repository.photoBytes(sha256);
      return bytes ?? standIns.of(sha256, [...shelf.records.photo.peek().values()]);
    },

    change(label, edits) {
      const at = desk();
      const takes = edited(edits, at);
      if (takes.length > 0) undoStack.push({ label, takes }, now());
      return show(takes, at);
    },

    undo() {
      for (let step = undoStack.pop(); step; step = undoStack.pop()) {
        const at = desk();
        const takes = undone(step.takes, at);
        // A step that other windows or later steps have made void is passed over.
        if (takes.length > 0) return { label: step.label, saved: show(takes, at) };
      }
      return undefined;
    },

    async addPhoto(prepared, fields, label = 'a photograph') {
      const { bytes, thumbnail, original } = prepared;
      if (bytes.byteLength === 0) throw new AppError('photo-empty');
      const { sha256, mime, width, height, taken, focal35, position } = prepared;
      const all: Fields<'photo'> = {
        ...blank.photo,
        ...fields,
        ...{
          sha256,
          bytes: bytes.byteLength,
          mime,
          width,
          height,
          thumbnail: thumbnail.sha256,
          taken,
          focal35,
          position,
        },
        original: original && {
          sha256: original.sha256,
          bytes: original.bytes.byteLength,
          mime: original.mime,
          name: original.name,
        },
      };
      const at = desk();
      const photo = created('photo', all, { id: newId(), stamp: at.stamp, device });
      const fault = faultIn(photo);
      if (fault) throw new Error(`This photograph would be unreadable: ${fault}.`);
      const take: Take = { before: undefined, after: photo };
      await saver.save([photo], historyOf([take], at), [
        { sha256, bytes, mime },
        { sha256: thumbnail.sha256, bytes: thumbnail.bytes, mime: 'image/jpeg' },
        ...(original ? [original] : []),
      ]);
      if (label !== null) {
        undoStack.push({ label, takes: [take] }, now());
        void keeping.photoSaved();
      }
      return photo;
    },

    async sweep() {
      // An import that was cut off will want the photographs it had brought.
      if ((await repository.note(IMPORT_NOTE)) !== null) return 0;
      const needed = new Set<string>();
      for (const photo of shelf.records.photo.peek().values()) {
        for (const sha256 of [photo.sha256, photo.thumbnail, photo.original?.sha256]) if (sha256) needed.add(sha256);
      }
      const idle = (await repository.photoKeys()).filter((sha256) => !needed.has(sha256));
      return idle.length > 0 ? (await repository.deletePhotoBytes(idle)).length : 0;
    },
  };
}
