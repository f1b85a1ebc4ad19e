import { describe, expect, it } from 'vitest';
import { PACE_PRIOR, paceBookOf } from '../../src/core/own-record.ts';
import type { Job } from '../../src/core/records.ts';
import { aJob } from '../make.ts';

describe('the owner’s pace', () => {
  it('of someone twice as slow is learnt as two, though every estimate already carried what was learnt before', () => {
    const jobs: Job[] = [];
    for (let number = 1; number <= 40; number += 1) {
      const pace = paceBookOf(jobs, ['glueAndFill']).glueAndFill?.median ?? 1;
      jobs.push(aJob({ number, reference: 'glueAndFill', estimateHours: pace, pace, actualHours: 2 }));
    }
    // μ = Σr/(κ + n) with a prior mean of 0 and every r = ln 2. Trade handbook §3.5.
    const { weight } = PACE_PRIOR;
    expect(paceBookOf(jobs, ['glueAndFill']).glueAndFill?.median).toBeCloseTo(2 ** (40 / (weight + 40)), 9);
  });

  it('takes estimates without a pace as the catalogue’s', () => {
    const jobs = [aJob({ estimateHours: 1, actualHours: 2 })];
    expect(paceBookOf(jobs, ['glueAndFill']).glueAndFill?.median).toBeCloseTo(2 ** (1 / (PACE_PRIOR.weight + 1)), 9);
  });
});
