import type { MeasureId } from '../measures.ts';

export const ofCrown = [
  'circRopeMm',
  'lengthMm',
  'widthMm',
  'depthFrontMm',
  'depthBackMm',
  'weightG',
] as const satisfies readonly MeasureId[];

export const ofBrim = [
  'overallLengthMm',
  'overallWidthMm',
  'openingCircMm',
  'openingLengthMm',
  'openingWidthMm',
  'brimFrontMm',
  'brimSideMm',
  'brimBackMm',
  'flatDevMm',
  'weightG',
] as const satisfies readonly MeasureId[];

export const ofSmall = [
  'overallLengthMm',
  'overallWidthMm',
  'depthFrontMm',
  'weightG',
] as const satisfies readonly MeasureId[];
