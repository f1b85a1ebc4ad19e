import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CRACK_ACTIONS, type Crack, crackAdvice, crackAdviceForAny } from '../../../src/core/physics/crack-advice.ts';
import { closingPoint, radialGapMm } from '../../../src/core/physics/crack-geometry.ts';
import { equilibriumMoisturePct } from '../../../src/core/physics/equilibrium-moisture.ts';
import { humidifyingPlan } from '../../../src/core/physics/humidifying.ts';
import { WOOD_IDS, WOODS, WOODS_OF_MATERIAL } from '../../../src/core/physics/woods.ts';

const runs = { numRuns: 500 };
const wood = fc.constantFrom(...WOOD_IDS);
const diameter = fc.double({ min: 20, max: 500, noNaN: true });

const crack = (part: Partial<Crack> = {}): Crack => ({
  wood: 'americanBasswood',
  gapMm: 1,
  diameterMm: 160,
  lengthMm: 100,
  temperatureC: 20,
  relativeHumidityPct: 45,
  holdsPith: true,
  ...part,
});

describe('a crack from rim to pith', () => {
  it('gapes wider in a bigger block and in a drier room', () => {
    fc.assert(
      fc.property(
        wood,
        diameter,
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        (id, d, wider, loss) => {
          const gap = radialGapMm(d, WOODS[id].perPoint, loss);
          expect(gap).toBeGreaterThanOrEqual(0);
          expect(radialGapMm(d + wider, WOODS[id].perPoint, loss)).toBeGreaterThanOrEqual(gap);
          expect(radialGapMm(d, WOODS[id].perPoint, loss + 1)).toBeGreaterThan(gap);
        },
      ),
      runs,
    );
  });

  it('closes again at the moisture it opened from', () => {
    fc.assert(
      fc.property(
        wood,
        diameter,
        fc.double({ min: 6, max: 12, noNaN: true }),
        fc.double({ min: 0.1, max: 6, noNaN: true }),
        (id, d, now, loss) => {
          const gap = radialGapMm(d, WOODS[id].perPoint, loss);
          expect(closingPoint(gap, d, WOODS[id].perPoint, now, 20).moisturePct).toBeCloseTo(now + loss, 6);
        },
      ),
      runs,
    );
  });

  it('gapes less than half as wide in lime as in beech', () => {
    expect(radialGapMm(160, WOODS.americanBasswood.perPoint, 4)).toBeLessThan(
      radialGapMm(160, WOODS.americanBeech.perPoint, 4) / 2,
    );
  });
});

