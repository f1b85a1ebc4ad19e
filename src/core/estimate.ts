import type { ThreePoint } from './catalogue.ts';
import { betaCdf, betaQuantile, normalCdf, normalQuantile } from './distributions.ts';

/** @throws when the three points do not rise, or one is not a number */
export function checkThreePoint({ o, m, p }: ThreePoint): void {
  if (!(o <= m && m <= p && Number.isFinite(p - o)))
    throw new Error(`Estimate came as ${o}/${m}/${p}, expected optimistic ≤ likely ≤ pessimistic.`);
}

/** Mean and standard deviation of an amount of work, in the unit of its points (hours). */
export interface Moments {
  readonly mean: number;
  readonly sd: number;
}

/** (o + 4m + p)/6: exactly the mean of the beta below. Source: three-point formula on project-planning pages. */
export const pertMean = ({ o, m, p }: ThreePoint): number => (o + 4 * m + p) / 6;

/** (p − o)/6, the planners' rule; a little under the beta's own `betaSd` when the likely value is not in the middle. */
export const pertSd = ({ o, p }: ThreePoint): number => (p - o) / 6;

/** Shapes of the beta-PERT: α = 1 + 4(m − o)/(p − o), β = 1 + 4(p − m)/(p − o). Textbook. Of no meaning when o = p. */
export const pertShapes = ({ o, m, p }: ThreePoint): { readonly alpha: number; readonly beta: number } => ({
  alpha: 1 + (4 * (m - o)) / (p - o),
  beta: 1 + (4 * (p - m)) / (p - o),
});

/** Exact standard deviation of that beta: √((μ − o)(p − μ)/7), its shapes adding up to 6. */
export function betaSd(points: ThreePoint): number {
  const mean = pertMean(points);
  return Math.sqrt(((mean - points.o) * (points.p - mean)) / 7);
}

/** Chance that the work takes `x` or less, by the beta-PERT. */
export function pertCdf(points: ThreePoint, x: number): number {
  checkThreePoint(points);
  const { o, p } = points;
  if (x >= p) return 1;
  if (x < o || o === p) return 0;
  const { alpha, beta } = pertShapes(points);
  return betaCdf((x - o) / (p - o), alpha, beta);
}

/** What the work stays under with chance q, by the beta-PERT; q of 0 and 1 give the ends. */
export function pertQuantile(points: ThreePoint, q: number): number {
  checkThreePoint(points);
  const { o, p } = points;
  if (o === p) return o;
  const { alpha, beta } = pertShapes(points);
  return o + (p - o) * betaQuantile(q, alpha, beta);
}

/** Triangular distribution on the same three points: mean (o + m + p)/3. Textbook. */
export const triangularMean = ({ o, m, p }: ThreePoint): number => (o + m + p) / 3;

/** √((o² + m² + p² − om − op − mp)/18), written with differences so that it cannot go below 0. */
export const triangularSd = ({ o, m, p }: ThreePoint): number =>
  Math.sqrt(((m - o) ** 2 + (p - m) ** 2 + (m - o) * (p - m)) / 18);

export function triangularQuantile(points: ThreePoint, q: number): number {
  checkThreePoint(points);
  const { o, m, p } = points;
  return q * (p - o) <= m - o ? o + Math.sqrt(q * (p - o) * (m - o)) : p - Math.sqrt((1 - q) * (p - o) * (p - m));
}

/** A log-normal amount: ln of it has mean μ and standard deviation σ. */
export interface LogNormal {
  readonly mu: number;
  readonly sigma: number;
}

/** The log-normal with these 10th and 90th percentiles. @throws unless 0 < p10 ≤ p90 */
export function logNormalFrom(p10: number, p90: number): LogNormal {
  if (!(p10 > 0 && p90 >= p10 && Number.isFinite(p90)))
    throw new Error(`Percentiles came as ${p10} and ${p90}, expected 0 < P10 ≤ P90.`);
  return { mu: (Math.log(p10) + Math.log(p90)) / 2, sigma: Math.log(p90 / p10) / (2 * normalQuantile(0.9)) };
}

export const logNormalMedian = ({ mu }: LogNormal): number => Math.exp(mu);
export const logNormalMean = ({ mu, sigma }: LogNormal): number => Math.exp(mu + (sigma * sigma) / 2);

export function logNormalQuantile({ mu, sigma }: LogNormal, q: number): number {
  return sigma === 0 ? Math.exp(mu) : Math.exp(mu + sigma * normalQuantile(q));
}

/** Chance of `x` or less. */
export function logNormalCdf({ mu, sigma }: LogNormal, x: number): number {
  if (x <= 0) return 0;
  const distance = Math.log(x) - mu;
  return sigma === 0 ? Number(distance >= 0) : normalCdf(distance / sigma);
}

/**
 * Mean and standard deviation of several steps in a row, by the planners' rule.
 * Steps of one block are correlated (one slow evening slows everything), so the sum spreads wider than the root of
 * summed variances: sd² = (1 − ρ)·Σσ² + ρ·(Σσ)². Arithmetic.
 * @param correlation ρ between every two steps, 0 to 1
 */
export function sumOfSteps(steps: readonly ThreePoint[], correlation = 0): Moments {
  if (!(correlation >= 0 && correlation <= 1)) throw new Error(`Correlation came as ${correlation}, expected 0 to 1.`);
  const sds = steps.map(pertSd);
  const together = sds.reduce((sum, sd) => sum + sd, 0) ** 2;
  const apart = sds.reduce((sum, sd) => sum + sd * sd, 0);
  return {
    mean: steps.reduce((sum, step) => sum + pertMean(step), 0),
    sd: Math.sqrt((1 - correlation) * apart + correlation * together),
  };
}

/** Percentile of a sum taken as normal: mean + z·sd. */
export const sumQuantile = ({ mean, sd }: Moments, q: number): number =>
  sd === 0 ? mean : mean + sd * normalQuantile(q);
