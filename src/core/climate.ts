import type { Air } from './physics/air.ts';
import type { Hemisphere } from './physics/quarantine.ts';
import type { Settings } from './records.ts';

/** Where the owner's blocks live: the air of the room, and on which half of the globe the beetles fly. */
export interface Climate {
  readonly room: Air;
  readonly hemisphere: Hemisphere;
  /** What nobody has said, so that the usual stands in for it. */
  readonly assumed: readonly ('room' | 'hemisphere')[];
}

/**
 * A heated room in winter and a northern summer, until the owner says otherwise. 20 °C and 45 % are where the handbook's
 * worked examples start (§1.4). SOURCE: own choice.
 */
export const USUAL_CLIMATE = {
  room: { temperatureC: 20, relativeHumidityPct: 45 },
  hemisphere: 'north',
} as const satisfies Omit<Climate, 'assumed'>;

/** Bounds of what may be set: a room one works in, and humidity the equations hold for. SOURCE: own choice. */
export const ROOM_BOUNDS = { coldestC: 0, hottestC: 45, driestPct: 5, dampestPct: 95 } as const;

type Chosen = Pick<Settings, 'roomTemperatureC' | 'roomHumidityPct' | 'hemisphere' | 'stamps'>;

/** The climate as set; where a field is not there (settings of an older app) or was never touched, the usual one, said so. */
export function climateOf(settings: Chosen): Climate {
  const { temperatureC, relativeHumidityPct } = USUAL_CLIMATE.room;
  const touched = (field: string): boolean => Object.hasOwn(settings.stamps, field);
  return {
    room: {
      temperatureC: settings.roomTemperatureC ?? temperatureC,
      relativeHumidityPct: settings.roomHumidityPct ?? relativeHumidityPct,
    },
    hemisphere: settings.hemisphere ?? USUAL_CLIMATE.hemisphere,
    assumed: [
      ...(touched('roomTemperatureC') || touched('roomHumidityPct') ? [] : (['room'] as const)),
      ...(touched('hemisphere') ? [] : (['hemisphere'] as const)),
    ],
  };
}
