import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { allIn, highestHammer } from '../../src/core/fees.ts';
import type { SaleTerms } from '../../src/core/records.ts';
import { minor } from '../../src/core/units.ts';
import { checksOf } from '../handbook/checks.ts';
import { someTerms } from '../make.ts';

const nothing = { freight: 0, insurance: 0, inland: 0, handling: 0, headings: 1, provedAntique: false };

/** A sale whose lots cross a border, by one of the catalogue's sets of rules. */
function termsInto(code: string, shipment: Partial<typeof nothing> = {}, terms: Partial<SaleTerms> = {}): SaleTerms {
  const rules = catalogue.importRules[code]?.rules;
  if (!rules) throw new Error(`No import rules ${code}.`);
  return someTerms({
    ...terms,
    customs: { rules: { ...rules, bands: [...rules.bands] }, shipment: { ...nothing, ...shipment } },
  });
}
const expected = (id: string): number => {
  const row = checksOf('fees').find((one) => one.id === id);
  if (!row) throw new Error(`No check row ${id}.`);
  return Math.round(Number(row.expected) * 100);
};

// Trade handbook §3.2, rows imp.*: through the sale's terms and the catalogue's dated rules, not the bare sum.
describe('a lot from abroad, by the catalogue’s rules', () => {
  it.each([
    ['imp.uk_std', 18_000, termsInto('uk', { freight: 4_000, handling: 1_200 })],
    ['imp.uk_antique', 18_000, termsInto('uk', { freight: 4_000, handling: 1_200, provedAntique: true })],
    ['imp.uk_low', 12_000, termsInto('uk', { freight: 1_500, handling: 1_200 })],
    ['imp.eu_low_2026', 9_000, termsInto('eu', { freight: 1_500, handling: 1_500 })],
    ['imp.eu_std', 22_000, termsInto('eu', { freight: 5_000, handling: 1_500 })],
    ['imp.us', 25_000, termsInto('us', { freight: 6_000, handling: 2_000 })],
  ])('costs what the handbook says (%s)', (id, price, terms) => {
    const bill = allIn(minor(price), terms);
    expect(bill.total).toBe(expected(id));
    expect(bill.customs).toBe(bill.total - price);
  });

  it('fits 300 landed up to 200 (imp.inverse_uk)', () => {
    expect(highestHammer(minor(30_000), termsInto('uk', { freight: 4_000, handling: 1_200 }))).toBe(
      expected('imp.inverse_uk'),
    );
  });

  it('pays customs on the premium as well, and post within the country only once', () => {
    const auction = { premium: [{ upTo: null, rate: 0.25 }], fixedCosts: [{ what: 'Post', amount: 700 }] };
    const bill = allIn(minor(20_000), termsInto('uk', { freight: 4_000, handling: 1_200 }, auction));
    // 200 and a quarter of it are 250; with 40 of carriage 290; a fifth of that is 58; 12 to clear it; 7 of post.
    expect(bill.total).toBe(25_000 + 4_000 + 5_800 + 1_200 + 700);
  });

  it('wears the day its rates were read for, and where', () => {
    for (const { rules, text } of Object.values(catalogue.importRules)) {
      expect(rules.asOf).toMatch(/^20\d\d-\d\d-\d\d$/);
      expect(rules.source.length).toBeGreaterThan(10);
      expect(text.length).toBeGreaterThan(10);
    }
  });

  it('finds the highest hammer that fits, though the cost falls where a band ends', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60_000 }),
        fc.constantFrom('uk', 'eu', 'us'),
        fc.constantFrom(0, 0.24),
        fc.integer({ min: 0, max: 6_000 }),
        (limit, code, rate, flat) => {
          const base = termsInto(code, { freight: 1_000, handling: 500 }, { premium: [{ upTo: null, rate }] });
          const rules = base.customs?.rules;
          if (!rules) throw new Error('No rules.');
          // A flat duty in the first band alone: just above its end the parcel is cheaper.
          const bands = rules.bands.map((band, index) => (index === 0 ? { ...band, dutyPerHeading: flat } : band));
          const terms: SaleTerms = {
            ...base,
            customs: { rules: { ...rules, bands }, shipment: { ...nothing, freight: 1_000 } },
          };
          const best = highestHammer(minor(limit), terms);
          const fits = (hammer: number): boolean => allIn(minor(hammer), terms).total <= limit;
          if (best !== null) expect(fits(best)).toBe(true);
          for (let hammer = limit; hammer > (best ?? -1); hammer -= Math.max(1, Math.floor(limit / 50)))
            expect(fits(hammer)).toBe(false);
          expect(fits((best ?? -1) + 1)).toBe(false);
        },
      ),
      { numRuns: 150, seed: 19 },
    );
  });
});
