import { describe, expect, it } from 'vitest';
import { AppError } from '../../src/core/errors.ts';
import type { PdfOrder, PdfReply } from '../../src/exports/pdf/pdf-messages.ts';
import { writerSteps } from '../../src/exports/pdf/steps.ts';
import { mustReduce, writePdfFile } from '../../src/exports/pdf.ts';
import type { PictureWish, WriteTools } from '../../src/exports/report-file.ts';
import { benchCase } from '../support/report-cases.ts';
import { aPicture, reportOf } from '../support/written-pdf.ts';

/** A worker that says what a test tells it to, and keeps what it was sent. */
function aWorker() {
  const listeners: Record<string, ((event: never) => void)[]> = {};
  const sent: PdfOrder[] = [];
  let ended = false;
  const worker = {
    addEventListener: (type: string, listener: (event: never) => void) => {
      listeners[type] = [...(listeners[type] ?? []), listener];
    },
    postMessage: (order: PdfOrder) => void sent.push(order),
    terminate: () => {
      ended = true;
    },
  };
  return {
    start: () => worker as unknown as Worker,
    sent,
    ended: () => ended,
    says: (data: PdfReply) => {
      for (const listener of listeners.message ?? []) listener({ data } as never);
    },
    breaks: () => {
      for (const listener of listeners.error ?? []) listener({ message: 'gone', preventDefault: () => {} } as never);
    },
  };
}

const photo = aPicture(8, 6);
const report = reportOf('asFound', benchCase('L01', [photo]));
const heavy = reportOf('asFound', benchCase('L01', [{ ...photo, bytes: 14_000_000 }]));

const toolsWith = (more: Partial<WriteTools> = {}): WriteTools => ({
  picture: async () => undefined,
  aligned: async () => undefined,
  signal: new AbortController().signal,
  onStep: () => undefined,
  ...more,
});
const soon = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('writing a PDF beside the page', () => {
  it('hands over the pictures the worker asks for, as copies, and tells how far it is', async () => {
    const worker = aWorker();
    const bytes = new Uint8Array(photo.file).buffer;
    const steps: (readonly [number, number])[] = [];
    const file = writePdfFile(
      report,
      toolsWith({ picture: async () => ({ bytes, mime: 'image/jpeg' }), onStep: (done, of) => steps.push([done, of]) }),
      worker.start,
    );
    worker.says({ what: 'wantPicture', id: 1, sha256: photo.sha256 });
    await soon();
    const [, picture] = worker.sent;
    expect(picture).toMatchObject({ what: 'picture', id: 1 });
    expect(picture?.what === 'picture' && picture.bytes).not.toBe(bytes);
    expect(picture?.what === 'picture' && picture.bytes?.byteLength).toBe(photo.file.length);
    worker.says({ what: 'step', done: 3 });
    worker.says({ what: 'done', file: new Blob(['%PDF']) });
    expect(await (await file).text()).toBe('%PDF');
    // Three told by the worker, one photograph made; in all the writer's own, the faces fetched and the photograph.
    const of = writerSteps(report) + 2;
    expect(steps).toEqual([
      [1, of],
      [4, of],
    ]);
    expect(worker.ended()).toBe(true);
  });

  it('makes photographs while the worker still lays out the text, not all at once, and each only once', async () => {
    const photos = Array.from({ length: 30 }, (_, index) => aPicture(8, 6, index));
    const worker = aWorker();
    const asked: string[] = [];
    const steps: number[] = [];
    const file = writePdfFile(
      reportOf('asFound', benchCase('L01', photos)),
      toolsWith({
        picture: async (sha256) => {
          asked.push(sha256);
          return undefined;
        },
        onStep: (done) => steps.push(done),
      }),
      worker.start,
    );
    await soon();
    const begun = asked.length;
    expect(begun).toBeGreaterThan(1);
    expect(begun).toBeLessThan(30);
    expect(steps).toEqual(asked.map((_, index) => index + 1));
    for (const [id, { sha256 }] of photos.entries()) {
      worker.says({ what: 'wantPicture', id, sha256 });
      await soon();
    }
    expect([...asked].sort()).toEqual(photos.map(({ sha256 }) => sha256).sort());
    expect(steps.at(-1)).toBe(30);
    // A photograph asked for once more, for a pair that could not be lined up after all, is no step of the report.
    worker.says({ what: 'wantPicture', id: 30, sha256: 'another' });
    await soon();
    expect(asked.at(-1)).toBe('another');
    expect(steps.at(-1)).toBe(30);
    worker.says({ what: 'done', file: new Blob([]) });
    await file;
  });

  it('asks for smaller pictures only where the stored ones are too much together', async () => {
    expect([mustReduce(report), mustReduce(heavy)]).toEqual([false, true]);
    for (const [of, wish] of [
      [report, {}],
      [heavy, { longSidePx: 1200 }],
    ] as const) {
      const worker = aWorker();
      const wishes: (PictureWish | undefined)[] = [];
      const tools = toolsWith({
        picture: async (_, asked) => {
          wishes.push(asked);
          return undefined;
        },
      });
      const file = writePdfFile(of, tools, worker.start);
      worker.says({ what: 'wantPicture', id: 1, sha256: photo.sha256 });
      await soon();
      expect(wishes).toEqual([wish]);
      expect(worker.sent[0]).toMatchObject({ what: 'write', reduced: of === heavy });
      worker.says({ what: 'done', file: new Blob([]) });
      await file;
    }
  });

  it('ends the worker at once when it is stopped, and gives the reason', async () => {
    const worker = aWorker();
    const control = new AbortController();
    const file = writePdfFile(report, toolsWith({ signal: control.signal }), worker.start);
    control.abort();
    expect(worker.ended()).toBe(true);
    await expect(file).rejects.toBe(control.signal.reason);
    await expect(writePdfFile(report, toolsWith({ signal: control.signal }), worker.start)).rejects.toBe(
      control.signal.reason,
    );
  });

  it('says that the file could not be made when the worker, a picture or the store fails', async () => {
    const failed = async (break_: (worker: ReturnType<typeof aWorker>) => void, more: Partial<WriteTools> = {}) => {
      const worker = aWorker();
      const file = writePdfFile(report, toolsWith(more), worker.start);
      break_(worker);
      const error = await file.catch((reason: unknown) => reason);
      expect(error).toBeInstanceOf(AppError);
      expect(error).toMatchObject({ code: 'export-failed' });
      expect(worker.ended()).toBe(true);
    };
    await failed((worker) => worker.says({ what: 'failed', reason: 'no face' }));
    await failed((worker) => worker.breaks());
    await failed((worker) => worker.says({ what: 'wantPicture', id: 1, sha256: photo.sha256 }), {
      picture: () => Promise.reject(new Error('storage')),
    });
  });
});
