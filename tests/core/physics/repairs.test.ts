import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clampSpacingMm, clampsNeeded, strapForceN, strapPressureMpa } from '../../../src/core/physics/clamps.ts';
import { crackVolumeMm3, dentOf } from '../../../src/core/physics/dents.ts';
import { FILLERS, type FillerId, fillPlan, layersFor } from '../../../src/core/physics/fillers.ts';
import { FINISH_IDS, shielding } from '../../../src/core/physics/finishes.ts';
import { gluesFor, readyToGlue } from '../../../src/core/physics/glues.ts';
import { OLD_GLUE } from '../../../src/core/physics/old-glue.ts';
import { pinFeel } from '../../../src/core/physics/pins.ts';
import { grooveDepthMm } from '../../../src/core/physics/rope-edge.ts';
import { GRITS, gritPlan, jump, SANDING, sizeStepsLost } from '../../../src/core/physics/sanding.ts';

const runs = { numRuns: 500 };
const size = fc.double({ min: 1, max: 500, noNaN: true });

describe('clamps', () => {
  it('press at least as hard as asked, with none to spare', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        size,
        size,
        fc.double({ min: 100, max: 5000, noNaN: true }),
        (pressureMpa, lengthMm, depthMm, clampN) => {
          const count = clampsNeeded({ pressureMpa, lengthMm, depthMm, clampN });
          const force = pressureMpa * lengthMm * depthMm;
          expect(count * clampN).toBeGreaterThanOrEqual(force * (1 - 1e-6));
          expect((count - 1) * clampN).toBeLessThanOrEqual(force * (1 + 1e-6));
        },
      ),
      runs,
    );
  });

  it('are not multiplied by the dust of binary fractions', () => {
    // 1.1 × 100 × 30 / 1100 is 3.0000000000000004 in binary, and 2.1 / 0.3 is 7.000000000000001.
    expect(clampsNeeded({ pressureMpa: 1.1, lengthMm: 100, depthMm: 30, clampN: 1100 })).toBe(3);
    expect(layersFor(2.1, 0.3)).toBe(7);
  });

  it('sit no further apart than twice their distance to the glue', () => {
    expect(clampSpacingMm(40)).toBe(80);
  });

  it('may be a strap: its two legs press twice its tension', () => {
    expect(strapForceN(600, 2)).toBe(2400);
    expect(strapPressureMpa(1000, 100, 50)).toBeCloseTo(0.4);
  });
});

describe('glue', () => {
  it('in a wide gap near steam leaves epoxy without objection, and names what speaks against the rest', () => {
    const list = gluesFor({ gapMm: 1, roomC: 18, nearSteam: true });
    expect(list).toHaveLength(7);
    expect(list[0]).toEqual({ glue: 'epoxy', objections: [] });
    expect(list.find(({ glue }) => glue === 'whitePva')?.objections.map(({ code }) => code)).toEqual([
      'gap-too-wide',
      'steam-nearby',
    ]);
    expect(list.find(({ glue }) => glue === 'hotHide')?.objections.map(({ code }) => code)).toEqual([
      'gap-too-wide',
      'room-too-cold',
      'steam-nearby',
    ]);
  });

  it('waits for wood at 6 to 12 % and within two points of home', () => {
    expect(readyToGlue(9, 10)).toEqual({ kind: 'ready' });
    expect(readyToGlue(5.9, 7)).toMatchObject({ because: 'too dry' });
    expect(readyToGlue(12.1, 12)).toMatchObject({ because: 'too damp' });
    expect(readyToGlue(12, 9.5)).toMatchObject({ because: 'far from home' });
  });
});

describe('an old joint', () => {
  it('may be glued anew over hide glue, never over PVA or epoxy', () => {
    expect(OLD_GLUE.hide.newGlueHolds).toBe(true);
    expect([OLD_GLUE.pva.newGlueHolds, OLD_GLUE.epoxy.newGlueHolds]).toEqual([false, false]);
  });
});

describe('a rope edge', () => {
  it('lies four fifths of its cord deep', () => {
    expect(grooveDepthMm(7.5)).toBeCloseTo(6);
    expect(() => grooveDepthMm(Number.NaN)).toThrow(RangeError);
  });
});

