/**
 * Shorthand for the questions of a damage sheet. The result is plain data; chips are values worth one tap and span the
 * kind's grades.
 */
interface Scale {
  readonly step: number;
  readonly max: number;
  readonly chips: readonly number[];
  readonly hint?: string;
}

const measure =
  <Unit extends 'mm' | 'cm2' | 'pct' | 'count' | 'perCm2' | 'perDm2'>(unit: Unit) =>
  <Id extends string>(id: Id, label: string, scale: Scale) =>
    ({ type: 'measure', id, label, unit, ...scale }) as const;

export const mm = measure('mm');
export const cm2 = measure('cm2');
export const pct = measure('pct');
export const count = measure('count');
export const perCm2 = measure('perCm2');
export const perDm2 = measure('perDm2');

/** A scale of four named steps. */
export const level = <Id extends string>(id: Id, label: string, steps: readonly [string, string, string, string]) =>
  ({ type: 'measure', id, label, unit: 'level', step: 1, max: 4, chips: [1, 2, 3, 4], steps }) as const;

export const yesNo = <Id extends string>(id: Id, label: string, hint?: string) =>
  ({ type: 'yesNo', id, label, ...(hint === undefined ? {} : { hint }) }) as const;

export const choice = <Id extends string>(
  id: Id,
  label: string,
  options: Readonly<Record<string, string>>,
  hint?: string,
) =>
  ({
    type: 'choice',
    id,
    label,
    options: Object.entries(options).map(([option, words]) => ({ id: option, label: words })),
    ...(hint === undefined ? {} : { hint }),
  }) as const;

/** What falls out, by the names the insect table uses. */
export const dust = choice(
  'dust',
  'Dust between thumb and finger',
  {
    none: 'None',
    gritty: 'Gritty',
    flour: 'Like flour, pours out',
    talcPacked: 'Like talc, packed hard',
    bunPellets: 'Bun-shaped pellets',
    twoColouredPellets: 'Pellets in two colours',
    sixSidedPellets: 'Hard six-sided pellets',
    coarsePacked: 'Coarse, packed',
  },
  'Tap it over white paper. Old holes have often lost theirs.',
);

/** Alive, dead, or nobody knows: what a quarantine hangs on. */
export const activity = choice('activity', 'Alive?', {
  active: 'Fresh signs',
  inactive: 'Old, no fresh signs',
  unknown: 'Cannot tell',
});
