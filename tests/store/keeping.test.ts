import { describe, expect, it } from 'vitest';
import { firstWindow } from '../../src/store/alone.ts';
import { newDeviceId } from '../../src/store/device.ts';
import { createKeeping, roomIn } from '../../src/store/persist.ts';

describe('room for photographs', () => {
  it('is low from 70 % and full from 90 %, and unknown where the browser is silent', () => {
    const used = (usage: number) => roomIn({ usage, quota: 1000 });
    expect([699, 700, 899, 900].map(used)).toEqual(['enough', 'low', 'low', 'full']);
    expect(roomIn(null)).toBe('unknown');
    expect(roomIn({ usage: 0, quota: 0 })).toBe('unknown');
  });

  it('counts the original that is about to be kept', async () => {
    const keeping = createKeeping({ estimate: async () => ({ usage: 850, quota: 1000 }) });
    expect(await keeping.mayKeepOriginal(49)).toBe(true);
    expect(await keeping.mayKeepOriginal(50)).toBe(false);
    expect(keeping.room.value).toBe('low');
  });

  it('lets originals be kept where nobody knows the room', async () => {
    expect(await createKeeping(undefined).mayKeepOriginal(5e6)).toBe(true);
    const failing = createKeeping({ estimate: () => Promise.reject(new Error('no')) });
    expect(await failing.mayKeepOriginal(5e6)).toBe(true);
  });
});

describe('the promise to keep', () => {
  it('is not asked for twice, nor where it was given before', async () => {
    let asked = 0;
    const granted = createKeeping({ persisted: async () => true, persist: async () => !!++asked });
    await granted.photoSaved();
    expect([asked, granted.persistence.value]).toEqual([0, 'granted']);
    const refused = createKeeping({ persisted: async () => false, persist: async () => !++asked });
    await refused.photoSaved();
    await refused.photoSaved();
    expect([asked, refused.persistence.value]).toEqual([1, 'refused']);
    expect(createKeeping(undefined).persistence.value).toBe('cannot');
  });
});

describe('a device’s id', () => {
  it('is 8 letters or digits, each as likely as another', () => {
    const counts = new Map<string, number>();
    for (let i = 0; i < 4500; i++) {
      const id = newDeviceId();
      expect(id).toMatch(/^[0-9a-z]{8}$/);
      for (const letter of id) counts.set(letter, (counts.get(letter) ?? 0) + 1);
    }
    // 36,000 draws, 1,000 expected each; six standard deviations of a binomial are 187.
    expect(counts.size).toBe(36);
    for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(187);
  });

  it('leaves out bytes that would favour the first letters', () => {
    const fill = [255, 252, 253, 254, 251, 0, 35, 36];
    let at = 0;
    const id = newDeviceId((bytes) => {
      for (let i = 0; i < bytes.length; i++) bytes[i] = fill[at++ % fill.length] as number;
    });
    expect(id).toBe('z0z0z0z0');
  });
});

/** Locks as the platform has them, enough for one name: shared with shared, exclusive with none, first come first. */
function locks() {
  const held = new Set<{ mode: LockMode }>();
  const queue: (() => void)[] = [];
  const fits = (mode: LockMode) =>
    mode === 'shared' ? [...held].every((lock) => lock.mode === 'shared') : held.size === 0;
  const request = async (_: string, options: LockOptions, job: (lock: Lock | null) => Promise<unknown>) => {
    const lock = { mode: options.mode ?? 'exclusive' };
    if (!fits(lock.mode)) {
      if (options.ifAvailable) return job(null);
      await new Promise<void>((resolve) => queue.push(resolve));
    }
    held.add(lock);
    try {
      return await job(lock as Lock);
    } finally {
      held.delete(lock);
      for (const next of queue.splice(0)) next();
    }
  };
  return { request } as unknown as LockManager;
}

describe('sweeping', () => {
  it('is for the first window only: undo in another may still want the bytes', async () => {
    const manager = locks();
    const swept: string[] = [];
    await firstWindow(manager, async () => swept.push('first'));
    await firstWindow(manager, async () => swept.push('second'));
    expect(swept).toEqual(['first']);
  });

  it('is left where nobody can tell', async () => {
    const swept: string[] = [];
    await firstWindow(undefined, async () => swept.push('blind'));
    expect(swept).toEqual([]);
  });
});
