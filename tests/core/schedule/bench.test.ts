import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../src/catalogue/index.ts';
import { assess } from '../../../src/core/assess.ts';
import { AppError } from '../../../src/core/errors.ts';
import { scheduleBench } from '../../../src/core/schedule/bench.ts';
import { benchBlockOf, benchTimeOf } from '../../../src/core/schedule/from-plan.ts';
import { tonight } from '../../../src/core/schedule/tonight.ts';
import { caseOfLot, someSettings } from '../../make.ts';
import { aBench, aStep, everyEvening, TODAY } from './any-bench.ts';
import { faultsOf } from './check-bench.ts';

/** Quick by itself; on a machine with much else to do it is the machine that takes long. */
const PATIENT = { timeout: 60_000 };

// Figures counted by hand; day 0 is Monday, 30 November 2026.

const block = (blockId: string, ...steps: ReturnType<typeof aStep>[]) => ({ blockId, steps });

describe('an empty bench', () => {
  it('takes no days', () => {
    const nothing = { days: 0, lastDate: null, inOrderDays: 0, hours: 0, evenings: [], served: [] };
    expect(scheduleBench(aBench([]))).toMatchObject({ ...nothing, bound: { days: 0, by: 'nothing' } });
    const done = block('A', aStep('seal', 1, 24, { progress: { state: 'done' } }));
    const answer = scheduleBench(aBench([done, block('B')]));
    expect(answer).toMatchObject(nothing);
    expect(answer.blocks.map(({ ready, readyDate }) => [ready, readyDate])).toEqual([
      [-1, null],
      [-1, null],
    ]);
  });
});

describe('hands', () => {
  it('fill an evening with two blocks, and split what does not fit', () => {
    const answer = scheduleBench(aBench([block('A', aStep('sand', 2)), block('B', aStep('seal', 1.5))]));
    expect(answer.days).toBe(2);
    expect(answer.evenings.map(({ date, used }) => [date, used])).toEqual([
      ['2026-11-30', 2.5],
      ['2026-12-01', 1],
    ]);
    const split = answer.evenings.flatMap(({ sittings }) => sittings).filter((one) => !(one.begins && one.ends));
    expect(split.map(({ begins, ends }) => [begins, ends])).toEqual([
      [true, false],
      [false, true],
    ]);
  });

  it('of two people work on two blocks at once, never both on one', () => {
    const blocks = [block('A', aStep('sand', 2.5)), block('B', aStep('sand', 2.5))];
    expect(scheduleBench(aBench(blocks, { capacities: { hands: 2 } })).days).toBe(1);
    expect(scheduleBench(aBench([block('A', aStep('sand', 5))], { capacities: { hands: 2 } })).days).toBe(2);
    // One bench for both is as good as one pair of hands.
    const atBench = blocks.map(({ blockId, steps }) => ({
      blockId,
      steps: steps.map((step) => ({ ...step, handsResources: ['hands', 'bench'] })),
    }));
    expect(scheduleBench(aBench(atBench, { capacities: { hands: 2, bench: 1 } })).days).toBe(2);
  });
});

describe('evenings', () => {
  const six = [block('A', aStep('carve', 6))];

  it('have the hours of their weekday', () => {
    // Monday 1, Wednesday 2, Saturday 3.
    const answer = scheduleBench(aBench(six, { hours: [1, 0, 2, 0, 0, 3, 0] }));
    expect(answer.evenings.map(({ date, used }) => [date, used])).toEqual([
      ['2026-11-30', 1],
      ['2026-12-02', 2],
      ['2026-12-05', 3],
    ]);
  });

  it('fall out on dates off, and have other hours where a date says so', () => {
    const answer = scheduleBench(
      aBench(six, { datesOff: ['2026-12-01', '2026-12-03'], hoursOn: { '2026-12-02': 0.5, '2026-12-03': 4 } }),
    );
    expect(answer.evenings.map(({ date, used }) => [date, used])).toEqual([
      ['2026-11-30', 2.5],
      ['2026-12-02', 0.5],
      ['2026-12-03', 3],
    ]);
  });

  it('must be there at all, and within a hundred years', () => {
    expect(() => scheduleBench(aBench(six, { hours: everyEvening(0) }))).toThrow('No evening to work in');
    expect(() => scheduleBench(aBench(six, { today: '2026-02-30' }))).toThrow('2026-02-30');
    const endless = [block('A', aStep('carve', 1e9))];
    expect(() => scheduleBench(aBench(endless))).toThrow(new AppError('schedule-too-long'));
    const forEver = [block('A', aStep('freeze', 1, 1e12))];
    expect(() => scheduleBench(aBench(forEver))).toThrow(new AppError('schedule-too-long'));
  });
});

