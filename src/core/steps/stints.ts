import type { Settings, Stint } from '../records.ts';

const MINUTE_MS = 60_000;

/** Why a span of the timer is asked about instead of counted. */
export type Doubt = 'backwards' | 'tooLong';

/**
 * Minutes nobody works at one sitting: two hours beyond the usual evening, four at the least. A timer left running, or a
 * clock put forward, shows more. Own choice.
 */
export const longestStint = ({ eveningHours }: Pick<Settings, 'eveningHours'>): number =>
  Math.max(4, eveningHours + 2) * 60;

/** Minutes between two moments by the phone's clock, which somebody may have set meanwhile: it can be less than nothing. */
export const spanOf = ({ began }: Pick<Stint, 'began'>, endMs: number): number =>
  (endMs - Date.parse(began)) / MINUTE_MS;

/**
 * Whether to believe a span of the timer.
 * @param clockBehind the clock stands before something this phone has already written
 */
export function doubtAbout(span: number, longest: number, clockBehind = false): Doubt | null {
  if (span < 0 || clockBehind) return 'backwards';
  return span > longest ? 'tooLong' : null;
}

/** What the end of a timer is written as: minutes that count, or none yet where they must be asked for. */
export function stopped(
  stint: Pick<Stint, 'began'>,
  endMs: number,
  longest: number,
  clockBehind = false,
): Pick<Stint, 'ended' | 'minutes'> {
  const span = spanOf(stint, endMs);
  const doubt = doubtAbout(span, longest, clockBehind);
  return {
    ended: new Date(endMs).toISOString(),
    // To the tenth: a tap too early or too late is no minute's work.
    minutes: doubt ? null : Math.round(span * 10) / 10,
  };
}

/** The timer runs. */
export const isRunning = ({ ended, minutes }: Pick<Stint, 'ended' | 'minutes'>): boolean =>
  ended === null && minutes === null;

/** Stopped, and its span not believed: how long it took is still to be said. */
export const isInDoubt = ({ ended, minutes }: Pick<Stint, 'ended' | 'minutes'>): boolean =>
  ended !== null && minutes === null;

/**
 * The timer that counts: the one begun last. One pair of hands works on one step; others that run were begun on another
 * phone or left, and are asked about.
 */
export function runningStint(stints: readonly Stint[]): {
  readonly stint: Stint | undefined;
  readonly left: readonly Stint[];
} {
  const running = stints
    .filter(isRunning)
    .sort((a, b) => Date.parse(b.began) - Date.parse(a.began) || (a.id < b.id ? -1 : 1));
  return { stint: running[0], left: running.slice(1) };
}
