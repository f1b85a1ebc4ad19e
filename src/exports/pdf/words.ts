import type { TagElement } from 'pdfkit';
import type { ReportPart } from '../../core/report.ts';
import type { Laid } from './laid.ts';
import type { Paper } from './paper.ts';
import { addLines, GROUND, INK, LOOKS, type Look, type SetText, type Type } from './type.ts';

/** Headings, paragraphs, lists and facts on paper. */

/** Room of a caution between its bar and its words, and above and below them. */
const CAUTION = { bar: 3, inset: 11, pad: 6 };

export function layHeading(paper: Paper, type: Type, { level, text }: ReportPart & { kind: 'heading' }): Laid {
  const set = type.set(text, level === 2 ? LOOKS.h2 : LOOKS.h3, paper.width);
  const rule = level === 2 ? 7 : 0;
  return {
    ...{ before: level === 2 ? 20 : 11, first: set.height + rule + 5, headsNext: true },
    draw() {
      if (rule > 0) {
        paper.artifact(() => {
          paper.doc.moveTo(paper.left, paper.y).lineTo(paper.left + paper.width, paper.y);
          paper.doc.lineWidth(0.7).strokeColor(INK.rule).stroke();
        });
        paper.y += rule;
      }
      const element = paper.tag(level === 2 ? 'H2' : 'H3');
      addLines(paper, element, set, { x: paper.left, y: paper.y, width: paper.width });
      paper.y += set.height + 5;
    },
  };
}

/** Draws lines as the content of an element, over as many pages as they take; never one alone where a page ends or begins. */
function flow(paper: Paper, element: TagElement, set: SetText, x: number, width: number): void {
  const { leading } = set.look;
  for (let at = 0; at < set.lines.length; ) {
    const left = set.lines.length - at;
    let fits = Math.min(left, Math.floor((paper.room() + 0.01) / leading));
    if (fits < left && left - fits === 1) fits -= 1;
    if (fits < Math.min(2, left) && !paper.isFresh()) {
      paper.newPage();
      continue;
    }
    const count = Math.max(1, fits);
    addLines(paper, element, { lines: set.lines.slice(at, at + count), look: set.look }, { x, y: paper.y, width });
    paper.y += count * leading;
    at += count;
    if (at < set.lines.length) paper.newPage();
  }
}

/** The ground and bar behind a caution, `height` from where the page stands. */
function cautionGround(paper: Paper, height: number): void {
  paper.artifact(() => {
    paper.doc.rect(paper.left, paper.y, paper.width, height).fillColor(GROUND.caution).fill();
    paper.doc.rect(paper.left, paper.y, CAUTION.bar, height).fillColor(INK.red).fill();
  });
}

const TONES: Readonly<Record<string, Look>> = { lead: LOOKS.lead, small: LOOKS.small };

export function layParagraph(paper: Paper, type: Type, { text, tone }: ReportPart & { kind: 'paragraph' }): Laid {
  if (tone === 'caution') return layList(paper, type, { kind: 'list', items: [text], tone });
  const set = type.set(text, (tone && TONES[tone]) ?? LOOKS.plain, paper.width);
  const whole = set.lines.length <= 3;
  return {
    before: tone === 'small' ? 4 : 6,
    first: whole ? set.height : 2 * set.look.leading,
    draw: () => flow(paper, paper.tag('P'), set, paper.left, paper.width),
  };
}

export function layList(paper: Paper, type: Type, { items, ordered, tone }: ReportPart & { kind: 'list' }): Laid {
  const isCaution = tone === 'caution';
  const inset = isCaution ? CAUTION.inset : 0;
  const signs = items.map((_, index) => (ordered ? `${index + 1}.` : '•'));
  const hang = Math.max(10, ...signs.map((sign) => type.width(sign, LOOKS.plain) + 5));
  const x = paper.left + inset;
  const width = paper.width - inset * (isCaution ? 2 : 1) - hang;
  const set = items.map((text) => type.set(text, LOOKS.plain, width));
  const gap = isCaution ? 3 : 2;
  const heights = set.map(({ height }) => height + gap);
  const total = heights.reduce((sum, height) => sum + height, 0) + (isCaution ? 2 * CAUTION.pad : 0);
  const page = paper.bottom - paper.top;
  return {
    before: isCaution ? 8 : 4,
    first: total < page / 3 ? total : (heights[0] ?? 0) + (isCaution ? CAUTION.pad : 0),
    draw() {
      const element = paper.tag('L');
      for (const [index, item] of set.entries()) {
        const height = heights[index] ?? 0;
        // Longer than a page only when somebody typed a novel; then its lines flow and the ground stays where it began.
        if (height + (isCaution && index === 0 ? CAUTION.pad : 0) > paper.room() && !paper.isFresh()) paper.newPage();
        const above = isCaution && (index === 0 || paper.isFresh()) ? CAUTION.pad : 0;
        const below = isCaution && index === set.length - 1 ? CAUTION.pad - gap : 0;
        if (isCaution) cautionGround(paper, Math.min(above + height + below, paper.room()));
        paper.y += above;
        const entry = paper.tag('LI', {}, element);
        const sign = type.set(signs[index] ?? '', LOOKS.plain, hang);
        addLines(paper, paper.tag('Lbl', {}, entry), sign, { x, y: paper.y, width: hang });
        flow(paper, paper.tag('LBody', {}, entry), item, x + hang, width);
        paper.y += gap;
      }
      if (isCaution) paper.y += CAUTION.pad - gap;
    },
  };
}

export function layFacts(paper: Paper, type: Type, { rows }: ReportPart & { kind: 'facts' }): Laid {
  const terms = rows.map(([term]) => type.reach(term, LOOKS.term).whole);
  const first = Math.min(paper.width * 0.45, Math.max(90, ...terms) + 14);
  const laid = rows.map(([term, value]) => {
    const head = type.set(term, LOOKS.term, first - 10);
    const body = type.set(value, LOOKS.plain, paper.width - first);
    return { head, body, height: Math.max(head.height, body.height) + 5 };
  });
  const pad = 2.5;
  return {
    ...{ before: 4, first: laid.slice(0, 2).reduce((sum, { height }) => sum + height, 0) },
    draw() {
      const table = paper.tag('Table');
      for (const { head, body, height } of laid) {
        paper.need(height);
        const row = paper.tag('TR', {}, table);
        const start = paper.y + pad;
        addLines(paper, paper.tag('TH', { scope: 'Row' }, row), head, { x: paper.left, y: start, width: first });
        const value = paper.tag('TD', {}, row);
        if (height <= paper.room()) {
          addLines(paper, value, body, { x: paper.left + first, y: start, width: paper.width - first });
          paper.y += height;
        } else {
          paper.y = start;
          flow(paper, value, body, paper.left + first, paper.width - first);
          paper.y += pad;
        }
        hairline(paper, paper.y);
      }
    },
  };
}

/** A thin line across the text, under a row. */
export function hairline(paper: Paper, y: number, ink: string = INK.hair, weight = 0.5): void {
  paper.artifact(() => {
    paper.doc
      .moveTo(paper.left, y)
      .lineTo(paper.left + paper.width, y)
      .lineWidth(weight)
      .strokeColor(ink)
      .stroke();
  });
}
