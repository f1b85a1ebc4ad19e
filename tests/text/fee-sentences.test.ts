import { describe, expect, it } from 'vitest';
import { plainTerms } from '../../src/core/blank.ts';
import type { SaleTerms } from '../../src/core/records.ts';
import { costSentence, limitPriceSentence, termsSentence } from '../../src/text/fee-sentences.ts';
import { checksOf } from '../handbook/checks.ts';

const auction: SaleTerms = {
  ...plainTerms,
  way: 'auction',
  premium: [{ upTo: null, rate: 0.24 }],
  vatRate: 0.2,
  vatOn: 'fees',
};
const online: SaleTerms = { ...auction, platformRate: 0.0495, fixedCosts: [{ what: 'Post', amount: 1400 }] };

const expected = (id: string): number => {
  const row = checksOf('fees').find((each) => each.id === id);
  if (!row) throw new Error(`Check came as ${id}, expected one that the table has.`);
  return row.expected as number;
};

describe('a sale’s terms in words', () => {
  it('say what a hammer price of 100 costs, as a saleroom’s own worked figure does (128.80)', () => {
    expect(costSentence(10_000, auction, 'GBP')).toBe(
      `A hammer price of £100 costs £${expected('fee.margin_100').toFixed(2)} in all.`,
    );
  });

  it('say how high to bid for 120 in all online (78.67), and down to a step of 5 (75)', () => {
    expect(limitPriceSentence(12_000, online, 'GBP')).toBe(
      `For £120 in all, bid up to £${expected('fee.inverse_120').toFixed(2)}.`,
    );
    const stepped = { ...online, bidSteps: [{ from: 0, step: 500 }] };
    expect(limitPriceSentence(12_000, stepped, 'GBP')).toBe(
      `For £120 in all, bid up to £${expected('fee.inverse_120_step')}.`,
    );
  });

  it('say that a ticket price is what is paid', () => {
    expect(termsSentence(plainTerms, 'EUR')).toBe(
      'A ticket of €100 costs €100 in all. For €120 in all, pay up to €120.',
    );
  });

  it('say so when the costs alone are more than the limit', () => {
    const dear = { ...auction, fixedCosts: [{ what: 'Carrier', amount: 20_000 }] };
    expect(limitPriceSentence(12_000, dear, 'GBP')).toContain('there is no price to give');
  });

  it('use sums that mean something in a currency without cents', () => {
    expect(termsSentence(plainTerms, 'JPY')).toContain('¥10,000');
  });
});
