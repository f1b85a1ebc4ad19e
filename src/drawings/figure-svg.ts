import { type FigureShape, type FigureWishes, figureShapes, INK, keyShapes } from './figure-shapes.ts';
import type { FigureMark } from './placing.ts';
import type { BlockDrawing } from './shape.ts';

/** The figure as one SVG document: for the report, which has no style sheet of ours and may be opened in fifty years. */

/** Text as XML takes it: signs of its own spelt out, and control characters, which it does not allow, left out. */
const escaped = (text: string): string =>
  [...text]
    .filter((sign) => sign >= ' ' || sign === '\n' || sign === '\t')
    .join('')
    .replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

const fixed = (value: number): string => String(Math.round(value * 100) / 100);

function written(shape: FigureShape): string {
  const { at } = shape;
  if (shape.kind === 'words') {
    const { from, size, look, colour, text } = shape;
    const weight = look === 'bold' ? 'font-weight="700"' : 'font-style="italic"';
    return `<text x="${fixed(at[0])}" y="${fixed(at[1])}" font-size="${fixed(size)}" ${weight} text-anchor="${from}" fill="${colour}" stroke="none">${escaped(text)}</text>`;
  }
  const { d, scale, fill, line } = shape;
  const moves = [
    at[0] || at[1] ? `translate(${fixed(at[0])} ${fixed(at[1])})` : '',
    scale === 1 ? '' : `scale(${Math.round(scale * 1000) / 1000})`,
  ].filter(Boolean);
  const pen = line
    ? `${line.colour === INK ? '' : ` stroke="${line.colour}"`} stroke-width="${fixed(line.width)}"${line.dashed ? ' stroke-dasharray="4 3"' : ''}`
    : ' stroke="none"';
  return `<path d="${d}"${moves.length > 0 ? ` transform="${moves.join(' ')}"` : ''} fill="${fill ?? 'none'}"${pen}/>`;
}

/**
 * A drawing with its marks as a standalone SVG document, in the wishes of `figureShapes`.
 * @param title read by screen readers; any text, it is escaped
 */
export function figureSvg(
  drawing: BlockDrawing,
  marks: readonly FigureMark[],
  { title, ...wishes }: FigureWishes & { readonly title: string },
): string {
  const { width, height, shapes } = figureShapes(drawing, marks, wishes);
  const times = wishes.width / 320;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="${fixed(width * times)}" height="${fixed(height * times)}" viewBox="0 0 ${width} ${height}" font-family="Georgia, 'Times New Roman', serif" stroke="${INK}" stroke-linecap="round" stroke-linejoin="round" fill-rule="evenodd">` +
    `<title>${escaped(title)}</title>${shapes.map(written).join('')}</svg>`
  );
}

/** The shape of a mechanism, as high as a line of text; what it stands for is written beside it. */
export const keySvg = (mechanism: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" aria-hidden="true" width="16" height="16" viewBox="-1.4 -1.4 2.8 2.8" stroke-linejoin="round" fill-rule="evenodd">${keyShapes(mechanism).map(written).join('')}</svg>`;
