import { type ReadonlySignal, signal } from '@preact/signals';
import { AppError } from '../core/errors.ts';
import type { AnyRecord } from '../core/records.ts';
import type { Batch, ChangeRow, PhotoBytes, Repository } from './repository.ts';

/** `failed` keeps what it could not save; the next change or `retry` tries again. */
export type Saving = 'saved' | 'saving' | { readonly failed: AppError };

/** Records or history rows of one transaction: both together stay below the repository's limit. */
const MOST = 240;

interface Unit {
  records: readonly AnyRecord[];
  rows: readonly ChangeRow[];
  readonly photos: readonly PhotoBytes[];
  readonly resolve: () => void;
  readonly reject: (error: AppError) => void;
}

export interface Saver {
  readonly state: ReadonlySignal<Saving>;
  /**
   * Takes over records to be saved, in one transaction up to 240 of them. Resolves once they are on the disk; rejects
   * when a try fails, which for records is not the last. With photographs it is: the camera's owner decides.
   */
  save(records: readonly AnyRecord[], rows: readonly ChangeRow[], photos?: readonly PhotoBytes[]): Promise<void>;
  /** Tries again. Rejects with what stopped it. */
  retry(): Promise<void>;
  /** Resolves when nothing is being written any more, saved or not. */
  settled(): Promise<void>;
}

const asAppError = (error: unknown): AppError =>
  error instanceof AppError ? error : new AppError('not-saved', { cause: error });

const rowKey = (row: ChangeRow): string => `${row.id} ${row.paths.join()}`;

/** As many units from the front as fit into one transaction, the last state of each record standing for all before. */
function fitting(queue: readonly Unit[]): { units: Unit[]; batch: Batch } {
  const records = new Map<string, AnyRecord>();
  const rows = new Map<string, ChangeRow>();
  const units: Unit[] = [];
  for (const unit of queue) {
    const size = new Set([...records.keys(), ...unit.records.map((record) => record.id)]).size;
    const withPhotos = unit.photos.length > 0;
    if (units.length > 0 && (withPhotos || size > MOST || rows.size + unit.rows.length > MOST)) break;
    units.push(unit);
    for (const record of unit.records) records.set(record.id, record);
    for (const row of unit.rows) rows.set(rowKey(row), row);
    if (withPhotos) break;
  }
  const photos = units.flatMap((unit) => unit.photos);
  return { units, batch: { puts: [...records.values()], photos, changes: [...rows.values()] } };
}

/**
 * Saves one transaction at a time, in order; what comes meanwhile joins the next one.
 * @param onStored given the records as they now lie in storage
 */
export function createSaver(repository: Repository, onStored: (records: AnyRecord[]) => void): Saver {
  const state = signal<Saving>('saved');
  let queue: Unit[] = [];
  let running: Promise<void> | undefined;

  /** A record that may not be replaced is set aside, so that it does not hold up the others. */
  function setAside(failed: AppError): boolean {
    const id = failed.code.startsWith('record-') ? failed.facts.id : undefined;
    const held = queue.filter((unit) => unit.records.some((record) => record.id === id));
    for (const unit of held) {
      unit.records = unit.records.filter((record) => record.id !== id);
      unit.rows = unit.rows.filter((row) => row.id !== id);
      unit.reject(failed);
    }
    queue = queue.filter((unit) => unit.records.length > 0);
    return held.length > 0;
  }

  /** What fails with photographs is given back, the rest stays. True if saving can go on. */
  function giveBack(failed: AppError): boolean {
    const first = queue[0];
    const goesOn = (first?.photos.length ?? 0) > 0;
    const refused = goesOn ? queue.slice(0, 1) : queue;
    for (const unit of refused) unit.reject(failed);
    queue = queue.filter((unit) => !refused.includes(unit) || unit.photos.length === 0);
    return goesOn;
  }

  async function saveAll(): Promise<Saving> {
    let outcome: Saving = 'saved';
    while (queue.length > 0) {
      const { units, batch } = fitting(queue);
      try {
        onStored(await repository.commit(batch));
        queue = queue.slice(units.length);
        for (const unit of units) unit.resolve();
      } catch (error) {
        const failed = asAppError(error);
        if (setAside(failed)) outcome = { failed };
        else if (!giveBack(failed)) return { failed };
      }
    }
    return outcome;
  }

  function run(): Promise<void> {
    state.value = 'saving';
    running ??= saveAll().then((outcome) => {
      running = undefined;
      state.value = outcome;
    });
    return running;
  }

  function enqueue(
    records: readonly AnyRecord[],
    rows: readonly ChangeRow[],
    photos: readonly PhotoBytes[],
  ): Promise<void> {
    const saved = new Promise<void>((resolve, reject) => queue.push({ records, rows, photos, resolve, reject }));
    // The state tells of a failure as well, so nobody has to wait for this promise.
    saved.catch(() => undefined);
    return saved;
  }

  return {
    state,
    async save(records, rows, photos = []) {
      const saved: Promise<void>[] = [];
      for (let from = 0; from < records.length; from += MOST) {
        const part = records.slice(from, from + MOST);
        const ids = new Set(part.map((record) => record.id));
        saved.push(
          enqueue(
            part,
            rows.filter((row) => ids.has(row.id)),
            from === 0 ? photos : [],
          ),
        );
      }
      void run();
      await Promise.all(saved);
    },
    async retry() {
      await run();
      if (typeof state.value === 'object') throw state.value.failed;
    },
    async settled() {
      await running;
    },
  };
}
