import { newestOf } from './before-after.ts';
import type { Term } from './catalogue.ts';
import type { Photo, Place, Stage } from './records.ts';

/** One line of the shot list: a standard view, and what there is of it. */
export interface Shot {
  readonly view: string;
  readonly term: string;
  readonly text: string;
  /** Photographs of it at this stage of the work. */
  readonly taken: number;
  /** After the work: the before photograph to lie under the finder. */
  readonly ghost: Photo | undefined;
}

/**
 * The standard views in the order they are taken, each with what was taken of it at a stage.
 * @param photos of the block, oldest first @param findingId only those of one finding; null takes those of the whole block
 */
export function shotList(
  views: Readonly<Record<string, Term>>,
  photos: readonly Photo[],
  stage: Stage,
  findingId: string | null,
): readonly Shot[] {
  const here = photos.filter((photo) => photo.findingId === findingId);
  return Object.entries(views).map(([view, { term, text }]) => ({
    ...{ view, term, text },
    taken: here.filter((photo) => photo.view === view && photo.stage === stage).length,
    ghost: stage === 'after' ? newestOf(here, 'before', view, findingId) : undefined,
  }));
}

/**
 * The view to take next: after the work the first that has a before and no after yet, so that there is something to
 * compare; otherwise the first not taken; with all taken the one in hand, so that a burst stays where it is.
 */
export function nextView(shots: readonly Shot[], inHand: string | undefined): string {
  const missing = shots.filter(({ taken }) => taken === 0);
  const next = missing.find(({ ghost }) => ghost) ?? missing[0];
  return next?.view ?? inHand ?? shots[0]?.view ?? '';
}

/** Where a block stands says what a photograph of it is: before the work, during, or after. */
export const usualStage = (place: Place): Stage =>
  place === 'onTheBench' ? 'during' : place === 'ready' || place === 'letGo' ? 'after' : 'before';
