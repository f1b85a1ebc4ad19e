import type { Model } from '../core/catalogue.ts';
import type { TreatmentId } from './ids.ts';
import { memory } from './source.ts';

/** The reference model of salvage: what a fault costs where it lies. Tune with logged work, not by taste. */
export const model = {
  severity: [0, 0.05, 0.2, 0.5, 0.9],
  zoneWeight: {
    crown: { work: 1, line: 0.8, joint: 0.7, opening: 0.5, base: 0.25, whole: 0.9 },
    brim: { work: 0.9, line: 1, joint: 0.7, opening: 0.9, base: 0.25, whole: 1 },
    full: { work: 1, line: 0.9, joint: 0.7, opening: 0.8, base: 0.25, whole: 0.9 },
    puzzle: { work: 0.9, line: 0.8, joint: 1, opening: 0.6, base: 0.3, whole: 0.9 },
    small: { work: 1, line: 0.9, joint: 0.5, opening: 0.4, base: 0.25, whole: 0.8 },
    support: { work: 0.2, line: 0.1, joint: 0.9, opening: 0.9, base: 0.6, whole: 0.7 },
    pan: { work: 1, line: 0.6, joint: 0.8, opening: 0.6, base: 0.3, whole: 0.8 },
    last: { work: 1, line: 0.6, joint: 0.7, opening: 0.6, base: 0.3, whole: 0.8 },
    head: { work: 0.5, line: 0.2, joint: 0.6, opening: 0.3, base: 0.4, whole: 0.8 },
  },
  successMultiplier: [0, 0, 0.4, 1.5, 4],
  leastSuccess: 0.05,
  copyShare: { common: 0.05, uncommon: 0.2, rare: 0.35, unique: 0.35 },
  // Means over the example sale's expert figures: 0.12–0.33 common, 0.13–0.23 uncommon, 0.21–0.24 unique.
  fallbackShare: { common: 0.17, uncommon: 0.18, rare: 0.22, unique: 0.22 },
  structural: ['structure', 'loss', 'biology', 'assembly', 'sparterie', 'shell', 'metal'],
  // A copy needs the block recorded, bagged and dusted first; mould or worm adds its own steps to a restoration only.
  copyPlan: ['recordAsFound', 'quarantine', 'dryClean', 'takeCopy'],
  verdict: {
    copyBelowScore: 50,
    copyBelowOdds: 0.35,
    riskyBelowScore: 70,
    riskyBelowOdds: 0.75,
    riskyFromUnknowns: 2,
    repairableBelowScore: 80,
  },
  source: memory('Reference model, own design, from memory: every figure is one expert’s judgement.'),
} as const satisfies Model & { readonly copyPlan: readonly TreatmentId[] };
