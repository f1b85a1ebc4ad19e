import type { Forecast, ForecastCase } from '../core/simulate/simulate.ts';
import type { ForecastAnswer, ForecastQuestion } from './forecast-messages.ts';

export interface Forecaster {
  /**
   * The forecast of a case, or undefined when a later question under the same topic made this one pointless.
   * Rejects when the worker cannot run at all.
   */
  ask(topic: string, facts: ForecastCase): Promise<Forecast | undefined>;
}

interface Waiting {
  readonly topic: string;
  readonly facts: ForecastCase;
  readonly answer: (forecast: Forecast | undefined) => void;
  readonly fail: (error: unknown) => void;
}

/** How long an idle worker is kept: while one walks, the next question comes within seconds. */
const IDLE_MS = 30_000;

/**
 * Asks the worker one question at a time; of those waiting under one topic only the newest is asked, so that typing fast
 * costs one answer and not ten.
 */
export function createForecaster(startWorker: () => Worker): Forecaster {
  let worker: Worker | undefined;
  let current: Waiting | undefined;
  let idle: ReturnType<typeof setTimeout> | undefined;
  let number = 0;
  const waiting = new Map<string, Waiting>();

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
      worker.addEventListener('message', ({ data }: MessageEvent<ForecastAnswer>) => {
        if (data.id !== number) return;
        current?.answer(data.forecast);
        current = undefined;
        next();
      });
      worker.addEventListener('error', (event) => {
        current?.fail(new Error(`The forecast worker failed: ${event.message}`));
        current = undefined;
        worker?.terminate();
        worker = undefined;
        next();
      });
    }
    number += 1;
    const question: ForecastQuestion = { id: number, facts: current.facts };
    worker.postMessage(question);
  }

  return {
    ask: (topic, facts) =>
      new Promise((answer, fail) => {
        waiting.get(topic)?.answer(undefined);
        waiting.delete(topic);
        waiting.set(topic, { topic, facts, answer, fail });
        if (!current) next();
      }),
  };
}
