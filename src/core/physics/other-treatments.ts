import type { WithCautions } from './cautions.ts';
import type { SourcedRow } from './sourced.ts';

/** Ways to kill borers besides cold. Humid gas: keep it at the block's own humidity, about 50 to 55 % (from memory). */
export const OTHER_TREATMENTS = {
  anoxia: {
    oxygenPctAtMost: 0.5,
    temperatureC: 24,
    days: { low: 21, high: 21 },
    alternative: { oxygenPctAtMost: 1, temperatureC: 27 },
    cautions: ['lowOxygen'],
    source: 'Landsberger et al. 2020',
    confidence: 'looked-up',
  },
  warmAnoxia: {
    temperatureC: 25,
    days: { low: 10, high: 15 },
    cautions: ['lowOxygen'],
    source: 'Gunn et al. 2006; 21 days is the usual standard',
    confidence: 'looked-up',
  },
  heat: {
    coreC: 55,
    cautions: ['noOven'],
    source: 'museum pests working group heat sheet, after a 1992 survey',
    confidence: 'looked-up',
  },
  packagingHeat: {
    coreC: 56,
    minutes: 30,
    cautions: ['noOven'],
    source: 'ISPM 15 schedule for wood packaging',
    confidence: 'looked-up',
  },
  surfaceInsecticide: {
    reaches: 'adults and hatchlings at the surface, not larvae deep inside',
    cautions: ['insecticide', 'permethrin', 'pesticideResidue'],
    source: 'common practice; borates need bare wood, as remembered',
    confidence: 'practice',
  },
  fumigation: {
    cautions: ['fumigation'],
    source: 'common practice',
    confidence: 'practice',
  },
} as const satisfies Record<string, SourcedRow & WithCautions>;
