import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ThreePoint } from '../../src/core/catalogue.ts';
import {
  betaSd,
  logNormalCdf,
  logNormalFrom,
  logNormalMean,
  logNormalMedian,
  logNormalQuantile,
  pertCdf,
  pertMean,
  pertQuantile,
  pertSd,
  pertShapes,
  sumOfSteps,
  sumQuantile,
  triangularMean,
  triangularQuantile,
  triangularSd,
} from '../../src/core/estimate.ts';
import { type CheckRow, checksOf, input, strayOf, titleOf } from '../handbook/checks.ts';

const pointsIn = (row: CheckRow): ThreePoint => ({
  o: input(row, 'o'),
  m: input(row, 'm'),
  p: input(row, 'p_' in row.inputs ? 'p_' : 'p'),
});
const stepsIn = (row: CheckRow): ThreePoint[] =>
  (row.inputs.steps as [number, number, number][]).map(([o, m, p]) => ({ o, m, p }));
const percentilesIn = (row: CheckRow) => logNormalFrom(input(row, 'p10'), input(row, 'p90'));
const quantileIn = (row: CheckRow) => pertQuantile(pointsIn(row), input(row, 'q'));

/** A seeded uniform stream (mulberry32, public domain), so that the runs are the same every time. */
function uniforms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const RUNS = 20_000;
const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Net of one purchase per draw: success or failure, beta hours at a rate, consumables, the price. */
function netDraws(row: CheckRow): number[] {
  const next = uniforms(1931);
  const points = pointsIn(row);
  return Array.from({ length: RUNS }, () => {
    const worth = next() < input(row, 'p') ? input(row, 'v_ok') : input(row, 'v_fail');
    const hours = pertQuantile(points, next());
    return worth - input(row, 'price') - hours * input(row, 'rate') - input(row, 'consumables');
  });
}

const ANSWERS: Record<string, (row: CheckRow) => number> = {
  'est.pert_mean': (row) => pertMean(pointsIn(row)),
  'est.pert_sd': (row) => pertSd(pointsIn(row)),
  'est.beta_alpha': (row) => pertShapes(pointsIn(row)).alpha,
  'est.beta_beta': (row) => pertShapes(pointsIn(row)).beta,
  'est.beta_sd': (row) => betaSd(pointsIn(row)),
  'est.beta_p10': quantileIn,
  'est.beta_p50': quantileIn,
  'est.beta_p80': quantileIn,
  'est.beta_p90': quantileIn,
  'est.tri_mean': (row) => triangularMean(pointsIn(row)),
  'est.tri_sd': (row) => triangularSd(pointsIn(row)),
  'est.ln_mu': (row) => percentilesIn(row).mu,
  'est.ln_sigma': (row) => percentilesIn(row).sigma,
  'est.ln_median': (row) => logNormalMedian(percentilesIn(row)),
  'est.ln_mean': (row) => logNormalMean(percentilesIn(row)),
  'est.ln_p80': (row) => logNormalQuantile(percentilesIn(row), 0.8),
  'est.sum_mean': (row) => sumOfSteps(stepsIn(row)).mean,
  'est.sum_sd': (row) => sumOfSteps(stepsIn(row)).sd,
  'est.sum_p80': (row) => sumQuantile(sumOfSteps(stepsIn(row)), 0.8),
  'est.sum_sd_corr': (row) => sumOfSteps(stepsIn(row), input(row, 'rho')).sd,
  'est.mc_prob': (row) => {
    const next = uniforms(1958);
    const late = Array.from({ length: RUNS }, () => Number(pertQuantile(pointsIn(row), next()) > input(row, 'limit')));
    return meanOf(late);
  },
  'est.mc_net': (row) => meanOf(netDraws(row)),
  'est.mc_loss': (row) => meanOf(netDraws(row).map((net) => Number(net < 0))),
};

describe('estimates against the handbook', () => {
  it.each(checksOf('estimate').map((row) => [titleOf(row), row] as const))('%s', (_, row) => {
    expect(ANSWERS[row.id], `${row.id} has no answer here`).toBeDefined();
    expect(strayOf(row, ANSWERS[row.id]?.(row) ?? Number.NaN)).toBeLessThanOrEqual(1);
  });

  it('gives the chance of running over 8 h exactly where the handbook draws lots for it', () => {
    expect(1 - pertCdf({ o: 4, m: 7, p: 13 }, 8)).toBeCloseTo(0.37179, 5);
  });
});

