import type { TagElement } from 'pdfkit';
import type { Face, Paper } from './paper.ts';

/** How text is set: face, size and distance of its lines in points, and its ink. */
export interface Look {
  readonly face: Face;
  readonly size: number;
  readonly leading: number;
  readonly ink: string;
}

export const INK = { black: '#1c1813', soft: '#4b4236', rule: '#8b7d66', hair: '#d5c8ae', red: '#861c2c' } as const;
export const GROUND = { caution: '#f8e6e2', picture: '#f1ead9' } as const;

const look = (face: Face, size: number, leading: number, ink: string = INK.black): Look => ({
  face,
  size,
  leading,
  ink,
});

export const LOOKS = {
  title: look('heading', 25, 28),
  h2: look('heading', 16, 20),
  h3: look('heading', 12, 15.5),
  lead: look('text', 10.5, 15),
  plain: look('text', 9, 13),
  small: look('text', 7.8, 11, INK.soft),
  term: look('text', 9, 13, INK.soft),
  caption: look('strong', 8.6, 12),
  cell: look('text', 8.2, 11.4),
  cellStrong: look('strong', 8.2, 11.4),
  cellHead: look('text', 8.2, 11.4, INK.soft),
  figure: look('text', 8.2, 11.2, INK.soft),
  /** So small that a hash stands whole on one line of a column, on either paper. */
  hash: look('text', 5.6, 8, INK.soft),
} as const satisfies Record<string, Look>;

/** Stands for a sign no face has. */
const UNKNOWN = '\uFFFD';
const NO_BREAK = '\u00A0';
/** Space at the end of a line, which takes no room. */
const END = /[ \t]+$/;
/** Signs that only steer how others are drawn. */
const UNSEEN = new Set(['\u007F', '\u00AD', '\u200B', '\uFE0E', '\uFE0F', '\uFEFF']);

/** Text cut into lines in the face it is set in. A line keeps the space it ends with, so that read aloud the words part. */
export interface SetText {
  readonly look: Look;
  readonly lines: readonly string[];
  readonly height: number;
}

/** Measuring and cutting of text, with what no face could show. */
export interface Type {
  set(text: string, look: Look, width: number): SetText;
  /** Width of the longest piece that is not cut, and of the whole in one line. */
  reach(text: string, look: Look): { readonly least: number; readonly whole: number };
  width(text: string, look: Look): number;
  /** Signs that were typed and that no face has. */
  readonly missing: ReadonlySet<string>;
}

/** Where a line may end: after spaces, and after a hyphen, a dash or a slash inside a word. Nothing of the text is lost. */
const PIECES = /[^ \t/–—-]*[ \t]+|[^ \t/–—-]*[/–—-]+[ \t]*|[^ \t/–—-]+/gu;

/** Number and unit, and short words that lean on what follows, stay on one line. */
const leaning = (text: string): string =>
  text
    .replace(/(\d[½¼¾⅛⅜⅝⅞]?) (?=(?:mm|cm|cm²|dm²|h|min|g|kg|kB|MB|in|%|°C|N|px)\b|%|°C)/gu, `$1${NO_BREAK}`)
    .replace(/\b(No\.|p\.|c\.) (?=\S)/gu, `$1${NO_BREAK}`);

