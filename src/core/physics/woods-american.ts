import type { Sourced } from './sourced.ts';
import { MOVEMENT_SPREAD, type Wood } from './wood.ts';

const coefficientTable = {
  source: 'USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010) table 13-5',
  confidence: 'looked-up',
} as const satisfies Sourced;
const coefficientTableSecondHand = {
  source:
    'USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010) table 13-5, read in a second-hand copy of the table',
  confidence: 'looked-up',
} as const satisfies Sourced;
const shrinkageDomestic = {
  source: 'USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010) table 4-3',
  confidence: 'looked-up',
} as const satisfies Sourced;
const shrinkageRemembered = {
  source: 'USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010) tables 4-3 and 4-4, as remembered',
  confidence: 'memory',
} as const satisfies Sourced;

/** Woods of North America: printed coefficients and shrinkage. */
export const AMERICAN_WOODS = {
  redAlder: {
    name: 'red alder',
    botanical: 'Alnus rubra',
    perPoint: { radial: 0.00151, tangential: 0.00256, ...coefficientTable },
    shrinkage: { radialPct: 4.4, tangentialPct: 7.3, volumetricPct: 12.6, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  whiteAsh: {
    name: 'white ash',
    botanical: 'Fraxinus americana',
    perPoint: { radial: 0.00169, tangential: 0.00274, ...coefficientTable },
    shrinkage: { radialPct: 4.9, tangentialPct: 7.8, volumetricPct: 13.3, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  quakingAspen: {
    name: 'quaking aspen',
    botanical: 'Populus tremuloides',
    perPoint: { radial: 0.00119, tangential: 0.00234, ...coefficientTable },
    shrinkage: { radialPct: 3.5, tangentialPct: 6.7, volumetricPct: 11.5, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
    note: 'A true poplar.',
  },
  americanBasswood: {
    name: 'American basswood',
    botanical: 'Tilia americana',
    perPoint: { radial: 0.0023, tangential: 0.0033, ...coefficientTable },
    shrinkage: { radialPct: 6.6, tangentialPct: 9.3, volumetricPct: 15.8, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  americanBeech: {
    name: 'American beech',
    botanical: 'Fagus grandifolia',
    perPoint: { radial: 0.0019, tangential: 0.00431, ...coefficientTable },
    shrinkage: { radialPct: 5.5, tangentialPct: 11.9, volumetricPct: 17.2, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  paperBirch: {
    name: 'paper birch',
    botanical: 'Betula papyrifera',
    perPoint: { radial: 0.00219, tangential: 0.00304, ...coefficientTable },
    shrinkage: { radialPct: 6.3, tangentialPct: 8.6, volumetricPct: 16.2, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  yellowBirch: {
    name: 'yellow birch',
    botanical: 'Betula alleghaniensis',
    perPoint: { radial: 0.00256, tangential: 0.00338, ...coefficientTable },
    shrinkage: { radialPct: 7.3, tangentialPct: 9.5, volumetricPct: 16.8, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  blackCherry: {
    name: 'black cherry',
    botanical: 'Prunus serotina',
    perPoint: { radial: 0.00126, tangential: 0.00248, ...coefficientTable },
    shrinkage: { radialPct: 3.7, tangentialPct: 7.1, volumetricPct: 11.5, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  americanChestnut: {
    name: 'American chestnut',
    botanical: 'Castanea dentata',
    perPoint: { radial: 0.00116, tangential: 0.00234, ...coefficientTable },
    shrinkage: { radialPct: 3.4, tangentialPct: 6.7, volumetricPct: 11.6, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  easternCottonwood: {
    name: 'eastern cottonwood',
    botanical: 'Populus deltoides',
    perPoint: { radial: 0.00133, tangential: 0.00327, ...coefficientTable },
    shrinkage: { radialPct: 3.9, tangentialPct: 9.2, volumetricPct: 13.9, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
    note: 'A true poplar.',
  },
  americanElm: {
    name: 'American elm',
    botanical: 'Ulmus americana',
    perPoint: { radial: 0.00144, tangential: 0.00338, ...coefficientTable },
    shrinkage: { radialPct: 4.2, tangentialPct: 9.5, volumetricPct: 14.6, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  sugarMaple: {
    name: 'sugar maple',
    botanical: 'Acer saccharum',
    perPoint: { radial: 0.00165, tangential: 0.00353, ...coefficientTable },
    shrinkage: { radialPct: 4.8, tangentialPct: 9.9, volumetricPct: 14.7, ...shrinkageRemembered },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  redMaple: {
    name: 'red maple',
    botanical: 'Acer rubrum',
    perPoint: { radial: 0.00137, tangential: 0.00289, ...coefficientTable },
    shrinkage: null,
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  silverMaple: {
    name: 'silver maple',
    botanical: 'Acer saccharinum',
    perPoint: { radial: 0.00102, tangential: 0.00252, ...coefficientTable },
    shrinkage: null,
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  whiteOak: {
    name: 'white oak',
    botanical: 'Quercus alba',
    perPoint: { radial: 0.0018, tangential: 0.00365, ...coefficientTable },
    shrinkage: { radialPct: 5.6, tangentialPct: 10.5, volumetricPct: 16.3, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
    note: 'A trade group of several species in the coefficient table; the shrinkage is one of them.',
  },
  redOak: {
    name: 'red oak',
    botanical: 'Quercus rubra',
    perPoint: { radial: 0.00158, tangential: 0.00369, ...coefficientTable },
    shrinkage: null,
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  americanSycamore: {
    name: 'American sycamore',
    botanical: 'Platanus occidentalis',
    perPoint: { radial: 0.00172, tangential: 0.00296, ...coefficientTable },
    shrinkage: { radialPct: 5, tangentialPct: 8.4, volumetricPct: 14.1, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
    note: 'A plane, not the European sycamore, which is a maple.',
  },
  blackTupelo: {
    name: 'black tupelo',
    botanical: 'Nyssa sylvatica',
    perPoint: { radial: 0.00176, tangential: 0.00308, ...coefficientTable },
    shrinkage: { radialPct: 5.1, tangentialPct: 8.7, volumetricPct: 14.4, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  blackWalnut: {
    name: 'black walnut',
    botanical: 'Juglans nigra',
    perPoint: { radial: 0.0019, tangential: 0.00274, ...coefficientTable },
    shrinkage: { radialPct: 5.5, tangentialPct: 7.8, volumetricPct: 12.8, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  blackWillow: {
    name: 'black willow',
    botanical: 'Salix nigra',
    perPoint: { radial: 0.00112, tangential: 0.00308, ...coefficientTable },
    shrinkage: { radialPct: 3.3, tangentialPct: 8.7, volumetricPct: 13.9, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.measured,
  },
  yellowPoplar: {
    name: 'tulipwood, yellow poplar',
    botanical: 'Liriodendron tulipifera',
    perPoint: { radial: 0.00158, tangential: 0.00289, ...coefficientTableSecondHand },
    shrinkage: { radialPct: 4.6, tangentialPct: 8.2, volumetricPct: 12.7, ...shrinkageDomestic },
    uncertainty: MOVEMENT_SPREAD.secondHand,
    note: 'Not a poplar, though sold as one.',
  },
  easternWhitePine: {
    name: 'eastern white pine',
    botanical: 'Pinus strobus',
    perPoint: { radial: 0.00071, tangential: 0.00212, ...coefficientTableSecondHand },
    shrinkage: { radialPct: 2.1, tangentialPct: 6.1, volumetricPct: 8.2, ...shrinkageRemembered },
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
  ponderosaPine: {
    name: 'ponderosa pine',
    botanical: 'Pinus ponderosa',
    perPoint: { radial: 0.00133, tangential: 0.00216, ...coefficientTableSecondHand },
    shrinkage: null,
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
  sugarPine: {
    name: 'sugar pine',
    botanical: 'Pinus lambertiana',
    perPoint: { radial: 0.00099, tangential: 0.00194, ...coefficientTableSecondHand },
    shrinkage: null,
    uncertainty: MOVEMENT_SPREAD.secondHand,
  },
} as const satisfies Record<string, Wood>;