describe('waits', () => {
  it('are begun first, so that other blocks fill the time', () => {
    // In order: sand 5 h over two evenings, then freeze a week, ready on the ninth day. The freezer first: the eighth.
    const answer = scheduleBench(aBench([block('A', aStep('sand', 4.8)), block('B', aStep('freeze', 0.2, 168))]));
    expect([answer.inOrderDays, answer.days, answer.bound.days]).toEqual([9, 8, 8]);
    expect(answer.bound).toMatchObject({ by: 'criticalPath', criticalPath: { blockId: 'B', days: 8 } });
    expect(tonight(answer)?.sittings[0]).toMatchObject({ blockId: 'B', treatment: 'freeze', at: 0, ends: true });
  });

  it('hold their place: two boxes, three blocks to set apart', () => {
    const apart = (id: string) => block(id, aStep('set apart', 0.2, 336, { waitResource: 'quarantine' }));
    const blocks = [apart('A'), apart('B'), apart('C')];
    expect(scheduleBench(aBench(blocks, { capacities: { hands: 1, quarantine: 2 } })).days).toBe(29);
    expect(scheduleBench(aBench(blocks, { capacities: { hands: 1, quarantine: 3 } })).days).toBe(15);
    expect(scheduleBench(aBench(blocks)).days).toBe(15);
  });

  it('that run end when they end, and hold their place till then', () => {
    const progress = { state: 'waiting', since: '2026-11-25', until: '2026-12-04' } as const;
    const blocks = [
      block('A', aStep('freeze', 0.2, 336, { waitResource: 'freezer', progress }), aStep('warm up', 0.5)),
      block('B', aStep('freeze', 0.2, 168, { waitResource: 'freezer' })),
    ];
    const answer = scheduleBench(aBench(blocks, { capacities: { hands: 1, freezer: 1 } }));
    expect(answer.blocks[0]?.steps).toMatchObject([
      {
        treatment: 'freeze',
        running: true,
        from: -5,
        fromDate: '2026-11-25',
        free: 4,
        freeDate: '2026-12-04',
        hours: 0,
      },
      { treatment: 'warm up', running: false, from: 4, to: 4 },
    ]);
    expect(answer.blocks[1]?.steps).toMatchObject([{ treatment: 'freeze', from: 4, free: 11, freeDate: '2026-12-11' }]);
  });

  it('of less than no time, as a damaged figure may say, are none; of no number at all are refused', () => {
    expect(scheduleBench(aBench([block('A', aStep('seal', 1, -48), aStep('sand', 1))])).days).toBe(1);
    expect(() => scheduleBench(aBench([block('A', aStep('seal', 1, Number.NaN))]))).toThrow(AppError);
  });

  it('that are over by today hold nothing and nobody', () => {
    const progress = { state: 'waiting', since: '2026-11-01', until: '2026-11-20' } as const;
    const steps = [aStep('glue', 1, 24, { waitResource: 'clamps', progress }), aStep('sand', 1)];
    const answer = scheduleBench(aBench([block('A', ...steps)], { capacities: { hands: 1, clamps: 1 } }));
    expect(answer.blocks[0]?.steps[1]).toMatchObject({ treatment: 'sand', from: 0, to: 0 });
  });
});

describe('what has been done', () => {
  it('is not planned again; what was skipped is not planned; what was begun has the rest of its hours', () => {
    const steps = [
      aStep('record', 0.5, 0, { progress: { state: 'done' } }),
      aStep('bag', 0.2, 336, { progress: { state: 'skipped' } }),
      aStep('sand', 3, 0, { progress: { state: 'begun', hoursDone: 2 } }),
      aStep('seal', 0.5, 72),
    ];
    const answer = scheduleBench(aBench([block('A', ...steps)]));
    expect(answer.blocks[0]?.steps.map(({ treatment, hours }) => [treatment, hours])).toEqual([
      ['sand', 1],
      ['seal', 0.5],
    ]);
    expect([answer.hours, answer.days]).toEqual([1.5, 4]);
  });

  it('lets through what had to wait for it, where a plan names what comes first', () => {
    const steps = [
      aStep('vacuum', 0.5, 0, { after: [], progress: { state: 'done' } }),
      aStep('freeze', 0.2, 336, { after: ['vacuum'], waitResource: 'freezer' }),
      aStep('copy', 2, 96, { after: ['vacuum'] }),
    ];
    const running = { state: 'waiting', since: '2026-11-29', until: '2026-12-04' } as const;
    const full = block('B', aStep('freeze', 0.2, 168, { waitResource: 'freezer', progress: running }));
    const input = aBench([block('A', ...steps), full], { capacities: { hands: 1, freezer: 1 } });
    const answer = scheduleBench(input);
    expect(faultsOf(input, answer)).toEqual([]);
    expect(inTime(answer.blocks[0]?.steps ?? [])).toEqual(['copy', 'freeze']);
  });
});

