import type { ReportDocument, ReportPair } from '../../core/report.ts';
import type { AlignedFiles } from '../report-file.ts';
import type { Face } from './paper.ts';

/** What the page asks of the PDF worker, and hands it when it asks back. */
export type PdfOrder =
  | {
      readonly what: 'write';
      readonly report: ReportDocument;
      /** Addresses of the faces' files. */
      readonly faces: Readonly<Record<Face, string>>;
      readonly reduced: boolean;
    }
  | { readonly what: 'picture'; readonly id: number; readonly bytes: ArrayBuffer | undefined }
  | { readonly what: 'pair'; readonly id: number; readonly files: AlignedFiles | undefined };

/** What the worker says. Pictures are asked for one at a time, so that no more than one lies in memory twice. */
export type PdfReply =
  | { readonly what: 'wantPicture'; readonly id: number; readonly sha256: string }
  | { readonly what: 'wantPair'; readonly id: number; readonly pair: ReportPair }
  | { readonly what: 'step'; readonly done: number }
  | { readonly what: 'done'; readonly file: Blob }
  | { readonly what: 'failed'; readonly reason: string };
