import { expect, it } from 'vitest';
import { scheduleBench } from '../../src/core/schedule/bench.ts';
import { createBenchScheduler } from '../../src/workers/scheduler.ts';
import { aBench, aStep, everyEvening } from '../core/schedule/any-bench.ts';

const bench = (days: number) =>
  aBench(
    Array.from({ length: 12 }, (_, n) => ({
      blockId: `block ${n}`,
      steps: [
        aStep('sand', 1 + n / 3),
        aStep('freeze', 0.4, 24 * days, { waitResource: 'freezer' }),
        aStep('seal', 1, 48),
      ],
    })),
    { capacities: { hands: 1, freezer: 2 }, hours: everyEvening(1.5) },
  );

it('a real worker makes the schedule the core makes; of two questions only the later is answered', async () => {
  const scheduler = createBenchScheduler(
    () => new Worker(new URL('../../src/workers/schedule.worker.ts', import.meta.url), { type: 'module' }),
  );
  const older = scheduler.ask('bench', bench(6));
  const newer = scheduler.ask('bench', bench(7));
  expect(await older).toBeUndefined();
  expect(await newer).toEqual(scheduleBench(bench(7)));
  await expect(scheduler.ask('bench', aBench([{ blockId: 'A', steps: [aStep('carve', 1e12)] }]))).rejects.toMatchObject(
    {
      code: 'schedule-too-long',
    },
  );
});
