import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { domeAreaCm2, domeVolumeCm3, sphericalCrownCm2 } from '../../../src/core/physics/block-geometry.ts';
import { channelOf, colourDifference, type Lab, linearOf, matchOf } from '../../../src/core/physics/colour.ts';
import { erf } from '../../../src/core/physics/erf.ts';
import {
  absorption,
  darkShareFor,
  mixReflectance,
  nearestMix,
  reflectanceOf,
} from '../../../src/core/physics/filler-colour.ts';
import { heatReachMm, steamReaches, temperatureAtDepthC } from '../../../src/core/physics/heat-flow.ts';
import { halfAxesOf, ovalPerimeterMm } from '../../../src/core/physics/oval.ts';
import { weighAgainstVolume, weighAsDome } from '../../../src/core/physics/weight-check.ts';
import { densitySpanKgM3 } from '../../../src/core/physics/wood-strength.ts';
import trade from '../../handbook/trade-checks.json';
import reference from './reference.json';

const runs = { numRuns: 500 };
const size = fc.double({ min: 10, max: 200, noNaN: true });
const reflectance = fc.double({ min: 0.01, max: 0.99, noNaN: true });

describe('the error function', () => {
  it.each(reference.erf.values)("erf(%f) is the C library's %f", (x, value) => {
    expect(Math.abs(erf(x as number) - (value as number))).toBeLessThanOrEqual(3e-16 * 8);
  });

  it('is odd and never falls', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (x, more) => {
          expect(erf(-x) + erf(x)).toBe(0);
          expect(erf(x + more)).toBeGreaterThanOrEqual(erf(x) - 1e-15);
        },
      ),
      runs,
    );
  });
});

describe('steam on one face', () => {
  it('warms less with depth and more with time, between start and face', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 120, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (depth, minutes, more) => {
          const here = temperatureAtDepthC(depth, minutes);
          expect(here).toBeGreaterThanOrEqual(20 - 1e-9);
          expect(here).toBeLessThanOrEqual(100);
          expect(temperatureAtDepthC(depth + more, minutes)).toBeLessThanOrEqual(here + 1e-9);
          expect(temperatureAtDepthC(depth, minutes + more)).toBeGreaterThanOrEqual(here - 1e-9);
        },
      ),
      runs,
    );
  });

  it('is felt by 16 % at the reach', () => {
    const reach = heatReachMm(10);
    expect((temperatureAtDepthC(reach, 10) - 20) / 80).toBeCloseTo(0.157, 3);
  });

  it('makes a glue line hot to 10 mm and leaves it be past 20', () => {
    expect([10, 15, 20, 21].map(steamReaches)).toEqual(['hot', 'warm', 'warm', 'hardly']);
  });
});

describe('the shape of a crown', () => {
  it('is half a ball when all axes agree', () => {
    fc.assert(
      fc.property(size, (r) => {
        const ball = { halfLengthMm: r, halfWidthMm: r, heightMm: r };
        expect(domeAreaCm2(ball) / sphericalCrownCm2(r, r)).toBeCloseTo(1, 9);
        expect(domeVolumeCm3(ball) / (((2 / 3) * Math.PI * r ** 3) / 1000)).toBeCloseTo(1, 9);
      }),
      runs,
    );
  });

  it('needs an oval whose tape is the one asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 400, max: 700, noNaN: true }),
        fc.double({ min: 1, max: 1.6, noNaN: true }),
        (tape, ratio) => {
          const { halfLengthMm, halfWidthMm } = halfAxesOf(tape, ratio);
          expect(ovalPerimeterMm(halfLengthMm, halfWidthMm)).toBeCloseTo(tape, 6);
          expect(halfLengthMm / halfWidthMm).toBeCloseTo(ratio, 9);
        },
      ),
      runs,
    );
  });
});

describe('the weight check', () => {
  const check = (id: string) =>
    trade.find((row) => row.id === id) as unknown as {
      inputs: Record<string, number>;
      expected: number;
      tolerance: number;
    };

  it('meets the trade handbook: 2.22 l and 922 g of basswood', () => {
    const { inputs, expected, tolerance } = check('wood.dome_volume');
    const { length_mm: l = 0, width_mm: w = 0, depth_mm: d = 0 } = inputs;
    expect(
      Math.abs(domeVolumeCm3({ halfLengthMm: l / 2, halfWidthMm: w / 2, heightMm: d }) / 1000 - expected),
    ).toBeLessThanOrEqual(tolerance);
    const density = check('wood.dome_weight').inputs.density ?? 0;
    const { expectedG } = weighAsDome(l, w, d, { massG: 900, densityKgM3: { low: density, high: density } });
    expect(Math.abs(expectedG.likely - check('wood.dome_weight').expected)).toBeLessThanOrEqual(
      check('wood.dome_weight').tolerance,
    );
  });

  it('calls a block eaten under 60 %, light under 80, and heavy only past straight sides', () => {
    const verdict = (massG: number) =>
      weighAsDome(199, 164, 130, { massG, densityKgM3: { low: 415, high: 415 } }).verdict;
    expect([550, 560, 735, 745, 1380, 1390].map(verdict)).toEqual([
      'eaten',
      'look-for-tunnels',
      'look-for-tunnels',
      'as-expected',
      'as-expected',
      'heavier-than-its-wood',
    ]);
  });

  it('is certain only where the whole span of the wood agrees', () => {
    const densityKgM3 = densitySpanKgM3('lime', 12) ?? { low: 0, high: 0 };
    expect(densityKgM3.low).toBeCloseTo(369.6);
    const reading = (massG: number) => weighAsDome(199, 164, 130, { massG, densityKgM3 });
    expect(reading(300)).toMatchObject({ verdict: 'eaten', certain: true });
    expect(reading(540)).toMatchObject({ verdict: 'eaten', certain: false });
    expect(densitySpanKgM3('teak', 12)).toBeNull();
  });

  it('is sharper with a volume from a bag of water', () => {
    const block = { densityKgM3: { low: 415, high: 415 } };
    expect(weighAgainstVolume(1500, { massG: 480, ...block }).verdict).toBe('look-for-tunnels');
    expect(weighAgainstVolume(1500, { massG: 800, ...block }).verdict).toBe('heavier-than-its-wood');
  });
});

