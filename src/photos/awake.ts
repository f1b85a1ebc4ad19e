const TICK_MS = 250;

/**
 * Calls `late` once after so much time awake; returns a way to stop waiting. Ticks are counted, not the clock read:
 * a phone put into the pocket halts page and worker alike, and that is not slowness.
 */
export function afterAwake(milliseconds: number, late: () => void): () => void {
  let left = Math.ceil(milliseconds / TICK_MS);
  const ticking = setInterval(() => {
    left -= 1;
    if (left > 0) return;
    clearInterval(ticking);
    late();
  }, TICK_MS);
  return () => clearInterval(ticking);
}
