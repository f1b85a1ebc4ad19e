import type { ReportDocument, ReportPair, ReportPart } from '../core/report.ts';

/** A format a report can be written in: one file in `formats/`, found by glob. */
export interface ReportFormat {
  readonly label: string;
  /** What the label does not say. */
  readonly about?: string;
  /** Of a file that holds only some parts of a report: which. Whatever else may go into the report does not concern it. */
  readonly holds?: (part: ReportPart) => boolean;
  readonly extension: string;
  readonly mimeType: string;
  /**
   * @param picture bytes of a stored photograph by hash; undefined when they are not on this device
   * @throws the signal's reason when cancelled
   */
  readonly write: (report: ReportDocument, tools: WriteTools) => Promise<Blob>;
}

export interface AlignedFiles {
  readonly before: ArrayBuffer;
  readonly after: ArrayBuffer;
  readonly width: number;
  readonly height: number;
}

export interface PictureWish {
  /** Made smaller where its longer side has more pixels. */
  readonly longSidePx?: number;
}

export interface WriteTools {
  readonly picture: (
    sha256: string,
    wish?: PictureWish,
  ) => Promise<{ readonly bytes: ArrayBuffer; readonly mime: string } | undefined>;
  /**
   * What both photographs of a lined-up pair show, as two JPEGs of one size; undefined when the bytes of one are not here.
   * @throws the signal's reason when cancelled
   */
  readonly aligned: (pair: ReportPair & { readonly h: readonly number[] }) => Promise<AlignedFiles | undefined>;
  /** Where a picture lies beside the report, for formats that can point to it; undefined puts its bytes into the file. */
  readonly linkTo?: (sha256: string) => string | undefined;
  readonly signal: AbortSignal;
  readonly onStep: (done: number, of: number) => void;
}
