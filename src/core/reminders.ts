import type { Due, DueAt } from './due.ts';
import type { Reminder } from './records.ts';

/** What a calendar file says about one thing, and whether it differs from what the last file said. */
export interface PlannedReminder {
  readonly key: string;
  readonly forBlockId: string;
  readonly start: string;
  readonly words: string;
  readonly sequence: number;
  readonly cancelled: boolean;
  /** Its record, if it was written before. */
  readonly id: string | null;
  readonly changed: boolean;
}

/** A thing that falls due, named for the calendar. */
export type NamedDue = Pick<Due, 'key' | 'blockId' | 'at'> & { readonly words: string };

type Written = Pick<Reminder, 'id' | 'key' | 'forBlockId' | 'start' | 'words' | 'sequence' | 'cancelled'>;

const SINCE = Date.UTC(2026, 0, 1);
const MINUTE_MS = 60_000;

/**
 * A number higher than the last, and, of two phones that wrote the same thing, higher on the one that wrote later:
 * minutes since 2026. SOURCE: RFC 5545, 3.8.7.4 asks only that it rises with every change.
 */
const nextSequence = (last: number | undefined, nowMs: number): number =>
  Math.max((last ?? -1) + 1, Math.min(2_000_000_000, Math.floor((nowMs - SINCE) / MINUTE_MS)), 0);

export const startOf = (at: DueAt): string => ('day' in at ? at.day : at.instant);

/** Whether it is still to come. */
const isAhead = (start: string, today: string, nowMs: number): boolean =>
  start.includes('T') ? Date.parse(start) > nowMs : start >= today;

/** Of several records about one thing, as two phones make them, the one written last. */
function latest(written: readonly Written[]): Map<string, Written> {
  const byKey = new Map<string, Written>();
  for (const each of written) {
    const before = byKey.get(each.key);
    if (!before || each.sequence >= before.sequence) byKey.set(each.key, each);
  }
  return byKey;
}

/**
 * What the next calendar file says: everything still to come, and, cancelled, what an earlier file said would come and
 * will not. An entry's number rises when its time, its words or its being cancelled changes, and only then.
 * @param written what earlier files said about the same blocks, blocks removed since included
 */
export function remindersFor(
  dues: readonly NamedDue[],
  written: readonly Written[],
  now: { readonly today: string; readonly ms: number },
): readonly PlannedReminder[] {
  const known = latest(written);
  const coming = dues
    .filter(({ at }) => isAhead(startOf(at), now.today, now.ms))
    .map(({ key, blockId, at, words }): PlannedReminder => {
      const before = known.get(key);
      const start = startOf(at);
      const changed = !before || before.start !== start || before.words !== words || before.cancelled;
      return {
        ...{ key, forBlockId: blockId, start, words, cancelled: false, id: before?.id ?? null, changed },
        sequence: changed || !before ? nextSequence(before?.sequence, now.ms) : before.sequence,
      };
    });
  const keys = new Set(dues.map(({ key }) => key));
  const gone = [...known.values()]
    .filter(({ key, start }) => !keys.has(key) && isAhead(start, now.today, now.ms))
    .map(
      (before): PlannedReminder => ({
        ...{ key: before.key, forBlockId: before.forBlockId, start: before.start, words: before.words },
        cancelled: true,
        id: before.id,
        changed: !before.cancelled,
        sequence: before.cancelled ? before.sequence : nextSequence(before.sequence, now.ms),
      }),
    );
  return [...coming, ...gone];
}
