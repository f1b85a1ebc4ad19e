/*
 * What the PDF writer uses of pdfkit 0.20.2. Its published types bring Node's along, which have no business in the page,
 * and lack the tags. `src/tsconfig.json` points here.
 */

export type Rule = 'even-odd' | 'non-zero';

/** An element of the tag tree. A function given to `add` draws what the element holds on the page of that moment. */
export interface TagElement {
  add(child: TagElement | (() => void)): this;
  end(): void;
}

export interface TagOptions {
  readonly title?: string;
  readonly alt?: string;
  readonly actual?: string;
  readonly lang?: string;
  readonly bbox?: readonly [left: number, top: number, right: number, bottom: number];
  readonly placement?: string;
  readonly scope?: 'Row' | 'Column' | 'Both';
}

export interface Outline {
  addItem(
    title: string,
    options?: { readonly top?: number; readonly left?: number; readonly expanded?: boolean },
  ): Outline;
}

/** A picture read but not yet drawn. */
export interface OpenedImage {
  readonly width: number;
  readonly height: number;
  /** EXIF orientation, 1 to 8; absent for PNG. */
  readonly orientation?: number;
}

export interface DocumentOptions {
  readonly size: 'A4' | 'LETTER';
  readonly margin: number;
  readonly pdfVersion: '1.7';
  readonly tagged: true;
  readonly lang: string;
  readonly displayTitle: true;
  readonly subset: 'PDF/A-3a';
  readonly autoFirstPage: false;
  readonly bufferPages: true;
  readonly font: null;
  readonly info: Readonly<Record<string, string | Date>>;
}

export default class PDFDocument {
  constructor(options: DocumentOptions);
  readonly page: { readonly width: number; readonly height: number };
  readonly info: Readonly<Record<string, string | Date>>;
  readonly outline: Outline;
  /** The face in use. */
  readonly _font: {
    /** Packs what was used of it into the file, once; nothing may be set in it afterwards. */
    finalize(): void;
    /** Fontkit's reading of its file. */
    readonly font: {
      readonly unitsPerEm: number;
      hasGlyphForCodePoint(point: number): boolean;
      glyphForCodePoint(point: number): { readonly advanceWidth: number };
    };
  };
  on(event: 'data', listener: (chunk: Uint8Array) => void): this;
  on(event: 'end', listener: () => void): this;
  on(event: 'error', listener: (error: unknown) => void): this;
  addPage(): this;
  switchToPage(index: number): unknown;
  /** Packs the pages; nothing may be drawn on them afterwards. */
  flushPages(): void;
  bufferedPageRange(): { readonly start: number; readonly count: number };
  end(): void;
  registerFont(name: string, bytes: ArrayBuffer | Uint8Array): this;
  font(name: string): this;
  fontSize(size: number): this;
  widthOfString(text: string): number;
  text(
    text: string,
    x: number,
    y: number,
    options: { readonly lineBreak: false; readonly baseline?: 'alphabetic' },
  ): this;
  openImage(bytes: ArrayBuffer | Uint8Array): OpenedImage;
  image(image: OpenedImage, x: number, y: number, options: { readonly width: number; readonly height: number }): this;
  save(): this;
  restore(): this;
  translate(x: number, y: number): this;
  scale(factor: number): this;
  rect(x: number, y: number, width: number, height: number): this;
  roundedRect(x: number, y: number, width: number, height: number, radius: number): this;
  path(d: string): this;
  moveTo(x: number, y: number): this;
  lineTo(x: number, y: number): this;
  clip(rule?: Rule): this;
  lineWidth(width: number): this;
  lineCap(cap: 'butt' | 'round'): this;
  lineJoin(join: 'miter' | 'round'): this;
  dash(length: number, options: { readonly space: number }): this;
  undash(): this;
  fillColor(colour: string): this;
  strokeColor(colour: string): this;
  fill(rule?: Rule): this;
  stroke(): this;
  fillAndStroke(fill: string, stroke: string, rule?: Rule): this;
  struct(type: string, options?: TagOptions): TagElement;
  addStructure(element: TagElement): this;
  markContent(tag: 'Artifact', options: { readonly type: 'Pagination' | 'Layout' }): this;
  endMarkedContent(): this;
  appendXML(xml: string): void;
  file(
    bytes: Uint8Array,
    options: {
      readonly name: string;
      readonly type: string;
      readonly description: string;
      readonly relationship: 'Data';
      readonly creationDate: Date;
      readonly modifiedDate: Date;
    },
  ): unknown;
  /** Writes the document's description into its XMP; called once, at the end. */
  protected _addInfo(): void;
}
