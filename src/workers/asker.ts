import { AppError, type ErrorCode } from '../core/errors.ts';

/** A question to a worker: everything it needs to know, numbered so that a late answer is known for what it is. */
export interface Question<Facts> {
  readonly id: number;
  readonly facts: Facts;
}
/** Nobody waits for an answer any more. */
export interface Stop {
  readonly stop: true;
}
export type Reply<Answer> =
  | { readonly id: number; readonly answer: Answer }
  /** Code of `core/errors.ts` where the fault is in the facts; null for a fault of ours. */
  | { readonly id: number; readonly failed: ErrorCode | null; readonly message: string };

export interface Asker<Facts, Answer> {
  /**
   * The answer, or undefined when a later question under the same topic made this one pointless, or it was taken back.
   * Rejects when the worker cannot run at all or says that it failed.
   */
  ask(topic: string, facts: Facts): Promise<Answer | undefined>;
  /** Takes back what was asked under a topic; a worker that listens in between stops. */
  takeBack(topic: string): void;
}

interface Waiting<Facts, Answer> {
  readonly topic: string;
  readonly facts: Facts;
  readonly answer: (answer: Answer | undefined) => void;
  readonly fail: (error: unknown) => void;
}

/** How long an idle worker is kept: while one walks, the next question comes within seconds. */
const IDLE_MS = 30_000;

/**
 * Asks a worker one question at a time; of those waiting under one topic only the newest is asked, so that typing fast
 * costs one answer and not ten.
 * @param name for the message of a failure
 * @param listens whether the worker hears a newer question while it works and then drops the older: long work should
 */
export function createAsker<Facts, Answer>(
  startWorker: () => Worker,
  name: string,
  { listens = false }: { readonly listens?: boolean } = {},
): Asker<Facts, Answer> {
  let worker: Worker | undefined;
  let current: Waiting<Facts, Answer> | undefined;
  let idle: ReturnType<typeof setTimeout> | undefined;
  let number = 0;
  const waiting = new Map<string, Waiting<Facts, Answer>>();

  function next(): void {
    const first = waiting.values().next();
    if (first.done) {
      idle = setTimeout(() => {
        worker?.terminate();
        worker = undefined;
      }, IDLE_MS);
      return;
    }
    clearTimeout(idle);
    current = first.value;
    waiting.delete(current.topic);
    if (!worker) {
      worker = startWorker();
      worker.addEventListener('message', ({ data }: MessageEvent<Reply<Answer>>) => {
        if (data.id !== number) return;
        const asked = current;
        current = undefined;
        if ('answer' in data) asked?.answer(data.answer);
        else
          asked?.fail(
            data.failed ? new AppError(data.failed) : new Error(`The ${name} worker failed: ${data.message}`),
          );
        next();
      });
      worker.addEventListener('error', (event) => {
        current?.fail(new Error(`The ${name} worker failed: ${event.message}`));
        current = undefined;
        worker?.terminate();
        worker = undefined;
        next();
      });
    }
    number += 1;
    const question: Question<Facts> = { id: number, facts: current.facts };
    worker.postMessage(question);
  }

  /** Lets go of what is being worked on, if it is of this topic and the worker can be told. */
  function drop(topic: string): void {
    if (!listens || current?.topic !== topic) return;
    current.answer(undefined);
    current = undefined;
    number += 1;
    const stop: Stop = { stop: true };
    worker?.postMessage(stop);
  }

  return {
    ask: (topic, facts) =>
      new Promise((answer, fail) => {
        drop(topic);
        waiting.get(topic)?.answer(undefined);
        waiting.delete(topic);
        waiting.set(topic, { topic, facts, answer, fail });
        if (!current) next();
      }),
    takeBack(topic) {
      const idleBefore = !current;
      drop(topic);
      waiting.get(topic)?.answer(undefined);
      waiting.delete(topic);
      if (!current && !idleBefore) next();
    },
  };
}
