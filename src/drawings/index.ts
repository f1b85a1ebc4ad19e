import { beret } from './beret.ts';
import { cartwheelBrim, flatBrim } from './brims.ts';
import { domeCrown, flatCrown } from './crowns.ts';
import { fullShape, insertSet } from './full-shapes.ts';
import { headband } from './headband.ts';
import { poupee } from './poupee.ts';
import { puzzle } from './puzzle.ts';
import { bandBlock, flange, pressingPan } from './rings.ts';
import { sculptedBrim } from './sculpted-brim.ts';
import type { BlockDrawing } from './shape.ts';
import { shapedCrown } from './shaped-crown.ts';
import { button, tip } from './small.ts';
import { sparterieToque } from './sparterie.ts';
import { stand, stretcher } from './stands.ts';
import { strawLast } from './straw-last.ts';
import { fascinator, pressingPiece } from './teardrops.ts';
import { turban } from './turban.ts';

const makers = {
  domeCrown,
  shapedCrown,
  flatCrown,
  flatBrim,
  sculptedBrim,
  cartwheelBrim,
  beret,
  fullShape,
  insertSet,
  puzzle,
  tip,
  fascinator,
  button,
  turban,
  bandBlock,
  headband,
  stand,
  poupee,
  strawLast,
  pressingPan,
  flange,
  stretcher,
  pressingPiece,
  sparterieToque,
} as const satisfies Record<string, () => BlockDrawing>;

export type DrawingId = keyof typeof makers;

/**
 * One drawing for every type of block, and one for the sparterie form. Each is worked out when it is first looked at and
 * then kept: all of them at once would cost a phone the better part of a second at the start.
 */
export const drawings: Readonly<Record<DrawingId, BlockDrawing>> = Object.defineProperties(
  {},
  Object.fromEntries(
    Object.entries(makers).map(([id, make]) => {
      let drawn: BlockDrawing | undefined;
      return [
        id,
        {
          enumerable: true,
          get: (): BlockDrawing => {
            drawn ??= make();
            return drawn;
          },
        },
      ];
    }),
  ),
) as Readonly<Record<DrawingId, BlockDrawing>>;

export const drawingIds = Object.keys(makers) as DrawingId[];
