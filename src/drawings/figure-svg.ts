import { layOut } from './mark-shapes.ts';
import { type FigureMark, type PlacedMark, placeMarks, viewsToShow } from './placing.ts';
import { reachAt } from './reach.ts';
import type { BlockDrawing, DrawingView, Stroke, ViewId } from './shape.ts';

/** The figure as one SVG document: for the report, which has no style sheet of ours and may be opened in fifty years. */

const INK = '#211d18';
const PAPER = '#fffdf7';
const RED = '#8f1d2f';

/** Text as XML takes it: signs of its own spelt out, and control characters, which it does not allow, left out. */
const escaped = (text: string): string =>
  [...text]
    .filter((sign) => sign >= ' ' || sign === '\n' || sign === '\t')
    .join('')
    .replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

const fixed = (value: number): string => String(Math.round(value * 100) / 100);

/** Thickness of each line in view units; in a small figure the pen does not shrink with the paper. */
const thickness: Record<Stroke['weight'], number> = { contour: 1.7, detail: 1, hatch: 0.6, hidden: 0.9, ink: 0 };

const fillOf = ({ weight, fill }: Stroke): string =>
  weight === 'ink' ? INK : fill === 'paper' ? PAPER : fill === 'shade' ? '#e3dccd' : 'none';

const drawn = (stroke: Stroke, bold: number): string =>
  `<path d="${stroke.d}" fill="${fillOf(stroke)}" ` +
  (stroke.weight === 'ink' ? 'stroke="none"' : `stroke-width="${fixed(thickness[stroke.weight] * bold)}"`) +
  `${stroke.weight === 'hidden' ? ' stroke-dasharray="4 3"' : ''}/>`;

function drawnMark({ mark, at }: PlacedMark, reach: number): string {
  const { d, counter: half, scale, solid, outline, ringed, body, textSize, textY } = layOut(mark, reach);
  const [tone, counter] = solid ? [RED, PAPER] : [PAPER, RED];
  return (
    `<g transform="translate(${fixed(at[0])} ${fixed(at[1])})"><g transform="scale(${fixed(scale)})" stroke-linejoin="round">` +
    `<path d="${d}" fill="${PAPER}" stroke="${PAPER}" stroke-width="0.42"/>` +
    (ringed ? `<path d="${d}" fill="none" stroke="${RED}" stroke-width="0.1" transform="scale(1.06)"/>` : '') +
    `<g transform="scale(${body})"><path d="${d}" fill="${tone}" stroke="${RED}" stroke-width="${outline}"/>` +
    (half ? `<path d="${half}" fill="${counter}" stroke="none"/>` : '') +
    `</g></g><text y="${fixed(textY)}" font-size="${fixed(textSize)}" font-weight="700" text-anchor="middle" fill="${counter}" stroke="none">${mark.number}</text></g>`
  );
}

/** The tie-on label that stands for the whole object is only drawn when something is written on it. */
function drawnTag(view: DrawingView, placed: readonly PlacedMark[]): string {
  const tag = placed.some(({ mark }) => mark.zone === 'whole') && view.zones.find(({ zone }) => zone === 'whole');
  return tag ? `<path d="${tag.d}" fill="${PAPER}" stroke-width="1"/>` : '';
}

const words = (x: number, y: number, size: number, text: string): string =>
  `<text x="${fixed(x)}" y="${fixed(y)}" font-size="${size}" font-style="italic" text-anchor="middle" fill="${INK}" stroke="none">${escaped(text)}</text>`;

function drawnView(view: DrawingView, placed: readonly PlacedMark[], reach: number, width: number): string {
  const small = width < 240;
  const here = placed.filter((mark) => mark.view === view.id);
  return (
    view.outline.map((stroke) => drawn(stroke, boldnessAt(width))).join('') +
    drawnTag(view, here) +
    view.lettering
      .filter(({ role }) => !small || role !== 'front')
      .map(({ at, text }) => words(at[0], at[1] + 4, 11.5, text))
      .join('') +
    (view.numbered ? view.zones : [])
      .filter(({ part }) => part !== undefined)
      .map(({ label, part }) => words(label[0], label[1] + 6, 17, String(part)))
      .join('') +
    here.map((mark) => drawnMark(mark, reach)).join('')
  );
}

const boldnessAt = (width: number): number => Math.max(1, (0.85 * 320) / width);

/**
 * A drawing with its marks as a standalone SVG document.
 * @param marks findings to show; those of a zone that is not drawn, or that find no room, are counted in a corner
 * @param width of one view in CSS pixels; the height follows. Below 240 the small words are left out.
 * @param across the views side by side, for a page wider than a phone; below one another without it
 * @param title read by screen readers; any text, it is escaped
 */
export function figureSvg(
  drawing: BlockDrawing,
  marks: readonly FigureMark[],
  { width, title, view: only, across = false }: { width: number; title: string; view?: ViewId; across?: boolean },
): string {
  const views = viewsToShow(drawing, only);
  const reach = reachAt(width);
  const { placed, left } = placeMarks(views, marks, reach);
  const heights = views.map(({ viewBox }) => viewBox[1]);
  const tall = across ? Math.max(...heights) : heights.reduce((sum, height) => sum + height, 0);
  const wide = across ? 320 * views.length : 320;
  let top = 0;
  const body = views
    .map((view, index) => {
      // Side by side they stand on one ground.
      const at = across ? `${index * 320} ${tall - view.viewBox[1]}` : `0 ${top}`;
      top += view.viewBox[1];
      return `<g transform="translate(${at})">${drawnView(view, placed, reach, width)}</g>`;
    })
    .join('');
  const rest =
    left.length > 0
      ? `<text x="${wide - 8}" y="${reach * 1.6}" font-size="${fixed(reach * 1.4)}" font-weight="700" text-anchor="end" fill="${RED}" stroke="none">+${left.length}</text>`
      : '';
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="${fixed((wide * width) / 320)}" height="${fixed((tall * width) / 320)}" viewBox="0 0 ${wide} ${tall}" font-family="Georgia, 'Times New Roman', serif" stroke="${INK}" stroke-linecap="round" stroke-linejoin="round" fill-rule="evenodd">` +
    `<title>${escaped(title)}</title>${body}${rest}</svg>`
  );
}
