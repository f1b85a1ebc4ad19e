import type { Figure, FigureShape } from '../../drawings/figure-shapes.ts';
import type { OverlayShape } from '../../drawings/photo-overlay.ts';
import type { Paper } from './paper.ts';

/** Drawings as lines of the PDF itself, not as pictures: sharp at any size. */

function drawShape({ doc }: Paper, shape: FigureShape): void {
  const [x, y] = shape.at;
  doc.save().translate(x, y);
  if (shape.kind === 'words') {
    doc
      .font(shape.look === 'bold' ? 'strong' : 'text')
      .fontSize(shape.size)
      .fillColor(shape.colour);
    // The drawing's numbers are set for figures 0.72 of the type size high; these are 0.73.
    const width = doc.widthOfString(shape.text);
    doc.text(shape.text, shape.from === 'end' ? -width : -width / 2, 0, { lineBreak: false, baseline: 'alphabetic' });
  } else {
    const { d, scale, fill, line } = shape;
    if (scale !== 1) doc.scale(scale);
    doc.path(d);
    if (line) {
      doc.lineWidth(line.width).lineCap('round').lineJoin('round');
      if (line.dashed) doc.dash(4, { space: 3 });
    }
    if (line && fill) doc.fillAndStroke(fill, line.colour, 'even-odd');
    else if (fill) doc.fillColor(fill).fill('even-odd');
    else if (line) doc.strokeColor(line.colour).stroke();
  }
  doc.restore();
}

/** A figure with its top left corner at a place, `width` points wide. */
export function drawFigure(paper: Paper, { width: units, shapes }: Figure, x: number, y: number, width: number): void {
  paper.doc
    .save()
    .translate(x, y)
    .scale(width / units);
  for (const shape of shapes) drawShape(paper, shape);
  paper.doc.restore();
}

/** Shapes drawn round (0, 0), with that at a place. */
export function drawMark(paper: Paper, shapes: readonly FigureShape[], x: number, y: number, scale: number): void {
  paper.doc.save().translate(x, y).scale(scale);
  for (const shape of shapes) drawShape(paper, shape);
  paper.doc.restore();
}

const number = (value: string | number | undefined): number => Number(value ?? 0);

function drawOverlayShape({ doc }: Paper, { tag, attributes: a, text = '' }: OverlayShape): void {
  const fill = a.fill === 'none' ? undefined : String(a.fill);
  if (tag === 'text') {
    doc
      .font('strong')
      .fontSize(number(a['font-size']))
      .fillColor(fill ?? '#000');
    doc.text(text, number(a.x) - doc.widthOfString(text) / 2, number(a.y), {
      lineBreak: false,
      baseline: 'alphabetic',
    });
    return;
  }
  if (tag === 'path') doc.path(String(a.d));
  else doc.roundedRect(number(a.x), number(a.y), number(a.width), number(a.height), number(a.rx));
  doc.lineWidth(number(a['stroke-width'])).lineCap('round').lineJoin('round');
  if (fill) doc.fillAndStroke(fill, String(a.stroke));
  else doc.strokeColor(String(a.stroke)).stroke();
}

/** Marks and scale bar over a picture that was drawn with its top left corner at a place. */
export function drawOverlay(
  paper: Paper,
  shapes: readonly OverlayShape[],
  { x, y, scale, width, height }: { x: number; y: number; scale: number; width: number; height: number },
): void {
  const { doc } = paper;
  doc.save().rect(x, y, width, height).clip().translate(x, y).scale(scale);
  for (const shape of shapes) drawOverlayShape(paper, shape);
  doc.restore();
}
