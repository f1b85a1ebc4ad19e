/** Things handed over one at a time, from whoever has them to whoever pulls them. */
export interface Intake<T> {
  /** Pulled by one reader. */
  readonly files: AsyncIterable<T>;
  put(item: T): void;
  end(): void;
  fail(reason: unknown): void;
}

/** @param onWanted called each time the reader wants one and none is there */
export function createIntake<T>(onWanted: () => void): Intake<T> {
  const waiting: T[] = [];
  let over: { readonly reason?: unknown; readonly failed: boolean } | undefined;
  let wake: (() => void) | undefined;
  const woken = (): void => {
    wake?.();
    wake = undefined;
  };

  async function* files(): AsyncGenerator<T> {
    for (;;) {
      if (over?.failed) throw over.reason;
      const next = waiting.shift();
      if (next !== undefined) yield next;
      else if (over) return;
      else {
        const until = new Promise<void>((resolve) => {
          wake = resolve;
        });
        onWanted();
        await until;
      }
    }
  }

  return {
    files: files(),
    put(item) {
      waiting.push(item);
      woken();
    },
    end() {
      over ??= { failed: false };
      woken();
    },
    fail(reason) {
      over ??= { failed: true, reason };
      woken();
    },
  };
}
