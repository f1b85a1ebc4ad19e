import { AppError } from '../core/errors.ts';
import { readHere } from '../imports/reader.ts';
import type { ImportQuestion, ImportReply } from './import-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const reader = readHere();
const say = (reply: ImportReply, transfer: Transferable[] = []): void => self.postMessage(reply, transfer);

// A shell: archives are read in imports/; here a hostile one only holds up, or ends, this thread.
self.addEventListener('message', async ({ data }: MessageEvent<ImportQuestion>) => {
  const { id } = data;
  try {
    if (data.ask === 'open') {
      say({ id, what: 'opened', archive: await reader.open(data.files, data.passphrase, data.nowMs) });
    } else {
      const picture = await reader.picture(data.sha256);
      say({ id, what: 'picture', picture }, [picture.bytes]);
    }
  } catch (error) {
    const reason = error instanceof Error ? `${error.message} ${String(error.cause ?? '')}`.trim() : String(error);
    const refused = error instanceof AppError;
    say(
      refused ? { id, what: 'refused', code: error.code, facts: error.facts, reason } : { id, what: 'failed', reason },
    );
  }
});
