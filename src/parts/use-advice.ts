import { useEffect, useRef, useState } from 'preact/hooks';
import type { ChoiceLot, Purse } from '../core/choice.ts';
import type { Advice, Steps } from '../core/lots-choice.ts';
import { type Chooser, chooserHere, createChooser } from '../workers/chooser.ts';

const startWorker = (): Worker =>
  new Worker(new URL('../workers/choice.worker.ts', import.meta.url), { type: 'module', name: 'choice' });

/** What to take, reckoned beside the page; the last answer stays, marked stale, while the next is made. */
export function useAdvice(
  lots: readonly ChoiceLot[],
  purse: Purse,
  steps: Steps,
): { readonly advice: Advice | undefined; readonly stale: boolean } {
  const question = JSON.stringify([lots, purse, steps]);
  const chooser = useRef<Chooser | undefined>(undefined);
  const [answer, setAnswer] = useState<{ readonly to: string; readonly advice: Advice }>();
  useEffect(() => {
    chooser.current ??= typeof Worker === 'undefined' ? chooserHere() : createChooser(startWorker);
    let current = true;
    chooser.current
      .ask(lots, purse, steps)
      .catch(() => chooserHere().ask(lots, purse, steps))
      .then((advice) => {
        if (advice && current) setAnswer({ to: question, advice });
      });
    return () => {
      current = false;
    };
  }, [question]);
  useEffect(() => () => chooser.current?.close(), []);
  return { advice: answer?.advice, stale: answer?.to !== question };
}
