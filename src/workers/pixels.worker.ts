import type { Img } from '../pixels/index.ts';
import { NoCanvas, workingImage } from './decode.ts';
import { pairJobs, pixelJobs } from './pixel-jobs.ts';
import type { PixelQuestion, PixelReply } from './pixel-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

// A shell: decoding, and what was decoded; the measuring is pure and lives in the pixels ring. Planes worked out from a
// picture are kept there for as long as the picture is kept here.
let pictures = new Map<string, Img>();

const say = (reply: PixelReply): void => self.postMessage(reply);

const canvas = (width: number, height: number): OffscreenCanvas => {
  if (typeof OffscreenCanvas === 'undefined') throw new NoCanvas();
  return new OffscreenCanvas(width, height);
};

async function answer({ id, job, photos, pictures: sent, given }: PixelQuestion): Promise<void> {
  const begun = performance.now();
  // Forgotten first: two large photographs at once are more than a small phone has.
  pictures = new Map([...pictures].filter(([key]) => photos.includes(key)));
  for (const picture of sent) {
    say({ id, what: 'stage', name: 'opening the photograph', share: 0 });
    pictures.set(
      picture.key,
      'pixels' in picture
        ? { data: new Uint8ClampedArray(picture.pixels), width: picture.width, height: picture.height }
        : await workingImage(picture.bytes, picture.mime, canvas),
    );
  }
  const [first, second] = photos.map((key) => pictures.get(key));
  if (!first) throw new Error('The photograph was not sent along.');
  const run = { onStage: (name: string, share: number) => say({ id, what: 'stage', name, share }) };
  const found = Object.hasOwn(pairJobs, job)
    ? pairJobs[job as keyof typeof pairJobs](first, second as Img, given as never, run)
    : pixelJobs[job as keyof typeof pixelJobs](first, given as never, run);
  say({ id, what: 'done', answer: found, ms: performance.now() - begun });
}

self.addEventListener('message', ({ data }: MessageEvent<PixelQuestion>) => {
  answer(data).catch((error: unknown) =>
    say(
      error instanceof NoCanvas || (error instanceof TypeError && /OffscreenCanvas/.test(error.message))
        ? { id: data.id, what: 'unable' }
        : { id: data.id, what: 'failed', reason: String(error) },
    ),
  );
});
