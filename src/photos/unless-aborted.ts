/** Ends early when the signal says so, whatever the work is doing. Rejects then with the signal's reason. */
export function unlessAborted<Result>(signal: AbortSignal | undefined, work: Promise<Result>): Promise<Result> {
  if (!signal) return work;
  return new Promise((resolve, reject) => {
    const stop = () => reject(signal.reason);
    if (signal.aborted) stop();
    signal.addEventListener('abort', stop, { once: true });
    work.then(resolve, reject).finally(() => signal.removeEventListener('abort', stop));
  });
}