describe('filler', () => {
  it('goes on in layers, each waited for', () => {
    const { volumeMm3 } = dentOf(20, 7);
    expect(fillPlan('waterBased', { volumeMm3, depthMm: 7, onPinnedLine: false })).toMatchObject({
      layers: 3,
      waitHours: { best: 3, likely: 12, worst: 72 },
      rather: null,
    });
  });

  it('gives way to wood where pins will go', () => {
    expect(fillPlan('polyester', { volumeMm3: 100, depthMm: 2, onPinnedLine: true }).rather).toBe('woodSliver');
    expect(fillPlan('woodSliver', { volumeMm3: 100, depthMm: 2, onPinnedLine: true }).rather).toBeNull();
  });

  it('needs more than the hollow holds, never more layers than depth asks', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(FILLERS) as FillerId[])),
        fc.double({ min: 0.1, max: 40, noNaN: true }),
        size,
        (id, depthMm, volumeMm3) => {
          const plan = fillPlan(id, { volumeMm3, depthMm, onPinnedLine: false });
          expect(plan.mixMm3).toBeGreaterThanOrEqual(volumeMm3);
          const thickest = FILLERS[id].thickestLayerMm;
          expect(plan.layers * thickest).toBeGreaterThanOrEqual(depthMm - 1e-6);
          expect((plan.layers - 1) * thickest).toBeLessThan(depthMm);
          expect(plan.waitHours.best).toBeLessThanOrEqual(plan.waitHours.worst);
        },
      ),
      runs,
    );
  });

  it('for a crack is a half, a quarter or a sixth of its box', () => {
    expect((['even', 'mouthTapers', 'bothTaper'] as const).map((shape) => crackVolumeMm3(12, 1, 10, shape))).toEqual([
      60, 30, 20,
    ]);
  });
});

describe('pins', () => {
  it('are comfortable in lime, alder and poplar; beech bends them and balsa drops them', () => {
    const kind = (id: Parameters<typeof pinFeel>[0]) => pinFeel(id).kind;
    expect(['lime', 'alder', 'yellowPoplar'].map((id) => kind(id as 'lime'))).toEqual([
      'comfortable',
      'comfortable',
      'comfortable',
    ]);
    expect(kind('beech')).toBe('bends');
    expect(kind('balsa')).toBe('drops');
    expect(kind('teak')).toBe('unknown');
  });
});

describe('sandpaper', () => {
  it('goes 120, 180, 240 and stops', () => {
    expect(gritPlan('P120', 'P240')).toEqual({ grits: ['P120', 'P180', 'P240'], burnishes: false });
    expect(gritPlan('P180', 'P320').burnishes).toBe(true);
    expect(() => gritPlan('P240', 'P120')).toThrow(RangeError);
  });

  it('never jumps by more than 1.6, from any grit to any finer one', () => {
    for (const from of GRITS)
      for (const to of GRITS.slice(GRITS.indexOf(from))) {
        const { grits } = gritPlan(from, to);
        expect([grits[0], grits.at(-1)]).toEqual([from, to]);
        grits.slice(1).forEach((grit, k) => {
          const step = jump(grits[k] ?? from, grit);
          expect(step, `${from} to ${to}`).toBeGreaterThan(1);
          expect(step, `${from} to ${to}`).toBeLessThanOrEqual(SANDING.largestJump);
        });
      }
  });

  it('takes shape: 5 mm off the tape is half a head size', () => {
    expect(sizeStepsLost(570, 565)).toBe(0.5);
  });
});

describe('finishes', () => {
  it('show oil and wax to seal nothing after a fortnight', () => {
    for (const id of ['linseedOil', 'furnitureWax'] as const)
      expect(shielding(id, 3, 14)).toMatchObject({ kind: 'measured', pct: expect.arrayContaining([0]) });
  });

  it('keep out less as days pass, in every test', () => {
    for (const id of FINISH_IDS)
      for (const coats of [1, 2, 3, 6]) {
        const [one, seven, fourteen] = ([1, 7, 14] as const).map((day) => shielding(id, coats, day));
        if (one?.kind !== 'measured' || seven?.kind !== 'measured' || fourteen?.kind !== 'measured') continue;
        expect(Math.min(...one.pct)).toBeGreaterThanOrEqual(Math.max(...seven.pct));
        expect(Math.min(...seven.pct)).toBeGreaterThanOrEqual(Math.min(...fourteen.pct));
      }
  });

  it('say what was not measured instead of guessing', () => {
    expect(shielding('shellac', 5, 7)).toEqual({ kind: 'not-measured', coatsMeasured: [2, 3] });
  });
});
