import type { Essential } from '../core/catalogue.ts';
import type { DamageId } from './damage/index.ts';
import type { MeasureId } from './measures.ts';
import type { StationId } from './stations.ts';

type Way =
  | { readonly measure: MeasureId }
  | { readonly station: StationId }
  | { readonly kind: DamageId }
  | { readonly field: 'partsFound' };

/** What must not stay unknown: two of these unlooked at make any block risky. Each is met by any one of its ways. */
export const essentials = {
  circumference: {
    term: 'Circumference',
    ways: [{ measure: 'circRopeMm' }, { measure: 'openingCircMm' }],
    notFor: ['small', 'support'],
  },
  baseSeen: { term: 'Base seen', ways: [{ station: 'under' }, { kind: 'stemHoleWorn' }] },
  lineSeen: {
    term: 'Rope line or pin edge seen',
    ways: [{ station: 'cord' }, { kind: 'wornGroove' }, { kind: 'pinHoles' }, { kind: 'edgeWire' }, { kind: 'burr' }],
    notFor: ['support', 'head', 'pan', 'last'],
  },
  partsCounted: {
    term: 'Parts counted',
    ways: [{ field: 'partsFound' }, { station: 'count' }, { kind: 'partsMissing' }],
  },
  insectCheck: {
    term: 'Insects looked for',
    ways: [{ station: 'nose' }, { kind: 'flightHoles' }],
    onlyInsectFood: true,
  },
  knockOrHeft: {
    term: 'Knocked or lifted',
    ways: [{ station: 'knock' }, { station: 'heft' }, { measure: 'weightG' }],
  },
} as const satisfies Record<string, Essential & { readonly ways: readonly Way[] }>;
