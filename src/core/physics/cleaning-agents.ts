import type { WithCautions } from './cautions.ts';
import type { SourcedRow } from './sourced.ts';

/**
 * What is put on mould, and what it does.
 * SOURCE: each row.
 */
export const CLEANING_AGENTS = {
  peroxide: {
    strengthPct: 3,
    volumes: 10,
    twiceAsStrong: { strengthPct: 6, volumes: 20 },
    lastsAfterwards: false,
    cautions: ['peroxide', 'peroxidePinsOut', 'peroxideBleaches', 'neverMix'],
    source: 'chemical safety data summary',
    confidence: 'looked-up',
  },
  peroxideContact: {
    minutes: 10,
    cautions: ['peroxide', 'peroxidePinsOut'],
    source: 'disinfectant practice, as remembered',
    confidence: 'memory',
  },
  chlorineBleach: {
    triedPct: { low: 2.5, high: 20 },
    betterLookingThanWater: false,
    fungiEliminated: false,
    cautions: ['neverMix'],
    source: 'Taylor, Freitag and Morrell 2004, Forest Products Journal 54(4):45',
    confidence: 'looked-up',
  },
  sunlight: {
    ultravioletReachesMicrometres: 75,
    visibleReachesMicrometres: 200,
    cautions: ['sunlight'],
    source: 'Hon and Ifju 1978, as remembered',
    confidence: 'memory',
  },
} as const satisfies Record<string, SourcedRow & WithCautions>;
