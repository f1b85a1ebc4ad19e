/**
 * Hybrid logical clock: wall time where it runs forward, a counter where it does not, so that a later edit always has
 * the later stamp on one device and a stamp seen from elsewhere is never undercut.
 * Source: Kulkarni et al. 2014, hybrid logical clocks (from memory).
 */
export interface Clock {
  /** Highest Unix milliseconds seen, by this device's own clock or in a stamp. */
  readonly ms: number;
  readonly counter: number;
  /** 8 of [0-9a-z]; breaks ties between devices. */
  readonly device: string;
}

/** Text form of a reading, `records.ts` has its pattern; sorts as text in causal order. `''` stands for never. */
export type Stamp = string;

const LAST_MS = 2 ** 48 - 1;
const LAST_COUNTER = 0xffff;
/** How far ahead of now a stamp from elsewhere may be; phones on a network agree to seconds. Source: house rule. */
export const TOLERANCE_MS = 5 * 60_000;

export const newClock = (device: string): Clock => ({ ms: 0, counter: 0, device });

export function formatStamp({ ms, counter, device }: Clock): Stamp {
  return `${ms.toString(16).padStart(12, '0')}-${counter.toString(16).padStart(4, '0')}-${device}`;
}

/** The reading a stamp names, or null for text that is no stamp. */
export function parseStamp(stamp: Stamp): Clock | null {
  const parts = /^([0-9a-f]{12})-([0-9a-f]{4})-([0-9a-z]{8})$/.exec(stamp);
  if (!parts) return null;
  const [, ms = '', counter = '', device = ''] = parts;
  return { ms: Number.parseInt(ms, 16), counter: Number.parseInt(counter, 16), device };
}

/** Steps past both the clock's last reading and now. A wall clock set back only makes the counter run. */
function past(device: string, ms: number, counter: number, nowMs: number): Clock {
  const now = Number.isFinite(nowMs) ? Math.min(Math.max(Math.floor(nowMs), 0), LAST_MS) : 0;
  if (now > ms) return { ms: now, counter: 0, device };
  if (counter < LAST_COUNTER) return { ms, counter: counter + 1, device };
  if (ms === LAST_MS) throw new Error(`The clock is at its end, ${formatStamp({ ms, counter, device })}.`);
  return { ms: ms + 1, counter: 0, device };
}

/** The clock after one more event here; its stamp is later than every stamp it gave or received before. */
export function tick(clock: Clock, nowMs: number): Clock {
  return past(clock.device, clock.ms, clock.counter, nowMs);
}

export type Received =
  | { readonly ok: true; readonly clock: Clock }
  | { readonly ok: false; readonly code: 'clock-ahead'; readonly aheadMs: number };

/**
 * The clock after seeing another device's stamp.
 * @returns refused, with how far ahead it is, if the stamp lies more than 5 minutes beyond now: adopting it would
 *          make every later edit here look like the future too. Keep such a record aside.
 */
export function receive(clock: Clock, stamp: Stamp, nowMs: number): Received {
  const seen = parseStamp(stamp);
  if (!seen) throw new Error(`Not a stamp: ${stamp}`);
  const aheadMs = seen.ms - nowMs;
  if (aheadMs > TOLERANCE_MS) return { ok: false, code: 'clock-ahead', aheadMs };
  const [ms, counter] =
    seen.ms > clock.ms
      ? [seen.ms, seen.counter]
      : [clock.ms, seen.ms === clock.ms ? Math.max(seen.counter, clock.counter) : clock.counter];
  return { ok: true, clock: past(clock.device, ms, counter, nowMs) };
}

/**
 * The clock carried on from a stamp that is already in our own storage, however far ahead: going back behind what this
 * device wrote while its date was wrong would let old values win over new ones.
 */
export function resumed(clock: Clock, stamp: Stamp): Clock {
  const seen = parseStamp(stamp);
  if (!seen || seen.ms < clock.ms || (seen.ms === clock.ms && seen.counter <= clock.counter)) return clock;
  return { ms: seen.ms, counter: seen.counter, device: clock.device };
}
