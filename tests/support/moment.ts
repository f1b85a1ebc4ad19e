import type { Page } from 'playwright-core';

/** A moment in the life of a page, told by what it asks of the platform. */
export type Moment =
  /** The nth row it puts into a store: the transaction is open, this row not yet saved. */
  | { readonly does: 'puts'; readonly into: string; readonly nth: number }
  /** The nth message to a worker that asks or says so, counted from the nth of another. */
  | { readonly does: 'says'; readonly what: string; readonly nth: number; readonly since?: readonly [string, number] };

const REACHED = 'the moment is reached';

/**
 * Holds the page for good at a moment that comes after the next load: nothing of it goes on, as far as this page's thread
 * is concerned, until somebody ends it.
 * @returns resolves when the moment is there
 */
export async function holdAt(page: Page, moment: Moment): Promise<{ readonly reached: Promise<void> }> {
  await page.addInitScript(
    ({ moment: at, words }) => {
      const hold = (): void => {
        console.info(words);
        const until = performance.now() + 60_000;
        while (performance.now() < until);
      };
      if (at.does === 'puts') {
        let count = 0;
        const { put } = IDBObjectStore.prototype;
        IDBObjectStore.prototype.put = function (...given) {
          const request = put.apply(this, given);
          if (this.name === at.into && ++count === at.nth) hold();
          return request;
        };
        return;
      }
      const counts = new Map<string, number>();
      let since = at.since === undefined;
      let count = 0;
      const { postMessage } = Worker.prototype;
      Worker.prototype.postMessage = function (this: Worker, ...given: unknown[]) {
        Reflect.apply(postMessage, this, given);
        const said = given[0] as { readonly ask?: string; readonly what?: string } | null;
        const what = said?.ask ?? said?.what ?? '';
        counts.set(what, (counts.get(what) ?? 0) + 1);
        if (since && what === at.what && ++count === at.nth) hold();
        if (at.since && what === at.since[0] && counts.get(what) === at.since[1]) since = true;
      };
    },
    { moment, words: REACHED },
  );
  const reached = page
    .waitForEvent('console', { predicate: (message) => message.text() === REACHED, timeout: 60_000 })
    .then(() => undefined);
  reached.catch(() => undefined);
  return { reached };
}
