import { catalogue } from '../../src/catalogue/index.ts';
import { assess } from '../../src/core/assess.ts';
import { scheduleBench } from '../../src/core/schedule/bench.ts';
import { benchBlockOf, benchTimeOf } from '../../src/core/schedule/from-plan.ts';
import { solve } from '../../src/core/schedule/solve.ts';
import type { BenchInput } from '../../src/core/schedule/types.ts';
import { caseOfLot, someSettings } from '../make.ts';
import { instances } from '../psplib/read.ts';

export { instances, scheduleBench, solve };

const plans = ['L01', 'L02', 'L03', 'L04', 'L05', 'L06', 'L07', 'L08', 'L09'].map((id) =>
  benchBlockOf(id, assess(caseOfLot(id), catalogue).plan, catalogue),
);

/** So many blocks with the plans of the example sale, over and over. */
export const benchOf = (count: number): BenchInput => ({
  today: '2026-11-30',
  blocks: Array.from({ length: count }, (_, n) => ({ blockId: `${n}`, steps: plans[n % plans.length]?.steps ?? [] })),
  ...benchTimeOf(someSettings(), catalogue),
});
