import type { CautionId } from './cautions.ts';
import type { BestLikelyWorst } from './sourced.ts';
import { type MeanAndSpread, sumOf } from './three-point.ts';

export interface BenchTask {
  readonly per: string;
  readonly activeMinutes: BestLikelyWorst;
  readonly waitHours: BestLikelyWorst;
  readonly cautions: readonly CautionId[];
}
type Three = readonly [best: number, likely: number, worst: number];
const NONE: Three = [0, 0, 0];
const span = ([best, likely, worst]: Three): BestLikelyWorst => ({ best, likely, worst });
const task = (per: string, active: Three, wait: Three, ...cautions: CautionId[]): BenchTask => ({
  per,
  activeMinutes: span(active),
  waitHours: span(wait),
  cautions,
});

/**
 * Hands-on minutes and waiting hours per unit of bench work.
 * SOURCE: trade estimate, from memory; every row.
 */
export const BENCH_TASKS = {
  surveyPhotos: task('block', [10, 15, 30], NONE, 'hiddenPins'),
  dryClean: task('100 cm²', [0.5, 1, 2], NONE, 'mercury', 'pesticideResidue'),
  pinPull: task('pin', [0.3, 0.7, 2], NONE, 'hiddenPins'),
  pinBroken: task('pin', [2, 5, 12], NONE, 'hiddenPins', 'edgedToolsAndClamps'),
  oldGlueWater: task('10 cm²', [2, 4, 10], [12, 24, 48], 'hiddenPins'),
  oldGlueScrape: task('10 cm²', [3, 8, 20], NONE, 'edgedToolsAndClamps', 'hardwoodDust'),
  collarRemains: task('10 cm round', [2, 5, 15], [0.25, 1, 4], 'mercury'),
  stiffenerResidue: task('100 cm²', [3, 6, 15], [0.5, 1, 4], 'mercury', 'solvents'),
  crackClean: task('cm', [0.5, 1, 2], NONE, 'hiddenPins'),
  crackGlueSetup: task('crack', [10, 15, 30], [24, 24, 48], 'edgedToolsAndClamps'),
  crackGlueRun: task('cm', [0.3, 0.5, 1], NONE),
  crackSliver: task('cm', [2, 4, 8], [12, 24, 24], 'edgedToolsAndClamps'),
  fillLayerWater: task('dent and layer', [1.5, 3, 6], [1, 4, 24], 'hardwoodDust'),
  fillLayerPolyester: task('dent and layer', [2, 4, 8], [0.3, 0.5, 1], 'polyesterFiller'),
  fillLayerEpoxy: task('dent and layer', [3, 5, 10], [6, 12, 24], 'epoxy'),
  steamRaiseDent: task('dent', [2, 4, 8], [2, 12, 24], 'steam', 'coolBeforePulling'),
  sandHand: task('100 cm² and grit', [1.5, 3, 6], NONE, 'hardwoodDust', 'leadPaint', 'mercury'),
  sandMachine: task('100 cm² and grit', [0.5, 1, 2], NONE, 'hardwoodDust', 'leadPaint', 'hiddenPins', 'mercury'),
  oilMineral: task('100 cm² and coat', [0.3, 0.5, 1], [12, 24, 72]),
  oilDrying: task('100 cm² and coat', [0.3, 0.5, 1], [24, 48, 168], 'oilyRags'),
  shellacCoat: task('100 cm² and coat', [0.5, 0.8, 1.5], [0.5, 1, 4], 'solvents'),
  waxJoint: task('joint', [1, 2, 5], NONE),
  easeJoint: task('joint', [5, 15, 45], NONE, 'edgedToolsAndClamps'),
  mouldClean: task('100 cm²', [2, 4, 8], [24, 48, 168], 'mould', 'peroxide'),
  rehumidify: task('block', [5, 10, 20], [168, 504, 1440], 'looseWhileDamp', 'dampSlowly'),
  quarantineCheck: task('check', [2, 3, 6], [336, 336, 720]),
  freezeCycle: task(
    'block',
    [15, 25, 45],
    [96, 192, 360],
    'freezeRefused',
    'freezeAnimalGlue',
    'freezeCanFail',
    'staySealed',
  ),
  ropeEdge: task('10 cm of edge', [6, 12, 25], [12, 24, 48], 'edgedToolsAndClamps'),
  baseRenew: task('block', [60, 120, 300], [24, 48, 72], 'edgedToolsAndClamps', 'hardwoodDust'),
  sparterieRecoat: task('100 cm²', [1, 2, 4], [2, 6, 24], 'sparterieNoWater', 'solvents'),
  finalRecord: task('block', [10, 20, 40], NONE),
} as const satisfies Record<string, BenchTask>;
export type BenchTaskId = keyof typeof BENCH_TASKS;
export const BENCH_TASK_IDS = Object.keys(BENCH_TASKS) as BenchTaskId[];

export interface BenchJob {
  readonly task: BenchTaskId;
  /** In the task's own unit. */
  readonly units: number;
  /** Waits one after another; like work done side by side waits once. */
  readonly waits: number;
}

export interface BenchTotal {
  readonly activeMinutes: MeanAndSpread;
  readonly waitHours: number;
  readonly leastDays: number;
}

/**
 * Hands-on minutes and waiting of a list of jobs on one block: waits in series, each as its three-point mean.
 * @throws RangeError for negative counts
 * SOURCE: {@link BENCH_TASKS}; the assessment's own schedule knows hands, evenings and other blocks, this does not.
 */
export function benchTotal(jobs: readonly BenchJob[]): BenchTotal {
  const activeMinutes = sumOf(
    jobs.map(({ task: id, units }) => ({ each: BENCH_TASKS[id].activeMinutes, count: units })),
  );
  const waitHours = sumOf(jobs.map(({ task: id, waits }) => ({ each: BENCH_TASKS[id].waitHours, count: waits }))).mean;
  return { activeMinutes, waitHours, leastDays: waitHours / 24 };
}
