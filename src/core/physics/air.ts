import { requireRange } from './range.ts';

/** The air a block stands in. */
export interface Air {
  readonly temperatureC: number;
  readonly relativeHumidityPct: number;
}

/**
 * Magnus formula over water, e = 6.112·exp(17.62·T/(243.12 + T)) hPa; good to a few tenths of a percent from −45 to 60 °C.
 * SOURCE: constants as recommended in the WMO guide (2008), after Sonntag 1990 (looked up in a library's documentation); span from memory.
 */
export const MAGNUS = { hPa: 6.112, slope: 17.62, offsetC: 243.12, lowestC: -45, highestC: 60 } as const;

/**
 * Pressure of water vapour in saturated air, hPa.
 * @param temperatureC −45 to 60
 * @throws RangeError outside that
 * SOURCE: {@link MAGNUS}
 */
export function saturationPressureHPa(temperatureC: number): number {
  requireRange('temperatureC', temperatureC, MAGNUS.lowestC, MAGNUS.highestC);
  return MAGNUS.hPa * Math.exp((MAGNUS.slope * temperatureC) / (MAGNUS.offsetC + temperatureC));
}

/**
 * Temperature at which dew forms, °C: the Magnus formula turned round.
 * @param air −45 to 60 °C, humidity above 0 up to 100 %
 * @throws RangeError outside that; dry air has no dew point
 * SOURCE: {@link MAGNUS}
 */
export function dewPointC(air: Air): number {
  requireRange('relativeHumidityPct', air.relativeHumidityPct, 0.1, 100);
  const level = Math.log((saturationPressureHPa(air.temperatureC) * air.relativeHumidityPct) / 100 / MAGNUS.hPa);
  return (MAGNUS.offsetC * level) / (MAGNUS.slope - level);
}

export type WarmedAir =
  | { readonly kind: 'air'; readonly temperatureC: number; readonly relativeHumidityPct: number }
  /** Cooled past its dew point: the air is saturated and water settles on whatever is cold. */
  | {
      readonly kind: 'dew';
      readonly temperatureC: number;
      readonly relativeHumidityPct: 100;
      readonly dewPointC: number;
    };

/**
 * The same air warmed or cooled, no water given or taken: a parked car, a block carried indoors in winter, a bag out of the freezer.
 * @param air −45 to 60 °C, 0 to 100 %
 * @param temperatureC new temperature, −45 to 60
 * @throws RangeError outside those
 * SOURCE: {@link MAGNUS}
 */
export function airAt(air: Air, temperatureC: number): WarmedAir {
  const { relativeHumidityPct } = air;
  requireRange('relativeHumidityPct', relativeHumidityPct, 0, 100);
  const after = (relativeHumidityPct * saturationPressureHPa(air.temperatureC)) / saturationPressureHPa(temperatureC);
  if (after <= 100) return { kind: 'air', temperatureC, relativeHumidityPct: after };
  return { kind: 'dew', temperatureC, relativeHumidityPct: 100, dewPointC: dewPointC(air) };
}
