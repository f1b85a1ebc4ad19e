import { ellipseCircumferenceMm } from './ellipse.ts';
import type { HatBlock, Survey } from './records.ts';

type Measures = Survey['measures'];

/** Tape first, then the opening of a brim; last an oval's length and width, which say the same less surely. */
export function headMm(measures: Measures): number | null {
  const tape = measures.circRopeMm ?? measures.openingCircMm;
  if (tape !== undefined) return tape;
  const axes = [
    [measures.lengthMm, measures.widthMm],
    [measures.openingLengthMm, measures.openingWidthMm],
  ].find(([long, wide]) => long !== undefined && wide !== undefined);
  const [length, width] = axes ?? [];
  if (length === undefined || width === undefined || !(length > 0 && width > 0)) return null;
  return ellipseCircumferenceMm({ lengthMm: length, widthMm: width });
}

/** Head size in whole centimetres, as the trade counts; null when nobody measured it. */
export function headCm(measures: Measures): number | null {
  const mm = headMm(measures);
  return mm === null || !(mm > 0) ? null : Math.round(mm / 10);
}

/** Type and size under which copies count as one shape; null when either is not known: it may be like no other. */
export function shapeOf({ blockType }: Pick<HatBlock, 'blockType'>, measures: Measures): string | null {
  const size = headCm(measures);
  return blockType === null || size === null ? null : `${blockType} ${size}`;
}
