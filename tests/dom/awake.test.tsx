import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { awakeDuring } from '../../src/parts/awake.ts';

// Checked against the W3C Screen Wake Lock API: a lock is a sentinel with `release`, and goes when the page is hidden.
const released = vi.fn(async () => undefined);
const request = vi.fn(async () => ({ release: released }) as unknown as WakeLockSentinel);

beforeEach(() => {
  request.mockClear();
  released.mockClear();
  Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request } });
});
afterEach(() => {
  Reflect.deleteProperty(navigator, 'wakeLock');
});

describe('long work', () => {
  it('keeps the screen on until it is done, also after the page was away', async () => {
    const result = await awakeDuring(async () => {
      await vi.waitFor(() => expect(request).toHaveBeenCalledWith('screen'));
      expect(released).not.toHaveBeenCalled();
      document.dispatchEvent(new Event('visibilitychange'));
      await vi.waitFor(() => expect(request).toHaveBeenCalledTimes(2));
      return 7;
    });
    expect(result).toBe(7);
    await vi.waitFor(() => expect(released).toHaveBeenCalled());
    document.dispatchEvent(new Event('visibilitychange'));
    expect(request).toHaveBeenCalledTimes(2);
  });

  it('lets the screen go when it fails, and passes the failure on', async () => {
    const work = async (): Promise<never> => {
      await vi.waitFor(() => expect(request).toHaveBeenCalled());
      throw new Error('no room');
    };
    await expect(awakeDuring(work)).rejects.toThrow('no room');
    await vi.waitFor(() => expect(released).toHaveBeenCalledTimes(1));
  });

  it('goes on where the browser refuses or knows no such lock', async () => {
    request.mockRejectedValueOnce(new DOMException('Low battery', 'NotAllowedError'));
    expect(await awakeDuring(async () => 1)).toBe(1);
    Reflect.deleteProperty(navigator, 'wakeLock');
    expect(await awakeDuring(async () => 2)).toBe(2);
  });
});
