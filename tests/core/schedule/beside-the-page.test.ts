import { describe, expect, it } from 'vitest';
import { scheduleBench } from '../../../src/core/schedule/bench.ts';
import type { BenchInput, BenchSchedule } from '../../../src/core/schedule/types.ts';
import { createAsker, type Question, type Reply, type Stop } from '../../../src/workers/asker.ts';
import { createScheduleWork } from '../../../src/workers/schedule-work.ts';
import { createBenchScheduler } from '../../../src/workers/scheduler.ts';
import { aBench, aStep, everyEvening } from './any-bench.ts';

/** Quick by itself; on a machine with much else to do it is the machine that takes long. */
const PATIENT = { timeout: 60_000 };

// The work beside the page without a browser: the same two ends, joined by a stand-in for the worker between them. The
// worker itself runs in tests/browser/schedule.test.ts.

/** Four blocks that want one freezer: enough to search for, and never done at the first look. */
const bench = (days: number): BenchInput =>
  aBench(
    ['A', 'B', 'C', 'D'].map((blockId, n) => ({
      blockId,
      steps: [
        aStep('sand', 1.3 + n),
        aStep('freeze', 0.4, 24 * days, { waitResource: 'freezer' }),
        aStep('seal', 0.7, 48),
      ],
    })),
    { capacities: { hands: 1, freezer: 1 }, hours: everyEvening(1), budget: 300 },
  );

/** Work that may be held up in each of its pauses. */
function held() {
  const replies: Reply<BenchSchedule>[] = [];
  const pauses: (() => void)[] = [];
  let clock = 0;
  const hear = createScheduleWork({
    reply: (reply) => replies.push(reply),
    // Every look at the clock takes long enough to listen.
    now: () => {
      clock += 20;
      return clock;
    },
    pause: () => new Promise((resolve) => pauses.push(resolve)),
  });
  /** Lets everything go on until nothing more is held up. */
  async function goOn(): Promise<void> {
    while (pauses.length > 0) {
      for (const resume of pauses.splice(0)) resume();
      await new Promise((resolve) => setTimeout(resolve));
    }
  }
  return { replies, hear, goOn, isHeld: () => pauses.length > 0 };
}

describe('the work', PATIENT, () => {
  it('answers what the core answers, however often it stops to listen', async () => {
    const { replies, hear, goOn, isHeld } = held();
    const done = hear({ id: 1, facts: bench(7) });
    expect(isHeld()).toBe(true);
    await goOn();
    await done;
    expect(replies).toEqual([{ id: 1, answer: scheduleBench(bench(7)) }]);
  });

  it('drops an older question for a newer one, and any question nobody waits for', async () => {
    const { replies, hear, goOn } = held();
    const older = hear({ id: 1, facts: bench(7) });
    const newer = hear({ id: 2, facts: bench(8) });
    await goOn();
    await Promise.all([older, newer]);
    expect(replies.map(({ id }) => id)).toEqual([2]);
    const unwanted = hear({ id: 3, facts: bench(9) });
    await hear({ stop: true });
    await goOn();
    await unwanted;
    expect(replies.map(({ id }) => id)).toEqual([2]);
  });

  it('says what is wrong with the facts, and that something is wrong with itself', async () => {
    const { replies, hear } = held();
    await hear({ id: 1, facts: aBench([{ blockId: 'A', steps: [aStep('carve', 1e12)] }]) });
    await hear({ id: 2, facts: { ...bench(7), today: 'tomorrow' } });
    expect(replies).toMatchObject([
      { id: 1, failed: 'schedule-too-long' },
      { id: 2, failed: null, message: expect.stringContaining('tomorrow') },
    ]);
  });
});

/** A worker as the page sees it; `work` is what lies behind it. */
class StandIn extends EventTarget {
  heard: unknown[] = [];
  ended = false;
  private readonly work: (message: never, reply: (data: unknown) => void) => unknown;
  constructor(work: (message: never, reply: (data: unknown) => void) => unknown) {
    super();
    this.work = work;
  }
  postMessage(message: unknown): void {
    this.heard.push(message);
    this.work(structuredClone(message) as never, (data) =>
      queueMicrotask(() => this.dispatchEvent(new MessageEvent('message', { data: structuredClone(data) }))),
    );
  }
  terminate(): void {
    this.ended = true;
  }
}

describe('asking', PATIENT, () => {
  const scheduler = () => {
    const stand = new StandIn((message: Question<BenchInput> | Stop, reply) => {
      if (!('stop' in message)) {
        const hear = createScheduleWork({ reply, now: () => 0, pause: () => Promise.resolve() });
        setTimeout(() => void hear(message));
      }
    });
    return { stand, asker: createBenchScheduler(() => stand as unknown as Worker) };
  };

  it('gives the newest question of a topic its answer, the older ones none', async () => {
    const { asker } = scheduler();
    const [first, second, third] = await Promise.all([7, 8, 9].map((days) => asker.ask('bench', bench(days))));
    expect([first, second]).toEqual([undefined, undefined]);
    expect(third).toEqual(scheduleBench(bench(9)));
  });

  it('keeps topics apart', async () => {
    const { asker } = scheduler();
    const both = await Promise.all([asker.ask('bench', bench(7)), asker.ask('what if', bench(8))]);
    expect(both).toEqual([scheduleBench(bench(7)), scheduleBench(bench(8))]);
  });

  it('takes a question back, tells the worker, and goes on with the next', async () => {
    const { asker, stand } = scheduler();
    const gone = asker.ask('bench', bench(7));
    const other = asker.ask('what if', bench(8));
    asker.takeBack('bench');
    expect(await gone).toBeUndefined();
    expect(await other).toEqual(scheduleBench(bench(8)));
    expect(stand.heard).toContainEqual({ stop: true });
    asker.takeBack('never asked');
  });

  it('fails with the code the worker gives, and with a worker that breaks; the next question starts another', async () => {
    const { asker } = scheduler();
    const endless = aBench([{ blockId: 'A', steps: [aStep('carve', 1e12)] }]);
    await expect(asker.ask('bench', endless)).rejects.toMatchObject({ code: 'schedule-too-long' });
    await expect(asker.ask('bench', { ...bench(7), today: 'tomorrow' })).rejects.toThrow('The schedule worker failed');
    expect(await asker.ask('bench', bench(7))).toEqual(scheduleBench(bench(7)));

    const started: StandIn[] = [];
    const breaking = createAsker<number, number>(() => {
      const broken = started.length === 0;
      const stand: StandIn = new StandIn(({ id, facts }: Question<number>, reply) =>
        broken
          ? queueMicrotask(() => stand.dispatchEvent(Object.assign(new Event('error'), { message: 'out of memory' })))
          : reply({ id, answer: facts + 1 }),
      );
      started.push(stand);
      return stand as unknown as Worker;
    }, 'sums');
    await expect(breaking.ask('a', 1)).rejects.toThrow('The sums worker failed: out of memory');
    expect(started[0]?.ended).toBe(true);
    expect(await breaking.ask('a', 1)).toBe(2);
  });
});
