import { type Catalogue, entry } from '../core/catalogue.ts';
import type { WorkItem } from '../core/steps/work-plan.ts';

/** What a step is called: its treatment's term, or the owner's own words. */
export const stepName = (
  { treatment, words }: Pick<WorkItem, 'treatment' | 'words'>,
  catalogue: Pick<Catalogue, 'treatments'>,
): string =>
  treatment === null
    ? words.trim() || 'A step in your own words'
    : (entry(catalogue.treatments, treatment)?.term ?? `“${treatment}” (from a newer version)`);
