import type { ChoiceLot, ChoiceOptions } from './choice.ts';
import { type Margin, marginsFor, reduced, type Weighed } from './choice-bound.ts';
import { Copies, type Shared, sharedOf, worthAt } from './choice-shared.ts';

interface Left {
  readonly money: number;
  readonly minutes: number;
  readonly held: Readonly<Record<string, number>>;
}

/** A lot in the search with the most it can add: as if it were the only new copy of its shapes. */
interface Candidate extends Weighed {
  readonly lot: ChoiceLot;
  readonly shared: Shared;
  /** The one shape it shares with others; null when none, or several: then its bound does not fall as copies are taken. */
  readonly shape: number | null;
}

/** Sums from each place of the order to its end. */
function rests(length: number, at: (place: number) => number): Float64Array {
  const sums = new Float64Array(length + 1);
  for (let k = length - 1; k >= 0; k -= 1) sums[k] = (sums[k + 1] as number) + at(k);
  return sums;
}

/** Upper bounds at one pair of margins: of lots by themselves, and of lots of a shape by the copies taken so far. */
interface Bound {
  readonly margin: Margin;
  readonly alone: Float64Array;
  /** By shape, then by copies taken since the start. */
  readonly shapes: readonly (readonly Float64Array[])[];
}

function boundAt(order: readonly Candidate[], margin: Margin, start: readonly number[]): Bound {
  const n = order.length;
  const at = (one: Candidate, gain: number): number => Math.max(0, reduced({ ...one, gain }, margin));
  return {
    margin,
    alone: rests(n, (k) => {
      const one = order[k] as Candidate;
      return one.shape === null ? at(one, one.gain) : 0;
    }),
    shapes: start.map((copies, shape) => {
      const most = order.reduce((sum, one) => sum + one.shared.blocks.filter((b) => b.shape === shape).length, 0);
      return Array.from({ length: most + 1 }, (_, taken) =>
        rests(n, (k) => {
          const one = order[k] as Candidate;
          if (one.shape !== shape) return 0;
          const { alone, blocks } = one.shared;
          return at(
            one,
            blocks.reduce((sum, block) => sum + worthAt(block, copies + taken + blocks.length), alone),
          );
        }),
      );
    }),
  };
}

/**
 * Best sets of lots that can be added to those pinned, by depth-first branch and bound: the most decided lots first, as the
 * margins would have them first, bounded by Lagrange's margins. A copy of a shape taken lowers the bound of the others, and
 * what the copies taken would lose is taken off it. Textbook knapsack methods; the sharing is our own.
 * @param free lots that fit and bring something, in the order of their ids
 */
export function search(
  free: readonly ChoiceLot[],
  pinned: readonly ChoiceLot[],
  { money: purse, minutes: bench, held }: Left,
  { sets: wanted, most }: Required<ChoiceOptions>,
): { readonly sets: readonly (readonly ChoiceLot[])[]; readonly proven: boolean } {
  const { shared, copies: own } = sharedOf([...pinned, ...free], held);
  const copies = new Copies(own);
  for (const [index] of pinned.entries()) copies.take(shared[index] as Shared);
  const start = [...copies.count];
  const candidates = free.map((lot, index): Candidate => {
    const parts = shared[pinned.length + index] as Shared;
    const inShape = (shape: number): number => parts.blocks.filter((block) => block.shape === shape).length;
    return {
      lot,
      shared: parts,
      shape: parts.shapes.length === 1 ? (parts.shapes[0] ?? null) : null,
      gain: parts.blocks.reduce(
        (sum, block) => sum + worthAt(block, (start[block.shape] ?? 0) + inShape(block.shape)),
        parts.alone,
      ),
      money: lot.price,
      minutes: lot.minutes,
    };
  });
  const margins = marginsFor(candidates, purse, bench);
  const [guide = { money: 0, minutes: 0 }] = margins;
  const order = candidates.sort(
    (a, b) => Math.abs(reduced(b, guide)) - Math.abs(reduced(a, guide)) || (a.lot.id < b.lot.id ? -1 : 1),
  );
  const bounds = margins.map((margin) => boundAt(order, margin, start));
  const restMoney = rests(order.length, (k) => (order[k] as Candidate).money);
  const restMinutes = rests(order.length, (k) => (order[k] as Candidate).minutes);

  const taken: Candidate[] = [];
  const skipped: Candidate[] = [];
  const found: { readonly value: number; readonly lots: readonly ChoiceLot[] }[] = [];
  let bar = Number.NEGATIVE_INFINITY;
  let steps = 0;

  function highest(k: number, value: number, money: number, minutes: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (const { margin, alone, shapes } of bounds) {
      let more = alone[k] as number;
      if (margin.money > 0) more += margin.money * money;
      if (margin.minutes > 0) more += margin.minutes * minutes;
      for (let shape = 0; shape < shapes.length; shape += 1) {
        const added = (copies.count[shape] as number) - (start[shape] as number);
        const rest = (shapes[shape]?.[added]?.[k] as number) - (copies.loss[shape] as number);
        if (rest > 0) more += rest;
      }
      if (more < least) least = more;
    }
    return Math.floor(value + least + 1e-6);
  }

  /** Whether something left out would surely fit at every end of this branch: none of them counts then. */
  function wastes(k: number, money: number, minutes: number): boolean {
    const spareMoney = money - (restMoney[k] as number);
    const spareMinutes = minutes - (restMinutes[k] as number);
    if (spareMoney < 0 || spareMinutes < 0) return false;
    return skipped.some(
      (one) => one.shared.blocks.length === 0 && one.money <= spareMoney && one.minutes <= spareMinutes,
    );
  }

  function couldAdd(one: Candidate, money: number, minutes: number): boolean {
    if (one.money > money || one.minutes > minutes) return false;
    const gain = copies.take(one.shared);
    copies.putBack(one.shared);
    return gain > 0;
  }

  function keep(value: number, money: number, minutes: number): void {
    if (skipped.some((one) => couldAdd(one, money, minutes))) return;
    const at = found.findIndex((other) => other.value < value);
    found.splice(at === -1 ? found.length : at, 0, { value, lots: taken.map(({ lot }) => lot) });
    if (found.length > wanted) found.pop();
    if (found.length === wanted) bar = found.at(-1)?.value ?? bar;
  }

  function take(k: number, value: number, money: number, minutes: number): void {
    const one = order[k] as Candidate;
    if (one.money > money || one.minutes > minutes) return;
    const gain = copies.take(one.shared);
    taken.push(one);
    visit(k + 1, value + gain, money - one.money, minutes - one.minutes);
    taken.pop();
    copies.putBack(one.shared);
  }

  function skip(k: number, value: number, money: number, minutes: number): void {
    skipped.push(order[k] as Candidate);
    if (!wastes(k + 1, money, minutes)) visit(k + 1, value, money, minutes);
    skipped.pop();
  }

  function visit(k: number, value: number, money: number, minutes: number): void {
    steps += 1;
    if (steps > most || highest(k, value, money, minutes) <= bar) return;
    if (k === order.length) keep(value, money, minutes);
    else if (reduced(order[k] as Candidate, guide) >= 0) {
      take(k, value, money, minutes);
      skip(k, value, money, minutes);
    } else {
      skip(k, value, money, minutes);
      take(k, value, money, minutes);
    }
  }
  visit(0, 0, purse, bench);
  return { sets: found.map(({ lots }) => lots), proven: steps <= most };
}
