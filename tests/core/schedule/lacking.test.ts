import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../src/catalogue/index.ts';
import { benchTimeOf, lacking } from '../../../src/core/schedule/from-plan.ts';
import { someSettings } from '../../make.ts';

const step = (waitResource: string | null, progress?: { state: 'done' }) => ({
  ...{ treatment: 'freeze', hours: 0.5, waitHours: 72, handsResources: ['hands', 'bench'], waitResource },
  ...(progress ? { progress } : {}),
});
const block = (...steps: ReturnType<typeof step>[]) => [{ blockId: 'A', steps }];

describe('a workshop without a freezer', () => {
  const settings = someSettings({ capacities: { freezer: 0 } });

  it('is told so where a step wants one, and the dates count on borrowing it', () => {
    expect(lacking(block(step('freezer')), settings, catalogue)).toEqual(['freezer']);
    expect(benchTimeOf(settings, catalogue).capacities).toMatchObject({ freezer: 1, clamps: 2 });
  });

  it('hears nothing where no step wants one, or the step is done', () => {
    expect(lacking(block(step('clamps'), step(null)), settings, catalogue)).toEqual([]);
    expect(lacking(block(step('freezer', { state: 'done' })), settings, catalogue)).toEqual([]);
    expect(lacking(block(step('freezer')), someSettings(), catalogue)).toEqual([]);
  });
});
