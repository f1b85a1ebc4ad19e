import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type ChoiceLot, choose, type Purse, setOf } from '../../src/core/choice.ts';

/** A lot of one block, like no other unless it has a shape. */
const aLot = (
  id: string,
  worth: number | readonly number[],
  price: number,
  fields: Partial<ChoiceLot> = {},
): ChoiceLot => ({
  id,
  price,
  minutes: 60,
  blocks: [{ shape: null, worth: typeof worth === 'number' ? [worth] : worth }],
  disposal: 0,
  pinned: null,
  ...fields,
});
const aPurse = (fields: Partial<Purse> = {}): Purse => ({ money: null, minutes: null, held: {}, ...fields });
const bestOf = (lots: readonly ChoiceLot[], purse: Purse) => choose(lots, purse).sets[0];

/** Any lot a sale may have: worth nothing or much, alike or alone, one block or several, pinned or not. */
const anyLot = (id: string) =>
  fc
    .record({
      price: fc.integer({ min: 0, max: 200 }),
      minutes: fc.integer({ min: 0, max: 90 }),
      disposal: fc.constantFrom(0, 0, 0, 7),
      pinned: fc.constantFrom(null, null, null, null, null, null, 'in' as const, 'out' as const),
      blocks: fc.array(
        fc.record({
          shape: fc.constantFrom(null, null, 'dome 57', 'dome 56', 'brim 57'),
          worth: fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 1, maxLength: 4 }),
        }),
        { minLength: 1, maxLength: 3 },
      ),
    })
    .map((fields): ChoiceLot => ({ id, ...fields }));
const anyLots = (most: number) =>
  fc.integer({ min: 0, max: most }).chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => anyLot(`L${i}`))));
const anyPurse = fc.record({
  money: fc.option(fc.integer({ min: 0, max: 900 })),
  minutes: fc.option(fc.integer({ min: 0, max: 400 })),
  held: fc.constantFrom({}, { 'dome 57': 1 }, { 'dome 56': 2, 'brim 57': 1 }),
});

/** Surplus said once more, the plain way: what each block is worth among all copies there, less what is paid. */
function plainSurplus(lots: readonly ChoiceLot[], { held }: Purse): number {
  const blocks = lots.flatMap((lot) => lot.blocks);
  const value = (block: ChoiceLot['blocks'][number]): number => {
    const shape = block.shape;
    const copies = shape === null ? 1 : (held[shape] ?? 0) + blocks.filter((other) => other.shape === shape).length;
    return Math.min(...block.worth.slice(0, copies));
  };
  return blocks.reduce((sum, block) => sum + value(block), 0) - lots.reduce((sum, l) => sum + l.price + l.disposal, 0);
}

/** Every set there is, best first, of those to which nothing can be added to the gain. */
function everySet(lots: readonly ChoiceLot[], purse: Purse): number[] {
  const may = lots.filter(({ pinned }) => pinned !== 'out');
  const sets: (readonly ChoiceLot[])[] = [];
  for (let bits = 0; bits < 2 ** may.length; bits += 1) {
    const set = may.filter((lot, place) => (bits >> place) & 1 || lot.pinned === 'in');
    if (may.some((lot, place) => lot.pinned === 'in' && !((bits >> place) & 1))) continue;
    sets.push(set);
  }
  const fits = (set: readonly ChoiceLot[]): boolean =>
    set.reduce((sum, { price }) => sum + price, 0) <= (purse.money ?? Infinity) &&
    set.reduce((sum, { minutes }) => sum + minutes, 0) <= (purse.minutes ?? Infinity);
  const isFull = (set: readonly ChoiceLot[]): boolean =>
    !may.some(
      (lot) =>
        !set.includes(lot) && fits([...set, lot]) && plainSurplus([...set, lot], purse) > plainSurplus(set, purse),
    );
  // A lot that brings nothing even as the only one of its shape is in nobody's plan, unless it is pinned.
  const wanted = (set: readonly ChoiceLot[]): boolean =>
    set.every((lot) => lot.pinned === 'in' || plainSurplus([lot], purse) > 0);
  return sets
    .filter((set) => fits(set) && wanted(set) && isFull(set))
    .map((set) => plainSurplus(set, purse))
    .sort((a, b) => b - a);
}

