import type { ChoiceLot, Purse } from '../core/choice.ts';
import { type Advice, adviseOn, type Steps } from '../core/lots-choice.ts';

export interface ChoiceQuestion {
  readonly id: number;
  readonly lots: readonly ChoiceLot[];
  readonly purse: Purse;
  readonly steps: Steps;
}

export interface ChoiceAnswer {
  readonly id: number;
  readonly advice: Advice;
}

export interface Chooser {
  /** What to take, worked out beside the page; undefined when a later question came before the answer. */
  ask(lots: readonly ChoiceLot[], purse: Purse, steps: Steps): Promise<Advice | undefined>;
  /** Ends the worker. */
  close(): void;
}

/** Asks a worker of its own, started at the first question; only the newest question is answered. */
export function createChooser(startWorker: () => Worker): Chooser {
  let worker: Worker | undefined;
  let number = 0;
  let waiting: ((advice: Advice | undefined) => void) | undefined;
  return {
    ask: (lots, purse, steps) =>
      new Promise((answer, fail) => {
        waiting?.(undefined);
        waiting = answer;
        number += 1;
        if (!worker) {
          worker = startWorker();
          worker.addEventListener('message', ({ data }: MessageEvent<ChoiceAnswer>) => {
            if (data.id !== number) return;
            waiting?.(data.advice);
            waiting = undefined;
          });
        }
        worker.onerror = (event) => fail(new Error(`The choice worker failed: ${event.message}`));
        const question: ChoiceQuestion = { id: number, lots, purse, steps };
        worker.postMessage(question);
      }),
    close() {
      worker?.terminate();
      worker = undefined;
      waiting?.(undefined);
      waiting = undefined;
    },
  };
}

/** Where no worker can be had: on the page itself, a moment later. */
export const chooserHere = (): Chooser => ({
  ask: async (lots, purse, steps) => adviseOn(lots, purse, steps),
  close() {},
});
