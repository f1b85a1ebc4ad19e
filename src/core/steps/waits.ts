import type { RunningWait } from '../due.ts';
import type { Stint, WorkStep } from '../records.ts';
import type { WorkItem } from './work-plan.ts';

const HOUR_MS = 3_600_000;
/** How far behind its own record a clock may be before it is worth a word: phones agree to seconds. Own choice. */
const SLACK_MS = 5 * 60_000;

export type Wait = NonNullable<WorkStep['wait']>;

/**
 * The wait after a step: so many hours by the stop watch. Clocks put forward or back in between change what the wall clock
 * shows at its end, not how long glue takes.
 * @param offset of the clocks where the step was done, `+01:00`
 */
export function waitFrom(doneMs: number, hours: number, offset: string): Wait | null {
  if (!(hours > 0)) return null;
  return {
    since: new Date(doneMs).toISOString(),
    until: new Date(doneMs + hours * HOUR_MS).toISOString(),
    offset,
  };
}

export type WaitStand =
  | { readonly state: 'runs'; readonly leftMs: number }
  | { readonly state: 'over'; readonly sinceMs: number }
  /** By the phone's clock it has not even begun: the clock was set back. */
  | { readonly state: 'clockBehind' };

export function waitStand({ since, until }: Pick<Wait, 'since' | 'until'>, nowMs: number): WaitStand {
  if (nowMs < Date.parse(since) - SLACK_MS) return { state: 'clockBehind' };
  const leftMs = Date.parse(until) - nowMs;
  return leftMs > 0 ? { state: 'runs', leftMs } : { state: 'over', sinceMs: nowMs - Date.parse(until) };
}

/** The wait of a step done; of two phones' records the one that ends last. */
export function waitOf({ stand, records }: Pick<WorkItem, 'stand' | 'records'>): Wait | null {
  if (stand !== 'done') return null;
  const waits = records.flatMap(({ wait }) => (wait ? [wait] : []));
  return waits.sort((a, b) => Date.parse(b.until) - Date.parse(a.until))[0] ?? null;
}

/** What a block waits for: of its waits the one that ends last, while it runs. */
export function blockWait(
  items: readonly WorkItem[],
  nowMs: number,
): { readonly item: WorkItem; readonly wait: Wait } | undefined {
  const running = items.flatMap((item) => {
    const wait = waitOf(item);
    return wait && waitStand(wait, nowMs).state !== 'over' ? [{ item, wait }] : [];
  });
  return running.sort((a, b) => Date.parse(b.wait.until) - Date.parse(a.wait.until))[0];
}

/**
 * A wait that is over and that nobody has followed up: the last one to end, if nothing of the block was worked since.
 * `next` is the step that may now be taken; undefined where the wait was the last of the work.
 */
export function waitOver(
  items: readonly WorkItem[],
  nowMs: number,
): { readonly item: WorkItem; readonly wait: Wait; readonly next: WorkItem | undefined } | undefined {
  if (blockWait(items, nowMs)) return undefined;
  const ended = items
    .flatMap((item) => {
      const wait = waitOf(item);
      return wait ? [{ item, wait }] : [];
    })
    .sort((a, b) => Date.parse(b.wait.until) - Date.parse(a.wait.until))[0];
  if (!ended) return undefined;
  const since = Date.parse(ended.wait.since);
  const workedOn = items.some(
    ({ stints, records }) =>
      stints.some(({ began }) => Date.parse(began) > since) ||
      records.some(({ done, skipped }) => Date.parse((done ?? skipped)?.at ?? '') > since),
  );
  return workedOn ? undefined : { ...ended, next: nextItem(items) };
}

/** A wait as the list of what falls due takes it: not yet over, or over and not followed up. */
export function openWaits(
  steps: readonly WorkStep[],
  stints: readonly Pick<Stint, 'blockId' | 'began'>[],
): readonly RunningWait[] {
  // The last a block was worked on, by what was written: anything later than a wait's beginning follows it up.
  const last = new Map<string, number>();
  const see = (blockId: string, at: string | undefined): void => {
    const ms = Date.parse(at ?? '');
    if (ms > (last.get(blockId) ?? Number.NEGATIVE_INFINITY)) last.set(blockId, ms);
  };
  for (const { blockId, began } of stints) see(blockId, began);
  for (const { blockId, done, skipped } of steps) see(blockId, (done ?? skipped)?.at);
  return steps.flatMap(({ id, blockId, treatment, words, done, wait }) =>
    done && wait && Date.parse(wait.since) >= (last.get(blockId) ?? 0)
      ? [{ id, blockId, treatment, words, until: wait.until }]
      : [],
  );
}

/** The step to take next: the first open one. */
export const nextItem = (items: readonly WorkItem[]): WorkItem | undefined =>
  items.find(({ stand }) => stand === 'open');
