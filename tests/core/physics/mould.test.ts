import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { perhapsMercury } from '../../../src/core/physics/exposure-limits.ts';
import {
  criticalHumidityPct,
  mouldAfter,
  mouldCeiling,
  NO_MOULD,
  type Sensitivity,
  weeksToFirstGrowth,
} from '../../../src/core/physics/mould-growth.ts';
import {
  MOULD_CLEANING,
  mouldRefusals,
  mouldWeather,
  outbreakSize,
  storeClimate,
} from '../../../src/core/physics/mould-risk.ts';

import reference from './reference.json';

const air = (temperatureC: number, relativeHumidityPct: number) => ({ temperatureC, relativeHumidityPct });
const runs = { numRuns: 500 };
const sensitivity = fc.constantFrom<Sensitivity>('bareWood', 'gluedBoard', 'mediumResistant', 'resistant');

describe('mould in steady damp air', () => {
  it('starts on bare pine about when the published formula says', () => {
    for (const [t, rh] of [
      [20, 90],
      [20, 95],
      [10, 95],
    ] as const) {
      const weeks = weeksToFirstGrowth(air(t, rh));
      // The brake near the ceiling makes the model a little slower than the formula for the first growth alone.
      expect(mouldAfter(NO_MOULD, weeks * 168, air(t, rh)).index).toBeGreaterThan(0.93);
      expect(mouldAfter(NO_MOULD, weeks * 168 * 1.1, air(t, rh)).index).toBeGreaterThan(1);
      expect(mouldAfter(NO_MOULD, weeks * 168 * 0.9, air(t, rh)).index).toBeLessThan(1);
    }
  });

  it.each(
    reference.mouldIndex.values.map(
      ([surface, climate, index]) => [surface as Sensitivity, climate as number[][], index as number] as const,
    ),
  )('on %s after %j comes to %f, as another program of the same model has it', (surface, climate, index) => {
    const state = climate.reduce(
      (last, [hours = 0, t = 0, rh = 0]) => mouldAfter(last, hours, air(t, rh), surface),
      NO_MOULD,
    );
    expect(state.index).toBeCloseTo(index, 9);
  });

  it('ends at its ceiling and never passes it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 30, noNaN: true }),
        fc.double({ min: 70, max: 100, noNaN: true }),
        fc.integer({ min: 0, max: 600 }),
        sensitivity,
        (t, rh, hours, surface) => {
          const ceiling = mouldCeiling(air(t, rh), surface);
          const { index } = mouldAfter(NO_MOULD, hours, air(t, rh), surface);
          expect(index).toBeGreaterThanOrEqual(0);
          expect(index).toBeLessThanOrEqual(ceiling + 1e-3);
        },
      ),
      runs,
    );
    expect(mouldAfter(NO_MOULD, 100_000, air(20, 90)).index).toBeCloseTo(mouldCeiling(air(20, 90), 'bareWood'), 1);
  });

  it('grows no sooner in drier air', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 45, noNaN: true }),
        fc.double({ min: 50, max: 99, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (t, rh, more) => {
          expect(weeksToFirstGrowth(air(t, rh + more))).toBeLessThanOrEqual(weeksToFirstGrowth(air(t, rh)));
        },
      ),
      runs,
    );
  });

  it('needs damper air in the cold', () => {
    expect(criticalHumidityPct(5)).toBeGreaterThan(criticalHumidityPct(15));
    expect(criticalHumidityPct(20.01)).toBe(80);
  });

  it('falls back in dry spells: at once, then not for a day, then slowly', () => {
    const dry = air(20, 50);
    const start = { index: 2, dryHours: 0 };
    const fallen = (hours: number) => mouldAfter(start, hours, dry).index;
    expect(2 - fallen(6)).toBeCloseTo((6 * 0.032) / 24, 9);
    expect(fallen(24)).toBeCloseTo(fallen(6), 12);
    expect(fallen(24) - fallen(48)).toBeCloseTo(0.016, 9);
    // Stretch by stretch comes to the same as at one go.
    expect(mouldAfter(mouldAfter(start, 20, dry), 28, dry).index).toBeCloseTo(fallen(48), 12);
  });
});

describe('what air means for a shelf of blocks', () => {
  it('is no risk when dry, cold or hot', () => {
    expect(mouldWeather(air(20, 64.9))).toEqual({ kind: 'no-risk', because: 'dry' });
    expect(mouldWeather(air(1, 95))).toEqual({ kind: 'no-risk', because: 'cold' });
    expect(mouldWeather(air(46, 95))).toEqual({ kind: 'no-risk', because: 'hot' });
  });

  it('is watched between 65 % and what sapwood needs, and called damp over 75', () => {
    expect(mouldWeather(air(20, 70))).toMatchObject({ kind: 'watch', damp: false });
    expect(mouldWeather(air(20, 78))).toMatchObject({ kind: 'watch', damp: true });
    expect(mouldWeather(air(20, 90))).toMatchObject({ kind: 'grows' });
  });

  it('is right at 45 to 55 %, bearable to 40 and 60', () => {
    expect([39, 40, 45, 55, 60, 61].map(storeClimate)).toEqual([
      'too dry',
      'bearable',
      'right',
      'right',
      'bearable',
      'too damp',
    ]);
  });

  it('answers for any air a person may meet, never with NaN', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (t, rh) => {
          const weather = mouldWeather(air(t, rh));
          if (weather.kind === 'grows') expect(weather.weeksToFirstGrowth).toBeGreaterThan(0);
          if (weather.kind === 'watch') expect(weather.growsAbovePct).toBeGreaterThan(rh);
        },
      ),
      runs,
    );
  });
});

describe('a mouldy block', () => {
  it('is a small outbreak; a cellar is not', () => {
    expect([0, 0.05, 0.3, 3, 3.1, 11].map(outbreakSize)).toEqual([
      'none',
      'small',
      'medium',
      'medium',
      'large',
      'professional',
    ]);
  });

  it('is refused for rot, for growth through thin layers, for smell, crystals, or a buyer at risk', () => {
    expect(mouldRefusals({ probeMm: 3.1 }).because).toEqual([{ code: 'rot-not-mould', probeMm: 3.1, limitMm: 3 }]);
    expect(mouldRefusals({ probeMm: 3 }).because).toEqual([]);
    expect(mouldRefusals({ coverage: 0.6, construction: 'solid' }).because).toEqual([]);
    expect(mouldRefusals({ coverage: 0.6, construction: 'sparterie' }).because).toHaveLength(1);
    expect(mouldRefusals({ smellsAfterDryMonth: true, buyerAtRisk: true }).because.map(({ code }) => code)).toEqual([
      'smell-stays',
      'buyer-at-risk',
    ]);
    expect(mouldRefusals({ chemicalSmellOrCrystals: true }).cautions).toContain('pesticideResidue');
  });

  it('loses its pins before peroxide touches it, and is dried before it is brushed', () => {
    const order = MOULD_CLEANING.map(({ step }) => step);
    expect(order.indexOf('pinsOut')).toBeLessThan(order.indexOf('peroxide'));
    expect(order.indexOf('dryFirst')).toBeLessThan(order.indexOf('brushIntoVacuum'));
  });
});

describe('old felt', () => {
  it('may hold mercury up to the 1940s', () => {
    expect([1880, 1949, 1950].map(perhapsMercury)).toEqual([true, true, false]);
  });
});
