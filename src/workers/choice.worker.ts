import { adviseOn } from '../core/lots-choice.ts';
import type { ChoiceAnswer, ChoiceQuestion } from './chooser.ts';

declare const self: DedicatedWorkerGlobalScope;

// A shell: the choice is pure and lives in core; here it leaves the page free to be scrolled in.
self.addEventListener('message', ({ data }: MessageEvent<ChoiceQuestion>) => {
  const { id, lots, purse, steps } = data;
  const answer: ChoiceAnswer = { id, advice: adviseOn(lots, purse, steps) };
  self.postMessage(answer);
});
