import type { OpenedImage } from 'pdfkit';
import type { ReportPair, ReportPart, ReportPhoto } from '../../core/report.ts';
import { figureShapes, keyShapes } from '../../drawings/figure-shapes.ts';
import { drawings } from '../../drawings/index.ts';
import { photoOverlay } from '../../drawings/photo-overlay.ts';
import { reportMarks } from '../../drawings/report-marks.ts';
import type { BlockDrawing } from '../../drawings/shape.ts';
import { mapCaption } from '../../text/map-caption.ts';
import type { Laid } from './laid.ts';
import { drawFigure, drawMark, drawOverlay } from './paint.ts';
import type { Paper } from './paper.ts';
import { addLines, GROUND, LOOKS, type SetText, type Type } from './type.ts';

/** Damage map, photographs and pairs on paper. */

/** Where the bytes of pictures come from. JPEG or PNG; undefined when they are not on this device. */
export interface PictureSource {
  picture(sha256: string): Promise<Uint8Array | undefined>;
  aligned(
    pair: ReportPair,
  ): Promise<
    | { readonly before: Uint8Array; readonly after: Uint8Array; readonly width: number; readonly height: number }
    | undefined
  >;
}

const GUTTER = 16;
/** No frame is higher, so that two rows with their captions fit a page. */
const HIGHEST = 236;
const NOT_HERE = 'The bytes of this photograph are not on the device that wrote the report, or are damaged.';

export function layDamageMap(paper: Paper, type: Type, part: ReportPart & { kind: 'damageMap' }): Laid {
  const known: Readonly<Record<string, BlockDrawing>> = drawings;
  const drawing = (Object.hasOwn(known, part.drawing) ? known[part.drawing] : undefined) ?? drawings.domeCrown;
  const figure = figureShapes(drawing, reportMarks(part.marks), { width: 240, across: true });
  const most = (paper.bottom - paper.top) * 0.55;
  const width = Math.min(paper.width, (most * figure.width) / figure.height, figure.width * 0.78);
  const height = (width * figure.height) / figure.width;
  const caption = type.set(mapCaption(part.caption, figure.left), LOOKS.figure, paper.width);
  const key = keyLines(paper, type, part.key);
  return {
    ...{ before: 10, first: height + 4 + caption.height + key.length * KEY.leading },
    draw() {
      const { left, y } = paper;
      const x = left + (paper.width - width) / 2;
      const element = paper.tag('Figure', { alt: part.alt, bbox: [x, y, x + width, y + height], placement: 'Block' });
      element.add(() => drawFigure(paper, figure, x, y, width));
      paper.y += height + 4;
      addLines(paper, paper.tag('P'), caption, { x: left, y: paper.y, width: paper.width });
      paper.y += caption.height + 2;
      const list = key.length > 0 ? paper.tag('L') : undefined;
      for (const line of key) {
        for (const { mechanism, words, x: start } of line) {
          const entry = paper.tag('LI', {}, list);
          const middle = paper.y + KEY.leading / 2;
          paper.artifact(() => drawMark(paper, keyShapes(mechanism), start + KEY.mark, middle, KEY.mark / 1.3));
          addLines(paper, paper.tag('LBody', {}, entry), words, {
            ...{ x: start + KEY.words, y: paper.y + 1.5, width: paper.width },
          });
        }
        paper.y += KEY.leading;
      }
      paper.y += 2;
    },
  };
}

/** Half the height of a mark in the key, where its words begin, the space to the next, and the distance of lines, points. */
const KEY = { mark: 4.6, words: 13, gap: 16, leading: 14 };

interface KeyEntry {
  readonly mechanism: string;
  readonly words: SetText;
  readonly x: number;
}

/** The key to the shapes in as few lines as it takes. */
function keyLines(paper: Paper, type: Type, key: (ReportPart & { kind: 'damageMap' })['key']): readonly KeyEntry[][] {
  const lines: KeyEntry[][] = [];
  let x = Number.POSITIVE_INFINITY;
  for (const { mechanism, term } of key) {
    const words = type.set(term, LOOKS.figure, paper.width - KEY.words);
    const wide = KEY.words + type.width(words.lines[0] ?? '', words.look);
    if (x + wide > paper.left + paper.width) {
      lines.push([]);
      x = paper.left;
    }
    lines.at(-1)?.push({ mechanism, words, x });
    x += wide + KEY.gap;
  }
  return lines;
}

