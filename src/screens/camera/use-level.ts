import { useEffect, useState } from 'preact/hooks';
import { type Level, levelOf } from './level.ts';

/** Nothing heard within this: a phone without the sense, or a browser that keeps it to itself. */
const SILENT_AFTER_MS = 1500;

export type LevelState =
  | { readonly at: 'off' | 'listening' | 'refused' | 'none' }
  | { readonly at: 'on'; readonly level: Level };

interface Asks {
  readonly requestPermission?: () => Promise<'granted' | 'denied' | 'default'>;
}
const orientation = (): Asks | undefined =>
  (globalThis as { readonly DeviceOrientationEvent?: Asks }).DeviceOrientationEvent;

/** Whether there is a level to offer at all. */
export const levelIsOffered = (): boolean => orientation() !== undefined;

/** The phone's sense of gravity while `wanted`. `allow` must be called from a tap: iPhones ask their owner then. */
export function useLevel(wanted: boolean): { readonly state: LevelState; readonly allow: () => Promise<boolean> } {
  const [state, setState] = useState<LevelState>({ at: 'off' });
  useEffect(() => {
    if (!wanted) {
      setState({ at: 'off' });
      return;
    }
    setState({ at: 'listening' });
    let last = 0;
    const silent = setTimeout(() => setState({ at: 'none' }), SILENT_AFTER_MS);
    const onOrientation = ({ beta, gamma, timeStamp }: DeviceOrientationEvent): void => {
      if (beta === null || gamma === null) return;
      clearTimeout(silent);
      // Fifteen times a second is as much as an eye follows, and leaves the phone its battery.
      if (timeStamp - last < 66) return;
      last = timeStamp;
      setState({ at: 'on', level: levelOf(beta, gamma, screen.orientation?.angle ?? 0) });
    };
    addEventListener('deviceorientation', onOrientation);
    return () => {
      clearTimeout(silent);
      removeEventListener('deviceorientation', onOrientation);
    };
  }, [wanted]);
  return {
    state,
    async allow() {
      const ask = orientation()?.requestPermission;
      if (!ask) return true;
      const answer = await ask().catch(() => 'denied' as const);
      if (answer !== 'granted') setState({ at: 'refused' });
      return answer === 'granted';
    },
  };
}
