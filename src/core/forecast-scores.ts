import { binomialCdf } from './distributions.ts';

/**
 * Pinball loss of a quantile forecast, in the forecast's unit: q a unit when the job took longer, 1 − q when it took
 * less. Whoever states true quantiles keeps it lowest in the long run. Textbook.
 */
export const pinballLoss = (q: number, forecast: number, actual: number): number =>
  Math.max(q * (actual - forecast), (q - 1) * (actual - forecast));

/** A stated chance and what came of it. */
export interface ChanceForecast {
  readonly chance: number;
  readonly happened: boolean;
}

/** Brier score: mean square of chance minus outcome; 0 is perfect, 0.25 is saying ½ always. Null without forecasts. Textbook. */
export function brierScore(forecasts: readonly ChanceForecast[]): number | null {
  if (forecasts.length === 0) return null;
  const squares = forecasts.map(({ chance, happened }) => (chance - Number(happened)) ** 2);
  return squares.reduce((sum, square) => sum + square, 0) / forecasts.length;
}

/** A stated band and where the actual fell. */
export interface BandForecast {
  readonly low: number;
  readonly high: number;
  readonly actual: number;
}

/** How often the actuals fell inside their bands. */
export interface Coverage {
  readonly inside: number;
  readonly of: number;
  /** Null when nothing has been logged. */
  readonly share: number | null;
  /** Chance of so few or fewer inside if the bands were true; small means the bands are too narrow. */
  readonly chanceOfSoFew: number;
}

/** @param stated what share the bands claim to hold, 0.8 for P10 to P90; an actual on the edge counts as inside */
export function bandCoverage(forecasts: readonly BandForecast[], stated: number): Coverage {
  const inside = forecasts.filter(({ low, high, actual }) => actual >= low && actual <= high).length;
  const of = forecasts.length;
  return { inside, of, share: of === 0 ? null : inside / of, chanceOfSoFew: binomialCdf(inside, of, stated) };
}
