/**
 * Does long work with the screen kept on, where the browser allows it: a phone that goes to sleep halts the page. The browser
 * takes the lock back whenever the page is hidden, so it is asked for again once the page is seen.
 * Source: W3C Screen Wake Lock API.
 */
export async function awakeDuring<T>(work: () => Promise<T>): Promise<T> {
  let lock: WakeLockSentinel | undefined;
  let isOver = false;
  const ask = async (): Promise<void> => {
    // Refused when the battery is low or the page hidden: the work goes on all the same.
    const given = await navigator.wakeLock.request('screen').catch(() => undefined);
    if (isOver) await given?.release();
    else lock = given;
  };
  const again = (): void => {
    if (document.visibilityState === 'visible') void ask();
  };
  const isThere = 'wakeLock' in navigator;
  if (isThere) {
    document.addEventListener('visibilitychange', again);
    void ask();
  }
  try {
    return await work();
  } finally {
    isOver = true;
    document.removeEventListener('visibilitychange', again);
    void lock?.release();
  }
}
