import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apportion } from '../../src/core/apportion.ts';
import { highestHammer, marginSchemeVat, TICKET_TERMS } from '../../src/core/fees.ts';
import { minor } from '../../src/core/units.ts';
import {
  allocateLot,
  annuityFactor,
  breakEvenOdds,
  cashValue,
  ceiling,
  committedValue,
  copyCeiling,
  hoursToBreakEven,
  lotWorth,
  newForOldValue,
  openingOffer,
  searchReserve,
  stoppingValue,
  twoStageValue,
  valueIfSaved,
  valueInUse,
  walkAway,
} from '../../src/core/value.ts';
import { type CheckRow, checksOf, input, strayOf, titleOf } from '../handbook/checks.ts';

const stagesIn = (row: CheckRow) => ({
  odds: input(row, 'p'),
  valueOk: input(row, 'v'),
  valueFail: input(row, 'v_fail'),
  firstCost: input(row, 'c1'),
  secondCost: input(row, 'c2'),
});
const ventureIn = (row: CheckRow) => ({
  valueOk: input(row, 'v_ok'),
  valueFail: input(row, 'v_fail'),
  cost: input(row, 'cost'),
  gain: input(row, 'gain'),
});

const ANSWERS: Record<string, (row: CheckRow) => number> = {
  'val.annuity': (row) => annuityFactor(input(row, 'years'), input(row, 'rate')),
  'val.use': (row) =>
    valueInUse({
      hatsPerYear: input(row, 'hats_per_year'),
      marginPerHat: input(row, 'margin'),
      shareDueToBlock: input(row, 'share'),
      years: input(row, 'years'),
      rate: input(row, 'rate'),
    }),
  'val.ceiling': (row) => ceiling({ ...ventureIn(row), odds: input(row, 'p') }),
  'val.two_stage': (row) => twoStageValue(stagesIn(row)),
  'val.two_stage_commit': (row) => committedValue(stagesIn(row)),
  'val.option': (row) => stoppingValue(stagesIn(row)),
  'val.to_hammer': (row) =>
    (highestHammer(minor(100 * input(row, 'all_in')), {
      ...TICKET_TERMS,
      premium: [{ upTo: null, rate: input(row, 'k') - 1 }],
      fixedCosts: [{ what: 'Post', amount: 100 * input(row, 'fixed') }],
    }) ?? Number.NaN) / 100,
  'val.breakeven_odds': (row) => breakEvenOdds(input(row, 'price'), ventureIn(row)),
  'val.search_reserve': (row) => searchReserve(input(row, 'U'), input(row, 'search_cost')),
  'val.haggle_open': (row) => openingOffer(input(row, 'target'), input(row, 'ask')),
  'val.alloc': (row) => {
    const [item, total] = [input(row, 'item_value'), input(row, 'total_value')];
    return (allocateLot(minor(100 * input(row, 'lot_price')), [item, total - item])[0] ?? Number.NaN) / 100;
  },
  'val.lot_max': (row) => lotWorth(row.inputs.items as number[], input(row, 'disposal')),
  'val.hours_breakeven': (row) =>
    hoursToBreakEven({
      replacement: input(row, 'replacement'),
      quality: input(row, 'quality'),
      price: input(row, 'price'),
      consumables: input(row, 'consumables'),
      hourlyRate: input(row, 'rate'),
    }),
  'val.insure': (row) => newForOldValue(input(row, 'replacement'), input(row, 'delivery'), input(row, 'extras')),
  'val.acv': (row) => cashValue(input(row, 'new_for_old'), input(row, 'wear')),
  'val.margin_vat': (row) =>
    marginSchemeVat(minor(100 * input(row, 'buy')), minor(100 * input(row, 'sell')), input(row, 'vat')) / 100,
};

