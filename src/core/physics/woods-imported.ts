import type { Sourced } from './sourced.ts';
import { MOVEMENT_SPREAD, type Wood } from './wood.ts';

const coefficientTableSecondHand = {
  source:
    'USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010) table 13-5, read in a second-hand copy of the table',
  confidence: 'looked-up',
} as const satisfies Sourced;
const shrinkageImported = {
  source:
    'USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010) table 4-4, columns of the scan put back in order',
  confidence: 'looked-up',
} as const satisfies Sourced;
const shrinkageRemembered = {
  source: 'USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010) tables 4-3 and 4-4, as remembered',
  confidence: 'memory',
} as const satisfies Sourced;

/** Tropical woods: coefficients read second-hand, so they carry more doubt. */
export const IMPORTED_WOODS = {
  balsa: {
    name: 'balsa',
    botanical: 'Ochroma pyramidale',
    perPoint: { radial: 0.00102, tangential: 0.00267, ...coefficientTableSecondHand },
    shrinkage: { radialPct: 3, tangentialPct: 7.6, volumetricPct: 10.8, ...shrinkageRemembered },
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
  africanMahogany: {
    name: 'African mahogany',
    botanical: 'Khaya',
    perPoint: { radial: 0.00141, tangential: 0.00201, ...coefficientTableSecondHand },
    shrinkage: { radialPct: 2.5, tangentialPct: 4.5, volumetricPct: 8.8, ...shrinkageImported },
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
  mahogany: {
    name: 'mahogany',
    botanical: 'Swietenia macrophylla',
    perPoint: { radial: 0.00172, tangential: 0.00238, ...coefficientTableSecondHand },
    shrinkage: { radialPct: 3, tangentialPct: 4.1, volumetricPct: 7.8, ...shrinkageImported },
    uncertainty: 0.4,
    note: 'The source contradicts itself: this coefficient implies about 6.8 % tangential shrinkage, its other table says 4.1 %, a third list 5.1 %.',
  },
  obeche: {
    name: 'obeche',
    botanical: 'Triplochiton scleroxylon',
    perPoint: { radial: 0.00106, tangential: 0.00183, ...coefficientTableSecondHand },
    shrinkage: { radialPct: 3, tangentialPct: 5.4, volumetricPct: 9.2, ...shrinkageImported },
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
  limba: {
    name: 'limba',
    botanical: 'Terminalia superba',
    perPoint: { radial: 0.00151, tangential: 0.00187, ...coefficientTableSecondHand },
    shrinkage: null,
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
  okoume: {
    name: 'okoume',
    botanical: 'Aucoumea klaineana',
    perPoint: { radial: 0.00194, tangential: 0.00212, ...coefficientTableSecondHand },
    shrinkage: null,
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
  spanishCedar: {
    name: 'Spanish cedar',
    botanical: 'Cedrela odorata',
    perPoint: { radial: 0.00141, tangential: 0.00219, ...coefficientTableSecondHand },
    shrinkage: null,
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
  teak: {
    name: 'teak',
    botanical: 'Tectona grandis',
    perPoint: { radial: 0.00101, tangential: 0.00186, ...coefficientTableSecondHand },
    shrinkage: null,
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
} as const satisfies Record<string, Wood>;
