import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ClassedJob,
  holdingChance,
  holdingQuantile,
  JOBS_FOR_OWN_CLASS,
  type KnownSpread,
  knownSpreadMeanMultiplier,
  knownSpreadMultiplier,
  logRatio,
  type Pace,
  paceForClass,
  paceMultiplier,
  paceScale,
  updateHolding,
  updateKnownSpread,
  updatePace,
} from '../../src/core/calibration.ts';
import { bandCoverage, brierScore, pinballLoss } from '../../src/core/forecast-scores.ts';
import { type CheckRow, checksOf, input, strayOf, titleOf } from '../handbook/checks.ts';

const ratiosIn = (row: CheckRow): number[] =>
  (row.inputs.log as [number, number][]).map(([estimateHours, actualHours]) =>
    logRatio({ estimateHours, actualHours }),
  );
const knownIn = (row: CheckRow): KnownSpread =>
  updateKnownSpread({ mean: input(row, 'mu0'), sd: input(row, 'tau0'), sigma: input(row, 'sigma') }, ratiosIn(row));
const paceIn = (row: CheckRow): Pace =>
  updatePace(
    { mean: input(row, 'mu0'), weight: input(row, 'kappa0'), shape: input(row, 'alpha0'), scale: input(row, 'beta0') },
    ratiosIn(row),
  );

/** A log in which exactly so many of the bands 0 to 1 hold their actual. */
const bands = (hits: number, of: number) =>
  Array.from({ length: of }, (_, index) => ({ low: 0, high: 1, actual: index < hits ? 0.5 : 2 }));

const ANSWERS: Record<string, (row: CheckRow) => number> = {
  'cal.mean_log_ratio': (row) => ratiosIn(row).reduce((sum, r) => sum + r, 0) / ratiosIn(row).length,
  'cal.post_mu': (row) => knownIn(row).mean,
  'cal.post_tau': (row) => knownIn(row).sd,
  'cal.mult_median': (row) => knownSpreadMultiplier(knownIn(row), 0.5),
  'cal.mult_mean': (row) => knownSpreadMeanMultiplier(knownIn(row)),
  'cal.mult_p80': (row) => knownSpreadMultiplier(knownIn(row), 0.8),
  'cal.next_job': (row) => input(row, 'estimate_h') * knownSpreadMultiplier(knownIn(row), 0.8),
  'cal.nig_mu_n': (row) => paceIn(row).mean,
  'cal.nig_kappa_n': (row) => paceIn(row).weight,
  'cal.nig_alpha_n': (row) => paceIn(row).shape,
  'cal.nig_beta_n': (row) => paceIn(row).scale,
  'cal.nig_pred_scale': (row) => paceScale(paceIn(row)),
  'cal.nig_p80': (row) => paceMultiplier(paceIn(row), 0.8),
  'cal.beta_bin': (row) =>
    holdingChance(
      updateHolding(
        { held: input(row, 'a'), failed: input(row, 'b') },
        input(row, 'successes'),
        input(row, 'trials') - input(row, 'successes'),
      ),
    ),
  'cal.beta_bin_low': (row) => holdingQuantile({ held: input(row, 'a'), failed: input(row, 'b') }, input(row, 'q')),
  'cal.brier': (row) => {
    const outcomes = row.inputs.outcomes as number[];
    const forecasts = (row.inputs.forecasts as number[]).map((chance, i) => ({ chance, happened: outcomes[i] === 1 }));
    return brierScore(forecasts) ?? Number.NaN;
  },
  'cal.coverage': (row) => bandCoverage(bands(input(row, 'hits'), input(row, 'n')), input(row, 'p')).chanceOfSoFew,
  'cal.pinball': (row) => pinballLoss(input(row, 'q'), input(row, 'forecast'), input(row, 'actual')),
};

describe('learning the owner’s pace, against the handbook', () => {
  it.each(checksOf('calibration').map((row) => [titleOf(row), row] as const))('%s', (_, row) => {
    expect(ANSWERS[row.id], `${row.id} has no answer here`).toBeDefined();
    expect(strayOf(row, ANSWERS[row.id]?.(row) ?? Number.NaN)).toBeLessThanOrEqual(1);
  });
});

const PRIOR: Pace = { mean: 0.1, weight: 2, shape: 2, scale: 0.12 };
const ratios = fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { maxLength: 30 });

