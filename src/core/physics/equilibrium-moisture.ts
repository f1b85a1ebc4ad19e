import type { Air } from './air.ts';
import { requireRange } from './range.ts';

type Quadratic = readonly [constant: number, perDegree: number, perDegreeSquared: number];
interface Coefficients {
  readonly W: Quadratic;
  readonly K: Quadratic;
  readonly K1: Quadratic;
  readonly K2: Quadratic;
}

/**
 * Coefficients of the sorption equation, as [constant, T, T²].
 * SOURCE: USDA Forest Products Laboratory, Wood Handbook FPL-GTR-282 (2021) eq. 4-5 (looked up); theory of Hailwood and Horrobin 1946, fit of Simpson 1973.
 */
export const EMC_COEFFICIENTS = {
  celsius: {
    W: [349, 1.29, 0.0135],
    K: [0.805, 0.000736, -0.00000273],
    K1: [6.27, -0.00938, -0.000303],
    K2: [1.91, 0.0407, -0.000293],
  },
  fahrenheit: {
    W: [330, 0.452, 0.00415],
    K: [0.791, 0.000463, -0.000000844],
    K1: [6.34, 0.000775, -0.0000935],
    K2: [1.09, 0.0284, -0.0000904],
  },
} as const satisfies Record<string, Coefficients>;

/**
 * Span of the printed table the equation was fitted to; beyond it a figure is extrapolation.
 * SOURCE: Wood Handbook table 4-2, editions of 2010 and 2021 (looked up).
 */
export const EMC_TABLE_SPAN = { lowestC: -1.1, highestC: 132.2, driestPct: 5, dampestPct: 95 } as const;

/** What the functions here will compute at all. Below the table is a freezer, and the equation stays smooth there. */
export const EMC_COMPUTED_SPAN = { lowestC: -30, highestC: 132.2 } as const;

/**
 * How far one piece may lie from the equation at 50 % humidity, in points of moisture: wood that dries there holds more than wood that wets.
 * The equation runs between the two. Tenths of a point are arithmetic, not knowledge.
 * SOURCE: sorption curves of a national wood trade guide, quoted in a public fact sheet (looked up).
 */
export const DRYING_ABOVE_WETTING_POINTS = { atRelativeHumidityPct: 50, low: 1, high: 4 } as const;

const at = ([constant, perDegree, perDegreeSquared]: Quadratic, t: number) =>
  constant + perDegree * t + perDegreeSquared * t * t;

function sorption(coefficients: Coefficients, degrees: number, relativeHumidityPct: number): number {
  const Kh = at(coefficients.K, degrees) * (relativeHumidityPct / 100);
  const K1Kh = at(coefficients.K1, degrees) * Kh;
  const twoLayers = K1Kh * at(coefficients.K2, degrees) * Kh;
  return (1800 / at(coefficients.W, degrees)) * (Kh / (1 - Kh) + (K1Kh + 2 * twoLayers) / (1 + K1Kh + twoLayers));
}

/**
 * Water that wood finally holds in steady air, percent of its oven-dry mass.
 * @param temperatureC −30 to 132.2; the source's table starts at −1.1
 * @param relativeHumidityPct 0 to 100; the source's table spans 5 to 95. At 100 the equation still gives a finite figure that means nothing:
 *   show {@link readMoisture} to people instead.
 * @throws RangeError outside those
 * SOURCE: {@link EMC_COEFFICIENTS}
 */
export function equilibriumMoisturePct(temperatureC: number, relativeHumidityPct: number): number {
  requireRange('temperatureC', temperatureC, EMC_COMPUTED_SPAN.lowestC, EMC_COMPUTED_SPAN.highestC);
  requireRange('relativeHumidityPct', relativeHumidityPct, 0, 100);
  return sorption(EMC_COEFFICIENTS.celsius, temperatureC, relativeHumidityPct);
}

/**
 * The same from degrees Fahrenheit, by the handbook's separate coefficients; differs from the Celsius form by under 0.014 points.
 * @param temperatureF −22 to 270
 * @param relativeHumidityPct 0 to 100
 * @throws RangeError outside those
 * SOURCE: {@link EMC_COEFFICIENTS}
 */
export function equilibriumMoisturePctFahrenheit(temperatureF: number, relativeHumidityPct: number): number {
  requireRange('temperatureF', temperatureF, -22, 270);
  requireRange('relativeHumidityPct', relativeHumidityPct, 0, 100);
  return sorption(EMC_COEFFICIENTS.fahrenheit, temperatureF, relativeHumidityPct);
}

export type MoistureReading =
  | { readonly kind: 'in-table'; readonly moisturePct: number }
  | { readonly kind: 'outside-table'; readonly moisturePct: number; readonly because: 'colder' | 'drier' }
  /** Above 95 % a number would be a pretence: say "near saturation". */
  | { readonly kind: 'near-saturation'; readonly aboveRelativeHumidityPct: number };

/**
 * The figure to show a person, or why there is none.
 * @param air −30 to 132.2 °C, 0 to 100 %
 * @throws RangeError outside those
 * SOURCE: {@link EMC_COEFFICIENTS}, span {@link EMC_TABLE_SPAN}
 */
export function readMoisture(air: Air): MoistureReading {
  const moisturePct = equilibriumMoisturePct(air.temperatureC, air.relativeHumidityPct);
  if (air.relativeHumidityPct > EMC_TABLE_SPAN.dampestPct)
    return { kind: 'near-saturation', aboveRelativeHumidityPct: EMC_TABLE_SPAN.dampestPct };
  if (air.temperatureC < EMC_TABLE_SPAN.lowestC) return { kind: 'outside-table', moisturePct, because: 'colder' };
  if (air.relativeHumidityPct < EMC_TABLE_SPAN.driestPct)
    return { kind: 'outside-table', moisturePct, because: 'drier' };
  return { kind: 'in-table', moisturePct };
}

export type HoldingHumidity =
  | { readonly kind: 'found'; readonly relativeHumidityPct: number; readonly inTable: boolean }
  /** Wetter than any air of that temperature would leave it: it has met liquid water. */
  | { readonly kind: 'beyond-saturation'; readonly saturationMoisturePct: number };

/**
 * Humidity of the air in which wood would keep the moisture it has: the equation turned round by bisection, to 1e-9 %.
 * @param temperatureC −30 to 132.2
 * @param moisturePct 0 or more, at most 300
 * @throws RangeError outside those
 * SOURCE: {@link EMC_COEFFICIENTS}; bisection is textbook
 */
export function humidityHolding(temperatureC: number, moisturePct: number): HoldingHumidity {
  requireRange('moisturePct', moisturePct, 0, 300);
  const saturationMoisturePct = equilibriumMoisturePct(temperatureC, 100);
  if (moisturePct > saturationMoisturePct) return { kind: 'beyond-saturation', saturationMoisturePct };
  let low = 0;
  let high = 100;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (equilibriumMoisturePct(temperatureC, middle) < moisturePct) low = middle;
    else high = middle;
  }
  const relativeHumidityPct = (low + high) / 2;
  const inTable =
    relativeHumidityPct >= EMC_TABLE_SPAN.driestPct &&
    relativeHumidityPct <= EMC_TABLE_SPAN.dampestPct &&
    temperatureC >= EMC_TABLE_SPAN.lowestC;
  return { kind: 'found', relativeHumidityPct, inTable };
}
