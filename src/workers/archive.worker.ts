import { createIntake } from './archive-intake.ts';
import type { FromArchiveWorker, ToArchiveWorker, VolumeFile } from './archive-messages.ts';
import { placeFor } from './archive-places.ts';
import { writeVolume } from './archive-write.ts';

declare const self: DedicatedWorkerGlobalScope;

// A shell: hashing, packing, encrypting and writing beside the page; what goes in is made on the page.
const say = (reply: FromArchiveWorker): void => self.postMessage(reply);

let intake = createIntake<VolumeFile>(() => say({ what: 'more' }));
let control = new AbortController();

self.addEventListener('message', ({ data }: MessageEvent<ToArchiveWorker>) => {
  if (data.what === 'file') intake.put(data.file);
  else if (data.what === 'end') intake.end();
  else if (data.what === 'stop') {
    control.abort();
    intake.fail(control.signal.reason);
  } else {
    control = new AbortController();
    intake = createIntake(() => say({ what: 'more' }));
    const { signal } = control;
    writeVolume(data.order, intake.files, placeFor(data.order.destination), signal).then(
      (written) => say({ what: 'written', written }),
      (error: unknown) => {
        const full = error instanceof DOMException && error.name === 'QuotaExceededError';
        if (signal.aborted) say({ what: 'stopped' });
        else say({ what: 'failed', failure: full ? 'full' : 'other', reason: String(error) });
      },
    );
  }
});
