import { effect } from '@preact/signals';
import type { App } from '../ui/app.ts';
import { duesOf } from './use-dues.ts';

/** The icon's number, where the platform has one: Badging API, W3C draft. */
type Badged = Navigator & {
  setAppBadge?: (count?: number) => Promise<void>;
  clearAppBadge?: () => Promise<void>;
};

/** Longest time a timer may be set for: 2³¹ − 1 ms. Source: HTML, timers. */
const LONGEST_TIMER = 2_147_483_647;

/**
 * Keeps the number on the app's icon at what is due: waits that are over, looks at blocks in quarantine. Works without
 * signal and asks for nothing: where the platform wants a permission first, the number stays away.
 * @returns ends it
 */
export function keepBadge(app: Pick<App, 'store' | 'catalogue' | 'now'>, navigator: Badged): () => void {
  if (!navigator.setAppBadge) return () => undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let shown: number | undefined;
  const show = (): void => {
    const ms = app.now();
    const dues = duesOf(app);
    const due = dues.filter(
      ({ at, late }) => late || ('instant' in at && Date.parse(at.instant) <= ms) || isToday(at, ms),
    );
    const count = due.length;
    if (count !== shown) {
      shown = count;
      const set = count > 0 ? navigator.setAppBadge?.(count) : navigator.clearAppBadge?.();
      set?.catch(() => undefined);
    }
    const next = dues
      .flatMap(({ at }) => ('instant' in at ? Date.parse(at.instant) : Date.parse(`${at.day}T00:00`)))
      .filter((then) => then > ms)
      .sort((a, b) => a - b)[0];
    clearTimeout(timer);
    if (next !== undefined) timer = setTimeout(show, Math.min(next - ms + 1000, LONGEST_TIMER));
  };
  const stop = effect(show);
  document.addEventListener('visibilitychange', show);
  return () => {
    stop();
    clearTimeout(timer);
    document.removeEventListener('visibilitychange', show);
  };
}

/** A look at a block falls due on the morning of its day, by the clock of the phone. */
const isToday = (at: { readonly day: string } | { readonly instant: string }, ms: number): boolean =>
  'day' in at && Date.parse(`${at.day}T00:00`) <= ms;