export function typeFor({ doc }: Pick<Paper, 'doc'>): Type {
  const missing = new Set<string>();
  const known = new Map<string, boolean>();

  function has(face: Face, sign: string): boolean {
    const key = `${face} ${sign}`;
    let answer = known.get(key);
    if (answer === undefined) {
      doc.font(face);
      answer = doc._font.font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0);
      known.set(key, answer);
    }
    return answer;
  }

  /** The text in signs its face has. A heading in Greek is set in the strong face of the text. */
  function shown(text: string, { face, ...rest }: Look): { readonly look: Look; readonly text: string } {
    const signs = [...leaning(text.normalize('NFC'))].filter(
      (sign) => sign === '\n' || (sign >= ' ' && !UNSEEN.has(sign)),
    );
    const inHeading = face === 'heading' && signs.every((sign) => /\s/.test(sign) || has('heading', sign));
    const set: Face = face === 'heading' && !inHeading ? 'strong' : face;
    const kept = signs.map((sign) => {
      if (/\s/.test(sign) || has(set, sign)) return sign;
      missing.add(sign);
      return UNKNOWN;
    });
    return { look: { face: set, ...rest }, text: kept.join('') };
  }

  const advances: Record<Face, Map<string, number>> = { text: new Map(), strong: new Map(), heading: new Map() };
  /** Advance of a sign as a share of the type size. Added up without kerning: thousands of times faster, and near enough to cut lines by. */
  function advance(sign: string, face: Face): number {
    let width = advances[face].get(sign);
    if (width === undefined) {
      doc.font(face);
      const { font } = doc._font;
      width = font.glyphForCodePoint(sign.codePointAt(0) ?? 0).advanceWidth / font.unitsPerEm;
      advances[face].set(sign, width);
    }
    return width;
  }
  const wide = (text: string, { face, size }: Look): number => {
    let sum = 0;
    for (const sign of text) sum += advance(sign, face);
    return sum * size;
  };
  const bare = (text: string, look: Look): number => wide(text.replace(END, ''), look);

  /** A piece too long for a line, cut where it must be. */
  function chopped(piece: string, look: Look, width: number): string[] {
    const parts: string[] = [];
    let part = '';
    for (const sign of piece) {
      if (part && bare(part + sign, look) > width) {
        parts.push(part);
        part = '';
      }
      part += sign;
    }
    return [...parts, part];
  }

  function linesOf(text: string, look: Look, width: number): string[] {
    const lines: string[] = [];
    for (const paragraph of text.split('\n')) {
      let line = '';
      for (const [piece] of paragraph.matchAll(PIECES)) {
        if (line === '' || bare(line + piece, look) <= width) line += piece;
        else {
          lines.push(line);
          line = piece;
        }
        if (bare(line, look) > width) {
          const parts = chopped(line, look, width);
          line = parts.pop() ?? '';
          lines.push(...parts);
        }
      }
      lines.push(line);
    }
    return lines;
  }

  return {
    missing,
    width: (text, look) => {
      const { look: set, text: kept } = shown(text, look);
      return wide(kept, set);
    },
    set(text, look, width) {
      const { look: set, text: kept } = shown(text, look);
      const lines = linesOf(kept, set, width);
      return { look: set, lines, height: lines.length * set.leading };
    },
    reach(text, look) {
      const { look: set, text: kept } = shown(text, look);
      const pieces = [...kept.matchAll(PIECES)].map(([piece]) => bare(piece, set));
      return { least: Math.max(0, ...pieces), whole: Math.max(...kept.split('\n').map((line) => wide(line, set))) };
    },
  };
}

/** First base line below the top of a line, as a share of its leading: what is left over stands half above. */
const baseline = ({ size, leading }: Look): number => (leading - size) / 2 + size * 0.82;

/** Draws lines at a place. The caller says what element of the tag tree they are. */
export function drawLines(
  { doc }: Pick<Paper, 'doc'>,
  lines: readonly string[],
  look: Look,
  place: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly side?: 'left' | 'right' | 'middle';
  },
): void {
  doc.font(look.face).fontSize(look.size).fillColor(look.ink);
  for (const [index, line] of lines.entries()) {
    if (line === '') continue;
    const free = place.width - doc.widthOfString(line.replace(END, ''));
    const moved = place.side === 'right' ? free : place.side === 'middle' ? free / 2 : 0;
    const y = place.y + index * look.leading + baseline(look);
    doc.text(line, place.x + moved, y, { lineBreak: false, baseline: 'alphabetic' });
  }
}

/** Lines of an element as its content, on this page. */
export function addLines(
  paper: Paper,
  element: TagElement,
  set: Pick<SetText, 'lines' | 'look'>,
  place: Parameters<typeof drawLines>[3],
): void {
  element.add(() => drawLines(paper, set.lines, set.look, place));
}
