import { reduce, Undecodable } from './reduce.ts';
import type { ReduceReply, ReduceRequest } from './reduce-messages.ts';
import { canDrawOffscreen, offscreen } from './surface.ts';

declare const self: DedicatedWorkerGlobalScope;

const say = (reply: ReduceReply, transfer: Transferable[] = []): void => self.postMessage(reply, transfer);

self.addEventListener('message', async ({ data }: MessageEvent<ReduceRequest>) => {
  if (!canDrawOffscreen()) return say({ what: 'unable' });
  try {
    const made = await reduce(data.source, data.upright, data.target, offscreen);
    const jpeg = await made.arrayBuffer();
    say({ what: 'done', jpeg }, [jpeg]);
  } catch (error) {
    say(error instanceof Undecodable ? { what: 'undecodable' } : { what: 'failed', reason: String(error) });
  }
});
