import { type PictureSize, toPixel } from '../core/mark-geometry.ts';
import type { ReportPhoto } from '../core/report.ts';
import { layOutMark, MARK_DARK, MARK_PALE } from './photo-marks.ts';

/** One element of an overlay: its tag, its attributes, and the words in it. */
export interface OverlayShape {
  readonly tag: 'path' | 'rect' | 'text';
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly text?: string;
}

/** Width, in px, at which a photograph of a report is looked at; numbers and bar keep their size against it. */
const USUAL_WIDTH = 420;

const twoTone = (d: string, unit: number): OverlayShape[] =>
  (
    [
      [MARK_DARK, 4],
      [MARK_PALE, 1.8],
    ] as const
  ).map(([stroke, width]) => ({
    tag: 'path',
    attributes: {
      ...{ d, fill: 'none', stroke, 'stroke-width': round(width * unit) },
      ...{ 'stroke-linecap': 'round', 'stroke-linejoin': 'round' },
    },
  }));

const round = (value: number): number => Math.round(value * 10) / 10;

/** Width of words in bold type 12 high, by the broadest of the faces they may be set in: the badge comes before the face. */
const widthOf = (words: string): number =>
  [...words].reduce((sum, sign) => sum + (/[mwMW%@]/.test(sign) ? 12 : /[ .,:;'ijlI|]/.test(sign) ? 4.5 : 8.6), 0);

function badge(words: string, [x, y]: readonly [number, number], unit: number, size: PictureSize): OverlayShape[] {
  const width = Math.max(20, 12 + widthOf(words)) * unit;
  const high = 20 * unit;
  const within = (place: number, half: number, whole: number): number =>
    Math.min(Math.max(place, half), Math.max(half, whole - half));
  const cx = within(x, width / 2, size.width);
  const cy = within(y, high / 2, size.height);
  return [
    {
      tag: 'rect',
      attributes: {
        ...{ x: round(cx - width / 2), y: round(cy - high / 2), width: round(width), height: round(high) },
        ...{ rx: round(high / 2), fill: MARK_DARK, stroke: MARK_PALE, 'stroke-width': round(1.2 * unit) },
      },
    },
    {
      tag: 'text',
      attributes: {
        ...{ x: round(cx), y: round(cy + 4.2 * unit), 'font-size': round(12 * unit), 'font-weight': 600 },
        ...{ 'text-anchor': 'middle', fill: MARK_PALE, 'font-family': 'system-ui, sans-serif' },
      },
      text: words,
    },
  ];
}

/** The marks of a report's photograph and its scale bar, in pixels of the photograph; lines first, so that numbers stay legible. */
export function photoOverlay(photo: Pick<ReportPhoto, 'marks' | 'scaleBar' | 'width' | 'height'>): OverlayShape[] {
  const { width, height } = photo;
  const size = { width, height };
  const unit = width / USUAL_WIDTH;
  const laid = photo.marks.map((mark) => ({ mark, lines: layOutMark(mark.shape, mark.points, size, unit) }));
  const lines = laid.flatMap(({ lines: { d } }) => (d ? twoTone(d, unit) : []));
  const words = laid.flatMap(({ mark, lines: { badge: at } }) => (mark.label ? badge(mark.label, at, unit, size) : []));
  return [...lines, ...words, ...bar(photo, unit)];
}

function bar(
  { scaleBar, width, height }: Pick<ReportPhoto, 'scaleBar' | 'width' | 'height'>,
  unit: number,
): OverlayShape[] {
  if (!scaleBar) return [];
  const size = { width, height };
  const [x1, y] = toPixel(scaleBar.from, size);
  const [x2] = toPixel(scaleBar.to, size);
  const tick = 5 * unit;
  const d = `M${round(x1)} ${round(y - tick)}V${round(y + tick)}M${round(x1)} ${round(y)}H${round(x2)}M${round(x2)} ${round(y - tick)}V${round(y + tick)}`;
  return [...twoTone(d, unit), ...badge(`${scaleBar.lengthMm} mm`, [(x1 + x2) / 2, y - 16 * unit], unit, size)];
}
