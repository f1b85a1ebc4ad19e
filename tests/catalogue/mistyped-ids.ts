import type { Kind } from '../../src/catalogue/damage/common.ts';
import type { MaterialId, ZoneId } from '../../src/catalogue/index.ts';
import type { Step } from '../../src/catalogue/treatments/common.ts';

// Nothing here runs. The type check fails when one of these mistakes stops being one.

export const treatments: readonly Kind['treatments'][number]['treatment'][] = [
  'fillCheck',
  // @ts-expect-error: no such treatment
  'fillCheque',
];
export const stations: Kind['stations'] = [
  'torch',
  // @ts-expect-error: no such station
  'lamp',
];
export const materials: readonly MaterialId[] = [
  'lime',
  // @ts-expect-error: no such material
  'limewood',
];
export const zones: readonly ZoneId[] = [
  'ropeLine',
  // @ts-expect-error: no such zone
  'roapLine',
];
export const after: Step['after'] = [
  'seal',
  // @ts-expect-error: no such treatment
  'varnish',
];
export const resources: Step['handsResources'] = [
  'bench',
  // @ts-expect-error: no such resource
  'benches',
];
