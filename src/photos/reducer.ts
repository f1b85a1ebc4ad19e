import { type reduce, Undecodable } from './reduce.ts';
import type { ReduceReply, ReduceRequest } from './reduce-messages.ts';
import { unlessAborted } from './unless-aborted.ts';

/** The part of a Worker used here, so that tests can hand in one that dies. */
export type ReduceWorker = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

export interface Environment {
  readonly startWorker: () => ReduceWorker;
  readonly reduceInPage: (...request: Parameters<Reduce>) => ReturnType<typeof reduce>;
  /** Pictures in the making at once: each holds its pixels, and more than there are cores gain nothing. */
  readonly hands: number;
}

/**
 * A smaller JPEG, or undefined for a picture that this browser cannot decode.
 * @throws the signal's reason when aborted
 */
export type Reduce = (
  source: ReduceRequest['source'],
  upright: ReduceRequest['upright'],
  target: ReduceRequest['target'],
) => Promise<ArrayBuffer | undefined>;

interface Hand {
  worker?: ReduceWorker | undefined;
}

/**
 * Makes pictures smaller, several at once beside the page, or one at a time in it where its workers have no canvas.
 * Workers start when needed and end with the signal, whatever they are doing: abort it when all is made.
 */
export function createReducer({ startWorker, reduceInPage, hands }: Environment, signal: AbortSignal): Reduce {
  const all: Hand[] = Array.from({ length: hands }, () => ({}));
  const free = [...all];
  const waiting: ((hand: Hand) => void)[] = [];
  let workersWork = true;
  let lastInPage: Promise<unknown> = Promise.resolve();

  signal.addEventListener('abort', () => {
    for (const hand of all) hand.worker?.terminate();
  });

  const inWorker = (hand: Hand, request: ReduceRequest): Promise<ReduceReply> =>
    new Promise((resolve, reject) => {
      const isNew = !hand.worker;
      hand.worker ??= startWorker();
      const { worker } = hand;
      worker.onmessage = ({ data }: MessageEvent<ReduceReply>) => resolve(data);
      // A worker that never spoke could not be loaded; one that did has died.
      worker.onerror = ({ message }) => {
        worker.terminate();
        hand.worker = undefined;
        if (isNew) resolve({ what: 'unable' });
        else reject(new Error(`A worker for photographs died: ${message}`));
      };
      worker.postMessage(request);
    });

  async function inPage(...request: Parameters<Reduce>): Promise<ArrayBuffer | undefined> {
    signal.throwIfAborted();
    try {
      return await (await reduceInPage(...request)).arrayBuffer();
    } catch (error) {
      if (error instanceof Undecodable) return undefined;
      throw error;
    }
  }

  async function by(hand: Hand, ...request: Parameters<Reduce>): Promise<ArrayBuffer | undefined> {
    const [source, upright, target] = request;
    if (workersWork) {
      const reply = await inWorker(hand, { source, upright, target });
      if (reply.what === 'done') return reply.jpeg;
      if (reply.what === 'undecodable') return undefined;
      if (reply.what === 'failed') throw new Error(reply.reason);
      workersWork = false;
    }
    const made = lastInPage.then(() => inPage(...request));
    lastInPage = made.catch(() => undefined);
    return made;
  }

  async function make(...request: Parameters<Reduce>): Promise<ArrayBuffer | undefined> {
    const hand = free.pop() ?? (await new Promise<Hand>((resolve) => waiting.push(resolve)));
    try {
      signal.throwIfAborted();
      return await by(hand, ...request);
    } finally {
      const next = waiting.shift();
      if (next) next(hand);
      else free.push(hand);
    }
  }

  return (...request) => unlessAborted(signal, make(...request));
}
