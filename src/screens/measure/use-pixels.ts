import { useEffect, useRef, useState } from 'preact/hooks';
import { pixelWork } from '../../parts/pixel-work.ts';
import { sentenceOf } from '../../text/errors.ts';
import type { Answer, Given, JobName } from '../../workers/pixel-jobs.ts';
import type { Desk } from './desk.ts';

export interface Pixels {
  /** What is being done; null at rest. */
  readonly busy: { readonly name: string; readonly share: number } | null;
  /** A fault of the photograph or the device, as a sentence. */
  readonly fault: string | null;
  /** The answer, or undefined when a newer question or a stop made it pointless. */
  ask<J extends JobName>(job: J, given: Given<J>): Promise<Answer<J> | undefined>;
  stop(): void;
}

/** The worker's hands for one tool: of several questions only the newest is answered. */
export function usePixels({ picture, photo }: Pick<Desk, 'picture' | 'photo'>): Pixels {
  const [busy, setBusy] = useState<Pixels['busy']>(null);
  const [fault, setFault] = useState<string | null>(null);
  const newest = useRef(0);
  const stopping = useRef<AbortController | undefined>(undefined);
  useEffect(() => () => stopping.current?.abort(), [photo.id]);
  return {
    busy,
    fault,
    async ask(job, given) {
      const turn = ++newest.current;
      const isNewest = (): boolean => turn === newest.current;
      stopping.current ??= new AbortController();
      const { signal } = stopping.current;
      setFault(null);
      setBusy({ name: 'looking', share: 0 });
      try {
        const answer = await pixelWork.ask(job, [picture], given, {
          topic: 'measure',
          signal,
          onStage: (name, share) => isNewest() && setBusy({ name, share }),
        });
        return isNewest() ? answer : undefined;
      } catch (error) {
        if (isNewest()) setFault(sentenceOf(error));
        return undefined;
      } finally {
        if (isNewest()) setBusy(null);
      }
    },
    stop() {
      newest.current += 1;
      stopping.current?.abort();
      stopping.current = undefined;
      setBusy(null);
    },
  };
}
