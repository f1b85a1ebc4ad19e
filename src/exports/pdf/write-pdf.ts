import type { Outline } from 'pdfkit';
import type { ReportDocument, ReportPart } from '../../core/report.ts';
import type { Laid } from './laid.ts';
import { type FaceFiles, openPaper, type Paper } from './paper.ts';
import { layDamageMap, layPair, layPhotographs, type PictureSource } from './pictures.ts';
import { layTable } from './table.ts';
import { addLines, drawLines, LOOKS, type Look, type SetText, type Type, typeFor } from './type.ts';
import { hairline, layFacts, layHeading, layList, layParagraph } from './words.ts';

export interface PdfSource extends PictureSource {
  /** Steps as `writerSteps` counts them. */
  onStep(done: number): void;
  /** Said where pictures were made smaller for this file. */
  readonly reduced: boolean;
}

/** Lines about equally long: no last word alone under a long title. */
function balanced(type: Type, text: string, look: Look, width: number): SetText {
  let set = type.set(text, look, width);
  for (let narrower = width - 12; set.lines.length > 1 && narrower > width / 2; narrower -= 12) {
    const tried = type.set(text, look, narrower);
    if (tried.lines.length > set.lines.length) break;
    set = tried;
  }
  return set;
}

function title(paper: Paper, type: Type, report: ReportDocument): void {
  const place = { x: paper.left, width: paper.width };
  const heading = balanced(type, report.title, LOOKS.title, paper.width);
  addLines(paper, paper.tag('H1'), heading, { ...place, y: paper.y });
  paper.y += heading.height + 5;
  const made = report.made.slice(0, 16).replace('T', ' ');
  const under = [report.subtitle, `written ${made} UTC`, report.author && `by ${report.author}`];
  const line = type.set(under.filter(Boolean).join(' · '), LOOKS.small, paper.width);
  addLines(paper, paper.tag('P'), line, { ...place, y: paper.y });
  paper.y += line.height + 10;
}

/** The running foot of every page: which report, and which page of how many. */
function feet(paper: Paper, type: Type, report: ReportDocument): void {
  const { start, count } = paper.doc.bufferedPageRange();
  const y = paper.bottom + 22;
  for (let page = 0; page < count; page++) {
    paper.doc.switchToPage(start + page);
    hairline(paper, y - 7);
    const number = `${page + 1} of ${count}`;
    const room = paper.width - type.width(number, LOOKS.small) - 20;
    const name = type.set(report.title, LOOKS.small, room);
    const [first = ''] = name.lines;
    paper.artifact(() => {
      const shown = name.lines.length > 1 ? `${first.trimEnd()}…` : first;
      drawLines(paper, [shown], name.look, { x: paper.left, y, width: room });
      drawLines(paper, [number], LOOKS.small, { x: paper.left, y, width: paper.width, side: 'right' });
    }, 'Pagination');
  }
}

/** What the writer itself has to say at the end. */
const closingWords = ({ reduced }: PdfSource, missing: ReadonlySet<string>): readonly string[] => [
  'Written by Blockworth on the device of the one who looked. The hash under each photograph proves later that it is the same; the records are attached to this file to be read by a machine.',
  ...(reduced
    ? ['Photographs are made smaller here so that the file can be sent; the hashes are of the ones that are kept.']
    : []),
  ...(missing.size > 0
    ? ['Some signs are in none of the faces of this file and stand as \uFFFD; the attached records have them as typed.']
    : []),
];

/**
 * Writes a report as PDF: tagged, with bookmarks, embedded faces, drawings as lines, and its records attached.
 * The same report and pictures give the same bytes. Runs anywhere; the app runs it in a worker.
 * @returns the file in pieces
 */
export async function writePdf(
  report: ReportDocument,
  faces: FaceFiles,
  source: PdfSource,
): Promise<readonly Uint8Array[]> {
  const paper = openPaper(report, faces);
  const type = typeFor(paper);
  let done = 0;
  const step = (): void => source.onStep(++done);

  function lay(part: ReportPart): Laid {
    switch (part.kind) {
      case 'heading':
        return layHeading(paper, type, part);
      case 'paragraph':
        return layParagraph(paper, type, part);
      case 'facts':
        return layFacts(paper, type, part);
      case 'list':
        return layList(paper, type, part);
      case 'table':
        return layTable(paper, type, part);
      case 'damageMap':
        return layDamageMap(paper, type, part);
      case 'photographs':
        return layPhotographs(paper, type, part, source, step);
      case 'pair':
        return layPair(paper, type, part, source, step);
    }
  }

  title(paper, type, report);
  step();
  const laid = report.parts.map((part) => {
    const piece = lay(part);
    step();
    return piece;
  });
  /** What must fit for a part to begin here, with the headings before it. */
  const startOf = (index: number): number => {
    const part = laid[index];
    if (!part) return 0;
    const next = laid[index + 1];
    return part.first + (part.headsNext && next ? next.before + startOf(index + 1) : 0);
  };
  let chapter: Outline = paper.doc.outline;
  for (const [index, part] of report.parts.entries()) {
    const piece = laid[index];
    if (!piece) continue;
    paper.need(piece.before + startOf(index));
    if (!paper.isFresh()) paper.y += piece.before;
    if (part.kind === 'heading') {
      const options = { top: paper.y - 6, left: paper.doc.page.width, expanded: true };
      const parent: Outline = part.level === 2 ? paper.doc.outline : chapter;
      const entry = parent.addItem(part.text, options);
      if (part.level === 2) chapter = entry;
    }
    await piece.draw();
    step();
  }
  const closing = closingWords(source, type.missing).map((text) =>
    layParagraph(paper, type, { kind: 'paragraph', tone: 'small', text }),
  );
  paper.need(closing.reduce((sum, { before, first }) => sum + before + first, 16));
  paper.y += 12;
  for (const paragraph of closing) {
    paper.y += paragraph.before;
    await paragraph.draw();
  }
  feet(paper, type, report);
  step();
  return paper.finish(step);
}
