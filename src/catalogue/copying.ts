import type { CopyWay } from '../core/catalogue.ts';
import { pasted } from './damage/common.ts';
import { memory } from './source.ts';

const judged = memory('Trade knowledge, from memory; hours are those of the step “Take a copy of the shape”.');

/** Ways to take a shape off a block that is not worth saving as a tool, the gentlest for the eye first. */
export const copyWays = {
  scan: {
    term: 'Scan it',
    text: 'Some eighty photographs all round in even light with a scale beside it, or a laser scan; a new block is carved from that.',
    wants: ['phone', 'turntable', 'scale or coin', 'even light'],
    cautions: ['Nothing touches it but hands: carry a riddled block from below.'],
    source: judged,
  },
  forming: {
    term: 'One careful forming',
    text: 'A skin of buckram or damp sparterie blocked over foil and film, left on until it is dry right through, lifted off and stiffened: the pattern for a new block.',
    wants: ['buckram or sparterie', 'foil and film', 'cord', 'stiffener'],
    when: { not: { material: [...pasted, 'plaster', 'foam'] } },
    cautions: [
      'Once only: what is weak crushes under a second cord. Draw it by hand, no steam on eaten wood.',
      'Stiffener and its fumes: good air, no flame; the label decides.',
    ],
    source: judged,
  },
  cast: {
    term: 'A cast',
    text: 'Plaster bandage or silicone over foil and film, in sections where the shape is undercut; keyed together, and a copy poured or laid up in it.',
    wants: ['plaster bandage or silicone', 'foil and film', 'brush', 'scissors'],
    cautions: [
      'Plaster sets hot: thin layers, never round a hand; no dust from sanding it without a mask.',
      'No silicone oil on the original: felt takes it up for ever. Try a corner: foam, old paint and eaten wood tear.',
      'Undercuts hold a rigid cast fast: cut the sections before it sets.',
    ],
    source: judged,
  },
} as const satisfies Readonly<Record<string, CopyWay>>;
