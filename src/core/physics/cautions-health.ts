import type { Caution } from './caution.ts';

/** Dusts, poisons, sharp things and mould. */
export const HEALTH = {
  hardwoodDust: {
    hazard: 'wood dust',
    when: 'any sanding',
    line: 'Hardwood dust can cause cancer of the nose, and wood dust asthma. Take it off at the tool, wear a mask of class FFP3, wipe damp, never sweep.',
    deferTo: 'national regulator',
    source: 'national health and safety regulator, wood dust page',
    confidence: 'looked-up',
  },
  mercury: {
    hazard: 'mercury',
    when: 'felt remains on a block of about 1820 to the 1940s',
    line: 'Old felt was treated with mercury salts, and residue may sit on blocks. Never sand it dry: lift it damp, in gloves, and bag it.',
    deferTo: 'poisons centre, laboratory',
    source:
      'museum conservation journal no. 46 and parliamentary archives 2023, on hats; that it sits on blocks is our inference',
    confidence: 'looked-up',
  },
  pesticideResidue: {
    hazard: 'arsenic, DDT and other old pesticides',
    when: 'from a museum or taxidermy store, powder, crystals, an odd smell',
    line: 'Old pesticides often cannot be seen. Gloves, no sanding, no heat; have it tested first.',
    deferTo: 'conservator, laboratory',
    source: 'conservation institute health and safety pages',
    confidence: 'looked-up',
  },
  leadPaint: {
    hazard: 'lead',
    when: 'old paint, or marks in old paint',
    line: 'No dry sanding and no heat gun before a lead test. If it holds lead, work wet.',
    deferTo: 'local lead rules',
    source: 'paint guidance',
    confidence: 'memory',
  },
  hiddenPins: {
    hazard: 'hidden pins and tacks',
    when: 'always',
    line: 'Magnet and low light before hands and blades. Wash a puncture and check when your last tetanus booster was.',
    deferTo: 'doctor',
    source: 'common practice',
    confidence: 'practice',
  },
  edgedToolsAndClamps: {
    hazard: 'chisels and clamps',
    when: 'prising, paring, clamping',
    line: 'Hold the block in a vice or on a mat, both hands behind the edge. Wear eye protection when a clamp is near its limit.',
    deferTo: "the tool's manual",
    source: 'common practice',
    confidence: 'practice',
  },
  mould: {
    hazard: 'mould',
    when: 'asthma, mould allergy, weak immunity',
    line: 'Stay out and let another person clean. Dead mould still sets off an allergy.',
    deferTo: 'doctor',
    source: 'national conservation institute, mould outbreak guide; dead mould from memory',
    confidence: 'looked-up',
  },
} as const satisfies Record<string, Caution>;
