import { describe, expect, it } from 'vitest';
import type { ChoiceLot } from '../../src/core/choice.ts';
import { adviseOn } from '../../src/core/lots-choice.ts';
import { type ChoiceQuestion, chooserHere, createChooser } from '../../src/workers/chooser.ts';

const lots: readonly ChoiceLot[] = [
  { id: 'a', price: 50, minutes: 10, blocks: [{ shape: null, worth: [80] }], disposal: 0, pinned: null },
  { id: 'b', price: 60, minutes: 10, blocks: [{ shape: null, worth: [100] }], disposal: 0, pinned: null },
];
const purse = { money: 70, minutes: null, held: {} };
const steps = { money: 50, minutes: 300 };

/** A worker that answers when it is told to. */
function heldWorker() {
  const asked: ChoiceQuestion[] = [];
  let hear: (event: { data: unknown }) => void = () => undefined;
  let ended = false;
  const worker = {
    onerror: null as ((event: { message: string }) => void) | null,
    addEventListener: (_: string, listener: typeof hear) => {
      hear = listener;
    },
    postMessage: (question: ChoiceQuestion) => asked.push(question),
    terminate: () => {
      ended = true;
    },
  };
  return {
    worker: worker as unknown as Worker,
    asked,
    isEnded: () => ended,
    fail: () => worker.onerror?.({ message: 'no memory' }),
    answer: (n: number) => {
      const { id, lots: these, purse: with_, steps: by } = asked[n] as ChoiceQuestion;
      hear({ data: { id, advice: adviseOn(these, with_, by) } });
    },
  };
}

describe('choosing beside the page', () => {
  it('answers the newest question only: what came before is pointless', async () => {
    const held = heldWorker();
    const chooser = createChooser(() => held.worker);
    const older = chooser.ask(lots, purse, steps);
    const newer = chooser.ask(lots, { ...purse, money: 200 }, steps);
    expect(await older).toBeUndefined();
    held.answer(0);
    held.answer(1);
    expect((await newer)?.sets[0]?.ids).toEqual(['a', 'b']);
    expect(held.asked).toHaveLength(2);
  });

  it('says when the worker cannot run, and on the page itself answers the same', async () => {
    const held = heldWorker();
    const chooser = createChooser(() => held.worker);
    const answer = chooser.ask(lots, purse, steps);
    held.fail();
    await expect(answer).rejects.toThrow('no memory');
    expect(await chooserHere().ask(lots, purse, steps)).toEqual(adviseOn(lots, purse, steps));
  });

  it('ends its worker when the table is left', async () => {
    const held = heldWorker();
    const chooser = createChooser(() => held.worker);
    const answer = chooser.ask(lots, purse, steps);
    chooser.close();
    expect(held.isEnded()).toBe(true);
    expect(await answer).toBeUndefined();
  });
});
