import type { Catalogue } from '../core/catalogue.ts';
import type { Lot } from '../core/lots.ts';
import type { JobLot } from '../core/records.ts';
import { blockName } from './block-name.ts';

/** What to call a job lot: its ticket and its title. */
export const jobName = ({ objectNumber, title }: Pick<JobLot, 'objectNumber' | 'title'>): string =>
  [objectNumber.trim(), title.trim() || 'Job lot'].filter(Boolean).join(' ');

/** What to call a lot: a block by its name, several by what they are sold as. */
export function lotName({ job, blocks }: Lot, catalogue: Catalogue): string {
  const [first] = blocks;
  return job ? jobName(job) : first ? blockName(first.block, catalogue) : 'Lot';
}
