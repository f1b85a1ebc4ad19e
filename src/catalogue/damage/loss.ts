import { cm2, mm, pct, yesNo } from './asks.ts';
import { chances, inFull, judged, type Kind, takesFiller, woods } from './common.ts';

/** Substance that is gone. */
export const loss = {
  loss: {
    term: 'Loss',
    aliases: ['chip', 'bite', 'missing edge'],
    definition: 'Wood or other substance is gone, and no piece is there to put back.',
    mechanism: 'loss',
    appliesTo: {
      materials: [...woods, 'cork', 'plaster', 'papierMache'],
      zoneClasses: ['work', 'line', 'opening', 'joint', 'base'],
    },
    stations: ['torch', 'cord'],
    detect: {
      sight: 'Missing outline, often at ridges and rope line front and back.',
      raking: 'Bowl-shaped shadow.',
      touch: 'Hollow under the finger.',
    },
    asks: [
      mm('depthMm', 'Depth', { step: 0.5, max: 60, chips: [0.5, 1.5, 4, 10] }),
      cm2('areaCm2', 'Size', { step: 0.5, max: 400, chips: [0.5, 1, 6, 25] }),
    ],
    grading: {
      by: [
        { ask: 'depthMm', from: [0.5, 1.5, 4, 10] },
        { ask: 'areaCm2', from: [0.2, 1, 6, 25] },
      ],
      combine: 'max',
      raises: [],
      words: ['Pin-head', '1.5–4 mm deep or 1–6 cm²', '4–10 mm or 6–25 cm²', 'Over 10 mm or over 25 cm²'],
    },
    treatability: 0.93,
    baseSuccess: 0.93,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      {
        treatment: 'fillLoss',
        fromGrade: 2,
        when: {
          all: [
            { any: [{ grade: { to: 3 } }, { material: ['plaster'] }] },
            { not: { all: [{ zoneClass: ['line'] }, { material: woods }] } },
            { not: { material: ['papierMache'] } },
          ],
        },
        amount: { from: 'areaCm2', else: 4 },
        why: 'A hollow prints through felt.',
        essential: false,
      },
      {
        treatment: 'letInPatch',
        fromGrade: 2,
        when: { all: [{ zoneClass: ['line'] }, { grade: { to: 3 } }, { material: woods }] },
        amount: { from: 'areaCm2', else: 4 },
        why: 'Pins and cord need wood here: putty takes neither.',
        essential: true,
      },
      {
        treatment: 'letInPatch',
        fromGrade: 4,
        // At the line also where wood and shell meet: a patch planned at grade 3 is not left out at grade 4.
        when: {
          any: [
            { not: { material: ['papierMache', 'plaster'] } },
            { all: [{ zoneClass: ['line'] }, { material: woods }] },
          ],
        },
        amount: { from: 'areaCm2', else: 25 },
        why: 'Too much for filler.',
        essential: true,
      },
      {
        treatment: 'fillLoss',
        fromGrade: 4,
        when: { not: { material: ['papierMache', 'plaster'] } },
        amount: { fixed: 5 },
        why: 'What the patch leaves open round its edge.',
        essential: false,
      },
      {
        treatment: 'patchSparterie',
        fromGrade: 2,
        when: { material: ['papierMache'] },
        amount: { from: 'areaCm2', times: 2, else: 8 },
        why: 'A hole in a shell is bridged with paper.',
        essential: true,
      },
    ],
    gates: [],
    physics: [{ does: 'fill', hollow: 'bowl', from: { area: 'areaCm2', depth: 'depthMm' }, when: takesFiller }],
    blocksCopying: false,
    prior: {
      present: chances(0.1, 0.15, 0.17, 0.15),
      presentIn: { shell: chances(0.17, 0.24, 0.28, 0.24) },
      grades: [0.58, 0.29, 0.1, 0.03],
    },
    phrase: 'A loss at the {where}, {measures}.',
    notes: '',
    source: judged,
  },
  wornGroove: {
    term: 'Worn rope line or edge groove',
    aliases: ['worn string groove', 'broken edge groove', 'cord hops off'],
    definition: 'The groove that holds the cord has lost its lip or depth, so the cord jumps out.',
    mechanism: 'loss',
    appliesTo: {
      materials: woods,
      zoneClasses: ['line'],
      groups: ['crown', 'brim', 'full', 'puzzle', 'small'],
    },
    stations: ['cord', 'torch'],
    detect: {
      touch: 'Run a cord round it under tension: it hops off at the bad places.',
      sight: 'Rounded lip, torn grain.',
      raking: 'Groove shadow fades.',
    },
    asks: [
      pct('pctCirc', 'Share of the way round that is bad', { step: 5, max: 100, chips: [5, 10, 30, 60] }),
      mm('depthLostMm', 'Depth lost', { step: 0.1, max: 10, chips: [0.3, 0.8, 1.6, 3] }),
      yesNo('notMade', 'Never had a groove?', 'Pin-only blocks are made without one: then it is no damage.'),
    ],
    grading: {
      by: [
        { ask: 'pctCirc', from: [2, 10, 30, 60] },
        { ask: 'depthLostMm', from: [0.3, 0.8, 1.6, 3] },
      ],
      combine: 'max',
      raises: [
        {
          when: { ask: 'notMade', is: true },
          effect: { set: 0 },
          why: 'The block was made without a groove, for pins: recorded, not counted.',
        },
      ],
      words: ['A nick or two', 'A tenth to a third of the run', '30–60 %', 'Cord will not stay'],
    },
    treatability: 0.95,
    baseSuccess: 0.93,
    scoreFactor: 1,
    counts: inFull,
    treatments: [
      {
        treatment: 'recutGroove',
        fromGrade: 2,
        when: { group: ['brim'] },
        // A brim edge is 1.2–1.4 m round (420 × 380 mm: 1257 mm), so one per cent is about 13 mm.
        amount: { from: 'pctCirc', times: 13, else: 300 },
        why: 'Without its groove a brim cannot hold the material under tension.',
        essential: true,
      },
      {
        treatment: 'recutGroove',
        fromGrade: 2,
        when: { not: { group: ['brim'] } },
        // A head line is about 570 mm round.
        amount: { from: 'pctCirc', times: 5.7, else: 150 },
        why: 'The cord must stay in its line.',
        essential: true,
      },
      {
        treatment: 'letInPatch',
        fromGrade: 4,
        // New wood about 10 mm wide for a tenth to all of the line.
        amount: { from: 'pctCirc', times: 0.5, else: 30 },
        why: 'Nothing is left to cut a groove in: new wood first.',
        essential: true,
      },
    ],
    gates: [],
    blocksCopying: false,
    prior: { present: chances(0.22, 0.18, 0.22, 0.2), grades: [0.62, 0.26, 0.09, 0.03] },
    phrase: 'The groove at the {where} is worn, {measures}.',
    notes: 'On pin-only European-style blocks there may never have been a groove: record as “not made”, not as damage.',
    source: judged,
  },
} as const satisfies Record<string, Kind>;
