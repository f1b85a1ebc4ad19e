import { mm, pct } from './asks.ts';
import { chances, inFull, judged, type Kind, woods } from './common.ts';

/** Shape and size that have moved. */
export const geometry = {
  warp: {
    term: 'Warp',
    aliases: ['twist', 'cup', 'bow', 'rocks'],
    definition: 'A face that should be flat or true is twisted, cupped or bowed.',
    mechanism: 'geometry',
    appliesTo: { materials: [...woods, 'resin'], zoneClasses: ['whole', 'base'] },
    stations: ['plate', 'torch'],
    detect: {
      sight: 'Sight along it like a plank.',
      touch: 'Rocks on a flat plate.',
      other: 'Feeler gauge or coins under the gap.',
    },
    asks: [
      mm('devMm', 'Largest gap on a flat plate', {
        step: 0.5,
        max: 60,
        chips: [0.5, 1.5, 4, 8],
        hint: 'For each 300 mm of span.',
      }),
      mm('spanMm', 'Measured over', { step: 10, max: 1000, chips: [200, 300, 400, 450] }),
    ],
    grading: {
      by: [{ ask: 'devMm', from: [0.5, 1.5, 4, 8] }],
      combine: 'max',
      raises: [],
      words: ['Under 1.5 mm', '1.5–4 mm', '4–8 mm', 'Over 8 mm'],
    },
    treatability: 0.6,
    baseSuccess: 0.7,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      {
        treatment: 'flattenBoard',
        fromGrade: 2,
        when: { group: ['brim'] },
        why: 'A brim board that rocks gives a brim that waves.',
        essential: true,
      },
      {
        treatment: 'scrapeAndTrue',
        fromGrade: 2,
        when: { not: { group: ['brim'] } },
        amount: { fixed: 15 },
        why: 'The base is planed to sit flat.',
        essential: false,
      },
      {
        treatment: 'flattenBoard',
        fromGrade: 3,
        when: { all: [{ not: { group: ['brim'] } }, { not: { material: ['resin'] } }] },
        why: 'Too far out to plane away.',
        essential: true,
      },
    ],
    gates: [],
    blocksCopying: false,
    prior: {
      present: chances(0.1, 0.14, 0.24, 0.15),
      presentIn: { plastic: chances(0.06, 0.07, 0.06, 0.07) },
      grades: [0.6, 0.26, 0.1, 0.04],
    },
    phrase: 'Warped at the {where}, {measures}.',
    notes: 'Per 300 mm of span. Old brim boards spring back; count on half of the correction at most.',
    source: judged,
  },
  sizeDrift: {
    term: 'Size or oval drift',
    aliases: ['shrunk', 'size does not match', 'oval out of true'],
    definition: 'Tape or callipers no longer agree with the size or oval number on the block.',
    mechanism: 'geometry',
    appliesTo: {
      materials: [...woods, 'sparterie', 'papierMache', 'feltLeather'],
      zoneClasses: ['whole', 'opening'],
      groups: ['crown', 'brim', 'full', 'puzzle', 'support', 'last', 'head'],
    },
    stations: ['tape'],
    detect: { other: 'Tape against the stamp; callipers against the oval number.' },
    asks: [
      pct('deviationPct', 'Difference between stamp and tape', {
        step: 0.1,
        max: 20,
        chips: [0.3, 0.9, 1.7, 3.5],
        hint: '1 % is 5–6 mm on a head size.',
      }),
      mm('markedMm', 'What the stamp says', { step: 1, max: 900, chips: [550, 560, 570, 580] }),
      mm('tapedMm', 'What the tape says', { step: 1, max: 900, chips: [550, 560, 570, 580] }),
    ],
    grading: {
      by: [{ ask: 'deviationPct', from: [0.3, 0.9, 1.7, 3.5] }],
      combine: 'max',
      raises: [],
      words: ['Under half a size', 'About half a size', 'A full size', 'Two sizes or more'],
    },
    treatability: 0.5,
    baseSuccess: 0.95,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      {
        treatment: 'remarkSize',
        fromGrade: 2,
        why: 'A wrong size on the base spoils the next hat.',
        essential: false,
      },
    ],
    gates: [],
    blocksCopying: false,
    prior: { present: chances(0.13, 0.14, 0.2, 0.16), grades: [0.66, 0.22, 0.09, 0.03] },
    phrase: 'Size or oval has drifted at the {where}, {measures}.',
    notes:
      'Wood shrinks across the grain, hardly along: width falls, length stays, oval number grows. Not a defect if the new size suits you: re-mark it. A difference of 2 % is more likely a cut-down, a build-up or a wrong reading than shrinkage.',
    source: judged,
  },
} as const satisfies Record<string, Kind>;
