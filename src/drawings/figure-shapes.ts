import { layOut, shapeOfMechanism } from './mark-shapes.ts';
import { type FigureMark, type PlacedMark, placeMarks, viewsToShow } from './placing.ts';
import { reachAt } from './reach.ts';
import type { BlockDrawing, DrawingView, Stroke, ViewId } from './shape.ts';

/*
 * The figure as plain shapes in the inks of paper: what `figure-svg.ts` writes as SVG and the PDF writer as lines of its
 * own. Lengths in view units; a shape is moved to `at` and then made `scale` times as large, its line with it.
 */

export const INK = '#211d18';
export const PAPER = '#fffdf7';
export const RED = '#8f1d2f';
const SHADE = '#e3dccd';

export interface FigurePath {
  readonly kind: 'path';
  readonly d: string;
  readonly at: readonly [number, number];
  readonly scale: number;
  /** Even-odd. */
  readonly fill: string | null;
  readonly line: { readonly colour: string; readonly width: number; readonly dashed: boolean } | null;
}

export interface FigureWords {
  readonly kind: 'words';
  /** Of the line the words stand on. */
  readonly at: readonly [number, number];
  readonly from: 'middle' | 'end';
  readonly size: number;
  readonly look: 'italic' | 'bold';
  readonly colour: string;
  readonly text: string;
}

export type FigureShape = FigurePath | FigureWords;

export interface Figure {
  readonly width: number;
  readonly height: number;
  /** Back to front. */
  readonly shapes: readonly FigureShape[];
  /** Numbers of the findings that are only counted in the corner. */
  readonly left: readonly number[];
}

/** Thickness of each line in view units; in a small figure the pen does not shrink with the paper. */
const thickness: Record<Stroke['weight'], number> = { contour: 1.7, detail: 1, hatch: 0.6, hidden: 0.9, ink: 0 };

const fillOf = ({ weight, fill }: Stroke): string | null =>
  weight === 'ink' ? INK : fill === 'paper' ? PAPER : fill === 'shade' ? SHADE : null;

type Place = readonly [number, number];

const penStroke = (stroke: Stroke, bold: number, at: Place): FigurePath => ({
  ...{ kind: 'path', d: stroke.d, at, scale: 1, fill: fillOf(stroke) },
  line:
    stroke.weight === 'ink'
      ? null
      : { colour: INK, width: thickness[stroke.weight] * bold, dashed: stroke.weight === 'hidden' },
});

const solidLine = (colour: string, width: number) => ({ colour, width, dashed: false });

/** A numbered mark: a light halo, its ring where it is of the worst grade, the shape of its mechanism, the number. */
function markShapes({ mark, at: [x, y] }: PlacedMark, reach: number, [left, top]: Place): FigureShape[] {
  const { d, counter: half, scale, solid, outline, ringed, body, textSize, textY } = layOut(mark, reach);
  const [tone, counter] = solid ? [RED, PAPER] : [PAPER, RED];
  const at: Place = [left + x, top + y];
  return [
    { kind: 'path', d, at, scale, fill: PAPER, line: solidLine(PAPER, 0.42) },
    ...(ringed ? [{ kind: 'path' as const, d, at, scale: scale * 1.06, fill: null, line: solidLine(RED, 0.1) }] : []),
    { kind: 'path', d, at, scale: scale * body, fill: tone, line: solidLine(RED, outline) },
    ...(half ? [{ kind: 'path' as const, d: half, at, scale: scale * body, fill: counter, line: null }] : []),
    {
      ...{ kind: 'words', at: [at[0], at[1] + textY], from: 'middle', size: textSize, look: 'bold' },
      ...{ colour: counter, text: String(mark.number) },
    },
  ];
}

/** The shape of a mechanism alone, for a key beside the figure: round (0, 0), about 1.3 to each side. */
export function keyShapes(mechanism: string): readonly FigureShape[] {
  const { d, counter } = shapeOfMechanism(mechanism);
  const at: Place = [0, 0];
  return [
    { kind: 'path', d, at, scale: 1, fill: PAPER, line: solidLine(RED, 0.22) },
    ...(counter ? [{ kind: 'path' as const, d: counter, at, scale: 1, fill: RED, line: null }] : []),
  ];
}

/** The tie-on label that stands for the whole object is only drawn when something is written on it. */
function tagShapes(view: DrawingView, placed: readonly PlacedMark[], at: Place): FigureShape[] {
  const tag = placed.some(({ mark }) => mark.zone === 'whole') && view.zones.find(({ zone }) => zone === 'whole');
  return tag ? [{ kind: 'path', d: tag.d, at, scale: 1, fill: PAPER, line: solidLine(INK, 1) }] : [];
}

const lettering = (at: Place, size: number, text: string): FigureWords => ({
  ...{ kind: 'words', at, from: 'middle', size, look: 'italic', colour: INK, text },
});

function viewShapes(
  view: DrawingView,
  placed: readonly PlacedMark[],
  reach: number,
  width: number,
  [left, top]: Place,
): FigureShape[] {
  const here = placed.filter((mark) => mark.view === view.id);
  const moved = ([x, y]: Place, down: number): Place => [left + x, top + y + down];
  return [
    ...view.outline.map((stroke) => penStroke(stroke, boldnessAt(width), [left, top])),
    ...tagShapes(view, here, [left, top]),
    ...view.lettering
      .filter(({ role }) => width >= SMALL || role !== 'front')
      .map(({ at, text }) => lettering(moved(at, 4), 11.5, text)),
    ...(view.numbered ? view.zones : [])
      .filter(({ part }) => part !== undefined)
      .map(({ label, part }) => lettering(moved(label, 6), 17, String(part))),
    ...here.flatMap((mark) => markShapes(mark, reach, [left, top])),
  ];
}

/** Below this width of a view, in CSS pixels, the small words are left out. */
const SMALL = 240;
const boldnessAt = (width: number): number => Math.max(1, (0.85 * 320) / width);

export interface FigureWishes {
  /** Of one view in CSS pixels; the height follows. */
  readonly width: number;
  readonly view?: ViewId;
  /** The views side by side, for a page wider than a phone; below one another without it. */
  readonly across?: boolean;
}

/**
 * A drawing with its marks.
 * @param marks findings to show; those of a zone that is not drawn, or that find no room, are counted in a corner
 */
export function figureShapes(
  drawing: BlockDrawing,
  marks: readonly FigureMark[],
  { width, view: only, across = false }: FigureWishes,
): Figure {
  const views = viewsToShow(drawing, only);
  const reach = reachAt(width);
  const { placed, left } = placeMarks(views, marks, reach);
  const heights = views.map(({ viewBox }) => viewBox[1]);
  const tall = across ? Math.max(...heights) : heights.reduce((sum, height) => sum + height, 0);
  const wide = across ? 320 * views.length : 320;
  let top = 0;
  const shapes = views.flatMap((view, index) => {
    // Side by side they stand on one ground.
    const at: Place = across ? [index * 320, tall - view.viewBox[1]] : [0, top];
    top += view.viewBox[1];
    return viewShapes(view, placed, reach, width, at);
  });
  if (left.length > 0)
    shapes.push({
      ...{ kind: 'words', at: [wide - 8, reach * 1.6], from: 'end', size: reach * 1.4, look: 'bold' },
      ...{ colour: RED, text: `+${left.length}` },
    });
  return { width: wide, height: tall, shapes, left: left.map(({ number }) => number).sort((a, b) => a - b) };
}
