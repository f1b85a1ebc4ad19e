import { middleOf, type PictureSize, type Spot, toPixel } from '../core/mark-geometry.ts';
import type { MarkShape } from '../core/records.ts';

/*
 * Marks over a photograph as lines, the same on screen and in the report. Each line is drawn twice, a broad dark one and
 * a narrow pale one on it: one of the two shows on dark felt and on pale wood.
 */

export const MARK_DARK = '#17120b';
export const MARK_PALE = '#fff3c4';

export interface PhotoMarkLines {
  /** Path in pixels of the picture; empty for words alone. */
  readonly d: string;
  /** Where the number stands, clear of what the mark points at. */
  readonly badge: readonly [number, number];
}

const fixed = (value: number): string => String(Math.round(value * 10) / 10);
const joined = (places: readonly (readonly [number, number])[], close: boolean): string =>
  `M${places.map(([x, y]) => `${fixed(x)} ${fixed(y)}`).join('L')}${close ? 'Z' : ''}`;

const ellipse = (cx: number, cy: number, a: number, b: number): string =>
  `M${fixed(cx - a)} ${fixed(cy)}a${fixed(a)} ${fixed(b)} 0 1 0 ${fixed(2 * a)} 0a${fixed(a)} ${fixed(b)} 0 1 0 ${fixed(-2 * a)} 0Z`;

/** A ring round a spot: holes and patches. */
export const ring = ([x, y]: readonly [number, number], radius: number): string => ellipse(x, y, radius, radius);

/**
 * A mark laid out in pixels of the picture.
 * @param unit pixels of the picture for one on the screen or paper, for what keeps its size there
 */
export function layOutMark(shape: MarkShape, points: readonly Spot[], size: PictureSize, unit: number): PhotoMarkLines {
  const places = points.map((spot) => toPixel(spot, size));
  const first = places[0] ?? [0, 0];
  const last = places.at(-1) ?? first;
  const middle = toPixel(middleOf(points.length > 0 ? points : [[0, 0]]), size);
  const beside = ([x, y]: readonly [number, number]): readonly [number, number] => {
    const off = 18 * unit;
    // Towards the inside of the picture, so that it is not cut off.
    return [x > size.width / 2 ? x - off : x + off, y > size.height / 2 ? y - off : y + off];
  };
  switch (shape) {
    case 'point':
      return { d: ring(first, 7 * unit), badge: beside(first) };
    case 'text':
      return { d: '', badge: first };
    case 'line':
    case 'polyline':
      return { d: joined(places, false), badge: beside(places[Math.floor(places.length / 2)] ?? first) };
    case 'region':
      return { d: joined(places, true), badge: middle };
    case 'rectangle':
      return {
        d: joined([first, [last[0], first[1]], last, [first[0], last[1]]], true),
        badge: middle,
      };
    case 'ellipse':
      return {
        d: ellipse(
          (first[0] + last[0]) / 2,
          (first[1] + last[1]) / 2,
          Math.abs(first[0] - last[0]) / 2,
          Math.abs(first[1] - last[1]) / 2,
        ),
        badge: middle,
      };
  }
}
