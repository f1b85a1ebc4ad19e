import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { assess } from '../../src/core/assess.ts';
import { broughtHome } from '../../src/core/going-home.ts';
import { type LotBlock, rowOf } from '../../src/core/lots.ts';
import { allInAt } from '../../src/core/worth.ts';
import { aJobLot, caseOfLot, someTerms } from '../make.ts';
import { id } from '../store/make.ts';

/** Auction terms: 24 % and VAT on it, £14 of post whatever the price. */
const terms = someTerms({
  way: 'auction',
  premium: [{ upTo: null, rate: 0.24 }],
  vatRate: 0.2,
  vatOn: 'fees',
  fixedCosts: [{ what: 'Post', amount: 1_400 }],
});
const facts = { terms, copy: { hours: 3, days: 20 }, currency: 'GBP' };
const blockOf = (number: string, n: number): LotBlock => {
  const its = caseOfLot(number);
  const block = { ...its.block, id: id(n) };
  return {
    block,
    survey: its.survey,
    findings: its.findings,
    book: assess({ ...its, block }, catalogue),
    forecast: undefined,
  };
};
const single = (number: string) => {
  const one = blockOf(number, 10);
  return rowOf({ id: one.block.id, job: null, blocks: [one], offers: [] }, facts);
};
const box = rowOf(
  {
    id: id(90),
    job: aJobLot({ id: id(90) }),
    blocks: ['L10a', 'L10b', 'L10e', 'L10g', 'L04'].map((number, n) => blockOf(number, 20 + n)),
    offers: [],
  },
  facts,
);

describe('going home', () => {
  it('puts a sound block on the shelf with its price and what came on top', () => {
    const [dome] = broughtHome(single('L01'), 5_200, terms);
    // 52 and 28.8 % of it, and 14: row fee.online_80's rule without a platform.
    expect(dome).toMatchObject({ price: 5_200, fees: Math.round(5_200 * 0.288) + 1_400, place: 'toDo', watch: null });
  });

  it('puts a block with fresh dust apart, to be watched for what is alive', () => {
    expect(broughtHome(single('L04'), 2_000, terms)).toMatchObject([{ place: 'quarantine', watch: 'alive' }]);
  });

  it('lets go at once what nobody wants of a box, and charges it nothing', () => {
    const brought = broughtHome(box, 6_000, terms);
    expect(brought.map(({ place }) => place)).toEqual(['toDo', 'letGo', 'letGo', 'toDo', 'quarantine']);
    expect(brought[1]).toMatchObject({ price: 0, fees: 0 });
  });

  it('keeps a single block though it is worth nothing: it was bought', () => {
    expect(broughtHome(single('L03'), 1_000, terms)).toMatchObject([{ price: 1_000, place: 'toDo' }]);
  });

  it('shares a bill so that it adds up to the last penny, whatever was paid', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), (price) => {
        const brought = broughtHome(box, price, terms);
        const sum = brought.reduce((all, one) => all + one.price + one.fees, 0);
        expect(sum).toBe(allInAt(price, terms));
        expect(brought.reduce((all, one) => all + one.price, 0)).toBe(price);
      }),
      { seed: 23 },
    );
  });
});
