import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { assess } from '../../src/core/assess.ts';
import { insuranceOf, type SpentFacts, spentOn } from '../../src/core/spent.ts';
import { caseOfLot, someTerms } from '../make.ts';
import { id } from '../store/make.ts';

const SALE = id(30);
const paid = (amount: number, currency = 'GBP') => ({ what: 'paid' as const, amount, currency, saleId: SALE });
const job = (treatment: string, actualHours: number) => ({ treatment, actualHours });
const facts = (fields: Partial<SpentFacts> = {}): SpentFacts => ({
  offers: [],
  sale: null,
  jobs: [],
  steps: [],
  stints: [],
  expenses: [],
  hourlyRate: 1400,
  rateCurrency: 'GBP',
  treatments: catalogue.treatments,
  ...fields,
});

describe('what a block has cost', () => {
  // Trade handbook §3.2: total for hammer 80, premium 24 %, platform 4.95 %, VAT 20 % on both, post 14: 121.792.
  it('is the price with the sale’s fees, each on its line', () => {
    const terms = someTerms({
      way: 'auction',
      premium: [{ upTo: null, rate: 0.24 }],
      platformRate: 0.0495,
      vatRate: 0.2,
      vatOn: 'fees',
      fixedCosts: [{ what: 'post', amount: 1400 }],
    });
    const [sum, ...others] = spentOn(facts({ offers: [paid(8000)], sale: { id: SALE, currency: 'GBP', terms } }));
    expect(others).toEqual([]);
    expect(sum?.lines.map(({ what, amount }) => [what, amount])).toEqual([
      ['price', 8000],
      ['premium', 1920],
      ['platform', 396],
      ['vat', 463],
      ['fixed', 1400],
    ]);
    expect(sum?.total).toBe(12_179);
  });
  it('keeps the fees as they were written down when it was paid, whatever the terms say now', () => {
    const terms = someTerms({ fixedCosts: [{ what: 'post', amount: 1400 }] });
    const [sum] = spentOn(
      facts({ offers: [{ ...paid(8000), fees: 321 }], sale: { id: SALE, currency: 'GBP', terms } }),
    );
    expect(sum?.lines.map(({ what, amount }) => [what, amount])).toEqual([
      ['price', 8000],
      ['fees', 321],
    ]);
  });
  it('counts only what was paid, the last time', () => {
    const offers = [{ ...paid(5000), what: 'asked' as const }, paid(4000), paid(3500)];
    expect(spentOn(facts({ offers }))[0]?.total).toBe(3500);
  });
  it('is nothing where nothing was paid, bought or done', () => {
    expect(spentOn(facts())).toEqual([]);
  });
  it('takes the hours as logged at the owner’s rate', () => {
    const [sum] = spentOn(facts({ jobs: [job('dryClean', 0.5), job('dryClean', 0.25)] }));
    expect(sum?.lines.find(({ what }) => what === 'hours')).toMatchObject({ hours: 0.75, amount: 1050 });
  });
  it('estimates consumables once a step, until what they cost is written down', () => {
    // Trade handbook §6.1: dry clean 0.50, consolidate 12.00.
    const jobs = [job('consolidate', 1), job('consolidate', 1), job('dryClean', 1)];
    const consumables = (expenses: SpentFacts['expenses']) =>
      spentOn(facts({ jobs, expenses }))[0]?.lines.filter(({ what }) => what === 'consumables' || what === 'expense');
    expect(consumables([])).toMatchObject([
      { of: 'consolidate', amount: 1200, from: 'estimate' },
      { of: 'dryClean', amount: 50, from: 'estimate' },
    ]);
    const resin = { what: 'resin', treatment: 'consolidate', amount: 950, currency: 'GBP' };
    expect(consumables([resin])).toMatchObject([
      { of: 'resin', amount: 950, from: 'recorded' },
      { of: 'dryClean', amount: 50, from: 'estimate' },
    ]);
  });
  it('counts what a step used up that was done without a word on its minutes', () => {
    const done = { at: '2026-11-02T19:00:00Z', offset: '+00:00' };
    const steps = [
      { id: id(1), treatment: 'consolidate', added: false, done },
      { id: id(2), treatment: 'fillCheck', added: false, done: null },
      { id: id(3), treatment: null, added: true, done },
    ];
    expect(spentOn(facts({ steps }))[0]?.lines).toMatchObject([{ of: 'consolidate', amount: 1200 }]);
  });
  it('takes the minutes on the clock for a step done in own words, or without its hours written down, and none twice', () => {
    const done = { at: '2026-11-02T19:00:00Z', offset: '+00:00' };
    const [own, ticked, logged, open] = [1, 2, 3, 4].map((n) => id(n));
    const steps = [
      { id: own ?? '', treatment: null, added: true, done },
      { id: ticked ?? '', treatment: 'solventClean', added: false, done },
      { id: logged ?? '', treatment: 'dryClean', added: false, done },
      { id: open ?? '', treatment: null, added: true, done: null },
    ];
    const stints = [own, ticked, logged, open].map((stepId) => ({ stepId: stepId ?? '', minutes: 30 }));
    const running = { stepId: own ?? '', minutes: null };
    const jobs = [{ ...job('dryClean', 1), ...(logged && { stepId: logged }) }];
    const hours = (fields: Partial<SpentFacts>) =>
      spentOn(facts(fields))[0]?.lines.find(({ what }) => what === 'hours')?.hours;
    // Half an hour of each of the first two; of the third the hour that was written down; the fourth is not done.
    expect(hours({ steps, stints: [...stints, running], jobs })).toBe(2);
    // Hours written down without a step stand for the ticked step of their treatment.
    expect(hours({ steps: steps.slice(1, 2), stints, jobs: [job('solventClean', 2)] })).toBe(2);
  });
  it('never adds up two currencies', () => {
    const expenses = [{ what: 'lead test', treatment: null, amount: 3000, currency: 'EUR' }];
    const sums = spentOn(facts({ offers: [paid(4000, 'USD')], expenses, jobs: [job('dryClean', 1)] }));
    expect(sums.map(({ currency, total }) => [currency, total])).toEqual([
      ['USD', 4000],
      ['EUR', 3000],
      ['GBP', 1450],
    ]);
  });
  it('puts no fees in one currency on a price in another', () => {
    const terms = someTerms({ fixedCosts: [{ what: 'post', amount: 1400 }] });
    const sums = spentOn(facts({ offers: [paid(4000, 'EUR')], sale: { id: SALE, currency: 'GBP', terms } }));
    expect(sums).toMatchObject([{ currency: 'EUR', total: 4000 }]);
  });
  it('adds up to its lines, in whole minor units, whatever was written down', () => {
    const money = fc.integer({ min: 0, max: 10_000_000 });
    const currency = fc.constantFrom('GBP', 'EUR', 'USD');
    fc.assert(
      fc.property(
        fc.array(fc.record({ amount: money, currency }), { maxLength: 4 }),
        fc.array(fc.record({ amount: money, currency, what: fc.string(), treatment: fc.constant(null) }), {
          maxLength: 5,
        }),
        fc.array(
          fc.record({
            treatment: fc.constantFrom(...Object.keys(catalogue.treatments)),
            actualHours: fc.double({ min: 0, max: 50, noNaN: true }),
          }),
        ),
        (prices, expenses, jobs) => {
          const offers = prices.map(({ amount, currency }) => paid(amount, currency));
          for (const { lines, total } of spentOn(facts({ offers, expenses, jobs }))) {
            expect(Number.isSafeInteger(total)).toBe(true);
            expect(lines.reduce((sum, { amount }) => sum + amount, 0)).toBe(total);
          }
        },
      ),
    );
  });
});

describe('what a block is insured at', () => {
  // Example lot L01: new 150, an equal used one 95 (trade handbook §8).
  it('is a new one to order, and an equal used one in cash', () => {
    expect(insuranceOf(assess(caseOfLot('L01'), catalogue).worth)).toEqual({
      newForOld: 15_000,
      newFrom: 'owner',
      cashValue: 9500,
      usedFrom: 'owner',
    });
  });
});
