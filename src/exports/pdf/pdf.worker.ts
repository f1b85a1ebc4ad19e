import type { Face, FaceFiles } from './paper.ts';
import type { PdfOrder, PdfReply } from './pdf-messages.ts';
import { writePdf } from './write-pdf.ts';

declare const self: DedicatedWorkerGlobalScope;

// A shell: fetches the faces, asks the page for pictures, and lets the writer write.
const say = (reply: PdfReply): void => self.postMessage(reply);
const waiting = new Map<number, (order: PdfOrder) => void>();
let asked = 0;

function ask(question: (id: number) => PdfReply): Promise<PdfOrder> {
  asked += 1;
  const id = asked;
  return new Promise((answer) => {
    waiting.set(id, answer);
    say(question(id));
  });
}

async function fetched(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`A face for the PDF did not come: ${response.status}.`);
  return new Uint8Array(await response.arrayBuffer());
}

async function facesAt(urls: Readonly<Record<Face, string>>): Promise<FaceFiles> {
  const [text, strong, heading] = await Promise.all([fetched(urls.text), fetched(urls.strong), fetched(urls.heading)]);
  return { text, strong, heading };
}

async function write({ report, faces, reduced }: PdfOrder & { what: 'write' }): Promise<void> {
  const files = await facesAt(faces);
  // A sign of life: until the first photograph is made nothing else shows.
  say({ what: 'step', done: 1 });
  const pieces = await writePdf(report, files, {
    reduced,
    onStep: (done) => say({ what: 'step', done: 1 + done }),
    async picture(sha256) {
      const given = await ask((id) => ({ what: 'wantPicture', id, sha256 }));
      return given.what === 'picture' && given.bytes ? new Uint8Array(given.bytes) : undefined;
    },
    async aligned(pair) {
      const given = await ask((id) => ({ what: 'wantPair', id, pair }));
      if (given.what !== 'pair' || !given.files) return undefined;
      const { before, after, width, height } = given.files;
      return { before: new Uint8Array(before), after: new Uint8Array(after), width, height };
    },
  });
  say({ what: 'done', file: new Blob(pieces as Uint8Array<ArrayBuffer>[], { type: 'application/pdf' }) });
}

self.addEventListener('message', ({ data }: MessageEvent<PdfOrder>) => {
  if (data.what === 'write') {
    write(data).catch((error: unknown) => say({ what: 'failed', reason: String(error) }));
    return;
  }
  waiting.get(data.id)?.(data);
  waiting.delete(data.id);
});
