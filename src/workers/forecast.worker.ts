import { catalogue } from '../catalogue/index.ts';
import { forecast } from '../core/simulate/simulate.ts';
import type { ForecastAnswer, ForecastQuestion } from './forecast-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

// A shell: the sums are pure and live in core; here they only leave the page free to be typed in.
self.addEventListener('message', ({ data }: MessageEvent<ForecastQuestion>) => {
  const answer: ForecastAnswer = { id: data.id, forecast: forecast(data.facts, catalogue) };
  self.postMessage(answer);
});
