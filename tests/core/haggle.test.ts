import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allIn } from '../../src/core/fees.ts';
import { figuresFor, ladderOf, nextOffer } from '../../src/core/haggle.ts';
import { minor } from '../../src/core/units.ts';
import { anOffer, someTerms } from '../make.ts';

const UNIT = 100;

describe('the figures one haggles with', () => {
  it('open the example’s beret at 70 and stop at its limit: asked 120, worth 153 (trade handbook §3.3 and §8)', () => {
    const figures = figuresFor(12_000, 15_300, UNIT);
    expect(figures.opening).toBe(7_000);
    expect(figures.stop).toBe(15_300);
    // The handbook aims at 95 and opens at 2·95 − 120 = 70.
    expect(figures.aim).toBe(9_500);
  });

  it('say to pay the ticket where it lies far under the limit: 52 asked, worth 85', () => {
    expect(figuresFor(5_200, 8_500, UNIT).payIt).toBe(true);
    expect(figuresFor(12_000, 15_300, UNIT).payIt).toBe(false);
  });

  it('are none where nothing is worth paying, and only a stop where nothing was asked', () => {
    expect(figuresFor(6_000, 0, UNIT)).toEqual({ opening: null, aim: null, stop: null, payIt: false });
    expect(figuresFor(6_000, null, UNIT).stop).toBeNull();
    expect(figuresFor(null, 6_000, UNIT)).toMatchObject({ opening: null, stop: 6_000 });
  });

  it('never open above the price asked, aim above the limit, or go under nothing', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), fc.integer({ min: 1, max: 100_000 }), (asked, limit) => {
        const { opening, aim, stop } = figuresFor(asked, limit, UNIT);
        expect(opening).toBeGreaterThanOrEqual(0);
        expect(opening).toBeLessThanOrEqual(asked);
        expect(aim).toBeLessThanOrEqual(limit);
        expect(stop).toBe(limit);
      }),
      { seed: 3 },
    );
  });

  it('go half way to what they ask after each offer, and no further than the stop', () => {
    const figures = figuresFor(12_000, 10_000, UNIT);
    expect(nextOffer([], 12_000, figures, UNIT)).toBe(figures.opening);
    const offered = (amount: number) => [anOffer({ what: 'offered', amount })];
    expect(nextOffer(offered(7_000), 12_000, figures, UNIT)).toBe(9_500);
    expect(nextOffer(offered(9_500), 12_000, figures, UNIT)).toBe(10_000);
    expect(nextOffer(offered(10_000), 12_000, figures, UNIT)).toBeNull();
  });
});

describe('the ladder of bids', () => {
  const terms = someTerms({
    way: 'auction',
    premium: [{ upTo: null, rate: 0.24 }],
    vatRate: 0.2,
    vatOn: 'fees',
    bidSteps: [
      { from: 500, step: 500 },
      { from: 5_000, step: 1_000 },
    ],
  });

  it('ends at the last bid within the limit', () => {
    const { rungs, stop, hidden } = ladderOf(3_000, 7_867, terms);
    expect(rungs.map(({ bid }) => bid)).toEqual([3_500, 4_000, 4_500, 5_000, 6_000, 7_000]);
    expect(stop?.bid).toBe(7_000);
    expect(hidden).toBe(0);
    // Row fee.margin_100 of the handbook by its rule: 24 % and VAT on it, 28.8 on each hundred.
    expect(rungs[0]?.allIn).toBe(3_500 * 1.288);
  });

  it('shows the next few and counts the rest', () => {
    const { rungs, stop, hidden } = ladderOf(null, 9_400, terms);
    expect(rungs[0]?.bid).toBe(500);
    expect(rungs).toHaveLength(6);
    expect(stop?.bid).toBe(9_000);
    expect(hidden).toBe(13 - 6 + 1);
  });

  it('is only the last bid where the saleroom prints no steps', () => {
    const free = { ...terms, bidSteps: [] };
    expect(ladderOf(3_000, 7_867, free).rungs.map(({ bid }) => bid)).toEqual([7_867]);
    expect(ladderOf(7_867, 7_867, free).rungs).toEqual([]);
  });

  it('has no rung once the next bid is over the limit', () => {
    expect(ladderOf(7_000, 7_867, terms)).toEqual({ rungs: [], stop: null, hidden: 0 });
    expect(ladderOf(null, null, terms).stop).toBeNull();
  });

  it('never leads over the limit, whatever the steps', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 20_000 }),
        fc.integer({ min: 0, max: 20_000 }),
        fc.integer({ min: 1, max: 900 }),
        (standing, limit, step) => {
          const own = { ...terms, bidSteps: [{ from: 100, step }] };
          const { rungs, stop } = ladderOf(standing, limit, own);
          for (const { bid, allIn: all } of rungs) {
            expect(bid).toBeGreaterThan(standing);
            expect(bid).toBeLessThanOrEqual(limit);
            expect(all).toBe(allIn(minor(bid), own).total);
          }
          if (stop) expect(stop.bid).toBeLessThanOrEqual(limit);
        },
      ),
      { seed: 5 },
    );
  });
});
