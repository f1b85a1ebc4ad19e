import { type Due, dueList } from '../core/due.ts';
import { openWaits } from '../core/steps/waits.ts';
import { dayHere } from '../text/days.ts';
import { type App, useApp } from '../ui/app.ts';
import { runningView } from './quarantine-facts.ts';

/** Everything that falls due on all blocks, or on one, soonest first; tracked by signals. */
export function duesOf(
  { store, catalogue, now }: Pick<App, 'store' | 'catalogue' | 'now'>,
  blockId?: string,
): readonly Due[] {
  const blocks = blockId === undefined ? store.blocks.value : [store.get('block', blockId)];
  const views = blocks.flatMap((block) => (block && runningView(block.id, { store, catalogue, now })) ?? []);
  return dueList(
    {
      quarantines: views.map(({ facts }) => facts),
      freezing: views.flatMap(({ stages }) => stages),
      waits: openWaits(
        blocks.flatMap((block) => (block ? store.stepsOf(block.id) : [])),
        blocks.flatMap((block) => (block ? store.stintsOf(block.id) : [])),
      ),
    },
    { today: dayHere(now()), ms: now() },
  );
}

export const useDues = (blockId?: string): readonly Due[] => duesOf(useApp(), blockId);
