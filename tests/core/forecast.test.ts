import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import type { Catalogue, DamageKind, ThreePoint, Treatment } from '../../src/core/catalogue.ts';
import { betaSd, pertMean } from '../../src/core/estimate.ts';
import type { PaceBook } from '../../src/core/plan.ts';
import { type Forecast, type ForecastCase, forecast } from '../../src/core/simulate/simulate.ts';
import { type CheckRow, checksOf, input, strayOf, titleOf } from '../handbook/checks.ts';
import scipy from '../handbook/scipy-forecast-quantiles.json' with { type: 'json' };
import { aBlock, aFinding, aForecastCase, aSurvey, caseOfLot, everythingLookedAt, someSettings } from '../make.ts';

const row = (id: string): CheckRow => {
  const found = [...checksOf('estimate'), ...checksOf('calibration')].find((each) => each.id === id);
  if (!found) throw new Error(`No row ${id}.`);
  return found;
};

/** A catalogue of one job and one fault that needs it, for sums whose answer is known. */
function oneJob(points: readonly ThreePoint[], chance: number, consumables: number): Catalogue {
  const dryClean = catalogue.treatments.dryClean as Treatment;
  const warp = catalogue.damage.warp as DamageKind;
  const jobs = points.map((setUpHours, n): [string, Treatment] => [
    `job${n}`,
    { ...dryClean, setUpHours, per: null, consumables: n === 0 ? consumables : 0, after: [], brings: [], always: true },
  ]);
  const fault: DamageKind = {
    ...warp,
    treatments: [{ treatment: 'job0', fromGrade: 1, why: '', essential: true }],
    treatability: 1,
    baseSuccess: chance,
    gates: [],
  };
  return {
    ...catalogue,
    treatments: Object.fromEntries(jobs),
    damage: { fault },
    model: { ...catalogue.model, successMultiplier: [0, 0, 1, 1, 1], copyPlan: [] },
  };
}

const evenPace: PaceBook = { cleanAndSeal: { median: 1, spread: { kind: 'logNormal', sigma: 0 } } };

/** A block with a fault too bad to be used as it stands, worth `whole` mended and `spare` if mending fails. */
const faulty = (whole: number, spare: number, price: number, rate: number): ForecastCase =>
  aForecastCase({
    block: aBlock({ newPrice: whole, fallbackPrice: spare, priceAsked: price, copyable: false }),
    survey: aSurvey({ noneSeen: {} }),
    findings: [aFinding({ kind: 'fault', zone: 'whole', gradeByHand: 3, answers: {} })],
    settings: someSettings({ hourlyRate: rate, gain: 0 }),
    pace: evenPace,
    count: 20_000,
  });

