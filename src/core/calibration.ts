import { betaQuantile, normalQuantile, studentTQuantile } from './distributions.ts';

/*
 * Learning the owner's pace from the log of finished jobs. A job enters as r = ln(actual/estimate): 0 is dead on, ln 2
 * took twice as long. Conjugate normal updating, textbook. Quote the 80th percentile, plan with the median.
 */

/** A finished job. */
export interface LoggedJob {
  readonly estimateHours: number;
  readonly actualHours: number;
}

/** ln(actual/estimate). @throws unless both are above 0 */
export function logRatio({ estimateHours, actualHours }: LoggedJob): number {
  if (!(estimateHours > 0 && actualHours > 0 && Number.isFinite(actualHours / estimateHours)))
    throw new Error(`Job came as ${estimateHours} h estimated, ${actualHours} h taken, expected both above 0.`);
  return Math.log(actualHours / estimateHours);
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** What is believed about the mean of ln(actual/estimate) when one job's spread is taken as known. */
export interface KnownSpread {
  readonly mean: number;
  /** Uncertainty of that mean. */
  readonly sd: number;
  /** Spread of one job around it. */
  readonly sigma: number;
}

/** Precision = 1/τ0² + n/σ²; μn = (μ0/τ0² + Σr/σ²)/precision. @throws when a spread is not above 0 */
export function updateKnownSpread(prior: KnownSpread, logRatios: readonly number[]): KnownSpread {
  const { mean, sd, sigma } = prior;
  if (!(sd > 0 && sigma > 0)) throw new Error(`Spreads came as ${sd} and ${sigma}, expected above 0.`);
  const precision = 1 / sd ** 2 + logRatios.length / sigma ** 2;
  return { mean: (mean / sd ** 2 + sumOf(logRatios) / sigma ** 2) / precision, sd: Math.sqrt(1 / precision), sigma };
}

const nextJobSd = ({ sd, sigma }: KnownSpread): number => Math.hypot(sd, sigma);

/** Factor the next job's estimate is multiplied by to be kept with chance q; 0.5 gives the median e^μn. */
export const knownSpreadMultiplier = (belief: KnownSpread, q: number): number =>
  Math.exp(belief.mean + nextJobSd(belief) * normalQuantile(q));

/** Mean factor e^(μn + (σ² + τn²)/2). It exists only because the spread is taken as known. */
export const knownSpreadMeanMultiplier = (belief: KnownSpread): number =>
  Math.exp(belief.mean + nextJobSd(belief) ** 2 / 2);

/**
 * What is believed about pace when the spread must be learnt too: a normal–inverse-gamma. There is no function for the
 * mean factor here, because it is infinite under this model: use quantiles.
 */
export interface Pace {
  /** μ, ln */
  readonly mean: number;
  /** κ: how many jobs the belief about the mean is worth. */
  readonly weight: number;
  /** α, half the degrees of freedom of the next job's t. */
  readonly shape: number;
  /** β, ln² */
  readonly scale: number;
}

/** κn = κ0 + n; μn = (κ0μ0 + Σr)/κn; αn = α0 + n/2; βn = β0 + ½Σ(r − r̄)² + κ0·n(r̄ − μ0)²/(2κn). */
export function updatePace(prior: Pace, logRatios: readonly number[]): Pace {
  const { mean, weight, shape, scale } = prior;
  if (!(weight > 0 && shape > 0 && scale > 0))
    throw new Error(`Prior came as weight ${weight}, shape ${shape}, scale ${scale}, expected above 0.`);
  const n = logRatios.length;
  if (n === 0) return prior;
  const average = sumOf(logRatios) / n;
  const scatter = sumOf(logRatios.map((r) => (r - average) ** 2));
  return {
    mean: (weight * mean + n * average) / (weight + n),
    weight: weight + n,
    shape: shape + n / 2,
    scale: scale + scatter / 2 + (weight * n * (average - mean) ** 2) / (2 * (weight + n)),
  };
}

/** Scale of the next job's Student t: √(β(κ + 1)/(ακ)), with 2α degrees of freedom. */
export const paceScale = ({ weight, shape, scale }: Pace): number =>
  Math.sqrt((scale * (weight + 1)) / (shape * weight));

/** Factor the next job's estimate is multiplied by to be kept with chance q. Plan with 0.5, quote 0.8. */
export const paceMultiplier = (pace: Pace, q: number): number =>
  Math.exp(pace.mean + paceScale(pace) * studentTQuantile(q, 2 * pace.shape));

/** Belief about whether a kind of repair holds: Beta(held, failed), the prior counted in. */
export interface Holding {
  readonly held: number;
  readonly failed: number;
}

export const updateHolding = (prior: Holding, held: number, failed: number): Holding => ({
  held: prior.held + held,
  failed: prior.failed + failed,
});
export const holdingChance = ({ held, failed }: Holding): number => held / (held + failed);
/** The chance one may count on with certainty 1 − q: a low quantile of the belief. */
export const holdingQuantile = ({ held, failed }: Holding, q: number): number => betaQuantile(q, held, failed);

/** Below so many jobs of a class, all jobs are a better guide than the class alone (common practice). */
export const JOBS_FOR_OWN_CLASS = 5;

/** A finished job with its reference class: clean and seal, glue and fill, joinery, puzzle, sparterie. */
export interface ClassedJob extends LoggedJob {
  readonly className: string;
}

/** The pace to plan with, and what it rests on. */
export interface ClassPace {
  readonly pace: Pace;
  /** `class`: this class alone. `all`: every job, the class having too few. `prior`: nothing logged yet. */
  readonly basis: 'class' | 'all' | 'prior';
  readonly jobs: number;
}

/** One pace for each reference class, falling back to all jobs below five, and to the prior on an empty log. */
export function paceForClass(className: string, log: readonly ClassedJob[], prior: Pace): ClassPace {
  const own = log.filter((job) => job.className === className);
  const jobs = own.length >= JOBS_FOR_OWN_CLASS ? own : log;
  if (jobs.length === 0) return { pace: prior, basis: 'prior', jobs: 0 };
  const basis = own.length >= JOBS_FOR_OWN_CLASS ? 'class' : 'all';
  return { pace: updatePace(prior, jobs.map(logRatio)), basis, jobs: jobs.length };
}