describe('worth, ceilings and offers against the handbook', () => {
  it.each(checksOf('value').map((row) => [titleOf(row), row] as const))('%s', (_, row) => {
    expect(ANSWERS[row.id], `${row.id} has no answer here`).toBeDefined();
    expect(strayOf(row, ANSWERS[row.id]?.(row) ?? Number.NaN)).toBeLessThanOrEqual(1);
  });

  it('walks the handbook’s beret from its score to its limit (worked example, §3.3)', () => {
    // Rounded figures as printed: attainable 94.3 of 380, value in use 776.64, odds 0.900, cost 129.43, gain 15 %.
    const valueOk = valueIfSaved(380, 94.3, 776.64);
    expect(valueOk).toBeCloseTo(358.34, 2);
    const most = ceiling({ odds: 0.9, valueOk, valueFail: 100, cost: 129.43, gain: 0.15 });
    expect(most).toBeCloseTo(153.19, 1);
    expect(walkAway(most, 190)).toBe(most);
    expect(walkAway(most, 120)).toBe(120);
    expect(walkAway(-5, 120)).toBe(0);
  });

  it('lets value in use bind for odd shapes and new price for common ones', () => {
    expect(valueIfSaved(380, 90, 200)).toBe(200);
    expect(valueIfSaved(380, 90, 900)).toBeCloseTo(342, 9);
  });

  it('pays for a rare shape by a third of its new price, less gain and copying', () => {
    expect(copyCeiling(400, 0.35, 60, 0.15)).toBeCloseTo(59, 9);
  });
});

const amount = fc.double({ min: 0, max: 1000, noNaN: true });
const odds = fc.double({ min: 0, max: 1, noNaN: true });
const gain = fc.double({ min: 0, max: 0.6, noNaN: true });

describe('rules that hold for any figures', () => {
  it('adds up the annuity year by year', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), fc.double({ min: -0.05, max: 0.3, noNaN: true }), (years, rate) => {
        let sum = 0;
        for (let year = 1; year <= years; year++) sum += (1 + rate) ** -year;
        expect(annuityFactor(years, rate)).toBeCloseTo(sum, 8);
      }),
      { numRuns: 500 },
    );
    expect(annuityFactor(6, 0)).toBe(6);
    expect(annuityFactor(6, 1e-13)).toBeCloseTo(6, 9);
    expect(() => annuityFactor(-1, 0.1)).toThrow('Years came as -1');
  });

  it('never raises the ceiling when cost or gain rises or odds fall', () => {
    fc.assert(
      fc.property(odds, amount, amount, amount, gain, odds, (q, high, low, cost, g, less) => {
        const venture = { odds: q, valueOk: Math.max(high, low), valueFail: Math.min(high, low), cost, gain: g };
        const most = ceiling(venture) + 1e-9;
        expect(ceiling({ ...venture, cost: cost + 10 * less })).toBeLessThanOrEqual(most);
        expect(ceiling({ ...venture, gain: g + 0.3 * less })).toBeLessThanOrEqual(most);
        expect(ceiling({ ...venture, odds: q * less })).toBeLessThanOrEqual(most);
      }),
      { numRuns: 500 },
    );
  });

  it('gives the ceiling back when asked for the odds at that price', () => {
    fc.assert(
      fc.property(
        odds,
        amount,
        fc.double({ min: 1, max: 500, noNaN: true }),
        amount,
        gain,
        (q, fail, more, cost, g) => {
          const venture = { odds: q, valueOk: fail + more, valueFail: fail, cost, gain: g };
          expect(breakEvenOdds(ceiling(venture), venture)).toBeCloseTo(q, 6);
        },
      ),
      { numRuns: 500 },
    );
    expect(breakEvenOdds(50, { valueOk: 100, valueFail: 100, cost: 0, gain: 0 })).toBe(-Infinity);
    expect(breakEvenOdds(150, { valueOk: 100, valueFail: 100, cost: 0, gain: 0 })).toBe(Infinity);
  });

  it('values the freedom to stop at the second cost times the chance of stopping, never below nothing', () => {
    fc.assert(
      fc.property(odds, amount, amount, amount, amount, (q, ok, fail, first, second) => {
        const stages = { odds: q, valueOk: ok, valueFail: fail, firstCost: first, secondCost: second };
        expect(stoppingValue(stages)).toBeCloseTo((1 - q) * second, 6);
      }),
      { numRuns: 500 },
    );
  });

  it('stops searching where one more look costs what it is expected to bring', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1000, noNaN: true }),
        fc.double({ min: 0.001, max: 0.5, noNaN: true }),
        (highest, share) => {
          const cost = share * highest;
          const z = searchReserve(highest, cost);
          // Expected surplus over z of a uniform offer, integrated by the midpoint rule.
          let expected = 0;
          for (let i = 0; i < 2000; i++) expected += Math.max(0, ((i + 0.5) / 2000) * highest - z) / 2000;
          expect(expected).toBeCloseTo(cost, 1);
        },
      ),
      { numRuns: 500 },
    );
    expect(searchReserve(200, 150)).toBe(0);
  });

  it('opens so that the middle of offer and ask is the target, never below nothing nor above the ask', () => {
    fc.assert(
      fc.property(amount, amount, (target, ask) => {
        const offer = openingOffer(target, ask);
        expect(offer).toBeGreaterThanOrEqual(0);
        expect(offer).toBeLessThanOrEqual(ask);
        if (target <= ask && 2 * target >= ask) expect((offer + ask) / 2).toBeCloseTo(target, 9);
      }),
      { numRuns: 500 },
    );
  });

  it('reaches break-even after the hours it says', () => {
    const job = { replacement: 150, quality: 0.95, price: 45, consumables: 10, hourlyRate: 14 };
    expect(job.price + job.consumables + job.hourlyRate * hoursToBreakEven(job)).toBeCloseTo(
      job.replacement * job.quality,
      9,
    );
  });
});

