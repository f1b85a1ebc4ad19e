import type { SourcedRow } from './sourced.ts';

/** What eight hours of breathing may hold; re-check with the regulator before relying on any. */
export const AIR_LIMITS = {
  hardwoodDustBritain: {
    mgPerM3: 3,
    source: 'national health and safety regulator, wood dust page; counts for any mixture with hardwood',
    confidence: 'looked-up',
  },
  softwoodDustBritain: {
    mgPerM3: 5,
    source: 'national health and safety regulator, wood dust page',
    confidence: 'looked-up',
  },
  hardwoodDustEurope: {
    mgPerM3: 2,
    from: '2023-01-18',
    beforeMgPerM3: 3,
    source: 'Directive (EU) 2017/2398, as reported by trade sources',
    confidence: 'looked-up',
  },
  woodDustAdvisedUs: { mgPerM3: 1, source: 'NIOSH recommended limit, as remembered', confidence: 'memory' },
  hydrogenPeroxide: {
    mgPerM3: 1.4,
    partsPerMillion: 1,
    source: 'NIOSH REL and ACGIH TLV on the OSHA chemical data page',
    confidence: 'looked-up',
  },
} as const satisfies Record<string, SourcedRow>;

/** Share of fine dust a mask must hold back, percent; it must sit on a shaved face. */
export const MASKS = {
  ffp2: { filtersPct: 94, source: 'EN 149, as remembered', confidence: 'memory' },
  n95: { filtersPct: 95, source: '42 CFR 84, as remembered', confidence: 'memory' },
  ffp3: { filtersPct: 99, source: 'EN 149, as remembered', confidence: 'memory' },
} as const satisfies Record<string, SourcedRow>;

/** Years in which felt was made with mercury, as found in hats. */
export const MERCURY_FELT_YEARS = {
  found: { from: 1820, to: 1930 },
  latest: '1940s',
  source:
    'museum conservation science section, reported in the press; parliamentary archives 2023 say 17th century to the 1940s',
  confidence: 'looked-up',
} as const satisfies SourcedRow;

/** Might felt remains of that year hold mercury? Decades before and after are not safe, only less likely. */
export function perhapsMercury(year: number): boolean {
  if (!Number.isInteger(year)) throw new RangeError(`year: got ${year}, expected a whole year.`);
  return year >= 1600 && year < 1950;
}
