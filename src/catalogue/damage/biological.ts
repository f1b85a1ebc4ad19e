import { published } from '../source.ts';
import { activity, choice, cm2, count, dust, mm, pct, perDm2, yesNo } from './asks.ts';
import { chances, inFull, judged, type Kind, pasted, solidCrown, woods } from './common.ts';

const isActive = { ask: 'activity', is: 'active' } as const;
const isInactive = { ask: 'activity', is: 'inactive' } as const;
/** Worth more as a shape than as wood. */
const worthCopying = { shapeValue: ['uncommon', 'rare', 'unique'] } as const;
const holeAsks = { hole: 'diaMm', dust: 'dust', pinningLine: 'pinningLine', activity: 'activity' } as const;
/** One per cent of a crown's face is about 10 cm²: 200 × 164 × 130 mm has some 1000 cm². */
const CM2_PER_PCT = 10;

/** Living things, and what they ate. */
export const biological = {
  flightHoles: {
    term: 'Flight holes',
    aliases: ['woodworm', 'worm holes', 'beetle holes', 'exit holes'],
    definition: 'Round holes where wood-boring beetles have left the wood.',
    mechanism: 'biology',
    appliesTo: {
      materials: [...woods, 'papierMache', 'sparterie'],
      zoneClasses: ['work', 'line', 'base', 'joint', 'whole'],
    },
    stations: ['nose', 'heft', 'torch', 'under'],
    detect: {
      sight: 'Round clean holes; pale sharp rims are recent, dark dusty rims old.',
      touch: 'Tap over white paper: does pale gritty dust fall?',
      raking: 'Holes turn black.',
      smell: 'None by itself.',
      knock: 'Papery where galleries run.',
      uv: 'Fresh bored wood looks brighter than dirty old rims (from memory).',
      weight: 'Light for its size.',
    },
    asks: [
      choice(
        'pinningLine',
        'Do the holes follow the pinning line?',
        { yes: 'In a row along it', no: 'Scattered' },
        'Pins and tacks leave rows of holes as wide as a beetle’s.',
      ),
      activity,
      dust,
      perDm2('densityPerDm2', 'Holes on a palm’s area (10 × 10 cm)', {
        step: 1,
        max: 200,
        chips: [1, 2, 8, 25],
      }),
      mm('probeDepthMm', 'How deep a needle sinks', {
        step: 0.5,
        max: 60,
        chips: [0.5, 2, 6, 15],
        hint: 'Ask first; push gently beside a hole.',
      }),
      count('count', 'Holes counted', { step: 1, max: 2000, chips: [3, 10, 30, 100] }),
      mm('diaMm', 'Hole across', { step: 0.1, max: 12, chips: [1, 1.5, 2, 3], hint: 'Furniture beetle 1–2 mm.' }),
    ],
    grading: {
      by: [
        { ask: 'densityPerDm2', from: [0.2, 2, 8, 25] },
        { ask: 'probeDepthMm', from: [0.5, 2, 6, 15] },
      ],
      combine: 'max',
      raises: [{ when: isActive, effect: { atLeast: 3 }, why: 'Alive: it would get worse and spread.' }],
      words: [
        'A few old holes',
        '2–8 per dm²',
        '8–25 per dm² or needle sinks 6 mm',
        'Over 25 per dm² or needle sinks 15 mm',
      ],
    },
    treatability: 0.75,
    baseSuccess: 0.9,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      {
        treatment: 'quarantine',
        fromGrade: 1,
        why: 'No hole is dead until it has been watched.',
        essential: false,
      },
      {
        treatment: 'freeze',
        fromGrade: 1,
        when: {
          all: [{ any: [{ grade: { from: 2 } }, { not: isInactive }] }, { not: { material: ['papierMache'] } }],
        },
        why: 'Cold kills larvae that no eye sees.',
        essential: true,
      },
      {
        treatment: 'consolidate',
        fromGrade: 2,
        when: { all: [{ not: { ask: 'probeDepthMm', below: 3 } }, { material: woods }] },
        // The soft place round a cluster of holes, about a hand wide; tunnelled wood found elsewhere adds its own.
        amount: { fixed: 80 },
        why: 'Wood between galleries crushes under a cord.',
        essential: true,
      },
      {
        treatment: 'fillLoss',
        fromGrade: 2,
        when: { all: [{ zoneClass: ['work', 'line'] }, { material: woods }] },
        // About three flight holes to a square centimetre of filling.
        amount: { from: 'count', times: 0.35, else: 8 },
        why: 'Open holes print, and hide new ones.',
        essential: false,
      },
    ],
    gates: [
      {
        when: isActive,
        effects: ['quarantine', 'live'],
        watch: 'alive',
        advice:
          'Bag it where it stands, before it enters car or workshop. Freeze, then watch for new dust; warn the seller: its neighbours stood on the same shelf.',
      },
      {
        when: { not: isActive },
        effects: ['quarantine'],
        watch: 'holes',
        advice: 'Keep it bagged and apart until it has been watched: old-looking holes are not proof.',
      },
    ],
    physics: [
      { does: 'rankBorers', from: holeAsks },
      { does: 'quarantine', from: holeAsks },
      { does: 'weigh', from: {}, when: solidCrown },
    ],
    blocksCopying: false,
    prior: {
      present: chances(0.1, 0.15, 0.24, 0.15),
      presentIn: { sparterie: chances(0.02, 0.03, 0.06, 0.03), shell: chances(0.03, 0.04, 0.07, 0.04) },
      grades: [0.45, 0.28, 0.2, 0.07],
    },
    phrase: 'Flight holes at the {where}, {measures}.',
    notes:
      'Common furniture beetle holes about 1–2 mm, death-watch 2–3 mm, adults out roughly April/May to September. Dust alone proves nothing: it can sit for decades and fall at a knock.',
    source: published('S22 for hole sizes, season and dust; wording and bounds our own.'),
  },
  tunnelled: {
    term: 'Tunnelled wood',
    aliases: ['spongy wood', 'eaten wood', 'galleries'],
    definition: 'Wood under a thin skin is eaten into galleries and gives to the thumb.',
    mechanism: 'biology',
    appliesTo: { materials: woods, zoneClasses: ['work', 'line', 'base', 'joint', 'whole'] },
    stations: ['heft', 'knock', 'pin'],
    detect: {
      touch: 'Thumb pressure gives; needle sinks.',
      knock: 'Dead, papery.',
      weight: 'Clearly light: compare with the expected weight.',
      sight: 'Galleries in chips and breaks.',
    },
    asks: [
      pct('softAreaPct', 'Share of the block that is soft', { step: 5, max: 100, chips: [1, 5, 15, 35] }),
      mm('probeDepthMm', 'How deep a needle sinks', {
        step: 1,
        max: 80,
        chips: [1, 3, 8, 20],
        hint: 'Ask first; push gently.',
      }),
    ],
    grading: {
      by: [
        { ask: 'softAreaPct', from: [1, 5, 15, 35] },
        { ask: 'probeDepthMm', from: [1, 3, 8, 20] },
      ],
      combine: 'max',
      raises: [],
      words: ['Skin only', '5–15 % soft', '15–35 % soft or 8 mm', 'Over 35 % or 20 mm: shell around dust'],
    },
    treatability: 0.6,
    baseSuccess: 0.85,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      {
        treatment: 'consolidate',
        fromGrade: 2,
        when: { not: { ask: 'probeDepthMm', below: 3 } },
        amount: { from: 'softAreaPct', times: CM2_PER_PCT, else: 100 },
        why: 'Soft wood collapses under a cord or a thumb.',
        essential: true,
      },
      {
        treatment: 'letInPatch',
        fromGrade: 3,
        when: { all: [{ zoneClass: ['work', 'line'] }, { not: worthCopying }] },
        // The worst place only, a matchbox in size. Carving worth copying is not cut into: it is held and copied.
        amount: { fixed: 10 },
        why: 'Where nothing is left to consolidate, new wood goes in.',
        essential: true,
      },
      {
        treatment: 'takeCopy',
        fromGrade: 4,
        when: worthCopying,
        why: 'The wood is nearly gone: secure the shape before anything else is tried.',
        essential: false,
      },
    ],
    gates: [],
    physics: [{ does: 'weigh', from: {}, when: solidCrown }],
    blocksCopying: false,
    prior: { present: chances(0.02, 0.05, 0.1, 0.05), grades: [0.42, 0.32, 0.18, 0.08] },
    phrase: 'Tunnelled, spongy wood at the {where}, {measures}.',
    notes:
      'A consolidated block blocks steam and bends pins: use value drops even when the shape is saved. Handle as a shell; carry from below.',
    source: judged,
  },
  decay: {
    term: 'Decay',
    aliases: ['rot', 'wet rot', 'dry rot'],
    definition: 'Fungus has broken the wood down into cubes or strings.',
    mechanism: 'biology',
    appliesTo: { materials: woods, zoneClasses: ['work', 'line', 'base', 'whole'] },
    stations: ['under', 'nose', 'knock'],
    detect: {
      sight: 'Dark cubes or pale strings.',
      smell: 'Mushroom.',
      touch: 'Crumbles or stringy; damp-cool.',
      knock: 'Dead.',
      weight: 'Light when dry, heavy when wet.',
    },
    asks: [
      mm('probeDepthMm', 'How deep a needle sinks', {
        step: 1,
        max: 80,
        chips: [1, 3, 8, 20],
        hint: 'Ask first; push gently.',
      }),
      cm2('areaCm2', 'Size', { step: 1, max: 1000, chips: [1, 4, 20, 60] }),
      pct('moisturePct', 'Moisture, if you have a meter', { step: 1, max: 60, chips: [10, 15, 20, 25] }),
    ],
    grading: {
      by: [
        { ask: 'probeDepthMm', from: [1, 3, 8, 20] },
        { ask: 'areaCm2', from: [0.5, 4, 20, 60] },
      ],
      combine: 'max',
      raises: [],
      words: ['Discoloured skin', 'To 8 mm', 'To 20 mm', 'Over 20 mm or over 60 cm²'],
    },
    treatability: 0.7,
    baseSuccess: 0.85,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      {
        treatment: 'dryOutMould',
        fromGrade: 1,
        when: { ask: 'moisturePct', atLeast: 18 },
        why: 'Rot lives as long as the wood is wet.',
        essential: true,
      },
      {
        treatment: 'dryToConstantWeight',
        fromGrade: 1,
        when: { not: { ask: 'moisturePct', below: 13 } },
        why: 'Nothing is glued or consolidated in damp wood.',
        essential: false,
      },
      {
        treatment: 'consolidate',
        fromGrade: 2,
        when: { not: { ask: 'probeDepthMm', below: 3 } },
        amount: { from: 'areaCm2', else: 20 },
        why: 'Crumbling wood holds no glue.',
        essential: true,
      },
      {
        treatment: 'letInPatch',
        fromGrade: 3,
        when: { all: [{ zoneClass: ['work', 'line'] }, { not: worthCopying }] },
        amount: { fixed: 20 },
        why: 'Rotten wood is cut back to sound wood.',
        essential: true,
      },
      {
        treatment: 'takeCopy',
        fromGrade: 4,
        when: worthCopying,
        why: 'The wood is nearly gone: secure the shape before anything else is tried.',
        essential: false,
      },
    ],
    gates: [
      {
        when: { ask: 'moisturePct', atLeast: 20 },
        effects: ['dry'],
        advice: 'Dry it slowly before anything else: in moving air, no heater, no sun.',
      },
    ],
    physics: [{ does: 'weigh', from: {}, when: solidCrown }],
    blocksCopying: false,
    prior: { present: chances(0.01, 0.02, 0.07, 0.02), grades: [0.45, 0.3, 0.18, 0.07] },
    phrase: 'Decay at the {where}, {measures}.',
    notes: 'A needle that sinks over 3 mm into soft damp wood is rot, not mould.',
    source: judged,
  },
  mould: {
    term: 'Mould',
    aliases: ['mildew'],
    definition: 'Mould or mildew grows, or has grown, on the surface.',
    mechanism: 'biology',
    appliesTo: { materials: 'all', zoneClasses: ['work', 'base', 'whole'] },
    stations: ['nose', 'under'],
    detect: {
      sight: 'Fluffy or powdery spots, often in dust or grease.',
      smell: 'Cellar.',
      touch: 'Smears when active, powders when dormant (gloves).',
      uv: 'Some growth glows greenish (from memory); use only as a hint.',
    },
    asks: [
      activity,
      pct('areaPct', 'Share of the surface', { step: 1, max: 100, chips: [1, 5, 20, 50] }),
      yesNo('smears', 'Smears under a gloved finger?'),
      pct('moisturePct', 'Moisture, if you have a meter', { step: 1, max: 60, chips: [10, 15, 20, 25] }),
    ],
    grading: {
      by: [{ ask: 'areaPct', from: [0.5, 5, 20, 50] }],
      combine: 'max',
      raises: [{ when: isActive, effect: { atLeast: 2 }, why: 'Growing: it will spread in damp air.' }],
      words: ['Specks', '5–20 %', '20–50 %', 'Over half'],
    },
    treatability: 0.9,
    baseSuccess: 0.93,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      {
        treatment: 'quarantine',
        fromGrade: 1,
        why: 'Spores stay in the bag until the block is dry and clean.',
        essential: false,
      },
      {
        treatment: 'dryOutMould',
        fromGrade: 2,
        why: 'Dry first, then take the growth off.',
        essential: true,
      },
      { treatment: 'airOut', fromGrade: 2, why: 'The cellar smell goes last.', essential: false },
    ],
    gates: [
      {
        when: isActive,
        effects: ['quarantine'],
        watch: 'mould',
        advice:
          'Mask, gloves, bag it closed, keep it from felt and straw. Not for anybody with asthma or a weak immune system.',
      },
    ],
    physics: [{ does: 'mouldRisk', from: { area: 'areaPct', moisture: 'moisturePct' } }],
    blocksCopying: false,
    prior: {
      present: chances(0.04, 0.06, 0.3, 0.09),
      presentIn: {
        metal: chances(0.01, 0.01, 0.03, 0.01),
        plastic: chances(0.01, 0.01, 0.08, 0.02),
        sparterie: chances(0.09, 0.11, 0.41, 0.17),
        shell: chances(0.06, 0.08, 0.34, 0.11),
        covering: chances(0.08, 0.11, 0.41, 0.15),
      },
      grades: [0.56, 0.3, 0.11, 0.03],
    },
    phrase: 'Mould at the {where}, {measures}.',
    notes: 'Damp air above about 75 % RH is the driver; some dry-loving moulds manage at about 60 %.',
    source: published('S25 for 75 %; dry-loving moulds: reports from museum stores; bounds our own.'),
  },
  grazed: {
    term: 'Grazed by pests',
    aliases: ['silverfish', 'moth', 'mice', 'gnawed'],
    definition: 'Silverfish, moth or mice have scraped or gnawed the surface.',
    mechanism: 'biology',
    appliesTo: { materials: [...pasted, 'feltLeather', 'plywood'], zoneClasses: ['work', 'whole'] },
    stations: ['nose', 'torch'],
    detect: { sight: 'Scraped patches, droppings, webbing.', smell: 'Mouse.' },
    asks: [
      activity,
      pct('areaPct', 'Share of the surface', { step: 1, max: 100, chips: [1, 5, 20, 45] }),
      choice('culprit', 'Who?', { silverfish: 'Silverfish', moth: 'Moth', mice: 'Mice', unknown: 'Cannot tell' }),
    ],
    grading: {
      by: [{ ask: 'areaPct', from: [1, 5, 20, 45] }],
      combine: 'max',
      raises: [{ when: isActive, effect: { atLeast: 2 }, why: 'Live insects or fresh droppings.' }],
      words: ['Edge', '5–20 %', '20–45 %', 'Over 45 %'],
    },
    treatability: 0.85,
    baseSuccess: 0.9,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      { treatment: 'quarantine', fromGrade: 1, why: 'Eggs are not seen; bag and watch.', essential: false },
      {
        treatment: 'freeze',
        fromGrade: 1,
        when: { all: [{ not: isInactive }, { not: { material: ['papierMache'] } }] },
        why: 'Cold kills eggs and larvae.',
        essential: true,
      },
      {
        treatment: 'patchSparterie',
        fromGrade: 2,
        when: { material: pasted },
        amount: { from: 'areaPct', else: 10 },
        why: 'Grazed places are thin and tear next.',
        essential: false,
      },
    ],
    gates: [
      {
        when: isActive,
        effects: ['quarantine', 'live'],
        watch: 'pests',
        advice:
          'Bag it where it stands; keep it from felt, straw and wool. Droppings: gloves and mask, damp wiping, no dry brushing.',
      },
    ],
    blocksCopying: false,
    prior: {
      present: chances(0.05, 0.08, 0.15, 0.1),
      presentIn: {
        sparterie: chances(0.12, 0.18, 0.3, 0.2),
        covering: chances(0.12, 0.2, 0.3, 0.2),
        shell: chances(0.08, 0.12, 0.2, 0.14),
        wood: chances(0.02, 0.03, 0.05, 0.03),
      },
      grades: [0.55, 0.3, 0.12, 0.03],
    },
    phrase: 'Grazed at the {where}, {measures}.',
    notes: 'Starch paste feeds them.',
    source: judged,
  },
} as const satisfies Record<string, Kind>;
