import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  betaCdf,
  betaQuantile,
  binomialCdf,
  normalCdf,
  normalQuantile,
  studentTCdf,
  studentTQuantile,
} from '../../src/core/distributions.ts';
import { logBeta, logGamma } from '../../src/core/incomplete-beta.ts';
import table from '../handbook/scipy-quantiles.json' with { type: 'json' };

interface Row {
  readonly what: string;
  readonly value: number;
  readonly [argument: string]: number | string;
}
const at = (row: Row, name: string): number => Number(row[name]);

const ANSWERS: Record<string, (row: Row) => number> = {
  'normal quantile': (row) => normalQuantile(at(row, 'p')),
  'normal cdf': (row) => normalCdf(at(row, 'z')),
  't quantile': (row) => studentTQuantile(at(row, 'p'), at(row, 'df')),
  't cdf': (row) => studentTCdf(at(row, 't'), at(row, 'df')),
  'beta quantile': (row) => betaQuantile(at(row, 'p'), at(row, 'a'), at(row, 'b')),
  'beta cdf': (row) => betaCdf(at(row, 'x'), at(row, 'a'), at(row, 'b')),
  'binomial cdf': (row) => binomialCdf(at(row, 'k'), at(row, 'n'), at(row, 'p')),
};
/** Promised accuracy, relative: tighter than the table's own for the normal, and for the beta of estimates. */
const PROMISED: Record<string, number> = {
  'normal quantile': 1e-12,
  'normal cdf': 1e-12,
  'beta quantile': 1e-10,
  'beta cdf': 1e-10,
};
const argumentsOf = ({ what: _, value: __, ...rest }: Row) => JSON.stringify(rest);

describe(`quantiles and chances against ${table.source}`, () => {
  it.each((table.rows as unknown as Row[]).map((row) => [row.what, argumentsOf(row), row] as const))(
    '%s at %s',
    (what, _, row) => {
      const answer = ANSWERS[what]?.(row) ?? Number.NaN;
      const error = row.value === 0 ? Math.abs(answer) : Math.abs(answer / row.value - 1);
      expect(error).toBeLessThanOrEqual(PROMISED[what] ?? table.tolerance);
    },
  );
});

const numRuns = 500;
const chance = fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true });
const shape = fc.double({ min: 0.2, max: 200, noNaN: true });

describe('quantiles undo chances', () => {
  it('for the normal, across sixteen standard deviations', () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
        // Above the middle a chance close to 1 has few digits left for its distance from 1.
        const tolerance = z > 0 ? 1e-12 + 2e-16 / normalCdf(-z) : 1e-12;
        expect(Math.abs(normalQuantile(normalCdf(z)) - z)).toBeLessThan(tolerance * Math.max(1, Math.abs(z)) * 4);
      }),
      { numRuns },
    );
  });

  it('for the beta', () => {
    fc.assert(
      fc.property(chance, shape, shape, (p, a, b) => {
        const x = betaQuantile(p, a, b);
        // Near 1 the next representable x already jumps in chance: then only the neighbours must bracket it.
        const [low, high] = [
          betaCdf(Math.max(0, x * (1 - 4e-16) - 1e-320), a, b),
          betaCdf(Math.min(1, x * (1 + 4e-16)), a, b),
        ];
        expect(low).toBeLessThanOrEqual(p * (1 + 1e-10));
        expect(high).toBeGreaterThanOrEqual(p * (1 - 1e-10));
      }),
      { numRuns: 1000 },
    );
  });

  it('for Student’s t, whole degrees of freedom or not', () => {
    fc.assert(
      fc.property(chance, fc.double({ min: 0.3, max: 1e6, noNaN: true }), (p, df) => {
        expect(Math.abs(studentTCdf(studentTQuantile(p, df), df) / p - 1)).toBeLessThan(1e-9);
      }),
      { numRuns },
    );
  });
});

/** Two neighbouring chances may swap in the last digit or two. */
const expectNotAbove = (low: number, high: number) => expect(low).toBeLessThanOrEqual(high + 1e-13 * Math.abs(high));

