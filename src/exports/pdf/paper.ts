import PDFDocument, { type OpenedImage, type TagElement, type TagOptions } from 'pdfkit';
import type { ReportDocument } from '../../core/report.ts';
import { FACES } from './steps.ts';
import { xmpOf } from './xmp.ts';

export type Face = 'text' | 'strong' | 'heading';
/** Bytes of the faces, TrueType or WOFF: the whole text in the first two, headings in the third where it has the signs. */
export type FaceFiles = Readonly<Record<Face, Uint8Array>>;

class ReportPdf extends PDFDocument {
  /** pdfkit's own puts what people typed into XML unescaped. */
  protected override _addInfo(): void {
    this.appendXML(xmpOf(this.info));
  }
}

/** Space round the text, in points: 20 mm, and room for the running foot. */
const MARGIN = { side: 56.7, top: 56.7, bottom: 73 };

/** An open PDF: its pages, where on the page we are, and its tree of tags. Lengths in points, down from the top left. */
export interface Paper {
  readonly doc: PDFDocument;
  readonly left: number;
  readonly width: number;
  readonly top: number;
  /** Below this nothing but the running foot. */
  readonly bottom: number;
  readonly root: TagElement;
  /** Photographs already in the file, by the hash of what is stored. */
  readonly images: Map<string, OpenedImage>;
  /** Where the next thing begins. */
  y: number;
  /** Height left on this page. */
  room(): number;
  isFresh(): boolean;
  newPage(): void;
  /** Goes to a new page unless this much is left, or this one is empty. */
  need(height: number): void;
  /** A new element of the tag tree, under the root unless told otherwise. */
  tag(type: string, options?: TagOptions, parent?: TagElement): TagElement;
  /** Draws what is no content: rules, grounds, running feet. */
  artifact(draw: () => void, type?: 'Layout' | 'Pagination'): void;
  /** Ends the document. @param onStep said of the pages and of each face, packed @returns its bytes in pieces */
  finish(onStep: () => void): Promise<readonly Uint8Array[]>;
}

/** Of a moment that no calendar has, the beginning of time: the report is still written. */
const momentOf = (made: string): Date => {
  const moment = new Date(made);
  return Number.isNaN(moment.getTime()) ? new Date(0) : moment;
};

/** Opens a PDF for a report: tagged, marked PDF/A-3a, its record attached. The same report gives the same bytes. */
export function openPaper(report: ReportDocument, faces: FaceFiles): Paper {
  const moment = momentOf(report.made);
  const doc = new ReportPdf({
    size: report.paper === 'a4' ? 'A4' : 'LETTER',
    ...{ margin: 0, pdfVersion: '1.7', tagged: true, lang: report.lang, displayTitle: true, subset: 'PDF/A-3a' },
    // No first face: pdfkit would open that one's file anew each time it is asked for by the name given to it below.
    ...{ autoFirstPage: false, bufferPages: true, font: null },
    info: {
      Title: report.title,
      ...(report.author ? { Author: report.author } : {}),
      ...(report.subtitle ? { Subject: report.subtitle } : {}),
      Keywords: 'Tagged and marked as PDF/A-3a; not checked by a validator',
      ...{ Creator: 'Blockworth', Producer: 'Blockworth', CreationDate: moment, ModDate: moment },
    },
  });
  const pieces: Uint8Array[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    doc.on('data', (piece) => pieces.push(piece));
    doc.on('end', resolve);
    doc.on('error', reject);
  });
  for (const face of FACES) doc.registerFont(face, faces[face]);
  doc.file(new TextEncoder().encode(JSON.stringify(report.data, null, 1)), {
    ...{ name: `${report.identifier}.json`, type: 'application/json', relationship: 'Data' },
    description: 'The records behind this report, to be read by a machine',
    ...{ creationDate: moment, modifiedDate: moment },
  });
  doc.addPage();
  const root = doc.struct('Document');
  doc.addStructure(root);
  const bottom = doc.page.height - MARGIN.bottom;
  const paper: Paper = {
    ...{ doc, root, bottom, images: new Map(), left: MARGIN.side, top: MARGIN.top, y: MARGIN.top },
    width: doc.page.width - 2 * MARGIN.side,
    room: () => bottom - paper.y,
    isFresh: () => paper.y <= MARGIN.top,
    newPage() {
      doc.addPage();
      paper.y = MARGIN.top;
    },
    need(height) {
      if (height > paper.room() && !paper.isFresh()) paper.newPage();
    },
    tag(type, options = {}, parent = root) {
      const element = doc.struct(type, options);
      parent.add(element);
      return element;
    },
    artifact(draw, type = 'Layout') {
      doc.markContent('Artifact', { type });
      draw();
      doc.endMarkedContent();
    },
    async finish(onStep) {
      root.end();
      doc.flushPages();
      onStep();
      // `end` would do it all in one go, and nobody would see it move.
      for (const face of FACES) {
        doc.font(face)._font.finalize();
        onStep();
      }
      doc.end();
      await ended;
      return pieces;
    },
  };
  return paper;
}
