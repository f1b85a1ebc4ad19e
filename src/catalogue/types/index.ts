import { besideTheBlock } from './beside-the-block.ts';
import { brims } from './brims.ts';
import { crowns } from './crowns.ts';
import { fullAndPuzzle } from './full-and-puzzle.ts';
import { small } from './small.ts';

const { domeCrown, shapedCrown, flatCrown, tipBlock } = crowns;
const { flange, ...brimBlocks } = brims;

/** In the order a picker shows them: the commonest first. */
export const types = {
  domeCrown,
  shapedCrown,
  flatCrown,
  ...brimBlocks,
  ...fullAndPuzzle,
  tipBlock,
  ...small,
  ...besideTheBlock,
  flange,
} as const;
export type BlockTypeId = keyof typeof types;
