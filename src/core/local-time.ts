/**
 * Moments as the wall clock of a place shows them. Time zones come in by their IANA name; their rules are those of the
 * database the platform carries (ICU). Elapsed time is never reckoned from wall clocks: a night on which they are put
 * forward has an hour less, one on which they are put back an hour more.
 */

const MINUTE_MS = 60_000;

interface Wall {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

const clocks = new Map<string, Intl.DateTimeFormat>();

/** What calendar and clock on the wall of a zone show. @throws RangeError for a zone the platform does not know */
export function wallIn(ms: number, zone: string): Wall {
  let clock = clocks.get(zone);
  if (!clock) {
    clock = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      calendar: 'gregory',
      numberingSystem: 'latn',
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
    clocks.set(zone, clock);
  }
  const shown = new Map(clock.formatToParts(ms).map(({ type, value }) => [type as string, Number(value)]));
  const part = (name: string): number => shown.get(name) ?? 0;
  return {
    ...{ year: part('year'), month: part('month'), day: part('day') },
    ...{ hour: part('hour'), minute: part('minute'), second: part('second') },
  };
}

/** Minutes the clocks of a zone stand ahead of UTC at a moment. */
export function minutesAhead(ms: number, zone: string): number {
  const { year, month, day, hour, minute, second } = wallIn(ms, zone);
  return Math.round((Date.UTC(year, month - 1, day, hour, minute, second) - ms) / MINUTE_MS);
}

/** `+01:00`: how a record writes it. */
export function offsetText(ms: number, zone: string): string {
  const minutes = minutesAhead(ms, zone);
  const [hours, rest] = [Math.floor(Math.abs(minutes) / 60), Math.abs(minutes) % 60];
  return `${minutes < 0 ? '-' : '+'}${String(hours).padStart(2, '0')}:${String(rest).padStart(2, '0')}`;
}

/** The day on the calendar of a zone, `YYYY-MM-DD`. */
export function dayIn(ms: number, zone: string): string {
  const { year, month, day } = wallIn(ms, zone);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}