describe('glue and clamp, humidify first, or insert a sliver', () => {
  it.each([
    [0.7, 'americanBasswood', 'glueAndClamp'],
    [1, 'americanBasswood', 'humidifyFirst'],
    [2, 'americanBasswood', 'insertSliver'],
    [3, 'americanBasswood', 'insertSliver'],
    [2, 'americanBeech', 'humidifyFirst'],
    [3, 'americanBeech', 'insertSliver'],
  ] as const)('%f mm in 160 mm of %s: %s', (gapMm, id, action) => {
    expect(crackAdvice(crack({ gapMm, wood: id })).action).toBe(action);
  });

  it('gives the figures it decided by, and the numbers inside the reasons are the same', () => {
    const { figures, reasons } = crackAdvice(crack({ gapMm: 2 }));
    expect(figures.strainPct).toBeCloseTo(0.3979, 4);
    expect(figures.closing.moisturePct).toBeCloseTo(12.464, 3);
    expect(reasons).toContainEqual({ code: 'strain-bearable', strainPct: figures.strainPct, limitPct: 0.4 });
    const humid = reasons.find(({ code }) => code === 'humidity-too-high');
    expect(humid).toMatchObject({ ceilingPct: 65 });
    if (humid?.code === 'humidity-too-high') expect(humid.relativeHumidityPct).toBeCloseTo(67.15, 1);
  });

  it("says what share of the joint's strength forcing would spend", () => {
    const loaded = crackAdvice(crack({ gapMm: 2 })).reasons.find(({ code }) => code === 'joint-starts-loaded');
    if (loaded?.code !== 'joint-starts-loaded') throw new Error('no such reason');
    expect(loaded.share).toBeCloseTo(0.543 / 2.4, 3);
    // A wood without a strength figure gets no such reason rather than a made-up one.
    expect(crackAdvice(crack({ wood: 'obeche' })).reasons.some(({ code }) => code === 'joint-starts-loaded')).toBe(
      false,
    );
  });

  it('never gets gentler as the gap widens or the block dries', () => {
    fc.assert(
      fc.property(
        wood,
        diameter,
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.double({ min: 20, max: 80, noNaN: true }),
        (id, diameterMm, gapMm, wider, relativeHumidityPct) => {
          const rank = (gap: number) =>
            CRACK_ACTIONS.indexOf(crackAdvice(crack({ wood: id, diameterMm, gapMm: gap, relativeHumidityPct })).action);
          expect(rank(gapMm + wider)).toBeGreaterThanOrEqual(rank(gapMm));
        },
      ),
      runs,
    );
  });

  it('never sends a block above 65 % to be closed by damp', () => {
    fc.assert(
      fc.property(
        wood,
        diameter,
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 5, max: 95, noNaN: true }),
        (id, diameterMm, gapMm, relativeHumidityPct) => {
          const { action, figures, cautions, reasons } = crackAdvice(
            crack({ wood: id, diameterMm, gapMm, relativeHumidityPct }),
          );
          const { humidity } = figures.closing;
          if (action === 'humidifyFirst') {
            expect(humidity.kind === 'found' ? humidity.relativeHumidityPct : 100).toBeLessThanOrEqual(65);
            expect(cautions).toContain('looseWhileDamp');
          }
          if (action === 'insertSliver') expect(cautions).toContain('doNotForce');
          for (const reason of reasons)
            for (const value of Object.values(reason))
              if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
        },
      ),
      runs,
    );
  });

  it('believes a moisture meter before the hygrometer', () => {
    const metered = crackAdvice(crack({ moistureNowPct: 11 }));
    expect(metered.figures.moistureNowPct).toBe(11);
    expect(crackAdvice(crack()).figures.moistureNowPct).toBe(equilibriumMoisturePct(20, 45));
  });

  it('puts the most careful advice first when only "pine" or "poplar" is known', () => {
    const { wood: _, ...rest } = crack({ gapMm: 1 });
    const list = crackAdviceForAny(WOODS_OF_MATERIAL.poplar, rest);
    expect(list).toHaveLength(WOODS_OF_MATERIAL.poplar.length);
    const ranks = list.map(({ advice }) => CRACK_ACTIONS.indexOf(advice.action));
    expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
    expect(() => crackAdviceForAny([], rest)).toThrow(RangeError);
  });

  it('warns that a block without pith moves less than reckoned', () => {
    expect(crackAdvice(crack({ holdsPith: false })).reasons).toContainEqual({ code: 'no-pith-moves-less' });
  });
});

describe('raising the humidity round a block', () => {
  it('climbs five points a week and stops where it should', () => {
    const plan = humidifyingPlan(45, 57);
    expect(plan).toEqual({
      kind: 'steps',
      steps: [
        { week: 1, relativeHumidityPct: 50 },
        { week: 2, relativeHumidityPct: 55 },
        { week: 3, relativeHumidityPct: 57 },
      ],
    });
  });

  it('refuses above 65 %, and has nothing to do when the room is damp enough', () => {
    expect(humidifyingPlan(45, 65.1)).toMatchObject({ kind: 'refused', ceilingPct: 65 });
    expect(humidifyingPlan(60, 60).kind).toBe('not-needed');
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 65, noNaN: true }),
        (from, to) => {
          const plan = humidifyingPlan(from, to);
          if (plan.kind !== 'steps') return;
          expect(plan.steps.at(-1)?.relativeHumidityPct).toBe(to);
          let last = from;
          for (const { relativeHumidityPct } of plan.steps) {
            expect(relativeHumidityPct - last).toBeLessThanOrEqual(5 + 1e-9);
            last = relativeHumidityPct;
          }
        },
      ),
      runs,
    );
  });
});
