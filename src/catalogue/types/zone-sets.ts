import type { ZoneId } from '../zones.ts';

export const sides = ['sideFront', 'sideRight', 'sideBack', 'sideLeft'] as const satisfies readonly ZoneId[];

export const ofCrown = [
  'tip',
  ...sides,
  'ropeLine',
  'lowerEdge',
  'base',
  'stemHole',
  'glueLine',
  'whole',
] as const satisfies readonly ZoneId[];

export const brimQuarters = ['brimFront', 'brimRight', 'brimBack', 'brimLeft'] as const satisfies readonly ZoneId[];

export const ofBrim = [
  'brimTop',
  ...brimQuarters,
  'edgeGroove',
  'lowerEdge',
  'collar',
  'headOpening',
  'brimUnder',
  'glueLine',
  'whole',
] as const satisfies readonly ZoneId[];

export const ofParts = ['jointFace', 'key', 'dowel'] as const satisfies readonly ZoneId[];
