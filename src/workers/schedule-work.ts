import { AppError } from '../core/errors.ts';
import { scheduling } from '../core/schedule/bench.ts';
import type { BenchInput, BenchSchedule } from '../core/schedule/types.ts';
import type { Question, Reply, Stop } from './asker.ts';

/** How long the work goes on before it listens whether anyone still wants it, ms: far less than a person notices. */
const LISTEN_MS = 15;

/** What the work needs of where it runs. */
export interface Surroundings {
  readonly reply: (reply: Reply<BenchSchedule>) => void;
  readonly now: () => number;
  /** Resolves once messages that have arrived were heard. */
  readonly pause: () => Promise<void>;
}

/**
 * Works on the question asked last. It listens every few milliseconds, so that a newer question, or a stop, ends an older
 * one without an answer.
 */
export function createScheduleWork({ reply, now, pause }: Surroundings) {
  let latest = 0;

  async function work({ id, facts }: Question<BenchInput>): Promise<void> {
    try {
      const steps = scheduling(facts);
      let listenAt = now() + LISTEN_MS;
      for (;;) {
        const { done, value } = steps.next();
        if (done) {
          reply({ id, answer: value() });
          return;
        }
        if (now() < listenAt) continue;
        await pause();
        if (latest !== id) return;
        listenAt = now() + LISTEN_MS;
      }
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      reply({ id, failed: error instanceof AppError ? error.code : null, message });
    }
  }

  return (message: Question<BenchInput> | Stop): Promise<void> => {
    if ('stop' in message) {
      latest = -1;
      return Promise.resolve();
    }
    latest = message.id;
    return work(message);
  };
}
