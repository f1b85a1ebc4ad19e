import type { BlockType } from '../../core/catalogue.ts';
import { memory } from '../source.ts';

const order = memory('From memory, order of magnitude for a block made to order; the owner’s own list overrides.');
const usual = memory('Usual used price as a share of new, from memory; the owner’s own list overrides.');

/** Make-to-order price in whole pounds, stored in pence. */
export const pounds = (low: number, high: number): BlockType['newPrice'] => ({
  low: low * 100,
  high: high * 100,
  source: order,
});

/** Used price as a share of new: 0.3 is 30 %. */
export const ofNew = (low: number, high: number): BlockType['usedShare'] => ({ low, high, source: usual });
