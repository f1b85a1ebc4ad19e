import type { Catalogue, PocketReference } from '../../core/catalogue.ts';
import { entry } from '../../core/catalogue.ts';
import type { PhotoScale } from '../../core/records.ts';

/** Id of the choice that is no thing but a length. */
export const TWO_POINTS = 'twoPoints';

export const TAPS: Readonly<Record<PhotoScale['kind'], number>> = { card: 4, paper: 4, coin: 3, twoPoints: 2 };

const REGIONS: Readonly<Record<PocketReference['region'], string>> = {
  anywhere: '',
  uk: 'UK ',
  euro: 'Euro ',
  us: 'US ',
};

/** Kinds of a reference a photograph can be measured by; seven-sided coins make no circle and are left out. */
export function kindOf(id: string, catalogue: Catalogue): PhotoScale['kind'] | undefined {
  if (id === TWO_POINTS) return TWO_POINTS;
  const kind = entry(catalogue.pocketReferences, id)?.kind;
  return kind === 'coinOfConstantWidth' ? undefined : kind;
}

export function referenceOptions(catalogue: Catalogue): { readonly id: string; readonly label: string }[] {
  const things = Object.entries(catalogue.pocketReferences)
    .filter(([id]) => kindOf(id, catalogue))
    .map(([id, { term, region, kind }]) => ({ id, label: kind === 'coin' ? `${REGIONS[region]}${term}` : term }));
  return [...things, { id: TWO_POINTS, label: 'Two points and a length' }];
}

/** Long and short side, or the diameter a ring through the rim has: of a coin with corners half-way to its flats. */
export function sizesOf(id: string, catalogue: Catalogue): number[] {
  const reference = entry(catalogue.pocketReferences, id);
  if (!reference) return [];
  const [across = 0] = reference.mm;
  return reference.acrossFlatsMm ? [(across + reference.acrossFlatsMm) / 2] : [...reference.mm];
}

/** What the millimetres come from, as one says it. */
export function referenceWords({ reference, kind }: PhotoScale, catalogue: Catalogue): string {
  if (kind === 'twoPoints') return 'two points and a typed length';
  const term = entry(catalogue.pocketReferences, reference)?.term ?? 'a thing of known size';
  return kind === 'card' ? 'the card' : kind === 'coin' ? `the coin (${term})` : `the sheet (${term})`;
}
