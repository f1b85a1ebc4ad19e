import type { ChoiceLot } from './choice.ts';

/** A block of a shape that several lots of the search hold: its worth by the number of copies, never rising, never below 0. */
interface SharedBlock {
  readonly shape: number;
  readonly worth: readonly number[];
}

/** What a lot adds on its own, and its blocks whose worth hangs on the other lots taken. */
export interface Shared {
  /** Worth of its other blocks less price and disposal. */
  readonly alone: number;
  readonly blocks: readonly SharedBlock[];
  /** The shapes of those blocks, each once. */
  readonly shapes: readonly number[];
}

/** A block's worth when so many copies are there, itself among them. */
export const worthAt = ({ worth }: SharedBlock, copies: number): number =>
  worth[Math.min(copies, worth.length) - 1] ?? 0;

/** Worth by copies made never to rise and never below 0. */
function falling(worth: readonly number[]): number[] {
  let least = Number.POSITIVE_INFINITY;
  return worth.map((value) => {
    least = Math.max(0, Math.min(least, value));
    return least;
  });
}

/**
 * Parts what lots are worth by themselves from what hangs on each other.
 * @returns the lots' parts in their order, and copies already held by shape number
 */
export function sharedOf(
  lots: readonly ChoiceLot[],
  held: Readonly<Record<string, number>>,
): { readonly shared: readonly Shared[]; readonly copies: readonly number[] } {
  const lotsWith = new Map<string, number>();
  for (const { blocks } of lots)
    for (const shape of new Set(blocks.map((block) => block.shape)))
      if (shape !== null) lotsWith.set(shape, (lotsWith.get(shape) ?? 0) + 1);
  const names = [...lotsWith].filter(([, count]) => count > 1).map(([name]) => name);
  const numberOf = new Map(names.map((name, number) => [name, number]));
  const shared = lots.map((lot): Shared => {
    const blocks: SharedBlock[] = [];
    let alone = -lot.price - lot.disposal;
    for (const { shape, worth } of lot.blocks) {
      const number = shape === null ? undefined : numberOf.get(shape);
      if (number !== undefined) blocks.push({ shape: number, worth: falling(worth) });
      else {
        const own = shape === null ? 1 : (held[shape] ?? 0) + lot.blocks.filter((one) => one.shape === shape).length;
        alone += worthAt({ shape: 0, worth: falling(worth) }, own);
      }
    }
    return { alone, blocks, shapes: [...new Set(blocks.map(({ shape }) => shape))] };
  });
  return { shared, copies: names.map((name) => held[name] ?? 0) };
}

/** The shared blocks taken so far, shape by shape. Changed in place: a search takes and puts back many times. */
export class Copies {
  readonly count: number[];
  private readonly taken: SharedBlock[][];
  /** What the blocks taken lose if one more copy of their shape comes. */
  readonly loss: number[];

  constructor(held: readonly number[]) {
    this.count = [...held];
    this.taken = held.map(() => []);
    this.loss = held.map(() => 0);
  }

  private worthOf(shape: number, copies: number): number {
    let sum = 0;
    for (const block of this.taken[shape] ?? []) sum += worthAt(block, copies);
    return sum;
  }

  /** Takes a lot's blocks in. @returns what that adds, losses of the copies already taken taken off */
  take({ alone, blocks, shapes }: Shared): number {
    let gain = alone;
    for (const shape of shapes) gain -= this.worthOf(shape, this.count[shape] ?? 0);
    for (const block of blocks) {
      this.taken[block.shape]?.push(block);
      this.count[block.shape] = (this.count[block.shape] ?? 0) + 1;
    }
    for (const shape of shapes) gain += this.settle(shape);
    return gain;
  }

  /** Puts back the lot taken last. */
  putBack({ blocks, shapes }: Shared): void {
    for (const { shape } of blocks) {
      this.taken[shape]?.pop();
      this.count[shape] = (this.count[shape] ?? 0) - 1;
    }
    for (const shape of shapes) this.settle(shape);
  }

  private settle(shape: number): number {
    const copies = this.count[shape] ?? 0;
    const now = this.worthOf(shape, copies);
    this.loss[shape] = now - this.worthOf(shape, copies + 1);
    return now;
  }
}