describe('sharing a lot’s price among its items', () => {
  const worths = fc.array(fc.double({ min: -50, max: 500, noNaN: true }), { minLength: 1, maxLength: 30 });
  const price = fc.integer({ min: 0, max: 1_000_000 }).map(minor);

  it('adds up to the lot’s price to the penny, each share within a penny of its due', () => {
    fc.assert(
      fc.property(price, worths, (lot, items) => {
        const shares = allocateLot(lot, items);
        expect(shares.reduce((sum: number, share) => sum + share, 0)).toBe(lot);
        const total = items.reduce((sum, worth) => sum + Math.max(0, worth), 0);
        if (total > 0)
          shares.forEach((share, index) => {
            expect(Math.abs(share - (lot * Math.max(0, items[index] ?? 0)) / total)).toBeLessThan(1 + 1e-6);
          });
      }),
      { numRuns: 1000 },
    );
  });

  it('gives nothing to what is not wanted, and never less to what is worth more', () => {
    fc.assert(
      fc.property(price, worths, (lot, items) => {
        const shares = allocateLot(lot, items);
        const wanted = items.some((worth) => worth > 0);
        items.forEach((worth, i) => {
          if (wanted && worth <= 0) expect(shares[i]).toBe(0);
          items.forEach((other, j) => {
            if (worth > other && worth > 0) expect(shares[i] ?? 0).toBeGreaterThanOrEqual(shares[j] ?? 0);
          });
        });
      }),
      { numRuns: 500 },
    );
  });

  it('shares the demo’s box of nine for 60 as the handbook does, and adds up', () => {
    const box = [25, 0, 15, 0, 6, 20, 28, 3, 22];
    const shares = allocateLot(minor(6000), box);
    expect(shares.reduce((sum: number, share) => sum + share, 0)).toBe(6000);
    expect(shares[0]).toBe(Math.round((6000 * 25) / 119));
    expect(shares[1]).toBe(0);
  });

  it('splits evenly when nothing in the lot is wanted', () => {
    expect(allocateLot(minor(100), [0, -3, 0])).toEqual([34, 33, 33]);
  });

  it('counts only the wanted items towards what a lot is worth', () => {
    fc.assert(
      fc.property(worths, amount, (items, disposal) => {
        expect(lotWorth([...items, -20], disposal)).toBeCloseTo(lotWorth(items, disposal), 9);
        expect(lotWorth([...items, 20], disposal)).toBeCloseTo(lotWorth(items, disposal) + 20, 9);
      }),
      { numRuns: 500 },
    );
  });

  it('refuses to split a fraction, among nobody, or by a weight below nothing', () => {
    expect(() => apportion(1.5, [1])).toThrow('Total came as 1.5');
    expect(() => apportion(5, [])).toThrow('No weights');
    expect(() => apportion(5, [1, -1])).toThrow('Weight came as -1');
  });

  it('keeps its sum for weights so large or small that they would overflow or vanish', () => {
    expect(apportion(10, [1e308, 1e308, 1e308])).toEqual([4, 3, 3]);
    expect(apportion(9, [1e-300, 2e-300])).toEqual([3, 6]);
  });
});
