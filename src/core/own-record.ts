import { applies, settingOf, zoneClassOf } from './block.ts';
import { type ClassedJob, type Pace, paceForClass, paceScale } from './calibration.ts';
import { type Catalogue, entry, type Treatment } from './catalogue.ts';
import { type BandForecast, bandCoverage, brierScore, type Coverage } from './forecast-scores.ts';
import { gradeFinding } from './grade.ts';
import type { PaceBook } from './plan.ts';
import type { Finding, HatBlock, Job, Repair, Survey } from './records.ts';
import { type Tallies, type Tally, tallyKey } from './simulate/belief.ts';
import { materialGroupOf } from './simulate/situation.ts';

/**
 * Belief about one's own pace before any job is logged: dead on the estimate, worth four jobs, and a predictive spread of
 * a quarter. Trade estimate.
 */
export const PACE_PRIOR: Pace = { mean: 0, weight: 4, shape: 3, scale: 0.15 };

/** One block's survey as it bears on the beliefs: which kinds were looked for, which found, how bad at worst. */
export interface SurveyedBlock {
  readonly block: HatBlock;
  readonly survey: Pick<Survey, 'noneSeen'>;
  readonly findings: readonly Finding[];
}

/** What one survey adds: for every kind looked for that can occur on the block, found at which grade or none seen. */
export function tallyOf({ block, survey, findings }: SurveyedBlock, catalogue: Catalogue): Tallies {
  const setting = settingOf(block, catalogue);
  const group = materialGroupOf(setting, catalogue);
  const worst = new Map<string, number>();
  for (const finding of findings) {
    const kind = entry(catalogue.damage, finding.kind);
    if (!kind) continue;
    const zoneClass = zoneClassOf(finding.zone, catalogue);
    const grade = finding.gradeByHand ?? gradeFinding(kind, finding.answers, { ...setting, zoneClass }).grade;
    worst.set(finding.kind, Math.max(grade, worst.get(finding.kind) ?? 0));
  }
  const counts: Record<string, Tally> = {};
  for (const [id, kind] of Object.entries(catalogue.damage)) {
    const grade = worst.get(id);
    if ((grade === undefined && !Object.hasOwn(survey.noneSeen, id)) || !applies(kind, setting, catalogue)) continue;
    counts[tallyKey(id, group)] = {
      looked: 1,
      found: grade ? 1 : 0,
      grades: [1, 2, 3, 4].map((step) => (grade === step ? 1 : 0)) as unknown as Tally['grades'],
    };
  }
  return counts;
}

/** Surveys counted together. Examples are not one's own: leave them out before. */
export function addTallies(all: Iterable<Tallies>): Tallies {
  const sums: Record<string, { looked: number; found: number; grades: [number, number, number, number] }> = {};
  for (const one of all) {
    for (const [key, { looked, found, grades }] of Object.entries(one)) {
      sums[key] ??= { looked: 0, found: 0, grades: [0, 0, 0, 0] };
      const sum = sums[key];
      sum.looked += looked;
      sum.found += found;
      for (let step = 0; step < 4; step += 1) sum.grades[step] = (sum.grades[step] ?? 0) + (grades[step] ?? 0);
    }
  }
  return sums;
}

const isCounted = ({ estimateHours, actualHours }: Job): boolean => estimateHours > 0 && actualHours > 0;

/** A job against what the catalogue alone would have said: the pace already in its estimate taken out again. */
const classed = ({ estimateHours, actualHours, pace = 1, reference }: Job): ClassedJob => ({
  estimateHours: estimateHours / pace,
  actualHours,
  className: reference,
});

/**
 * The owner's pace by kind of work, from the log of hours: its own class from five jobs, all jobs below that, the
 * catalogue's estimate with a quarter of spread before any. Normal–inverse-gamma, see `calibration.ts`.
 * @param references kinds of work to give a pace for
 */
export function paceBookOf(jobs: readonly Job[], references: readonly Treatment['reference'][]): PaceBook {
  const log: ClassedJob[] = jobs.filter(isCounted).map(classed);
  if (log.length === 0) return {};
  return Object.fromEntries(
    references.map((reference) => {
      const { pace } = paceForClass(reference, log, PACE_PRIOR);
      return [
        reference,
        {
          median: Math.exp(pace.mean),
          spread: { kind: 'logStudent', scale: paceScale(pace), freedom: 2 * pace.shape },
        },
      ];
    }),
  ) as PaceBook;
}

/** How well one's estimates and chances have held so far. */
export interface Calibration {
  readonly jobs: number;
  /** Actual hours against the stated 8-in-10 bands. */
  readonly bands: Coverage;
  readonly repairs: number;
  /** Mean square of chance less outcome; null before any repair is judged. */
  readonly brier: number | null;
}

export function calibrationOf(jobs: readonly Job[], repairs: readonly Repair[]): Calibration {
  const bands: BandForecast[] = jobs
    .filter(isCounted)
    .map(({ lowHours, highHours, actualHours }) => ({ low: lowHours, high: highHours, actual: actualHours }));
  return {
    jobs: bands.length,
    bands: bandCoverage(bands, 0.8),
    repairs: repairs.length,
    brier: brierScore(repairs.map(({ chance, held }) => ({ chance, happened: held }))),
  };
}
