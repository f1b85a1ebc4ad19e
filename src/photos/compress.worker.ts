import { AppError } from '../core/errors.ts';
import { prepare } from './prepare.ts';
import { canDrawOffscreen, offscreen } from './surface.ts';
import type { PrepareReply, PrepareRequest } from './worker-messages.ts';
import { workingCopy } from './working-copy.ts';

declare const self: DedicatedWorkerGlobalScope;

const say = (reply: PrepareReply, transfer: Transferable[] = []): void => self.postMessage(reply, transfer);

self.addEventListener('message', async ({ data }: MessageEvent<PrepareRequest>) => {
  if (!canDrawOffscreen()) return say({ what: 'unable' });
  const { file, name, wishes } = data;
  try {
    const means = { makeSurface: offscreen, workingCopy };
    const photo = await prepare(file, name, wishes, means, (stage) => say({ what: 'stage', stage }));
    const { bytes, thumbnail, original } = photo;
    say({ what: 'done', photo }, [bytes, thumbnail.bytes, ...(original ? [original.bytes] : [])]);
  } catch (error) {
    const reason = error instanceof Error ? `${error.message} ${String(error.cause ?? '')}`.trim() : String(error);
    say(error instanceof AppError ? { what: 'refused', code: error.code, reason } : { what: 'failed', reason });
  }
});
