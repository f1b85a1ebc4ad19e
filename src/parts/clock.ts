import { useEffect, useState } from 'preact/hooks';
import { useApp } from '../ui/app.ts';

/** The time zone of the phone, wherever it is now; universal time where it does not say. */
export const zoneHere = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC';

/**
 * Now, again and again: once a second for a timer, once in half a minute for waits. Asked anew when the page comes back
 * into sight, since a phone in a pocket stops counting.
 */
export function useNow(everyMs = 30_000): number {
  const { now } = useApp();
  const [ms, setMs] = useState(now());
  useEffect(() => {
    const look = (): void => setMs(now());
    look();
    const timer = setInterval(look, everyMs);
    document.addEventListener('visibilitychange', look);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', look);
    };
  }, [now, everyMs]);
  return ms;
}