const inTime = (steps: readonly { treatment: string; from: number }[]): string[] =>
  [...steps].sort((a, b) => a.from - b.from).map(({ treatment }) => treatment);

describe('tonight', () => {
  const answer = scheduleBench(
    aBench([block('A', aStep('bag', 0.2, 336)), block('B', aStep('sand', 1)), block('C', aStep('carve', 3))]),
  );

  it('is what the schedule has for today, in order, as far as the evening goes', () => {
    const evening = tonight(answer);
    expect(evening?.used).toBeCloseTo(2.5);
    expect(evening?.sittings.reduce((sum, one) => sum + one.hours, 0)).toBeCloseTo(2.5);
    expect(evening?.sittings[0]?.treatment).toBe('bag');
  });

  it('of fewer hours leaves out what no longer fits and begins what fits in part', () => {
    const short = tonight(answer, 1);
    expect(short?.used).toBeCloseTo(1);
    expect(short?.sittings.at(-1)?.ends).toBe(false);
    expect(short?.sittings[0]).toMatchObject({ treatment: 'bag', hours: 0.2, ends: true });
    expect(tonight(answer, 0)?.sittings).toEqual([]);
    expect(tonight(answer, 99)).toBe(tonight(answer));
  });

  it('is nothing on an evening off', () => {
    expect(tonight(scheduleBench(aBench([block('A', aStep('sand', 1))], { datesOff: [TODAY] })))).toBeUndefined();
  });
});

describe('the owner’s workshop', PATIENT, () => {
  it('is the catalogue’s until the owner says otherwise', () => {
    const usual = benchTimeOf(someSettings(), catalogue);
    expect(usual.hours).toEqual(everyEvening(2.5));
    expect(usual.datesOff).toEqual([]);
    for (const [id, { capacity }] of Object.entries(catalogue.resources)) expect(usual.capacities[id]).toBe(capacity);
    const own = benchTimeOf(
      someSettings({
        eveningHours: 2,
        evenings: [true, false, false, false, true, false, false],
        capacities: { freezer: 2 },
        datesOff: ['2026-12-25'],
      }),
      catalogue,
    );
    expect(own.hours).toEqual([2, 0, 0, 0, 2, 0, 0]);
    expect(own.datesOff).toEqual(['2026-12-25']);
    expect([own.capacities.freezer, own.capacities.clamps]).toEqual([2, catalogue.resources.clamps?.capacity]);
  });

  it('plans the example lots by the catalogue, sooner with a freezer that holds two', () => {
    const blocks = ['L01', 'L02', 'L03', 'L04', 'L05', 'L06', 'L07', 'L08', 'L09'].map((id) =>
      benchBlockOf(id, assess(caseOfLot(id), catalogue).plan, catalogue),
    );
    const input = { today: TODAY, blocks, ...benchTimeOf(someSettings(), catalogue), budget: 400 };
    const one = scheduleBench(input);
    expect(faultsOf(input, one)).toEqual([]);
    expect(one.bound).toMatchObject({ by: 'busiest', busiest: { resource: 'freezer' } });
    expect(one.days).toBeLessThan(one.inOrderDays);
    const two = { ...input, capacities: { ...input.capacities, freezer: 2 } };
    expect(faultsOf(two, scheduleBench(two))).toEqual([]);
    expect(scheduleBench(two).days).toBeLessThan(one.days);
  });

  it('takes what a step holds from the catalogue, and how far it has come from whoever knows', () => {
    const { plan } = assess(caseOfLot('L04'), catalogue);
    const made = benchBlockOf('L04', plan, catalogue, { recordAsFound: { state: 'done' } }, 'p');
    const freeze = made.steps.find(({ treatment }) => treatment === 'freeze');
    expect(freeze).toMatchObject({ waitHours: 504, waitResource: 'freezer', handsResources: ['hands'] });
    expect(made.steps.filter(({ progress }) => progress).map(({ treatment }) => treatment)).toEqual(['recordAsFound']);
  });
});
