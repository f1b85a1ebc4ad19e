import type { DamageKind, MaterialGroup, Origin } from '../catalogue.ts';

/** How many blocks the catalogue's prior counts for, against the owner's own surveys. Source: house rule. */
export const PRIOR_BLOCKS = 8;

/** What the owner's own surveys say of one kind in one group of materials. */
export interface Tally {
  /** Surveys in which the kind was looked for. */
  readonly looked: number;
  readonly found: number;
  /** Of the found: how many at grade 1, 2, 3, 4. */
  readonly grades: readonly [number, number, number, number];
}

/** Own surveys by kind and material group: `flightHoles wood`. */
export type Tallies = Readonly<Record<string, Tally>>;

export const tallyKey = (kind: string, group: MaterialGroup): string => `${kind} ${group}`;

export interface Belief {
  /** Chance that the kind is there, 0–1. */
  readonly present: number;
  /** Shares of grades 1–4 when it is; sum 1. */
  readonly grades: readonly [number, number, number, number];
  /** Own surveys it rests on besides the prior. */
  readonly surveys: number;
}

/**
 * Belief about a kind nobody has looked for yet: the catalogue's prior, updated by the owner's own surveys. Presence is
 * beta–binomial, grades Dirichlet–multinomial, the prior counting as 8 blocks (8 times its chance found). Textbook.
 */
export function beliefIn(
  kind: Pick<DamageKind, 'prior'>,
  group: MaterialGroup,
  origin: Origin,
  tally: Tally | undefined,
): Belief {
  const prior = (kind.prior.presentIn?.[group] ?? kind.prior.present)[origin];
  const looked = tally?.looked ?? 0;
  const found = tally?.found ?? 0;
  const weight = PRIOR_BLOCKS * prior;
  const counted = kind.prior.grades.map((share, index) => weight * share + (tally?.grades[index] ?? 0));
  const sum = counted.reduce((total, count) => total + count, 0);
  const grades = sum > 0 ? counted.map((count) => count / sum) : kind.prior.grades;
  return {
    present: (weight + found) / (PRIOR_BLOCKS + looked),
    grades: grades as unknown as Belief['grades'],
    surveys: looked,
  };
}