/** Hours in hundredths: nobody estimates finer, and arithmetic with the least numbers there are proves nothing. */
const hundredths = fc.integer({ min: 0, max: 5000 }).map((count) => count / 100);
const threePoint: fc.Arbitrary<ThreePoint> = fc
  .tuple(hundredths, hundredths, hundredths)
  .map((points) => points.sort((a, b) => a - b))
  .map(([o = 0, m = 0, p = 0]) => ({ o, m, p }));
const chance = fc.double({ min: 0, max: 1, noNaN: true });

describe('three points, whatever they are', { timeout: 30_000 }, () => {
  it('stays between the points, and undoes its own chance', () => {
    fc.assert(
      fc.property(threePoint, chance, (points, q) => {
        for (const quantile of [pertQuantile, triangularQuantile]) {
          expect(quantile(points, q)).toBeGreaterThanOrEqual(points.o - 1e-12);
          expect(quantile(points, q)).toBeLessThanOrEqual(points.p + 1e-12 * points.p);
        }
        if (points.p > points.o) expect(pertCdf(points, pertQuantile(points, q))).toBeCloseTo(q, 6);
      }),
      { numRuns: 500 },
    );
  });

  it('never takes less time for a higher percentile or a later point', () => {
    fc.assert(
      fc.property(threePoint, chance, chance, (points, q, more) => {
        const high = Math.max(q, more);
        expect(pertQuantile(points, high)).toBeGreaterThanOrEqual(pertQuantile(points, q) - 1e-9);
        expect(pertMean({ ...points, p: points.p + more })).toBeGreaterThanOrEqual(pertMean(points));
      }),
      { numRuns: 500 },
    );
  });

  it('has the mean and spread its percentiles say', () => {
    fc.assert(
      fc.property(threePoint, (points) => {
        // Quantiles averaged over equal slices of chance give the mean, and their scatter the standard deviation.
        const slices = Array.from({ length: 200 }, (_, i) => pertQuantile(points, (i + 0.5) / 200));
        const mean = meanOf(slices);
        const sd = Math.sqrt(meanOf(slices.map((slice) => (slice - mean) ** 2)));
        const span = points.p - points.o;
        expect(Math.abs(mean - pertMean(points))).toBeLessThanOrEqual(2e-3 * span + 1e-9);
        expect(Math.abs(sd - betaSd(points))).toBeLessThanOrEqual(4e-3 * span + 1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it('is that one figure when all three points are equal', () => {
    const sure = { o: 3, m: 3, p: 3 };
    expect([
      pertMean(sure),
      pertQuantile(sure, 0.1),
      pertQuantile(sure, 0.9),
      betaSd(sure),
      triangularSd(sure),
    ]).toEqual([3, 3, 3, 0, 0]);
    expect([pertCdf(sure, 2.99), pertCdf(sure, 3)]).toEqual([0, 1]);
  });

  it('refuses points out of order', () => {
    expect(() => pertQuantile({ o: 5, m: 4, p: 6 }, 0.5)).toThrow('came as 5/4/6');
    expect(() => pertCdf({ o: 1, m: 2, p: Number.NaN }, 1)).toThrow('expected optimistic ≤ likely');
  });
});

describe('a log-normal from two percentiles', () => {
  it('has exactly these percentiles', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        (p10, ratio) => {
          const fitted = logNormalFrom(p10, p10 * ratio);
          expect(logNormalQuantile(fitted, 0.1)).toBeCloseTo(p10, 8);
          expect(logNormalQuantile(fitted, 0.9) / (p10 * ratio)).toBeCloseTo(1, 10);
          if (ratio > 1.01) expect(logNormalCdf(fitted, p10)).toBeCloseTo(0.1, 8);
        },
      ),
      { numRuns: 500 },
    );
    expect(logNormalCdf({ mu: 0, sigma: 1 }, 0)).toBe(0);
    expect(() => logNormalFrom(0, 5)).toThrow('came as 0 and 5');
  });
});

describe('steps in a row', () => {
  it('spreads wider the more the steps hang together, between root of squares and plain sum', () => {
    fc.assert(
      fc.property(fc.array(threePoint, { minLength: 1, maxLength: 12 }), chance, chance, (steps, a, b) => {
        const [low, high] = [sumOfSteps(steps, Math.min(a, b)), sumOfSteps(steps, Math.max(a, b))];
        expect(high.sd).toBeGreaterThanOrEqual(low.sd - 1e-12);
        expect(sumOfSteps(steps, 1).sd).toBeCloseTo(
          steps.reduce((sum, step) => sum + pertSd(step), 0),
          9,
        );
        expect(high.mean).toBe(low.mean);
      }),
      { numRuns: 500 },
    );
    expect(() => sumOfSteps([], 1.5)).toThrow('Correlation came as 1.5');
    expect(sumOfSteps([])).toEqual({ mean: 0, sd: 0 });
  });
});