describe('colour difference', () => {
  it.each(reference.ciede2000.values.map((row, k) => [k + 1, row] as const))(
    'pair %i of the published 34, both ways round',
    (_, row) => {
      const [l1 = 0, a1 = 0, b1 = 0, l2 = 0, a2 = 0, b2 = 0, expected = 0] = row;
      expect(Math.abs(colourDifference([l1, a1, b1], [l2, a2, b2]) - expected)).toBeLessThanOrEqual(5.1e-5);
      expect(Math.abs(colourDifference([l2, a2, b2], [l1, a1, b1]) - expected)).toBeLessThanOrEqual(5.1e-5);
    },
  );

  it('is nothing for the same colour, never negative, the same both ways', () => {
    const lab = fc.tuple(
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: -120, max: 120, noNaN: true }),
      fc.double({ min: -120, max: 120, noNaN: true }),
    );
    fc.assert(
      fc.property(lab, lab, (one, other) => {
        expect(colourDifference(one as Lab, one as Lab)).toBe(0);
        const there = colourDifference(one as Lab, other as Lab);
        expect(there).toBeGreaterThanOrEqual(0);
        expect(Math.abs(there - colourDifference(other as Lab, one as Lab))).toBeLessThan(1e-9);
      }),
      runs,
    );
  });

  it('reads as unseen, good, visible, obvious', () => {
    expect([0.5, 1.5, 3, 5.1].map(matchOf)).toEqual(['unseen', 'good', 'visible', 'obvious']);
  });

  it('goes through linear light and back', () => {
    for (let value = 0; value <= 255; value++) expect(channelOf(linearOf(value))).toBeCloseTo(value, 9);
  });
});

describe('a light filler and a dark one', () => {
  it('mix to somewhere between, darker with every share', () => {
    fc.assert(
      fc.property(reflectance, reflectance, fc.double({ min: 0, max: 1, noNaN: true }), (one, other, share) => {
        const [dark, light] = one < other ? [one, other] : [other, one];
        const mix = mixReflectance(light, dark, share);
        expect(mix).toBeGreaterThanOrEqual(dark - 1e-12);
        expect(mix).toBeLessThanOrEqual(light + 1e-12);
        expect(reflectanceOf(absorption(mix))).toBeCloseTo(mix, 9);
      }),
      runs,
    );
  });

  it('give back the share that made them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 0.95, noNaN: true }),
        fc.double({ min: 0.02, max: 0.4, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (light, dark, share) => {
          const found = darkShareFor(light, dark, mixReflectance(light, dark, share));
          expect(found.kind).toBe('mix');
          if (found.kind === 'mix') expect(found.darkShare).toBeCloseTo(share, 6);
        },
      ),
      runs,
    );
  });

  it('cannot go beyond either', () => {
    expect(darkShareFor(0.6, 0.1, 0.7)).toEqual({ kind: 'out-of-reach', nearest: 'light' });
    expect(darkShareFor(0.6, 0.1, 0.05)).toEqual({ kind: 'out-of-reach', nearest: 'dark' });
    expect(darkShareFor(0.3, 0.3, 0.3)).toEqual({ kind: 'no-difference' });
  });

  it('find the wood again over all three channels, and start at two thirds of the dark', () => {
    const light = [230, 200, 160] as const;
    const dark = [70, 45, 30] as const;
    const share = 0.17;
    const made = ([0, 1, 2] as const).map((k) =>
      channelOf(mixReflectance(linearOf(light[k]), linearOf(dark[k]), share)),
    );
    const mix = nearestMix(light, dark, [made[0] ?? 0, made[1] ?? 0, made[2] ?? 0]);
    expect(mix.darkShare).toBeCloseTo(share, 3);
    expect(mix.difference).toBeLessThan(0.05);
    expect(mix.firstShare).toBeCloseTo((share * 2) / 3, 3);
  });
});
