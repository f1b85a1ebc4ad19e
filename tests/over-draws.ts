import { catalogue } from '../src/catalogue/index.ts';
import { assess, type Case } from '../src/core/assess.ts';
import { type Forecast, type ForecastCase, forecast } from '../src/core/simulate/simulate.ts';

/** How a case is drawn. */
export interface Chance {
  readonly count: number;
  readonly seed?: number;
  readonly origin?: ForecastCase['origin'];
}

/** A case's forecast under so much chance. */
export const under = (facts: Case, { count, seed = 5, origin = 'unknown' }: Chance, known = catalogue): Forecast =>
  forecast({ ...facts, origin, tallies: {}, seed, count }, known);

/** All a block can bring or cost in one draw, minor units: the widest a net can stray. */
export function widthOf(facts: Case, { strategies: { restore } }: Forecast): number {
  const { worth } = assess(facts, catalogue);
  return Math.max(worth.newPrice.amount, worth.fallback.amount) + 2 * Math.max(0, -restore.net.p10) + worth.cost;
}

/** Five standard errors of a mean over the draws, a spread being at most half the width. */
export const monteCarlo = (width: number, count: number): number => (5 * width) / 2 / Math.sqrt(count);