describe('what to take from a table of lots', () => {
  it('takes the two that bring more together rather than the one that brings most', () => {
    const lots = [aLot('one', 300, 200), aLot('two', 160, 100), aLot('three', 155, 100)];
    expect(bestOf(lots, aPurse({ money: 200 }))).toMatchObject({ ids: ['three', 'two'], surplus: 115, price: 200 });
  });

  it('stays within the hours as within the purse', () => {
    const lots = [aLot('long', 300, 10, { minutes: 600 }), aLot('short', 100, 10, { minutes: 60 })];
    expect(bestOf(lots, aPurse({ minutes: 90 }))?.ids).toEqual(['short']);
  });

  it('leaves what costs more than it is worth, however full the purse', () => {
    expect(bestOf([aLot('dear', 50, 60)], aPurse())?.ids).toEqual([]);
  });

  it('counts a job lot once: all it is worth against one price, less what it costs to be rid of the rest', () => {
    const box = aLot('box', 0, 60, {
      blocks: [25, 0, 15, 0, 28].map((worth) => ({ shape: null, worth: [worth] })),
      disposal: 4,
    });
    expect(bestOf([box], aPurse())).toMatchObject({ ids: ['box'], worth: 64, surplus: 4 });
  });

  it('lets a second copy of one shape and size share what the first would earn', () => {
    const dome = (id: string) => aLot(id, 0, 30, { blocks: [{ shape: 'dome 57', worth: [100, 50, 33] }] });
    expect(bestOf([dome('a'), dome('b')], aPurse())).toMatchObject({ worth: 100, surplus: 70 });
    expect(bestOf([dome('a'), dome('b')], aPurse())?.ids).toHaveLength(1);
    // One or two stand on the shelf already: the next earns a half or a third of what the first did.
    expect(bestOf([dome('a')], aPurse({ held: { 'dome 57': 1 } }))?.surplus).toBe(20);
    expect(bestOf([dome('a')], aPurse({ held: { 'dome 57': 2 } }))?.surplus).toBe(3);
  });

  it('takes what is pinned in though it loses by it, and leaves what is pinned out though it gains', () => {
    const lots = [aLot('keepsake', 10, 40, { pinned: 'in' }), aLot('rival', 90, 10, { pinned: 'out' })];
    expect(bestOf(lots, aPurse({ money: 100 }))).toMatchObject({ ids: ['keepsake'], surplus: -30 });
  });

  it('says by how much what is pinned in goes over, and proposes nothing then', () => {
    const lots = [aLot('a', 90, 70, { pinned: 'in' }), aLot('b', 90, 50, { pinned: 'in' })];
    expect(choose(lots, aPurse({ money: 100, minutes: 100 }))).toEqual({
      sets: [],
      short: { money: 20, minutes: 20 },
      proven: true,
    });
  });

  it('names as runners-up other plans, not the best one with something left out', () => {
    const lots = [aLot('a', 100, 50), aLot('b', 90, 50), aLot('c', 80, 50), aLot('d', 70, 50)];
    expect(choose(lots, aPurse({ money: 100 })).sets.map(({ ids }) => ids.join(''))).toEqual(['ab', 'ac', 'ad']);
    expect(choose(lots, aPurse()).sets.map(({ ids }) => ids.join(''))).toEqual(['abcd']);
  });

  it('says when it was cut off', () => {
    const lots = Array.from({ length: 40 }, (_, n) => aLot(`L${n}`, 150 + (n % 7), 100 + (n % 11)));
    expect(choose(lots, aPurse({ money: 1500 }), { most: 20 }).proven).toBe(false);
    expect(choose(lots.slice(0, 10), aPurse({ money: 500 })).proven).toBe(true);
  });

  it('is the best of all sets there are, runners-up included, for any 9 lots', () => {
    fc.assert(
      fc.property(anyLots(9), anyPurse, (lots, purse) => {
        const { sets, short, proven } = choose(lots, purse);
        const every = everySet(lots, purse);
        expect(proven).toBe(true);
        expect(sets.map(({ surplus }) => surplus)).toEqual(short ? [] : every.slice(0, 3));
        expect(short !== null).toBe(every.length === 0);
      }),
      { numRuns: 150, seed: 7 },
    );
  });

  it('is the best of 262,144 sets of 18 lots', () => {
    const random = seeded(18);
    const lots = Array.from({ length: 18 }, (_, n) => someLot(`L${n}`, random));
    const purse = aPurse({ money: 600, minutes: 900 });
    let best = 0;
    for (let bits = 0; bits < 2 ** 18; bits += 1) {
      let [worth, price, minutes] = [0, 0, 0];
      for (let n = 0; n < 18; n += 1) {
        if (!((bits >> n) & 1)) continue;
        const lot = lots[n] as ChoiceLot;
        price += lot.price;
        minutes += lot.minutes;
        worth += lot.blocks[0]?.worth[0] ?? 0;
      }
      if (price <= 600 && minutes <= 900 && worth - price > best) best = worth - price;
    }
    expect(bestOf(lots, purse)?.surplus).toBe(best);
  });

  it('does not mind in which order the lots lie', () => {
    fc.assert(
      fc.property(
        anyLots(12).chain((lots) => fc.tuple(fc.constant(lots), fc.shuffledSubarray(lots, { minLength: lots.length }))),
        anyPurse,
        ([lots, shuffled], purse) => {
          expect(choose(shuffled, purse)).toEqual(choose(lots, purse));
        },
      ),
      { numRuns: 60, seed: 11 },
    );
  });

  it('never does worse with more money, more hours, or a lot more to choose from', () => {
    fc.assert(
      fc.property(
        anyLots(12),
        fc.integer({ min: 0, max: 500 }),
        fc.integer({ min: 0, max: 300 }),
        (all, money, minutes) => {
          const lots = all.map((lot) => ({ ...lot, pinned: null }));
          const surplus = (some: readonly ChoiceLot[], m: number, h: number): number =>
            bestOf(some, aPurse({ money: m, minutes: h }))?.surplus ?? 0;
          const now = surplus(lots, money, minutes);
          expect(surplus(lots, money + 50, minutes)).toBeGreaterThanOrEqual(now);
          expect(surplus(lots, money, minutes + 60)).toBeGreaterThanOrEqual(now);
          expect(surplus(lots.slice(1), money, minutes)).toBeLessThanOrEqual(now);
        },
      ),
      { numRuns: 60, seed: 13 },
    );
  });

  it('states sums that hold for the set it names', () => {
    fc.assert(
      fc.property(anyLots(12), anyPurse, (lots, purse) => {
        for (const set of choose(lots, purse).sets) {
          const taken = lots.filter(({ id }) => set.ids.includes(id));
          expect(setOf(taken, purse)).toEqual(set);
          expect(set.surplus).toBe(plainSurplus(taken, purse));
          expect(set.price).toBeLessThanOrEqual(purse.money ?? Infinity);
          expect(set.minutes).toBeLessThanOrEqual(purse.minutes ?? Infinity);
        }
      }),
      { numRuns: 60, seed: 17 },
    );
  });
});