describe('sums whose answer is known', () => {
  const pence = (of: CheckRow, name: string): number => Math.round(100 * input(of, name));
  const pointsIn = (of: CheckRow): ThreePoint => ({
    o: input(of, 'o'),
    m: input(of, 'm'),
    p: input(of, 'p_' in of.inputs ? 'p_' : 'p'),
  });

  function gamble(of: CheckRow): Forecast {
    const known = oneJob([pointsIn(of)], input(of, 'p'), pence(of, 'consumables'));
    return forecast(faulty(pence(of, 'v_ok'), pence(of, 'v_fail'), pence(of, 'price'), pence(of, 'rate')), known);
  }

  it(titleOf(row('est.mc_net')), () => {
    const of = row('est.mc_net');
    const { best, strategies } = gamble(of);
    expect(best).toBe('restore');
    expect(strayOf(of, strategies.restore.meanNet / 100 - input(of, 'price'))).toBeLessThanOrEqual(1);
    // Stratified draws do far better than the independent ones the row allows for.
    expect(strategies.restore.meanNet / 100 - input(of, 'price')).toBeCloseTo(37, 1);
  });

  it(titleOf(row('est.mc_loss')), () => {
    const of = row('est.mc_loss');
    expect(strayOf(of, gamble(of).lossChance ?? Number.NaN)).toBeLessThanOrEqual(1);
  });

  it(titleOf(row('est.mc_prob')), () => {
    const of = row('est.mc_prob');
    const [rate, price] = [1_400, 9_000];
    // Worth just so much that the purchase loses if, and only if, the job takes longer than the limit.
    const whole = price + rate * input(of, 'limit');
    const { lossChance } = forecast(faulty(whole, 0, price, rate), oneJob([pointsIn(of)], 1, 0));
    expect(strayOf(of, lossChance ?? Number.NaN)).toBeLessThanOrEqual(1);
  });

  const steps = (row('est.sum_mean').inputs.steps as [number, number, number][]).map(([o, m, p]) => ({ o, m, p }));
  const spreadOf = ({ hours }: Forecast): number => (hours.p90 - hours.p10) / (2 * 1.281552);

  it(titleOf(row('est.sum_mean')), () => {
    const [rate, whole] = [1_000, 100_000];
    const { strategies } = forecast(faulty(whole, 0, 0, rate), oneJob(steps, 1, 0));
    const meanHours = (whole - strategies.restore.meanNet) / rate;
    expect(strayOf(row('est.sum_mean'), meanHours)).toBeLessThanOrEqual(1);
  });

  it('spreads the sum of steps as independent betas do, and wider at one pace for all', () => {
    const known = oneJob(steps, 1, 0);
    const alone = forecast(faulty(100_000, 0, 0, 1_000), known);
    // Four betas are nearly normal: P10 to P90 is 2.563 standard deviations, give or take 2 %.
    const sd = Math.sqrt(steps.reduce((sum, points) => sum + betaSd(points) ** 2, 0));
    expect(spreadOf(alone) / sd).toBeGreaterThan(0.98);
    expect(spreadOf(alone) / sd).toBeLessThan(1.02);
    const together = forecast({ ...faulty(100_000, 0, 0, 1_000), pace: {} }, known);
    // A quarter of log spread over the whole, and the steps' own: √(0.25² + (sd/mean)²) of the mean, by the delta method.
    const mean = steps.reduce((sum, points) => sum + pertMean(points), 0);
    expect(spreadOf(together) / (mean * Math.hypot(0.25, sd / mean))).toBeGreaterThan(0.97);
    expect(spreadOf(together) / (mean * Math.hypot(0.25, sd / mean))).toBeLessThan(1.06);
  });

  it('puts the owner’s pace on the hours as its own quantiles', () => {
    const certainly = [{ o: 6, m: 6, p: 6 }];
    const pace: PaceBook = {
      cleanAndSeal: { median: Math.exp(0.224062), spread: { kind: 'logStudent', scale: 0.23284, freedom: 10 } },
    };
    const { hours } = forecast({ ...faulty(100_000, 0, 0, 1_000), pace }, oneJob(certainly, 1, 0));
    for (const [p, point] of [
      [0.1, 'p10'],
      [0.5, 'p50'],
      [0.9, 'p90'],
    ] as const) {
      const multiplier = scipy.rows.find((each) => each.what === 'log-t' && each.freedom === 10 && each.p === p)?.value;
      expect(hours[point] / 6 / (multiplier ?? Number.NaN)).toBeCloseTo(1, 3);
    }
  });
});

describe('a what-if', () => {
  it('in which an essential repair fails never works, and costs no more than the work that is then left undone', () => {
    const facts = { ...caseOfLot('L09'), origin: 'dampStore', tallies: {}, seed: 1 } as const;
    const split = facts.findings.find(({ kind }) => kind === 'split');
    const usual = forecast(facts, catalogue);
    const failed = forecast({ ...facts, failing: [split?.id ?? ''] }, catalogue);
    expect(usual.works).toBeGreaterThan(0.8);
    expect(failed.works).toBe(0);
    expect(failed.strategies.restore.ceiling).toBeLessThan(usual.strategies.restore.ceiling);
    expect(failed.strategies.keep).toEqual(usual.strategies.keep);
  });
});

describe('a block that earns little and has a shape worth having', () => {
  it('is worth no more when it stops working than while it works', () => {
    const block = aBlock({
      shapeValue: 'unique',
      newPrice: 40_000,
      fallbackPrice: 3_000,
      hatsPerYear: 1,
      marginPerHat: 1_000,
      blockShare: 0.2,
    });
    const ruined = [aFinding({ kind: 'displayPiece', zone: 'whole', answers: { signsCount: 3 } })];
    const ceilingWith = (findings: typeof ruined): number =>
      forecast(aForecastCase({ block, findings, survey: everythingLookedAt(block, findings) }), catalogue).strategies
        .restore.ceiling;
    expect(ceilingWith(ruined)).toBeLessThanOrEqual(ceilingWith([]));
  });
});

describe('nothing looked at', () => {
  it('lies under the same block with everything looked at and nothing found, wider, and asks to be looked at', () => {
    const block = aBlock({ newPrice: 40_000, equalUsedPrice: 39_000, fallbackPrice: 4_000 });
    const blind = forecast(aForecastCase({ block, origin: 'dampStore' }), catalogue);
    const seen = forecast(
      aForecastCase({ block, origin: 'dampStore', survey: everythingLookedAt(block, []) }),
      catalogue,
    );
    expect(blind.ceiling).toBeLessThan(seen.ceiling);
    expect(blind.score.p90 - blind.score.p10).toBeGreaterThan(seen.score.p90 - seen.score.p10);
    expect(seen.looks).toEqual([]);
    expect(blind.looks[0]?.worth).toBeGreaterThan(0);
    // A damp store promises more damage than a workshop in use.
    const fromAWorkshop = forecast(aForecastCase({ block, origin: 'workshopInUse' }), catalogue);
    expect(fromAWorkshop.ceiling).toBeGreaterThan(blind.ceiling);
  });
});
