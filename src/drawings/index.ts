import { bandBlock } from './blocks/band-block.ts';
import { beret } from './blocks/beret.ts';
import { cartwheelBrim, flatBrim } from './blocks/brims.ts';
import { fullShape } from './blocks/cloche.ts';
import { domeCrown, flatCrown } from './blocks/crowns.ts';
import { fascinator } from './blocks/fascinator.ts';
import { flange } from './blocks/flange.ts';
import { headband } from './blocks/headband.ts';
import { insertSet } from './blocks/insert-set.ts';
import { poupee } from './blocks/poupee.ts';
import { pressingPan } from './blocks/pressing-pan.ts';
import { pressingPiece } from './blocks/pressing-piece.ts';
import { puzzle } from './blocks/puzzle.ts';
import { sculptedBrim } from './blocks/sculpted-brim.ts';
import { shapedCrown } from './blocks/shaped-crown.ts';
import { button, tip } from './blocks/small.ts';
import { sparterieToque } from './blocks/sparterie.ts';
import { stand } from './blocks/stand.ts';
import { strawLast } from './blocks/straw-last.ts';
import { stretcher } from './blocks/stretcher.ts';
import { turban } from './blocks/turban.ts';
import type { BlockDrawing } from './shape.ts';

/** One drawing for every type of block, and one for the sparterie form. Views are worked out when first looked at. */
export const drawings = {
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
} as const satisfies Record<string, BlockDrawing>;

export type DrawingId = keyof typeof drawings;
export const drawingIds = Object.keys(drawings) as DrawingId[];
