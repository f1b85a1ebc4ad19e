import type { Air } from './air.ts';
import { requireRange } from './range.ts';

/**
 * Lowest humidity at which mould grows on pine or spruce sapwood, percent: a cubic up to 20 °C, 80 above.
 * Starch-rich sparterie and felt grime will grow it sooner.
 * @param temperatureC above 0 to 50; below, nothing grows and {@link mouldWeather} says so
 * @throws RangeError outside that
 * SOURCE: Hukka and Viitanen 1999, Wood Sci. Technol. 33:475 (looked up). The T term is −3.13: one public code has +3.13, which gives 205 % at 20 °C.
 */
export function criticalHumidityPct(temperatureC: number): number {
  requireRange('temperatureC', temperatureC, 0, 50);
  if (temperatureC > 20) return 80;
  return -0.00267 * temperatureC ** 3 + 0.16 * temperatureC ** 2 - 3.13 * temperatureC + 100;
}

export interface GrowthSurface {
  /** Spruce grows slower than pine. */
  readonly spruce?: boolean;
  /** The skin left by kiln drying feeds mould sooner than a resawn face. */
  readonly kilnSkin?: boolean;
}

/**
 * Weeks of that steady air until the first growth a microscope shows (index 1).
 * @param air 1 to 50 °C, humidity 50 to 100 %. The formula itself knows no threshold: ask {@link mouldWeather} first.
 * @throws RangeError outside those
 * SOURCE: Hukka and Viitanen 1999, t = exp(−0.68·ln T − 13.9·ln RH + 0.14·W − 0.33·SQ + 66.02) (looked up in public codes).
 */
export function weeksToFirstGrowth(air: Air, { spruce = false, kilnSkin = false }: GrowthSurface = {}): number {
  const temperatureC = requireRange('temperatureC', air.temperatureC, 1, 50);
  const relativeHumidityPct = requireRange('relativeHumidityPct', air.relativeHumidityPct, 50, 100);
  return Math.exp(
    -0.68 * Math.log(temperatureC) -
      13.9 * Math.log(relativeHumidityPct) +
      (spruce ? 0.14 : 0) -
      (kilnSkin ? 0.33 : 0) +
      66.02,
  );
}

/**
 * How readily a surface feeds mould: ceiling A + B·x − C·x², lowest growing humidity, and pace before and after index 1.
 * SOURCE: improved VTT model, as coded publicly (ceilings and paces looked up).
 */
export const SENSITIVITY = {
  bareWood: { ceiling: [1, 7, 2], leastHumidityPct: 80, pace: [1, 2] },
  gluedBoard: { ceiling: [0.3, 6, 1], leastHumidityPct: 80, pace: [0.578, 0.386] },
  mediumResistant: { ceiling: [0, 5, 1.5], leastHumidityPct: 85, pace: [0.072, 0.097] },
  resistant: { ceiling: [0, 3, 1], leastHumidityPct: 85, pace: [0.033, 0.014] },
} as const satisfies Record<
  string,
  {
    ceiling: readonly [a: number, b: number, c: number];
    leastHumidityPct: number;
    pace: readonly [before: number, after: number];
  }
>;
export type Sensitivity = keyof typeof SENSITIVITY;

/**
 * Index mould would reach in that air if it stayed for ever, 0 to 6.
 * @param air 0 to 50 °C, 0 to 100 %
 * @throws RangeError outside those
 * SOURCE: {@link SENSITIVITY}
 */
export function mouldCeiling(air: Air, sensitivity: Sensitivity): number {
  requireRange('relativeHumidityPct', air.relativeHumidityPct, 0, 100);
  const { ceiling, leastHumidityPct } = SENSITIVITY[sensitivity];
  const critical = Math.max(criticalHumidityPct(air.temperatureC), leastHumidityPct);
  if (air.relativeHumidityPct < critical) return 0;
  if (critical >= 100) return 0;
  const x = (critical - air.relativeHumidityPct) / (critical - 100);
  const [a, b, c] = ceiling;
  return Math.min(6, Math.max(0, a + b * x - c * x * x));
}

/** Loss of index in dry spells, per day. SOURCE: Hukka and Viitanen 1999 as coded publicly (looked up). */
export const DRY_SPELL = {
  firstHours: 6,
  firstPerDay: -0.032,
  restUntilHours: 24,
  restPerDay: 0,
  laterPerDay: -0.016,
} as const;

export interface MouldState {
  /** 0 none · 1 under the microscope · 3 first visible · 4 to half the area · 5 over half · 6 solid. */
  readonly index: number;
  /** Hours it has been too dry or too cold, so far. */
  readonly dryHours: number;
}
export const NO_MOULD: MouldState = { index: 0, dryHours: 0 };

const growsIn = (air: Air, sensitivity: Sensitivity): boolean =>
  air.temperatureC > 0 &&
  air.temperatureC < 50 &&
  air.relativeHumidityPct >= Math.max(criticalHumidityPct(air.temperatureC), SENSITIVITY[sensitivity].leastHumidityPct);

function hourOfGrowth({ index }: MouldState, air: Air, sensitivity: Sensitivity): number {
  const { pace } = SENSITIVITY[sensitivity];
  // Below 1 °C the logarithm of the source runs away; growth there is all but nothing.
  const weeks = weeksToFirstGrowth({ ...air, temperatureC: Math.max(1, air.temperatureC) });
  const nearCeiling = Math.max(0, 1 - Math.exp(2.3 * (index - mouldCeiling(air, sensitivity))));
  return ((index < 1 ? pace[0] : pace[1]) * nearCeiling) / (7 * 24 * weeks);
}

function hourOfDecline(dryHours: number): number {
  const { firstHours, firstPerDay, restUntilHours, restPerDay, laterPerDay } = DRY_SPELL;
  return (dryHours <= firstHours ? firstPerDay : dryHours <= restUntilHours ? restPerDay : laterPerDay) / 24;
}

/**
 * Mould index after so many hours in steady air; feed a changing climate stretch by stretch.
 * @param hours whole, 0 to 200 000 · air −50 to 80 °C, 0 to 100 %
 * @throws RangeError outside those, or for an index outside 0 to 6
 * SOURCE: improved VTT model, hour by hour: growth 1/(7·t)·k1·k2 per day with k2 = 1 − exp(2.3·(M − ceiling)), and {@link DRY_SPELL} (looked up in a public code).
 */
export function mouldAfter(
  state: MouldState,
  hours: number,
  air: Air,
  sensitivity: Sensitivity = 'bareWood',
): MouldState {
  requireRange('index', state.index, 0, 6);
  requireRange('hours', hours, 0, 200_000);
  requireRange('temperatureC', air.temperatureC, -50, 80);
  requireRange('relativeHumidityPct', air.relativeHumidityPct, 0, 100);
  const grows = growsIn(air, sensitivity);
  let { index, dryHours } = state;
  for (let hour = 0; hour < Math.floor(hours); hour++) {
    dryHours = grows ? 0 : dryHours + 1;
    const change = grows ? hourOfGrowth({ index, dryHours }, air, sensitivity) : hourOfDecline(dryHours);
    index = Math.min(6, Math.max(0, index + change));
  }
  return { index, dryHours };
}
