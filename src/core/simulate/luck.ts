import { at, isConstant, type QuantileTable } from './quantile-table.ts';
import { uniforms } from './random.ts';

/** The draws of one seed, by purpose. */
export interface Luck {
  readonly seed: number;
  readonly count: number;
  /** Numbers in (0, 1), one for each draw. */
  draw(purpose: string): Float64Array;
  /** The same through a distribution: a quantity for each draw. */
  through(purpose: string, table: QuantileTable): Float64Array;
}

/** Purposes remembered; the whole catalogue needs some 300. */
const MOST_KEPT = 600;

/** Remembers what was drawn: only what is new needs new draws. */
export function createLuck(seed: number, count: number): Luck {
  const drawn = new Map<string, Float64Array>();
  const columns = new Map<string, Map<QuantileTable, Float64Array>>();

  function draw(purpose: string): Float64Array {
    let values = drawn.get(purpose);
    if (!values) {
      if (drawn.size >= MOST_KEPT) drawn.clear();
      values = uniforms(purpose, seed, count);
      drawn.set(purpose, values);
    }
    return values;
  }

  function through(purpose: string, table: QuantileTable): Float64Array {
    let byTable = columns.get(purpose);
    if (!byTable) {
      if (columns.size >= MOST_KEPT) columns.clear();
      byTable = new Map();
      columns.set(purpose, byTable);
    }
    const known = byTable.get(table);
    if (known) return known;
    // An owner's pace changes with every job logged; the one before is of no more use.
    if (byTable.size >= 16) byTable.clear();
    let column: Float64Array;
    if (isConstant(table)) column = new Float64Array(count).fill(at(table, 0));
    else {
      const luck = draw(purpose);
      column = new Float64Array(count);
      for (let i = 0; i < count; i += 1) column[i] = at(table, luck[i] as number);
    }
    byTable.set(table, column);
    return column;
  }

  return { seed, count, draw, through };
}

/**
 * The seed the app asks with, whatever the block: lots are compared on the same luck, and what was drawn for one serves
 * the next. With a seed for each block a table of sixty lots took 1.7 times as long.
 */
export const COMMON_SEED = 1_851;

let kept: Luck | undefined;

/** The luck of a seed; the last one is kept, since every edit and every block asks for it again. */
export function luckOf(seed: number, count: number): Luck {
  if (kept?.seed !== seed || kept.count !== count) kept = createLuck(seed, count);
  return kept;
}
