import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/catalogue/index.ts';
import { assess } from '../../src/core/assess.ts';
import { aCase, aFinding } from '../make.ts';

describe('a measure no block can have, from a damaged backup', () => {
  it.each([1e9, 1e300, Number.MAX_VALUE])('still gets an answer in finite figures (%d mm)', (lengthMm) => {
    const findings = [aFinding({ kind: 'split', zone: 'sideFront', answers: { lengthMm, widthMm: 2 } })];
    const { plan, days, worth } = assess(aCase({ findings }), catalogue);
    expect(Number.isFinite(plan.meanHours)).toBe(true);
    expect(days.total).toBeLessThan(2_000);
    expect(Number.isSafeInteger(worth.ceiling)).toBe(true);
  });
});
