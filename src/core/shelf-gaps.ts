import type { Place } from './records.ts';

/** Places that mean a block is one's own. */
export const OWN_PLACES: readonly Place[] = ['quarantine', 'toDo', 'onTheBench', 'ready'];

/** A block as the shelf counts it. */
export interface Held {
  readonly blockType: string | null;
  /** Head size in whole centimetres; null when not measured or without one. */
  readonly sizeCm: number | null;
}

/** A shape on the shelf: in which of the usual sizes it is there, and how often. */
export interface ShapeOnShelf {
  readonly blockType: string;
  /** Copies by usual size, in the order of the sizes. */
  readonly counts: readonly number[];
  /** Copies in other sizes, and those nobody measured. */
  readonly others: number;
  /** Usual sizes without any. */
  readonly missing: readonly number[];
}

/** Head sizes in millimetres as whole centimetres, each once, rising. */
export const sizesCm = (usualSizesMm: readonly number[] | undefined): readonly number[] =>
  [...new Set((usualSizesMm ?? []).map((mm) => Math.round(mm / 10)))].sort((a, b) => a - b);

/**
 * Sizes by shapes: what the shelf holds and lacks. Shapes are those held in at least one copy; the fewest gaps first, as the
 * nearest to complete.
 * @param sized whether blocks of a type have a head size at all
 */
export function shelfOf(
  held: readonly Held[],
  sizes: readonly number[],
  sized: (blockType: string) => boolean,
): readonly ShapeOnShelf[] {
  const types = [...new Set(held.flatMap(({ blockType }) => (blockType === null ? [] : [blockType])))];
  return types
    .filter(sized)
    .map((blockType): ShapeOnShelf => {
      const copies = held.filter((block) => block.blockType === blockType);
      const counts = sizes.map((size) => copies.filter(({ sizeCm }) => sizeCm === size).length);
      return {
        blockType,
        counts,
        others: copies.length - counts.reduce((sum, count) => sum + count, 0),
        missing: sizes.filter((_, place) => counts[place] === 0),
      };
    })
    .sort((a, b) => a.missing.length - b.missing.length || (a.blockType < b.blockType ? -1 : 1));
}

/** What a block would be to the shelf: a size it lacks, a shape it has none of, or nothing new that anyone could tell. */
export type Filling = 'size' | 'shape' | null;

/** @param sized whether blocks of this type have a head size at all */
export function fillingOf(
  { blockType, sizeCm }: Held,
  held: readonly Held[],
  sizes: readonly number[],
  sized: boolean,
): Filling {
  if (blockType === null || held.length === 0) return null;
  const copies = held.filter((block) => block.blockType === blockType);
  if (copies.length === 0) return 'shape';
  const isMissing = sizeCm !== null && sizes.includes(sizeCm) && copies.every((copy) => copy.sizeCm !== sizeCm);
  return sized && isMissing ? 'size' : null;
}
