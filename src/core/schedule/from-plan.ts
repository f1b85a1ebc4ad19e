import { type Catalogue, entry } from '../catalogue.ts';
import { eveningsOf } from '../days.ts';
import type { Plan } from '../plan.ts';
import type { Settings } from '../records.ts';
import type { BenchBlock, BenchInput, StepProgress } from './types.ts';

/**
 * A block's plan as the schedule takes it, with the likely hours and waits unless others are asked for. What a step holds
 * while it is worked and while it waits is the catalogue's to say.
 * @param progress by treatment, how far it has come
 */
export function benchBlockOf(
  blockId: string,
  plan: Pick<Plan, 'steps'>,
  catalogue: Pick<Catalogue, 'treatments'>,
  progress: Readonly<Record<string, StepProgress>> = {},
  pick: 'o' | 'm' | 'p' = 'm',
): BenchBlock {
  return {
    blockId,
    steps: plan.steps.map(({ treatment, hours, waitHours }) => {
      const known = entry(catalogue.treatments, treatment);
      const come = entry(progress, treatment);
      return {
        treatment,
        hours: hours[pick],
        waitHours: waitHours[pick],
        handsResources: known?.handsResources ?? [],
        waitResource: known?.waitResource ?? null,
        ...(come ? { progress: come } : {}),
      };
    }),
  };
}

type Chosen = Pick<Settings, 'eveningHours' | 'evenings' | 'capacities' | 'datesOff'>;

/**
 * The owner's evenings and what there is to work with: their own figures, and the catalogue's where they gave none. What
 * they have none of counts as one, borrowed: without it the schedule would have no end. `lacking` tells of those.
 */
export function benchTimeOf(
  settings: Chosen,
  { resources }: Pick<Catalogue, 'resources'>,
): Pick<BenchInput, 'hours' | 'datesOff' | 'capacities'> {
  const { hours, weekdays } = eveningsOf(settings);
  return {
    hours: weekdays.map((there) => (there ? hours : 0)),
    datesOff: settings.datesOff ?? [],
    capacities: Object.fromEntries(
      Object.entries(resources).map(([id, { capacity }]) => [
        id,
        Math.max(1, entry(settings.capacities ?? {}, id) ?? capacity),
      ]),
    ),
  };
}

/** Resources some step wants and the owner says they have none of, in the catalogue's order. */
export function lacking(
  blocks: readonly BenchBlock[],
  { capacities = {} }: Pick<Settings, 'capacities'>,
  { resources }: Pick<Catalogue, 'resources'>,
): readonly string[] {
  const open = blocks.flatMap(({ steps }) =>
    steps.filter(({ progress }) => progress?.state !== 'done' && progress?.state !== 'skipped'),
  );
  return Object.keys(resources).filter(
    (id) =>
      entry(capacities, id) === 0 &&
      open.some(({ handsResources, waitResource }) => waitResource === id || handsResources.includes(id)),
  );
}
