import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airAt, dewPointC, saturationPressureHPa } from '../../../src/core/physics/air.ts';
import { type Body, daysToShare, shareDone, timeToShare } from '../../../src/core/physics/diffusion.ts';
import {
  equilibriumMoisturePct,
  humidityHolding,
  readMoisture,
} from '../../../src/core/physics/equilibrium-moisture.ts';
import { massLossG, moistureFromWeighing, settling } from '../../../src/core/physics/weighing.ts';
import reference from './reference.json';

const runs = { numRuns: 500 };
const temperature = fc.double({ min: -30, max: 100, noNaN: true });
const humidity = fc.double({ min: 0, max: 100, noNaN: true });
const body = fc.constantFrom<Body>('slab', 'cylinder', 'sphere');

describe('wood in steady air', () => {
  it('holds more water the damper the air', () => {
    fc.assert(
      fc.property(temperature, humidity, humidity, (t, one, other) => {
        const [dry, damp] = one < other ? [one, other] : [other, one];
        expect(equilibriumMoisturePct(t, damp)).toBeGreaterThanOrEqual(equilibriumMoisturePct(t, dry));
      }),
      runs,
    );
  });

  it('tells the humidity it came from', () => {
    fc.assert(
      fc.property(temperature, humidity, (t, rh) => {
        const held = humidityHolding(t, equilibriumMoisturePct(t, rh));
        expect(held.kind).toBe('found');
        if (held.kind === 'found') expect(held.relativeHumidityPct).toBeCloseTo(rh, 6);
      }),
      runs,
    );
  });

  it('shows "near saturation" above 95 % instead of a number', () => {
    expect(readMoisture({ temperatureC: 20, relativeHumidityPct: 97 })).toEqual({
      kind: 'near-saturation',
      aboveRelativeHumidityPct: 95,
    });
    expect(readMoisture({ temperatureC: 20, relativeHumidityPct: 95 }).kind).toBe('in-table');
  });

  it('says when a figure lies outside the printed table', () => {
    expect(readMoisture({ temperatureC: -18, relativeHumidityPct: 60 })).toMatchObject({
      kind: 'outside-table',
      because: 'colder',
    });
    expect(readMoisture({ temperatureC: 20, relativeHumidityPct: 3 })).toMatchObject({
      kind: 'outside-table',
      because: 'drier',
    });
  });

  it('knows that wood wetter than air can make it has met water', () => {
    const held = humidityHolding(20, 40);
    expect(held.kind).toBe('beyond-saturation');
    if (held.kind === 'beyond-saturation') expect(held.saturationMoisturePct).toBeCloseTo(28.84, 2);
  });
});

describe('air carried from one temperature to another', () => {
  // Steam-table figures as remembered: 23.39 hPa at 20 °C, 6.11 at 0; and a dew point of 9.3 °C for 20 °C, 50 %.
  it('agrees with steam tables', () => {
    expect(saturationPressureHPa(20) / 23.39).toBeCloseTo(1, 2);
    expect(saturationPressureHPa(0)).toBeCloseTo(6.11, 2);
    expect(dewPointC({ temperatureC: 20, relativeHumidityPct: 50 })).toBeCloseTo(9.3, 1);
  });

  it('wets a cold block: below the dew point water settles', () => {
    expect(airAt({ temperatureC: 20, relativeHumidityPct: 50 }, 5)).toMatchObject({
      kind: 'dew',
      relativeHumidityPct: 100,
    });
    expect(airAt({ temperatureC: 20, relativeHumidityPct: 50 }, 10).kind).toBe('air');
  });

  it('comes back to where it was when no dew fell', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 50, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (t, rh, warmer) => {
          const there = airAt({ temperatureC: t, relativeHumidityPct: rh }, t + warmer);
          expect(there.kind).toBe('air');
          expect(there.relativeHumidityPct).toBeLessThanOrEqual(rh * (1 + 1e-12));
          // Rounding alone must not make dew of saturated air.
          const back = airAt(
            { temperatureC: there.temperatureC, relativeHumidityPct: there.relativeHumidityPct * (1 - 1e-12) },
            t,
          );
          expect(back.relativeHumidityPct).toBeCloseTo(rh, 6);
        },
      ),
      runs,
    );
  });
});

describe('how fast a block follows its room', () => {
  it.each(
    reference.diffusion.values.map(([shape, time, share]) => [shape as Body, time as number, share as number] as const),
  )('a %s at time %f has done %f of the change', (shape, time, share) => {
    // The short-time law ends at 0.002 and is good to four places there.
    expect(shareDone(shape, time)).toBeCloseTo(share, time < 0.002 ? 4 : 7);
  });

  it('never turns back, and never passes the whole', () => {
    fc.assert(
      fc.property(
        body,
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (shape, time, more) => {
          const before = shareDone(shape, time);
          const after = shareDone(shape, time + more);
          // The two solutions meet at the hand-over with an error under 1e-4.
          expect(after).toBeGreaterThanOrEqual(before - 1e-4);
          expect(after).toBeLessThanOrEqual(1 + 1e-12);
          expect(before).toBeGreaterThanOrEqual(0);
        },
      ),
      runs,
    );
  });

  it('takes four times as long for twice the thickness', () => {
    fc.assert(
      fc.property(
        body,
        fc.double({ min: 1, max: 200, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (shape, length, share) => {
          const thin = daysToShare(shape, length, share);
          const thick = daysToShare(shape, 2 * length, share);
          expect(thick.likelyDays / thin.likelyDays).toBeCloseTo(4, 6);
          expect(thin.slowestDays / thin.fastestDays).toBeCloseTo(25, 6);
        },
      ),
      runs,
    );
  });

  it('reaches half before nine tenths', () => {
    for (const shape of ['slab', 'cylinder', 'sphere'] as const)
      expect(timeToShare(shape, 0.5)).toBeLessThan(timeToShare(shape, 0.9));
  });
});

describe('the kitchen scale', () => {
  it('finds the moisture that a loss of mass meant', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 9000, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (mass, from, to) => {
          const now = mass - massLossG(mass, from, to);
          expect(moistureFromWeighing(mass, from, now * (1 + 1e-14))).toBeCloseTo(to, 6);
        },
      ),
      runs,
    );
  });

  it('refuses a block lighter than its own dry wood', () => {
    expect(() => moistureFromWeighing(1110, 11, 990)).toThrow(/990.*1000\.0 g/);
  });

  it('calls a block settled after a week under 0.1 %, and not a day sooner', () => {
    expect(settling(1500, 1499, 6)).toEqual({ kind: 'too-soon', daysToWait: 1 });
    expect(settling(1500, 1499, 7).kind).toBe('settled');
    expect(settling(1500, 1498, 7).kind).toBe('drying');
    expect(settling(1500, 1502, 7).kind).toBe('wetting');
  });
});
