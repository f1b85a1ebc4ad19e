import { ovalPerimeterMm } from '../physics/oval.ts';
import type { Assumption } from './outcome.ts';
import { onBlock, type Subject } from './subject.ts';
import { USUAL } from './usual.ts';

type Measured = Pick<Subject, 'survey' | 'catalogue'>;

/** A length of the block, and the assumption behind it where it was not measured. */
export interface Width {
  readonly mm: number;
  readonly assumed: readonly Assumption[];
}

/** First pair of measures that were both taken. */
function pairOf(block: Measured, ...pairs: readonly (readonly [string, string])[]): readonly [number, number] | null {
  for (const [a, b] of pairs) {
    const [first, second] = [onBlock(block, a), onBlock(block, b)];
    if (first !== null && second !== null) return [first, second];
  }
  return null;
}

/**
 * Diameter of the round block that has the same way round, mm: closing a crack strains the whole way round, and an oval's
 * is what the tape says. From the tape, else length and width, else a usual crown.
 * SOURCE: geometry.
 */
export function diameterOf(block: Measured): Width {
  const tape = onBlock(block, 'circRopeMm');
  if (tape !== null) return { mm: tape / Math.PI, assumed: [] };
  const axes = pairOf(block, ['lengthMm', 'widthMm'], ['overallLengthMm', 'overallWidthMm']);
  if (axes) return { mm: ovalPerimeterMm(axes[0] / 2, axes[1] / 2) / Math.PI, assumed: [] };
  const mm = USUAL.circumferenceMm / Math.PI;
  return { mm, assumed: [{ code: 'diameter', mm }] };
}

/** Width of boards across their grain, which runs front to back, mm. SOURCE: own choice of axis. */
export function boardWidthOf(block: Measured): Width {
  const mm = onBlock(block, 'overallWidthMm') ?? onBlock(block, 'widthMm');
  if (mm !== null) return { mm, assumed: [] };
  return { mm: USUAL.boardWidthMm, assumed: [{ code: 'boardWidth', mm: USUAL.boardWidthMm }] };
}

export interface Dome {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly depthMm: number;
}

/** Length, width and mean depth of a crown, or the measures still wanted. */
export function domeOf(block: Measured): Dome | { readonly wanted: readonly string[] } {
  const lengthMm = onBlock(block, 'lengthMm');
  const widthMm = onBlock(block, 'widthMm');
  const depths = ['depthFrontMm', 'depthBackMm'].flatMap((id) => onBlock(block, id) ?? []);
  if (lengthMm === null || widthMm === null || depths.length === 0) {
    return {
      wanted: [
        ...(lengthMm === null ? ['lengthMm'] : []),
        ...(widthMm === null ? ['widthMm'] : []),
        ...(depths.length === 0 ? ['depthFrontMm'] : []),
      ],
    };
  }
  return { lengthMm, widthMm, depthMm: depths.reduce((sum, depth) => sum + depth, 0) / depths.length };
}
