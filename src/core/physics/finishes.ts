import type { WithCautions } from './cautions.ts';
import type { Sourced } from './sourced.ts';

/** Moisture kept out, percent (100 none taken up, 0 like bare wood), after days in 90 % air at 27 °C coming from 30 %. */
export interface Shielding extends Sourced {
  readonly coats: number;
  readonly day1?: number;
  readonly day7?: number;
  readonly day14: number;
}

const HANDBOOK = { source: 'Wood Handbook FPL-GTR-190 (2010) table 16-3', confidence: 'looked-up' } as const;
const MAGAZINE = {
  source: 'Forest Products Laboratory data as tabled in a woodworking magazine',
  confidence: 'looked-up',
} as const;
const REPORT = { source: 'FPL-RP-462 (1985) as listed in a public forum', confidence: 'looked-up' } as const;
const of = (coats: number, day1: number, day7: number, day14: number, from: Sourced): Shielding => ({
  coats,
  day1,
  day7,
  day14,
  ...from,
});
const late = (day14: number): Shielding => ({ coats: 3, day14, ...REPORT });

export interface Finish extends WithCautions {
  readonly name: string;
  readonly tests: readonly Shielding[];
}

/** Finishes as tested. Oil and wax do not seal; varnish buys days, not seasons; pin holes undo all of them. */
export const FINISHES = {
  linseedOil: {
    name: 'linseed oil',
    tests: [of(1, 12, 0, 0, HANDBOOK), of(3, 33, 2, 0, HANDBOOK), late(0)],
    cautions: ['oilyRags'],
  },
  tungOil: { name: 'tung oil', tests: [of(2, 46, 2, 0, MAGAZINE), late(2)], cautions: ['oilyRags'] },
  furnitureWax: { name: 'furniture wax', tests: [late(0)], cautions: ['solvents'] },
  urethaneVarnish: {
    name: 'oil-modified urethane varnish',
    tests: [
      of(1, 55, 10, 2, HANDBOOK),
      of(2, 83, 43, 23, HANDBOOK),
      of(3, 90, 64, 44, HANDBOOK),
      of(6, 93, 76, 62, HANDBOOK),
    ],
    cautions: ['solvents', 'oilyRags'],
  },
  polyurethaneVarnish: {
    name: 'polyurethane varnish',
    tests: [of(2, 90, 66, 46, MAGAZINE)],
    cautions: ['solvents', 'oilyRags'],
  },
  polyurethanePaint: {
    name: 'polyurethane paint',
    tests: [of(3, 96, 86, 74, HANDBOOK)],
    cautions: ['solvents', 'isocyanate'],
  },
  twoPartPolyurethane: { name: 'clear two-part polyurethane', tests: [late(66)], cautions: ['solvents', 'isocyanate'] },
  solidOilStain: {
    name: 'solid-colour oil stain',
    tests: [of(3, 90, 64, 42, HANDBOOK)],
    cautions: ['solvents', 'oilyRags'],
  },
  sparVarnish: {
    name: 'spar varnish',
    tests: [of(2, 80, 36, 15, MAGAZINE), late(30)],
    cautions: ['solvents', 'oilyRags'],
  },
  shellac: { name: 'shellac', tests: [of(2, 84, 43, 20, MAGAZINE), late(42)], cautions: ['solvents'] },
  lacquer: { name: 'nitrocellulose lacquer', tests: [of(2, 70, 22, 8, MAGAZINE), late(10)], cautions: ['solvents'] },
  epoxy: { name: 'two-part epoxy', tests: [of(2, 98, 93, 88, MAGAZINE), late(91)], cautions: ['epoxy'] },
  paraffinDipped: { name: 'paraffin wax, dipped', tests: [late(95)], cautions: ['steam'] },
  paraffinBrushed: { name: 'paraffin wax, brushed', tests: [late(69)], cautions: ['steam'] },
} as const satisfies Record<string, Finish>;
export type FinishId = keyof typeof FINISHES;
export const FINISH_IDS = Object.keys(FINISHES) as FinishId[];

export type ShieldingAnswer =
  | { readonly kind: 'measured'; readonly pct: readonly number[]; readonly sources: readonly string[] }
  | { readonly kind: 'not-measured'; readonly coatsMeasured: readonly number[] };

/**
 * Moisture a finish kept out in the tests, percent; two tests may disagree, then both come back. Nothing is guessed between them.
 * SOURCE: {@link FINISHES}
 */
export function shielding(finish: FinishId, coats: number, day: 1 | 7 | 14): ShieldingAnswer {
  const tests: readonly Shielding[] = FINISHES[finish].tests;
  const found = tests.flatMap((test) => {
    const pct = test[`day${day}`];
    return test.coats === coats && pct !== undefined ? [{ pct, source: test.source }] : [];
  });
  if (found.length === 0) return { kind: 'not-measured', coatsMeasured: [...new Set(tests.map((test) => test.coats))] };
  return { kind: 'measured', pct: found.map(({ pct }) => pct), sources: found.map(({ source }) => source) };
}
