import { requirePositive, requireRange } from './range.ts';
import type { Sourced, SourcedRow } from './sourced.ts';

/** Slab: length is the full thickness, both faces open. Cylinder and sphere: length is the radius. */
export type Body = 'slab' | 'cylinder' | 'sphere';

const TERMS = 60;

/** First zeros of the Bessel function J0. SOURCE: published tables (from memory, held against SciPy). */
const TABLED_ZEROS = [2.404825557695773, 5.520078110286311, 8.653727912911013] as const;

/** n-th zero of J0 by McMahon's expansion, right to 5e-9 from the fourth on. SOURCE: textbook (from memory). */
function besselZero(n: number): number {
  const a = (n - 0.25) * Math.PI;
  const e = 8 * a;
  return a + 1 / e - 124 / (3 * e ** 3) + 120928 / (15 * e ** 5) - 401743168 / (105 * e ** 7);
}

const BESSEL_ZEROS = Array.from({ length: TERMS }, (_, k) => TABLED_ZEROS[k] ?? besselZero(k + 1));

const sumOver = (term: (n: number) => number): number => {
  let sum = 0;
  for (let n = 0; n < TERMS; n++) sum += term(n);
  return sum;
};

/** Late times: the eigenfunction series. Early times: the square-root law, where the series would need hundreds of terms. */
const SOLUTIONS = {
  slab: {
    early: (f: number) => 4 * Math.sqrt(f / Math.PI),
    late: (f: number) =>
      1 - (8 / Math.PI ** 2) * sumOver((n) => Math.exp(-(((2 * n + 1) * Math.PI) ** 2) * f) / (2 * n + 1) ** 2),
  },
  cylinder: {
    early: (f: number) => 4 * Math.sqrt(f / Math.PI) - f,
    late: (f: number) => 1 - BESSEL_ZEROS.reduce((sum, j) => sum + (4 / j ** 2) * Math.exp(-(j ** 2) * f), 0),
  },
  sphere: {
    early: (f: number) => 6 * Math.sqrt(f / Math.PI) - 3 * f,
    late: (f: number) =>
      1 - (6 / Math.PI ** 2) * sumOver((n) => Math.exp(-(((n + 1) * Math.PI) ** 2) * f) / (n + 1) ** 2),
  },
} as const satisfies Record<Body, { early: (f: number) => number; late: (f: number) => number }>;

const EARLY_ENDS = 0.002;

/**
 * Share of the whole change done, 0 to 1, after dimensionless time D·t/L²: even start, surface held at the new value.
 * @param dimensionlessTime 0 or more
 * @throws RangeError if negative or not a number
 * SOURCE: series solutions in Crank, The Mathematics of Diffusion (from memory).
 */
export function shareDone(body: Body, dimensionlessTime: number): number {
  requireRange('dimensionlessTime', dimensionlessTime, 0, Number.MAX_VALUE);
  const { early, late } = SOLUTIONS[body];
  return Math.max(0, dimensionlessTime < EARLY_ENDS ? early(dimensionlessTime) : late(dimensionlessTime));
}

/**
 * Dimensionless time D·t/L² at which a share of the change is done, by bisection.
 * @param share above 0, at most 0.999
 * @throws RangeError outside that
 * SOURCE: {@link shareDone}
 */
export function timeToShare(body: Body, share: number): number {
  requirePositive('share', share, 0.999);
  let low = 0;
  let high = 2;
  while (high - low > 1e-10) {
    const middle = (low + high) / 2;
    if (shareDone(body, middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Water diffusion through block woods across the grain, m²/s, and the factor of doubt each way.
 * SOURCE: own planning figure between published spruce and beech measurements.
 */
export const PLANNING_DIFFUSIVITY = {
  m2PerS: 5e-11,
  doubtFactor: 5,
  source: 'planning figure between spruce and beech measurements',
  confidence: 'own',
} as const satisfies Sourced & { m2PerS: number; doubtFactor: number };

/**
 * What has been measured.
 * SOURCE: each row.
 */
export const MEASURED_DIFFUSION = {
  spruce: {
    radialM2PerS: 9.4e-11,
    tangentialM2PerS: 1e-10,
    longitudinalM2PerS: 1.98e-10,
    source: 'dynamic vapour sorption on spruce, DOI 10.1038/s41598-026-38932-7',
    confidence: 'looked-up',
  },
  beech: {
    slowerThanSpruce: { low: 2, high: 3 },
    alongOverAcrossUpTo: 15,
    source: 'Sonderegger et al. 2011, Holzforschung 65(6):819',
    confidence: 'looked-up',
  },
  panelOpenOnOneFace: {
    thicknessMm: 10,
    halfwayDays: 50,
    source: 'conservation physics pages, drying rate of wood; ten times slower than bare-wood figures imply',
    confidence: 'looked-up',
  },
  openCrackBehindRoom: {
    lagHours: 41,
    source: 'museum microclimates conference 2007, an existing crack in historic furniture',
    confidence: 'looked-up',
  },
} as const satisfies Record<string, SourcedRow>;

export interface DaysSpan {
  readonly fastestDays: number;
  readonly likelyDays: number;
  readonly slowestDays: number;
}

const SECONDS_PER_DAY = 86_400;

/**
 * Days until a share of a change of humidity has gone through. A span, never a date: the diffusivity is known to a factor of five each way.
 * @param lengthMm full thickness (slab) or radius (cylinder, sphere), above 0 · share above 0 to 0.999
 * @param diffusivityM2PerS 1e-13 to 1e-8, default {@link PLANNING_DIFFUSIVITY}
 * @throws RangeError outside those
 * SOURCE: {@link timeToShare}
 */
export function daysToShare(
  body: Body,
  lengthMm: number,
  share: number,
  diffusivityM2PerS: number = PLANNING_DIFFUSIVITY.m2PerS,
): DaysSpan {
  requirePositive('lengthMm', lengthMm);
  requireRange('diffusivityM2PerS', diffusivityM2PerS, 1e-13, 1e-8);
  const likelyDays = (timeToShare(body, share) * (lengthMm / 1000) ** 2) / diffusivityM2PerS / SECONDS_PER_DAY;
  const { doubtFactor } = PLANNING_DIFFUSIVITY;
  return { fastestDays: likelyDays / doubtFactor, likelyDays, slowestDays: likelyDays * doubtFactor };
}

/**
 * How many times quicker moisture moves at one temperature than at another, humidity being equal: doubling every 12 °C.
 * @param temperatureC, thanTemperatureC 0 to 40
 * @throws RangeError outside those
 * SOURCE: 24 °C about twice as quick as 12 °C, cited in The Structural Conservation of Panel Paintings (Getty 1998) (looked up);
 * the exponential between and beyond is ours.
 */
export function paceAt(temperatureC: number, thanTemperatureC: number): number {
  requireRange('temperatureC', temperatureC, 0, 40);
  requireRange('thanTemperatureC', thanTemperatureC, 0, 40);
  return 2 ** ((temperatureC - thanTemperatureC) / 12);
}