/** Numbers of a linear congruential generator, 0 to 1: the same instances on every machine. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
const someLot = (id: string, random: () => number, shapes = 0): ChoiceLot => {
  const worth = Math.round(random() * 250);
  return {
    id,
    price: Math.round(5 + random() * 140),
    minutes: Math.round(20 + random() * 880),
    blocks: [
      random() < 0.4 && shapes > 0
        ? { shape: `s${Math.floor(random() * shapes)}`, worth: [worth, Math.round(worth / 2), Math.round(worth / 3)] }
        : { shape: null, worth: [worth] },
    ],
    disposal: 0,
    pinned: null,
  };
};

// HiGHS: an independent open-source solver of mixed-integer programs, compiled to wasm. It knows nothing of our bounds.
describe('the same choice by an independent solver', () => {
  let solve: (problem: string) => number;
  beforeAll(async () => {
    const highs = await loadHighs();
    solve = (problem) => highs.solve(problem, { mip_rel_gap: 0, mip_abs_gap: 0 }).ObjectiveValue;
  });

  /**
   * The table as a mixed-integer program. x: taken; of each shape c: how many copies there then are (exactly one c is 1);
   * z: taken while there are so many copies, which pays the worth of that many.
   */
  function programOf(lots: readonly ChoiceLot[], { money, minutes, held }: Purse): string {
    const goal: string[] = [];
    const rows: string[] = [];
    const binary = lots.map((_, n) => `x${n}`);
    const byShape = new Map<string, number[]>();
    for (const [n, { price, blocks }] of lots.entries()) {
      const { shape = null, worth = [0] } = blocks[0] ?? {};
      const gain = (shape === null ? (worth[0] ?? 0) : 0) - price;
      goal.push(`${gain < 0 ? '-' : '+'} ${Math.abs(gain)} x${n}`);
      if (shape !== null) byShape.set(shape, [...(byShape.get(shape) ?? []), n]);
    }
    for (const [shape, members] of byShape) {
      const own = held[shape] ?? 0;
      const counts = Array.from({ length: members.length + 1 }, (_, more) => own + more);
      binary.push(...counts.map((c) => `c_${shape}_${c}`));
      rows.push(`${counts.map((c) => `c_${shape}_${c}`).join(' + ')} = 1`);
      rows.push(
        `${members.map((n) => `x${n}`).join(' + ')} - ${counts
          .filter((c) => c > own)
          .map((c) => `${c - own} c_${shape}_${c}`)
          .join(' - ')} = 0`,
      );
      for (const n of members) {
        const worth = lots[n]?.blocks[0]?.worth ?? [];
        const paid = counts.filter((c) => c > own).map((c) => `z${n}_${c}`);
        rows.push(`${paid.join(' + ')} - x${n} = 0`);
        for (const c of counts.filter((copies) => copies > own)) {
          goal.push(`+ ${worth[Math.min(c, worth.length) - 1]} z${n}_${c}`);
          rows.push(`z${n}_${c} - c_${shape}_${c} <= 0`);
        }
      }
    }
    rows.push(`${lots.map(({ price }, n) => `${price} x${n}`).join(' + ')} <= ${money}`);
    rows.push(`${lots.map((lot, n) => `${lot.minutes} x${n}`).join(' + ')} <= ${minutes}`);
    return `Maximize\n obj: ${goal.join(' ')}\nSubject To\n${rows.map((row, n) => ` r${n}: ${row}`).join('\n')}\nBinary\n ${binary.join(' ')}\nEnd`;
  }

  it.each([1, 2, 3, 4])('finds nothing better in 60 lots (table %i)', (seed) => {
    const random = seeded(seed);
    const lots = Array.from({ length: 60 }, (_, n) => someLot(`L${n}`, random));
    for (const [money, minutes] of [
      [350, 40 * 60],
      [900, 25 * 60],
    ] as const) {
      const ours = choose(lots, aPurse({ money, minutes }));
      expect(ours.proven).toBe(true);
      expect(ours.sets[0]?.surplus).toBe(Math.round(solve(programOf(lots, aPurse({ money, minutes })))));
    }
  });

  it.each([5, 6, 7])('nor where copies share their use (table %i)', (seed) => {
    const random = seeded(seed);
    const lots = Array.from({ length: 30 }, (_, n) => someLot(`L${n}`, random, 4));
    const purse = aPurse({ money: 500, minutes: 60 * 60, held: { s1: 1 } });
    const ours = choose(lots, purse);
    expect(ours.proven).toBe(true);
    expect(ours.sets[0]?.surplus).toBe(Math.round(solve(programOf(lots, purse))));
  });
});
