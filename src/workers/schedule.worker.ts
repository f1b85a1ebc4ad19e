import type { BenchInput } from '../core/schedule/types.ts';
import type { Question, Stop } from './asker.ts';
import { createScheduleWork } from './schedule-work.ts';

declare const self: DedicatedWorkerGlobalScope;

// A message to oneself comes after those already there, and unlike a timer is not made to wait.
const { port1: there, port2: here } = new MessageChannel();
const heard: (() => void)[] = [];
here.onmessage = () => heard.shift()?.();

const work = createScheduleWork({
  reply: (reply) => self.postMessage(reply),
  now: () => performance.now(),
  pause: () =>
    new Promise((resolve) => {
      heard.push(resolve);
      there.postMessage(null);
    }),
});

self.addEventListener('message', ({ data }: MessageEvent<Question<BenchInput> | Stop>) => void work(data));
