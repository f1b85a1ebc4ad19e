import type { Assessment } from './assess.ts';
import type { Catalogue } from './catalogue.ts';
import type { PaceBook, Plan } from './plan.ts';
import type { HatBlock, Path } from './records.ts';
import { copyPlan } from './worth.ts';

/** What is to be done with a block: what the owner chose, else what the verdict says. */
export interface ChosenPath {
  readonly path: Path;
  readonly chosen: boolean;
}

/** SOURCE: verdict “copy only” of trade handbook §1.8. */
export function pathOf(block: Pick<HatBlock, 'path'>, { verdict }: Pick<Assessment, 'verdict'>): ChosenPath {
  const chosen = block.path ?? null;
  return { path: chosen ?? (verdict === 'copyOnly' ? 'copy' : 'restore'), chosen: chosen !== null };
}

/** The work on that path. Copying is the very plan the price of a copy rests on, so hours and money agree. */
export const planOnPath = (
  path: Path,
  { plan }: Pick<Assessment, 'plan'>,
  catalogue: Catalogue,
  pace: PaceBook,
): Plan => (path === 'copy' ? copyPlan(catalogue, pace) : plan);
