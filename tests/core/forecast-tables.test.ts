import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { pertMean } from '../../src/core/estimate.ts';
import { at, logNormalTable, logStudentTable, pertTable } from '../../src/core/simulate/quantile-table.ts';
import { uniforms } from '../../src/core/simulate/random.ts';
import { quantileOf } from '../../src/core/simulate/simulate.ts';
import { type CheckRow, checksOf, strayOf, titleOf } from '../handbook/checks.ts';
import scipy from '../handbook/scipy-forecast-quantiles.json' with { type: 'json' };

// What the draws are made of: chances spread evenly, and the distributions they are read through.

const row = (id: string): CheckRow => {
  const found = [...checksOf('estimate'), ...checksOf('calibration')].find((each) => each.id === id);
  if (!found) throw new Error(`No row ${id}.`);
  return found;
};

describe('tables of quantiles', () => {
  interface Row {
    readonly what: string;
    readonly p: number;
    readonly value: number;
    readonly [figure: string]: number | string;
  }
  const rows = scipy.rows as readonly Row[];
  const figure = (of: Row, name: string): number => Number(of[name]);

  // Read by straight lines between 513 quantiles. Inside P1–P99 that is close; the outermost thousandth is cut short on
  // purpose, since some of these distributions have no end and one of them no mean.
  const allowed = (p: number, inside: number, outside: number): number => (p < 0.01 || p > 0.99 ? outside : inside);

  it(`of beta-PERT are within 2 in 10,000 of the range of ${scipy.source}`, () => {
    const perts = rows.filter(({ what }) => what === 'beta-PERT');
    expect(perts.length).toBe(120);
    for (const each of perts) {
      const points = { o: figure(each, 'o'), m: figure(each, 'm'), p: figure(each, 'p_') };
      const miss = Math.abs(at(pertTable(points), each.p) - each.value) / (points.p - points.o);
      expect(miss, JSON.stringify(each)).toBeLessThanOrEqual(allowed(each.p, 0.0002, 0.0025));
    }
  });

  it('of log-normal and log-t multipliers are within 1 in 1,000', () => {
    const multipliers = rows.filter(({ what }) => what !== 'beta-PERT');
    expect(multipliers.length).toBe(72);
    for (const each of multipliers) {
      const table =
        each.what === 'log-normal'
          ? logNormalTable(figure(each, 'mu'), figure(each, 'sigma'))
          : logStudentTable(figure(each, 'mu'), figure(each, 'scale'), figure(each, 'freedom'));
      const miss = Math.abs(at(table, each.p) / each.value - 1);
      expect(miss, JSON.stringify(each)).toBeLessThanOrEqual(allowed(each.p, 0.001, 0.13));
    }
  });

  it('have the mean of the three-point formula', () => {
    const luck = uniforms('mean', 1, 4096);
    for (const { setUpHours, waitHours } of Object.values(catalogue.treatments)) {
      for (const points of [setUpHours, waitHours]) {
        const table = pertTable(points);
        const mean = luck.reduce((sum, u) => sum + at(table, u), 0) / luck.length;
        expect(Math.abs(mean - pertMean(points))).toBeLessThanOrEqual(0.0001 * (points.p - points.o));
      }
    }
  });

  it('are one value where the three points are one', () => {
    const table = pertTable({ o: 24, m: 24, p: 24 });
    for (const u of [0.001, 0.5, 0.999]) expect(at(table, u)).toBe(24);
  });

  it.each([
    ['cal.nig_p80', () => at(logStudentTable(0.224062, 0.23284, 10), 0.8)],
    ['cal.mult_p80', () => at(logNormalTable(0.246697, Math.hypot(0.35, 0.134559)), 0.8)],
    ['cal.mult_median', () => at(logNormalTable(0.246697, Math.hypot(0.35, 0.134559)), 0.5)],
    ['est.beta_p10', () => at(pertTable({ o: 4, m: 7, p: 13 }), 0.1)],
    ['est.beta_p50', () => at(pertTable({ o: 4, m: 7, p: 13 }), 0.5)],
    ['est.beta_p80', () => at(pertTable({ o: 4, m: 7, p: 13 }), 0.8)],
    ['est.beta_p90', () => at(pertTable({ o: 4, m: 7, p: 13 }), 0.9)],
  ] as const)('%s', (id, answer) => {
    expect(strayOf(row(id), answer()), titleOf(row(id))).toBeLessThanOrEqual(1);
  });
});

describe('draws', () => {
  const count = 1024;
  const purposes = ['check there', 'check grade', 'check holds 0', 'check holds 1', 'seal time', 'seal wait', 'pace'];

  it('fall once in each slice of the chances', () => {
    for (const purpose of purposes) {
      const slices = Array.from(uniforms(purpose, 3, count), (u) => Math.floor(u * count)).sort((a, b) => a - b);
      expect(slices).toEqual(Array.from({ length: count }, (_, n) => n));
    }
  });

  it('of different purposes and seeds have nothing to do with one another', () => {
    const all = [1, 2, 0x7fffffff].flatMap((seed) => purposes.map((purpose) => uniforms(purpose, seed, count)));
    const meanOfProducts = (a: Float64Array, b: Float64Array): number =>
      12 * (a.reduce((sum, u, i) => sum + (u - 0.5) * ((b[i] ?? 0) - 0.5), 0) / count);
    for (const [n, a] of all.entries()) {
      // A correlation of independent draws strays by 1/√count; five of those.
      for (const b of all.slice(n + 1)) expect(Math.abs(meanOfProducts(a, b))).toBeLessThan(5 / Math.sqrt(count));
      // Nor with their own neighbours.
      expect(Math.abs(meanOfProducts(a, Float64Array.from([...a.slice(1), a[0] ?? 0])))).toBeLessThan(
        5 / Math.sqrt(count),
      );
    }
  });

  it('are read as quantiles of type 7 (Hyndman and Fan 1996): R’s default', () => {
    const sorted = Float64Array.from([1, 2, 4, 8]);
    // quantile(c(1, 2, 4, 8), c(0.1, 0.5, 0.9)) of R, worked by hand: 1.3, 3, 6.8.
    for (const [p, expected] of [
      [0.1, 1.3],
      [0.5, 3],
      [0.9, 6.8],
    ] as const)
      expect(quantileOf(sorted, p)).toBeCloseTo(expected, 12);
  });
});
