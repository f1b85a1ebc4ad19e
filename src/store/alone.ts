const LOCK = 'blockworth-window';

/**
 * Marks this window as open for as long as it lives, and first does the job if no other window is. Without locks
 * nobody can tell, and the job is left.
 */
export async function firstWindow(locks: LockManager | undefined, job: () => Promise<unknown>): Promise<void> {
  if (!locks) return;
  const stay = () => {
    void locks.request(LOCK, { mode: 'shared' }, () => new Promise(() => {}));
  };
  await locks.request(LOCK, { mode: 'exclusive', ifAvailable: true }, async (lock) => {
    // Asked for before the exclusive lock ends, so that no other window slips in between.
    stay();
    if (lock) await job();
  });
}
