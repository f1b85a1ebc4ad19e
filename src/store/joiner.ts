import { type Signal, signal } from '@preact/signals';
import { latestStamp } from '../core/changes.ts';
import { parseStamp, type Stamp, TOLERANCE_MS } from '../core/clock.ts';
import type { AnyRecord } from '../core/records.ts';
import { type Desk, historyOf, type Take } from './edits.ts';
import { broughtBack, inOne, joinedTakes, newestOf } from './joining.ts';
import { readRecord } from './migrations.ts';
import type { Kept, Repository, Unreadable } from './repository.ts';
import type { Saver } from './saver.ts';
import type { Shelf } from './shelf.ts';
import type { UndoStack } from './undo.ts';

/** Records of an import saved in one transaction. */
const AT_ONCE = 200;

/** How far a record is dated ahead of now, in ms; not more than 0 for one that is not. */
export const aheadOf = (record: AnyRecord, nowMs: number): number => (parseStamp(latestStamp(record))?.ms ?? 0) - nowMs;

/** Without what is merely dated in the future. */
export const unreadableOnly = (rows: readonly Unreadable[]): readonly Unreadable[] =>
  rows.filter(({ aheadMs }) => aheadMs === undefined);

export interface JoinOptions {
  /** What cannot be joined and is kept as it came. */
  readonly kept?: readonly Kept[];
  /** Told how many records are saved. */
  readonly onStep?: (done: number, of: number) => void;
}

interface Bench {
  readonly repository: Repository;
  readonly shelf: Shelf;
  readonly saver: Saver;
  readonly undoStack: UndoStack;
  readonly unreadable: Signal<readonly Unreadable[]>;
  readonly now: () => number;
  /** The desk, its clock past all these stamps. */
  readonly deskPast: (stamp: Stamp) => Desk;
}

/** Brings in records from elsewhere; `Store` says what each part promises. */
export function createJoiner({ repository, shelf, saver, undoStack, unreadable, now, deskPast }: Bench) {
  const kept = signal<readonly Kept[]>([]);
  const readKept = async (): Promise<void> => {
    kept.value = await repository.kept();
  };

  async function join(label: string, incoming: readonly AnyRecord[], options: JoinOptions = {}): Promise<Take[]> {
    const { kept: rows = [], onStep } = options;
    const at = deskPast(newestOf(incoming));
    const joined = joinedTakes(incoming, shelf.find);
    const takes = inOne(joined, broughtBack(joined, shelf.everything(), at.stamp));
    let done = 0;
    try {
      while (done < takes.length) {
        const part = takes.slice(done, done + AT_ONCE);
        await saver.save(
          part.map((take) => take.after),
          historyOf(part, at),
        );
        done += part.length;
        onStep?.(done, takes.length);
      }
    } finally {
      if (done > 0) undoStack.push({ label, takes: takes.slice(0, done), isWhole: true }, now());
    }
    for (let from = 0; from < rows.length; from += AT_ONCE) {
      await repository.commit({ puts: [], changes: [], kept: rows.slice(from, from + AT_ONCE) });
    }
    if (rows.length > 0) {
      unreadable.value = unreadableOnly(await repository.unreadable());
      await readKept();
    }
    return takes;
  }

  async function joinKept(evenAhead = false): Promise<number> {
    await readKept();
    const ready = kept.value.flatMap(({ key, raw }) => {
      const outcome = readRecord(raw);
      const fits = 'record' in outcome && (evenAhead || aheadOf(outcome.record, now()) <= TOLERANCE_MS);
      return fits ? [{ key, record: outcome.record }] : [];
    });
    if (ready.length === 0) return 0;
    await join(
      'what was kept aside',
      ready.map(({ record }) => record),
    );
    await repository.commit({ puts: [], changes: [], unkept: ready.map(({ key }) => key) });
    unreadable.value = unreadableOnly(await repository.unreadable());
    await readKept();
    return ready.length;
  }

  return { kept, readKept, join, joinKept };
}
