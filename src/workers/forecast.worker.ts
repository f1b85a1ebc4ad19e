import { catalogue } from '../catalogue/index.ts';
import { type Forecast, type ForecastCase, forecast } from '../core/simulate/simulate.ts';
import type { Question, Reply } from './asker.ts';

declare const self: DedicatedWorkerGlobalScope;

// A shell: the sums are pure and live in core; here they only leave the page free to be typed in.
self.addEventListener('message', ({ data }: MessageEvent<Question<ForecastCase>>) => {
  const reply: Reply<Forecast> = { id: data.id, answer: forecast(data.facts, catalogue) };
  self.postMessage(reply);
});
