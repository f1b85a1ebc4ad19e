import heading from '@fontsource/alegreya/files/alegreya-latin-700-normal.woff?url';
import text from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import strong from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';
import { AppError } from '../core/errors.ts';
import type { ReportDocument, ReportPhoto } from '../core/report.ts';
import type { PdfOrder, PdfReply } from './pdf/pdf-messages.ts';
import { wholePhotographs, writerSteps } from './pdf/steps.ts';
import type { ReportFormat, WriteTools } from './report-file.ts';

/** Above this much in photographs they are made smaller: what a mail takes. */
const MOST_BYTES = 13_000_000;
/** Long side of a photograph made smaller, px: 300 to the inch at the width it is printed. */
const REDUCED_PX = 1200;

const photosIn = ({ parts }: ReportDocument): ReportPhoto[] =>
  parts.flatMap((part) =>
    part.kind === 'photographs' ? part.items : part.kind === 'pair' ? [part.before, part.after] : [],
  );

/** Whether the photographs of a report are together too large to be passed on as they are. */
export const mustReduce = (report: ReportDocument): boolean =>
  [...new Map(photosIn(report).map(({ sha256, bytes }) => [sha256, bytes])).values()].reduce((a, b) => a + b, 0) >
  MOST_BYTES;

/** Photographs made or in the making and not yet asked for: so many that the writer never waits, so few that a phone holds them. */
const AHEAD = 16;
/** In the making at once: one is read while the others are made smaller. */
const AT_ONCE = 4;

type Picture = Awaited<ReturnType<WriteTools['picture']>>;

/**
 * Begins to make the photographs of a report in their order at once, some ahead of the one that is asked for, so that
 * they are made while the faces are read and the text is laid out.
 * @param onMade said of each of these, whatever became of it
 */
function aheadOf(hashes: readonly string[], make: (sha256: string) => Promise<Picture>, onMade: () => void) {
  const left = new Set(hashes);
  const begun = new Map<string, Promise<Picture>>();
  let making = 0;
  const begin = (sha256: string): Promise<Picture> => {
    const made = make(sha256);
    const isListed = left.delete(sha256);
    begun.set(sha256, made);
    making += 1;
    const settled = (): void => {
      making -= 1;
      goAhead();
      if (isListed) onMade();
    };
    // Its failure is told where it is asked for.
    made.then(settled, settled);
    return made;
  };
  function goAhead(): void {
    for (const next of left) {
      if (making >= AT_ONCE || begun.size >= AHEAD) return;
      begin(next);
    }
  }
  goAhead();
  return (sha256: string): Promise<Picture> => {
    const asked = begun.get(sha256) ?? begin(sha256);
    begun.delete(sha256);
    goAhead();
    return asked;
  };
}

const startWorker = (): Worker =>
  new Worker(new URL('./pdf/pdf.worker.ts', import.meta.url), { type: 'module', name: 'pdf' });

/**
 * Writes a report as PDF in a worker of its own. Cancelling ends the worker at once.
 * @throws the signal's reason when cancelled @throws AppError export-failed
 */
export async function writePdfFile(report: ReportDocument, tools: WriteTools, start = startWorker): Promise<Blob> {
  const { signal, onStep } = tools;
  signal.throwIfAborted();
  const reduced = mustReduce(report);
  const wish = reduced ? { longSidePx: REDUCED_PX } : {};
  return new Promise<Blob>((resolve, reject) => {
    const worker = start();
    const order = (message: PdfOrder, handed: ArrayBuffer[] = []): void => worker.postMessage(message, handed);
    const settle = (how: () => void): void => {
      worker.terminate();
      signal.removeEventListener('abort', stop);
      how();
    };
    const stop = (): void => settle(() => reject(signal.reason));
    const fail = (cause: unknown): void => settle(() => reject(new AppError('export-failed', { cause })));
    signal.addEventListener('abort', stop);

    const photographs = wholePhotographs(report);
    // The first step is that the faces are there.
    const of = 1 + writerSteps(report) + photographs.length;
    let written = 0;
    let made = 0;
    const tell = (): void => onStep(written + made, of);
    const picture = aheadOf(
      photographs,
      (sha256) => tools.picture(sha256, wish),
      () => {
        made += 1;
        tell();
      },
    );

    async function hand(asked: PdfReply & { id: number }): Promise<void> {
      const { id } = asked;
      if (asked.what === 'wantPicture') {
        // A copy: the store may keep its own.
        const bytes = (await picture(asked.sha256))?.bytes.slice(0);
        order({ what: 'picture', id, bytes }, bytes ? [bytes] : []);
      } else if (asked.what === 'wantPair') {
        const { pair } = asked;
        const files = pair.h ? await tools.aligned({ ...pair, h: pair.h }) : undefined;
        order({ what: 'pair', id, files }, files ? [files.before, files.after] : []);
      }
    }

    worker.addEventListener('message', ({ data }: MessageEvent<PdfReply>) => {
      if (data.what === 'step') {
        written = data.done;
        tell();
      } else if (data.what === 'done') settle(() => resolve(data.file));
      else if (data.what === 'failed') fail(new Error(data.reason));
      else
        hand(data).catch((error: unknown) => {
          if (!signal.aborted) fail(error);
        });
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      fail(new Error(`The PDF worker failed: ${event.message}`));
    });
    order({ what: 'write', report, faces: { text, strong, heading }, reduced });
  });
}

export default {
  label: 'PDF, for sending and printing',
  extension: 'pdf',
  mimeType: 'application/pdf',
  write: (report, tools) => writePdfFile(report, tools),
} satisfies ReportFormat;
