import type { Crop } from './before-after.ts';
import type { Grade, Mechanism } from './catalogue.ts';
import type { Spot } from './mark-geometry.ts';
import type { MarkShape } from './records.ts';
import type { ScaleBar } from './scale-bar.ts';

/** What a report is made of: a plain tree without markup, so that every format writes the same report. */
export type ReportPart =
  | { readonly kind: 'heading'; readonly level: 2 | 3; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly tone?: 'caution' | 'small' | 'lead' }
  | { readonly kind: 'facts'; readonly rows: readonly (readonly [term: string, value: string])[] }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly ordered?: boolean; readonly tone?: 'caution' }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
      readonly foot?: readonly (readonly string[])[];
      /** Columns set flush right with even figures. */
      readonly numeric: readonly number[];
    }
  | {
      readonly kind: 'damageMap';
      readonly drawing: string;
      readonly marks: readonly ReportMark[];
      /** What each shape of a mark stands for, of the shapes that are drawn. */
      readonly key: readonly { readonly mechanism: Mechanism; readonly term: string }[];
      readonly alt: string;
      readonly caption: string;
    }
  | { readonly kind: 'photographs'; readonly items: readonly ReportPhoto[] }
  | ReportPair;

/** One view before and after the work. Formats that cannot lay pictures over each other show both whole. */
export interface ReportPair {
  readonly kind: 'pair';
  readonly before: ReportPhoto;
  readonly after: ReportPhoto;
  /** From places in the before to those in the after, in shares, row by row; null where they were not lined up. */
  readonly h: readonly number[] | null;
  /** What both show, in shares of the before. */
  readonly crop: Crop;
  readonly caption: string;
}

export interface ReportMark {
  readonly number: number;
  readonly zone: string;
  readonly part: number | null;
  readonly mechanism: Mechanism;
  readonly grade: Grade;
}

export interface ReportPhoto {
  /** Key of the stored bytes; also printed, so that the picture can be proved the same later. */
  readonly sha256: string;
  /** Size of the stored file. */
  readonly bytes: number;
  readonly width: number;
  readonly height: number;
  readonly caption: string;
  readonly alt: string;
  /** Drawn over the picture, never into it: its hash stays what it is. */
  readonly marks: readonly ReportPhotoMark[];
  /** In shares of the photograph; in a pair that was lined up in shares of its crop, the same in both. */
  readonly scaleBar: ScaleBar | null;
  /** What was measured in it, one sentence each; stands under the caption. */
  readonly notes: readonly string[];
}

export interface ReportPhotoMark {
  readonly shape: MarkShape;
  readonly points: readonly Spot[];
  /** The number of its finding and the words beside it; may be empty. */
  readonly label: string;
}

export interface ReportDocument {
  readonly title: string;
  /** What it is about, by its name: what a picture handed on shows. */
  readonly object?: string;
  readonly subtitle: string;
  /** For file names and headers: letters, digits and hyphens. */
  readonly identifier: string;
  readonly lang: string;
  readonly author: string;
  /** Whose the photographs are and what may be done with them; empty says nothing. */
  readonly rights?: string;
  /** RFC 3339, UTC. */
  readonly made: string;
  readonly paper: 'a4' | 'letter';
  readonly parts: readonly ReportPart[];
  /** The records behind the report, to be read by a machine; private fields left out as in the text. */
  readonly data: unknown;
}
