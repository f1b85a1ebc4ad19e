import type { Caution } from './caution.ts';

/** What a material must not meet. */
export const WOOD_AND_SHAPE = {
  looseWhileDamp: {
    hazard: 'damp wood in tight clamps',
    when: 'closing a crack with humidity',
    line: 'Never damp a block inside tight clamps: what cannot swell is crushed, and the crack comes back wider. Damp it loose, then close it.',
    deferTo: 'conservator',
    source: 'compression shrinkage, The Structural Conservation of Panel Paintings (Getty 1998)',
    confidence: 'looked-up',
  },
  dampSlowly: {
    hazard: 'damping too fast or too far',
    when: 'raising the humidity round a block',
    line: 'At most 5 points of humidity a week, stop at 65 %, hygrometer in the box, air it weekly: above that mould begins.',
    deferTo: 'conservator',
    source: 'common practice',
    confidence: 'practice',
  },
  doNotForce: {
    hazard: 'a crack forced shut dry',
    when: 'strain above 0.4 %, or more than 65 % humidity needed',
    line: 'Do not force it. The joint would start life already loaded, and every dry winter adds more.',
    deferTo: 'conservator',
    source: 'own rule from published strain limits',
    confidence: 'own',
  },
  sparterieNoWater: {
    hazard: 'water and steam on sparterie',
    when: 'any treatment of sparterie or willow',
    line: 'Starch holds it together. Keep its coat unbroken: film between, little steam, short times.',
    deferTo: 'conservator',
    source: 'costume-shop notes on esparterie, 2010; the conclusion is ours',
    confidence: 'looked-up',
  },
  papierMacheDry: {
    hazard: 'water, steam or frost on papier-mâché',
    when: 'papier-mâché over wood',
    line: 'Glue holds it: no water, no steam, no freezing.',
    deferTo: 'conservator',
    source: 'common practice',
    confidence: 'practice',
  },
  plasterDry: {
    hazard: 'steam or pins in plaster',
    when: 'plaster blocks',
    line: 'No steam, no pins. Seal with shellac at most; hairlines end it.',
    deferTo: 'conservator',
    source: 'common practice',
    confidence: 'practice',
  },
  aluminiumCleaners: {
    hazard: 'alkali or peroxide on aluminium',
    when: 'cleaning metal blocks',
    line: 'No alkaline cleaner and no peroxide bath. Condensation on cold metal stains felt.',
    deferTo: 'label',
    source: 'metal care',
    confidence: 'memory',
  },
} as const satisfies Record<string, Caution>;
