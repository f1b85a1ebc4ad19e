import { type Catalogue, entry } from '../catalogue.ts';
import { dayIn } from '../local-time.ts';
import type { BenchBlock, BenchStep, StepProgress } from '../schedule/types.ts';
import { waitOf, waitStand } from './waits.ts';
import type { WorkItem } from './work-plan.ts';

/** What a step in own words holds: the bench while it is worked, the airy shelf while it waits. Trade estimate. */
const OWN_WORDS = { handsResources: ['hands', 'bench'], waitResource: 'dryRack' } as const;

/** How far a step has come at a moment, by the days of a time zone. */
export function progressOf(item: WorkItem, nowMs: number, zone: string): StepProgress | undefined {
  if (item.stand === 'skipped') return { state: 'skipped' };
  if (item.stand === 'done') {
    const wait = waitOf(item);
    if (!wait || waitStand(wait, nowMs).state === 'over') return { state: 'done' };
    return {
      state: 'waiting',
      since: dayIn(Date.parse(wait.since), zone),
      until: dayIn(Date.parse(wait.until), zone),
    };
  }
  return item.minutes > 0 ? { state: 'begun', hoursDone: item.minutes / 60 } : undefined;
}

/**
 * The work on a block as the schedule of many blocks takes it. Its steps are named by their `key`, which is the treatment
 * where there is only one of it, so that a step done for one finding and wanted for another stays two.
 */
export function benchBlockFrom(
  blockId: string,
  items: readonly WorkItem[],
  catalogue: Pick<Catalogue, 'treatments'>,
  { nowMs, zone }: { readonly nowMs: number; readonly zone: string },
): BenchBlock {
  return {
    blockId,
    steps: items.map((item): BenchStep => {
      const { handsResources, waitResource } = entry(catalogue.treatments, item.treatment) ?? OWN_WORDS;
      const progress = progressOf(item, nowMs, zone);
      return {
        treatment: item.key,
        hours: item.hours.m,
        waitHours: item.waitHours.m,
        handsResources,
        waitResource: item.waitHours.m > 0 ? waitResource : null,
        ...(progress ? { progress } : {}),
      };
    }),
  };
}
