import { published } from '../source.ts';
import { choice, level, yesNo } from './asks.ts';
import { chances, inFull, judged, type Kind } from './common.ts';

const notTested = { not: { ask: 'tested', is: true } } as const;

/** Smell and poison, and the evidence that cleaning would destroy. */
export const contamination = {
  smell: {
    term: 'Smell',
    aliases: ['odour', 'smoke', 'mothball', 'damp smell'],
    definition: 'It smells of smoke, damp, mothballs, solvent or oil.',
    mechanism: 'contamination',
    appliesTo: { materials: 'all', zoneClasses: ['whole'] },
    stations: ['nose'],
    detect: { smell: 'Smoke, damp, mothball, solvent, oil.' },
    asks: [
      level('strength', 'How strong', [
        'Faint, nose on it',
        'Plain at arm’s length',
        'Fills a car',
        'Hurts or headaches',
      ]),
      choice('smellsOf', 'Of what?', {
        smoke: 'Smoke',
        damp: 'Damp',
        mothball: 'Mothballs',
        solvent: 'Solvent',
        oil: 'Oil',
        other: 'Something else',
      }),
    ],
    grading: {
      by: [{ ask: 'strength', from: [1, 2, 3, 4] }],
      combine: 'max',
      raises: [],
      words: ['Faint, nose on it', 'Plain at arm’s length', 'Fills a car', 'Hurts or headaches'],
    },
    treatability: 0.8,
    baseSuccess: 0.85,
    scoreFactor: 0.3,
    counts: { critical: true, repair: false },
    treatments: [
      { treatment: 'airOut', fromGrade: 1, why: 'Smell goes into felt and stays there.', essential: false },
      {
        treatment: 'dryOutMould',
        fromGrade: 2,
        when: { ask: 'smellsOf', is: 'damp' },
        why: 'A damp smell means damp, or mould not yet seen.',
        essential: false,
      },
    ],
    gates: [
      {
        when: { ask: 'smellsOf', is: 'mothball' },
        effects: ['quarantine'],
        advice:
          'Mothball smell can mean naphthalene or dichlorobenzene: air it outdoors, not in the workshop or a bedroom.',
      },
    ],
    blocksCopying: false,
    prior: {
      present: chances(0.15, 0.22, 0.49, 0.26),
      presentIn: { metal: chances(0.06, 0.08, 0.11, 0.08) },
      grades: [0.62, 0.29, 0.08, 0.01],
    },
    phrase: 'It smells, {measures}.',
    notes: 'Mothball smell can mean naphthalene or dichlorobenzene: air outdoors, not in the workshop.',
    source: judged,
  },
  poison: {
    term: 'Possible poison',
    aliases: ['mercury', 'lead', 'arsenic', 'pesticide', 'lagging dust', 'hazard'],
    definition: 'It may carry mercury, lead, arsenic, an old pesticide or lagging dust.',
    mechanism: 'contamination',
    appliesTo: { materials: 'all', zoneClasses: ['whole', 'work', 'base'] },
    stations: ['nose', 'under', 'talk'],
    detect: {
      sight: 'Grey-silver dust, white crystals, old paint, felt-factory stamp before about 1945.',
      smell: 'Bitter, chemical.',
      other: 'Swab kit for lead; XRF or laboratory for mercury and arsenic.',
    },
    asks: [
      level('suspicion', 'How much speaks for it', [
        'Period and trade only',
        'Coating or dust of the right age',
        'Visible residue',
        'Positive test',
      ]),
      yesNo('tested', 'Tested and clear?', 'A lead swab says nothing about mercury or arsenic.'),
    ],
    grading: {
      by: [{ ask: 'suspicion', from: [1, 2, 3, 4] }],
      combine: 'max',
      raises: [],
      words: ['Period and trade only', 'Coating or dust of the right age', 'Visible residue', 'Positive test'],
    },
    treatability: 0.6,
    baseSuccess: 0.8,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      {
        treatment: 'hazardTest',
        fromGrade: 2,
        when: notTested,
        why: 'Nothing that makes dust or heat before it is known.',
        essential: true,
      },
    ],
    gates: [
      {
        when: { all: [{ grade: { from: 2 } }, notTested] },
        effects: ['test'],
        advice: 'Have it tested before you clean, sand, scrape or heat it. Gloves; wash hands; no food near.',
      },
      {
        when: { grade: { from: 3, to: 3 } },
        effects: ['noSanding', 'quarantine'],
        advice:
          'No dry sanding, no scraping, no heat. Gloves, sealed bag, damp wiping only, away from children and pets.',
      },
      {
        when: { grade: { from: 4 } },
        effects: ['refuse', 'noSanding', 'quarantine'],
        advice:
          'Leave it, unless a specialist will treat it. Local rules decide how it may be kept, moved or thrown away.',
      },
    ],
    blocksCopying: false,
    prior: { present: chances(0.1, 0.1, 0.12, 0.1), grades: [0.8, 0.16, 0.03, 0.01] },
    phrase: 'Possible poison at the {where}, {measures}.',
    notes:
      'Felt makers used mercury salts from the 17th century into the 1940s and old felt hats still test positive; that blocks from felt works may carry residue is inference, not a measured fact.',
    source: published('S24 for the mercury period and positive hats; transfer to blocks is our own inference.'),
  },
  markAtRisk: {
    term: 'Label or mark at risk',
    aliases: ['lifting label', 'fading ink', 'worn stamp'],
    definition: 'A label, stamp or pencil note is about to be lost.',
    mechanism: 'provenance',
    appliesTo: { materials: 'all', zoneClasses: ['base', 'work'] },
    stations: ['under', 'uv'],
    detect: { sight: 'Lifting corner, fading ink.', uv: 'Faded iron ink and pencil can read better.' },
    asks: [level('risk', 'How far gone', ['Worn, legible', 'Lifting', 'Partly lost', 'Illegible or about to be lost'])],
    grading: {
      by: [{ ask: 'risk', from: [1, 2, 3, 4] }],
      combine: 'max',
      raises: [],
      words: ['Worn, legible', 'Lifting', 'Partly lost', 'Illegible or about to be lost'],
    },
    treatability: 0.7,
    baseSuccess: 0.9,
    scoreFactor: 0,
    counts: { critical: false, repair: false },
    treatments: [
      {
        treatment: 'recordAsFound',
        fromGrade: 1,
        why: 'Photographed and copied before anything touches it.',
        essential: false,
      },
    ],
    gates: [],
    blocksCopying: false,
    prior: { present: chances(0.25, 0.2, 0.35, 0.24), grades: [0.5, 0.3, 0.14, 0.06] },
    phrase: 'A label or mark at risk at the {where}, {measures}.',
    notes: 'No effect on function; always copied by photograph before cleaning.',
    source: judged,
  },
} as const satisfies Record<string, Kind>;
