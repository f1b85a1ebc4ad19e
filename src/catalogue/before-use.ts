import type { UseRule } from '../core/catalogue.ts';
import { woods } from './damage/common.ts';
import type { TreatmentId } from './ids.ts';
import { memory, practice, published } from './source.ts';
import { ifBlockedOn } from './treatments/common.ts';

const commonPractice = practice('As workshops do it.');
/** What neither water nor spirit may touch. */
const ifWashable = { not: { material: ['sparterie', 'papierMache', 'plaster'] } } as const;
const ifPinnedOrCorded = { group: ['crown', 'brim', 'full', 'puzzle', 'small'] } as const;
const notSupport = { not: { group: ['support'] } } as const;

/** What a restored block passes before it meets good felt. */
export const beforeFirstUse = {
  dry: {
    term: 'Dry right through',
    text: 'Moisture 8–12 %, weight constant: under 0.2 % a day.',
    when: { material: woods },
    cautions: [],
    source: memory('Moisture and weight from memory.'),
  },
  stocking: {
    term: 'Stocking test',
    text: 'A nylon stocking drawn over every working face: nothing snags.',
    when: notSupport,
    cautions: ['Draw it slowly: what snags a stocking also cuts a finger.'],
    source: commonPractice,
  },
  whiteCloth: {
    term: 'White-cloth test',
    text: 'Rub with a white cloth, wet, then with spirit: nothing comes off.',
    when: { all: [ifWashable, notSupport] },
    cautions: ['Spirit burns: no flame, no hot iron, good air. It takes shellac off: try a corner.'],
    source: commonPractice,
  },
  cord: {
    term: 'Cord test',
    text: 'A cord drawn tight round every groove stays in it all the way round.',
    when: ifPinnedOrCorded,
    cautions: [],
    source: commonPractice,
  },
  pins: {
    term: 'Pin test',
    text: 'Pins go in, hold and come out all along the pinning edge.',
    when: { all: [ifPinnedOrCorded, { not: { material: ['aluminium', 'iron', 'resin', 'plaster'] } }] },
    cautions: ['Thin pins only.'],
    source: published('S41 for thin pins; the test is common practice.'),
  },
  apart: {
    term: 'Assemble and strip it three times',
    text: 'Every part seats, and the key falls at a tap; again after the first steaming.',
    when: { parts: 'several' },
    cautions: [],
    source: commonPractice,
  },
  scrapHat: {
    term: 'First hat on scrap',
    text: 'White scrap felt over film, blocked and dried: no rust, dye, resin or ridge on it.',
    when: ifBlockedOn,
    treatment: 'testBlock',
    essential: true,
    cautions: ['Steam scalds. No steam while poison or lead paint is in question.'],
    source: commonPractice,
  },
  sizeOnBase: {
    term: 'Size on the base',
    text: 'The measured size written on the base with its date; the old stamp left.',
    treatment: 'remarkSize',
    cautions: [],
    source: commonPractice,
  },
  cover: {
    term: 'Film for the felt',
    text: 'Film or a bag lies with it: cover the block when blocking, take it off after, let the block dry in moving air; thin pins only.',
    when: ifBlockedOn,
    cautions: [],
    source: published('S41.'),
  },
} as const satisfies Readonly<Record<string, UseRule & { readonly treatment?: TreatmentId }>>;

/** So that it stays right. */
export const storing = {
  air: {
    term: 'Air and place',
    text: '45–60 % RH, 15–22 °C, off floor and outside walls, no radiator above; above about 75 % RH mould grows.',
    cautions: [],
    source: published('S25 for 75 %; the rest common practice.'),
  },
  flat: {
    term: 'Brims flat',
    text: 'Flat and supported, nothing on top.',
    when: { group: ['brim'] },
    cautions: [],
    source: commonPractice,
  },
  tied: {
    term: 'Parts tied',
    text: 'Puzzles tied with cotton tape, no rubber.',
    when: { parts: 'several' },
    cautions: [],
    source: commonPractice,
  },
  boxed: {
    term: 'Sparterie boxed',
    text: 'On tissue in a box.',
    when: { material: ['sparterie'] },
    cautions: [],
    source: commonPractice,
  },
  covered: {
    term: 'Cotton covers',
    text: 'Covered with cotton, no sealed plastic.',
    cautions: [],
    source: commonPractice,
  },
} as const satisfies Readonly<Record<string, UseRule>>;
