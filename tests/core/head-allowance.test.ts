import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dimensionChangeMm,
  domeVolumeLitres,
  driftFromMarkPct,
  solidWeightG,
} from '../../src/core/block-dimensions.ts';
import { ellipseCircumferenceMm } from '../../src/core/ellipse.ts';
import {
  bandLossMm,
  blockForHeadMm,
  crownOutsideMm,
  headFromBlockMm,
  openingRoomMm,
  wrapThicknessMm,
} from '../../src/core/head-allowance.ts';
import { type CheckRow, checksOf, input, strayOf, titleOf } from '../handbook/checks.ts';

const allowanceIn = (row: CheckRow) => ({
  easeMm: input(row, 'ease_mm'),
  bandMm: input(row, 'band_mm'),
  shrink: input(row, 'shrink'),
});
const shrunkWidth = (row: CheckRow): number =>
  input(row, 'width_mm') + dimensionChangeMm(input(row, 'width_mm'), input(row, 'shrink_pct'), input(row, 'delta_mc'));
const changeIn = (row: CheckRow): number =>
  dimensionChangeMm(input(row, 'width_mm'), input(row, 'shrink_pct'), input(row, 'delta_mc'));

const ANSWERS: Record<string, (row: CheckRow) => number> = {
  'allow.block_for_head': (row) => blockForHeadMm(input(row, 'head_mm'), allowanceIn(row)),
  'allow.head_from_block': (row) => headFromBlockMm(input(row, 'block_mm'), allowanceIn(row)),
  'allow.band_per_mm': (row) => bandLossMm(input(row, 'band_mm')),
  'allow.crown_outside': (row) => crownOutsideMm(input(row, 'block_mm'), input(row, 'felt_mm')),
  'allow.wrap': (row) => wrapThicknessMm(input(row, 'increase_mm')),
  'wood.shrink_t': changeIn,
  'wood.shrink_r': changeIn,
  'wood.oval_drift': (row) => ellipseCircumferenceMm({ lengthMm: input(row, 'length_mm'), widthMm: shrunkWidth(row) }),
  'wood.dome_volume': (row) =>
    domeVolumeLitres({
      lengthMm: input(row, 'length_mm'),
      widthMm: input(row, 'width_mm'),
      depthMm: input(row, 'depth_mm'),
    }),
  'wood.dome_weight': (row) => solidWeightG(input(row, 'volume_l'), input(row, 'density')),
  'wood.deviation': (row) => driftFromMarkPct(input(row, 'marked_mm'), input(row, 'taped_mm')),
};

describe('between head and block, against the handbook', () => {
  it.each([...checksOf('allowance'), ...checksOf('wood')].map((row) => [titleOf(row), row] as const))(
    '%s',
    (_, row) => {
      expect(ANSWERS[row.id], `${row.id} has no answer here`).toBeDefined();
      expect(strayOf(row, ANSWERS[row.id]?.(row) ?? Number.NaN)).toBeLessThanOrEqual(1);
    },
  );
});

describe('head to block and back', () => {
  const allowance = fc.record({
    easeMm: fc.double({ min: 0, max: 15, noNaN: true }),
    bandMm: fc.double({ min: 0, max: 4, noNaN: true }),
    shrink: fc.double({ min: 0, max: 0.1, noNaN: true }),
  });

  it('finds the head it set out from', () => {
    fc.assert(
      fc.property(fc.double({ min: 450, max: 700, noNaN: true }), allowance, (head, between) => {
        expect(headFromBlockMm(blockForHeadMm(head, between), between)).toBeCloseTo(head, 9);
        expect(blockForHeadMm(head, between)).toBeGreaterThanOrEqual(head);
      }),
      { numRuns: 500 },
    );
  });

  it('asks for a bigger block the thicker the band and the more the felt draws in', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 450, max: 700, noNaN: true }),
        allowance,
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (head, between, more) => {
          const block = blockForHeadMm(head, between);
          expect(blockForHeadMm(head, { ...between, bandMm: between.bandMm + more })).toBeGreaterThan(block);
          expect(blockForHeadMm(head, { ...between, shrink: between.shrink + more / 100 })).toBeGreaterThan(block);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('says that 2.5 mm felt on a 571.5 mm crown will not pass a 585 mm opening, by 2.2 mm', () => {
    expect(openingRoomMm(585, 571.5, 2.5)).toBeCloseTo(-2.208, 3);
    expect(openingRoomMm(590, 571.5, 2.5)).toBeGreaterThan(0);
  });

  it('refuses a share that would leave no felt', () => {
    expect(() => blockForHeadMm(570, { easeMm: 5, bandMm: 1, shrink: 1 })).toThrow('Shrink came as 1');
  });
});
