import type { WithCautions } from './cautions.ts';
import type { SourcedRow } from './sourced.ts';

/** How old glue lets go, and whether new glue will hold on what is left. Bare wood is better than any of it. */
export const OLD_GLUE = {
  hide: {
    loosenWith: 'warm water, or vinegar and water; damp heat gels it',
    gelsAtC: 60,
    newGlueHolds: true,
    cautions: ['steam', 'neverMix'],
    source: 'glue-maker advice; gelling heat as remembered',
    confidence: 'looked-up',
  },
  pva: {
    loosenWith: 'warm damp pads, then scrape: it never sands clean',
    newGlueHolds: false,
    cautions: ['edgedToolsAndClamps'],
    source: 'workshop experience, as remembered',
    confidence: 'memory',
  },
  epoxy: {
    loosenWith: 'heat and scrape; no solvent',
    newGlueHolds: false,
    cautions: ['epoxy', 'edgedToolsAndClamps'],
    source: 'workshop experience, as remembered',
    confidence: 'memory',
  },
} as const satisfies Record<string, SourcedRow & WithCautions & { readonly newGlueHolds: boolean }>;
export type OldGlue = keyof typeof OLD_GLUE;