interface Framed {
  readonly photo: ReportPhoto;
  /** Of what is to be shown, in its pixels; only their ratio counts. */
  readonly size: Size;
  readonly words: readonly SetText[];
  readonly load: () => Promise<Shown | undefined>;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

interface Shown {
  readonly image: OpenedImage;
  readonly size: Size;
  /** With its marks and scale bar in their places. */
  readonly photo: ReportPhoto;
}

const columnOf = ({ width }: Paper): number => (width - GUTTER) / 2;

/** Height of a frame for pictures beside each other: the highest of them at the width of a column. */
const frameHeight = (row: readonly Framed[], column: number): number =>
  Math.min(HIGHEST, Math.max(...row.map(({ size }) => (column * size.height) / size.width)));

const wordsHeight = ({ words }: Framed): number => words.reduce((sum, { height }) => sum + height, 0);
const rowHeight = (row: readonly Framed[], column: number): number =>
  frameHeight(row, column) + 5 + Math.max(...row.map(wordsHeight));

/** A picture read; undefined where its bytes are none. */
function opened({ doc }: Paper, bytes: Uint8Array | undefined): OpenedImage | undefined {
  try {
    return bytes && doc.openImage(bytes);
  } catch {
    return undefined;
  }
}

/** A whole photograph, in the file once however often it is shown. */
async function photograph(paper: Paper, source: PictureSource, photo: ReportPhoto): Promise<Shown | undefined> {
  const image = paper.images.get(photo.sha256) ?? opened(paper, await source.picture(photo.sha256));
  if (!image) return undefined;
  paper.images.set(photo.sha256, image);
  return { image, size: photo, photo };
}

/** One or two pictures in frames of one size, their words beneath. */
async function drawRow(paper: Paper, type: Type, row: readonly Framed[]): Promise<void> {
  const column = columnOf(paper);
  const height = frameHeight(row, column);
  for (const [index, framed] of row.entries()) {
    const { words } = framed;
    const shown = await framed.load();
    const { photo, size } = shown ?? framed;
    const x = paper.left + index * (column + GUTTER);
    const scale = Math.min(column / size.width, height / size.height);
    const [wide, high] = [size.width * scale, size.height * scale];
    const at = { x: x + (column - wide) / 2, y: paper.y + (height - high) / 2 };
    const group = paper.tag('Div');
    paper.artifact(() => paper.doc.rect(x, paper.y, column, height).fillColor(GROUND.picture).fill());
    if (shown) {
      const figure = paper.tag(
        'Figure',
        { alt: photo.alt, bbox: [at.x, at.y, at.x + wide, at.y + high], placement: 'Block' },
        group,
      );
      figure.add(() => {
        paper.doc.image(shown.image, at.x, at.y, { width: wide, height: high });
        const shapes = photoOverlay({ ...photo, ...size });
        if (shapes.length > 0) drawOverlay(paper, shapes, { ...at, scale, width: wide, height: high });
      });
    } else {
      const missing = type.set(NOT_HERE, LOOKS.figure, column - 24);
      const y = paper.y + (height - missing.height) / 2;
      addLines(paper, paper.tag('P', {}, group), missing, { x: x + 12, y, width: column - 24, side: 'middle' });
    }
    let y = paper.y + height + 5;
    for (const line of words) {
      addLines(paper, paper.tag('P', {}, group), line, { x, y, width: column });
      y += line.height;
    }
  }
  paper.y += rowHeight(row, column);
}

function wordsOf(type: Type, photo: ReportPhoto, column: number): SetText[] {
  return [
    ...[photo.caption, ...photo.notes].filter(Boolean).map((text) => type.set(text, LOOKS.figure, column)),
    type.set(`SHA-256 ${photo.sha256}`, LOOKS.hash, column),
  ];
}

export function layPhotographs(
  paper: Paper,
  type: Type,
  { items }: ReportPart & { kind: 'photographs' },
  source: PictureSource,
  onPicture: () => void,
): Laid {
  const column = columnOf(paper);
  const framed = items.map(
    (photo): Framed => ({
      ...{ photo, size: photo, words: wordsOf(type, photo, column) },
      load: async () => {
        const shown = await photograph(paper, source, photo);
        onPicture();
        return shown;
      },
    }),
  );
  const rows = framed.flatMap((_, index) => (index % 2 === 0 ? [framed.slice(index, index + 2)] : []));
  return {
    ...{ before: 8, first: rows[0] ? rowHeight(rows[0], column) : 0 },
    async draw() {
      for (const [index, row] of rows.entries()) {
        const gap = index > 0 && !paper.isFresh() ? 14 : 0;
        paper.need(rowHeight(row, column) + gap);
        if (!paper.isFresh()) paper.y += gap;
        await drawRow(paper, type, row);
      }
    },
  };
}

/** Both pictures side by side: cut to what both show where they were lined up, else whole. */
export function layPair(
  paper: Paper,
  type: Type,
  part: ReportPair,
  source: PictureSource,
  onPicture: () => void,
): Laid {
  const column = columnOf(paper);
  const title = type.set(part.caption, LOOKS.figure, paper.width);
  const { crop, before, after } = part;
  const cut = { width: before.width * crop.width, height: before.height * crop.height };
  let crops: Promise<Awaited<ReturnType<PictureSource['aligned']>>> | undefined;
  const side = (photo: ReportPhoto, which: 'before' | 'after'): Framed => ({
    ...{ photo, size: part.h ? cut : photo, words: wordsOf(type, photo, column) },
    load: async () => {
      if (part.h) {
        crops ??= source.aligned(part);
        const cropped = await crops;
        const image = cropped && opened(paper, cropped[which]);
        if (image) return { image, size: cropped, photo };
      }
      // The bar of a lined-up pair is laid out for what both show, and would lie on the whole pictures.
      return photograph(paper, source, part.h ? { ...photo, scaleBar: null } : photo);
    },
  });
  const row = [side(before, 'before'), side(after, 'after')];
  return {
    ...{ before: 12, first: rowHeight(row, column) + 3 + title.height },
    async draw() {
      await drawRow(paper, type, row);
      onPicture();
      paper.y += 3;
      addLines(paper, paper.tag('P'), title, { x: paper.left, y: paper.y, width: paper.width });
      paper.y += title.height + 4;
    },
  };
}