describe('the log speaks the same however it is read', () => {
  it('learns the same from all jobs at once, one by one, or in another order', () => {
    fc.assert(
      fc.property(ratios, (log) => {
        const [atOnce, oneByOne] = [updatePace(PRIOR, log), log.reduce((pace, r) => updatePace(pace, [r]), PRIOR)];
        const turned = updatePace(PRIOR, [...log].reverse());
        for (const key of ['mean', 'weight', 'shape', 'scale'] as const) {
          expect(oneByOne[key]).toBeCloseTo(atOnce[key], 9);
          expect(turned[key]).toBeCloseTo(atOnce[key], 9);
        }
        const known = { mean: 0.1, sd: 0.4, sigma: 0.35 };
        const stepwise = log.reduce((belief, r) => updateKnownSpread(belief, [r]), known);
        expect(stepwise.mean).toBeCloseTo(updateKnownSpread(known, log).mean, 9);
        expect(stepwise.sd).toBeCloseTo(updateKnownSpread(known, log).sd, 9);
      }),
      { numRuns: 500 },
    );
  });

  it('never shortens the forecast when a job takes longer, nor a quote when more certainty is asked', () => {
    fc.assert(
      fc.property(
        ratios,
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (log, last, more) => {
          const pace = updatePace(PRIOR, [...log, last]);
          expect(paceMultiplier(updatePace(PRIOR, [...log, last + more]), 0.5)).toBeGreaterThan(
            paceMultiplier(pace, 0.5),
          );
          expect(paceMultiplier(pace, 0.8)).toBeGreaterThan(paceMultiplier(pace, 0.5));
          expect(paceMultiplier(pace, 0.5)).toBeCloseTo(Math.exp(pace.mean), 9);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('comes down to the log alone when it is long and steady', () => {
    const steady = Array.from({ length: 4000 }, (_, i) => Math.log(1.5) + (i % 2 ? 0.2 : -0.2));
    const pace = updatePace(PRIOR, steady);
    expect(paceMultiplier(pace, 0.5)).toBeCloseTo(1.5, 2);
    expect(paceScale(pace)).toBeCloseTo(0.2, 2);
  });

  it('leaves the prior as it is on an empty log, and refuses a job without hours', () => {
    expect(updatePace(PRIOR, [])).toEqual(PRIOR);
    expect(() => logRatio({ estimateHours: 0, actualHours: 3 })).toThrow('came as 0 h estimated, 3 h taken');
    expect(() => updatePace({ ...PRIOR, shape: 0 }, [0.1])).toThrow('shape 0');
    expect(() => updateKnownSpread({ mean: 0, sd: 0, sigma: 1 }, [])).toThrow('Spreads came as 0');
  });
});

describe('one pace for each kind of work', () => {
  const jobs = (className: string, count: number, factor: number): ClassedJob[] =>
    Array.from({ length: count }, () => ({ className, estimateHours: 4, actualHours: 4 * factor }));

  it('keeps to its own class from five jobs on', () => {
    const log = [...jobs('joinery', JOBS_FOR_OWN_CLASS, 2), ...jobs('clean and seal', 20, 1)];
    expect(paceForClass('joinery', log, PRIOR)).toMatchObject({ basis: 'class', jobs: 5 });
    expect(paceMultiplier(paceForClass('joinery', log, PRIOR).pace, 0.5)).toBeGreaterThan(1.6);
  });

  it('falls back to all jobs below five, and to the prior on an empty log', () => {
    const log = [...jobs('joinery', JOBS_FOR_OWN_CLASS - 1, 2), ...jobs('clean and seal', 20, 1)];
    expect(paceForClass('joinery', log, PRIOR)).toMatchObject({ basis: 'all', jobs: 24 });
    expect(paceForClass('sparterie', log, PRIOR).jobs).toBe(24);
    expect(paceForClass('joinery', [], PRIOR)).toEqual({ pace: PRIOR, basis: 'prior', jobs: 0 });
  });
});

describe('scoring one’s own forecasts', () => {
  it('is served best by the true quantile', () => {
    const actuals = Array.from({ length: 99 }, (_, i) => i + 1);
    const lossOf = (forecast: number) => actuals.reduce((sum, actual) => sum + pinballLoss(0.8, forecast, actual), 0);
    for (const other of [60, 75, 79, 81, 85, 99]) expect(lossOf(80)).toBeLessThan(lossOf(other));
  });

  it('counts an actual on the edge of its band as inside, and says nothing without a log', () => {
    expect(
      bandCoverage(
        [
          { low: 1, high: 2, actual: 2 },
          { low: 1, high: 2, actual: 1 },
        ],
        0.8,
      ),
    ).toMatchObject({ inside: 2, of: 2, share: 1 });
    expect(bandCoverage([], 0.8)).toEqual({ inside: 0, of: 0, share: null, chanceOfSoFew: 1 });
    expect(brierScore([])).toBeNull();
  });
});
