import type { Caution } from './caution.ts';
import { CHEMICALS } from './cautions-chemicals.ts';
import { COLD_AND_HEAT } from './cautions-cold-and-heat.ts';
import { HEALTH } from './cautions-health.ts';
import { WOOD_AND_SHAPE } from './cautions-materials.ts';

/** Every caution the handbook gives, by id; data tables of methods name the ones that belong to them. */
export const CAUTIONS = { ...HEALTH, ...CHEMICALS, ...COLD_AND_HEAT, ...WOOD_AND_SHAPE } as const satisfies Record<
  string,
  Caution
>;
export type CautionId = keyof typeof CAUTIONS;
export const CAUTION_IDS = Object.keys(CAUTIONS) as CautionId[];

/** What every method row carries. */
export interface WithCautions {
  readonly cautions: readonly CautionId[];
}