describe('shapes known without a table', () => {
  it('gives t with one degree of freedom the tangent, with two its closed form', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), (p) => {
        expect(studentTQuantile(p, 1)).toBeCloseTo(Math.tan(Math.PI * (p - 0.5)), 8);
        expect(studentTQuantile(p, 2)).toBeCloseTo((2 * p - 1) / Math.sqrt(2 * p * (1 - p)), 8);
      }),
      { numRuns },
    );
  });

  it('passes from t to the normal without a step where the two meet', () => {
    for (const p of [0.001, 0.2, 0.8, 0.975]) {
      const [below, above] = [studentTQuantile(p, 9_999_999), studentTQuantile(p, 10_000_001)];
      expect(Math.abs(below / above - 1)).toBeLessThan(1e-9);
      expect(Math.abs(studentTQuantile(p, 1e15) / normalQuantile(p) - 1)).toBeLessThan(1e-12);
    }
  });

  it('gives the beta its powers where one shape is 1, and its mirror image', () => {
    fc.assert(
      // Fractions of 1024, so that 1 − x is exact and the mirror image true.
      fc.property(
        fc.integer({ min: 0, max: 1024 }).map((n) => n / 1024),
        shape,
        shape,
        (x, a, b) => {
          expect(betaCdf(x, a, 1)).toBeCloseTo(x ** a, 12);
          expect(betaCdf(x, a, b) + betaCdf(1 - x, b, a)).toBeCloseTo(1, 11);
        },
      ),
      { numRuns },
    );
  });

  it('adds the binomial up term by term', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: -2, max: 42 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (n, k, p) => {
          let [sum, ways] = [0, 1];
          for (let i = 0; i <= Math.min(k, n); i++) {
            sum += ways * p ** i * (1 - p) ** (n - i);
            ways = (ways * (n - i)) / (i + 1);
          }
          expect(binomialCdf(k, n, p)).toBeCloseTo(sum, 10);
        },
      ),
      { numRuns },
    );
  });

  it('never gives a higher chance a lower value', () => {
    fc.assert(
      fc.property(chance, chance, shape, shape, (p, q, a, b) => {
        const [low, high] = [Math.min(p, q), Math.max(p, q)];
        expectNotAbove(normalQuantile(low), normalQuantile(high));
        expectNotAbove(betaQuantile(low, a, b), betaQuantile(high, a, b));
        expectNotAbove(studentTQuantile(low, a), studentTQuantile(high, a));
      }),
      { numRuns },
    );
  });

  it('knows the factorials and ½', () => {
    let factorial = 1;
    for (let n = 1; n <= 30; n++) {
      expect(Math.abs(logGamma(n) - Math.log(factorial))).toBeLessThan(1e-14 * Math.max(10, Math.log(factorial)));
      factorial *= n;
    }
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 14);
    expect(logBeta(0.5, 0.5)).toBeCloseTo(Math.log(Math.PI), 14);
    // B(a, 1) = 1/a, small shape or large.
    for (const a of [0.3, 3, 9.9, 10.1, 1e3, 1e8]) expect(logBeta(a, 1)).toBeCloseTo(-Math.log(a), 12);
    // B(a, a + 1) is half of B(a, a).
    for (const a of [0.7, 6, 40, 1e5]) {
      const miss = logBeta(a, a + 1) - logBeta(a, a) + Math.LN2;
      expect(Math.abs(miss)).toBeLessThan(1e-15 * Math.max(4, Math.abs(logBeta(a, a))));
    }
  });

  it('answers the least of chances with a number, however small', () => {
    expect(betaQuantile(1e-180, 1, 5) / 2e-181).toBeCloseTo(1, 10);
    for (const p of [5e-324, 1e-300, 1e-200])
      for (const [a, b] of [
        [1, 5],
        [0.05, 5],
        [3, 0.05],
        [200, 200],
      ] as const) {
        const x = betaQuantile(p, a, b);
        expect(x >= 0 && x < 1).toBe(true);
        expect(studentTQuantile(p, 1 + a)).toBeLessThan(-1);
        // Where x itself can be written it must give its chance back.
        if (x > 1e-300) expect(Math.log(betaCdf(x, a, b)) / Math.log(p)).toBeCloseTo(1, 10);
      }
  });

  it('ends at the ends', () => {
    expect([normalQuantile(0), normalQuantile(1), normalCdf(-Infinity), normalCdf(Infinity)]).toEqual([
      -Infinity,
      Infinity,
      0,
      1,
    ]);
    expect([betaQuantile(0, 2, 3), betaQuantile(1, 2, 3), betaCdf(-1, 2, 3), betaCdf(2, 2, 3)]).toEqual([0, 1, 0, 1]);
    expect([studentTQuantile(0, 3), studentTQuantile(0.5, 3), studentTQuantile(1, 3)]).toEqual([
      -Infinity,
      0,
      Infinity,
    ]);
    expect([studentTCdf(-Infinity, 3), studentTCdf(0, 3), studentTCdf(Infinity, 3)]).toEqual([0, 0.5, 1]);
  });

  it('refuses what is no chance and no shape', () => {
    expect(() => normalQuantile(1.1)).toThrow('Probability came as 1.1');
    expect(() => betaQuantile(Number.NaN, 1, 1)).toThrow('Probability came as NaN');
    expect(() => betaCdf(0.5, 0, 1)).toThrow('Beta shapes came as 0, 1');
    expect(() => studentTQuantile(0.5, 0)).toThrow('Degrees of freedom came as 0');
    expect(() => binomialCdf(1, 2.5, 0.5)).toThrow('Trials came as 2.5');
  });
});
