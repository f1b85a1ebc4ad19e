import { assembly } from './assembly.ts';
import { biological } from './biological.ts';
import { coats } from './coats.ts';
import { contamination } from './contamination.ts';
import { geometry } from './geometry.ts';
import { loss } from './loss.ts';
import { metal } from './metal.ts';
import { repair } from './repair.ts';
import { shell } from './shell.ts';
import { sparterie } from './sparterie.ts';
import { structural } from './structural.ts';
import { surface } from './surface.ts';

/** Every kind of damage, grouped by what did it. */
export const damage = {
  ...structural,
  ...loss,
  ...surface,
  ...coats,
  ...biological,
  ...geometry,
  ...assembly,
  ...repair,
  ...contamination,
  ...sparterie,
  ...shell,
  ...metal,
} as const;
export type DamageId = keyof typeof damage;
