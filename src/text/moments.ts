import { dayIn, minutesAhead, wallIn } from '../core/local-time.ts';
import { dayNumber } from '../core/physics/civil-date.ts';
import { MONTHS } from './date-names.ts';

const WEEKDAYS = ['Thursday', 'Friday', 'Saturday', 'Sunday', 'Monday', 'Tuesday', 'Wednesday'] as const;
const two = (value: number): string => String(value).padStart(2, '0');

/** `21:05` by the clocks of a zone. */
export function timeWords(ms: number, zone: string): string {
  const { hour, minute } = wallIn(ms, zone);
  return `${two(hour)}:${two(minute)}`;
}

/** What people call the time a zone keeps at a moment: `BST`, `GMT+1`. */
const zoneWord = (ms: number, zone: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone: zone, timeZoneName: 'short' })
    .formatToParts(ms)
    .find(({ type }) => type === 'timeZoneName')?.value ?? '';

/**
 * `today at 21:05`, `tomorrow at 20:00`, `Sunday at 20:00`, `Sunday 25 October at 20:00`: a moment by the clocks of a zone.
 * Where they are put forward or back before then, the name of the time is said with it, since 01:30 may come twice.
 */
export function momentWords(ms: number, nowMs: number, zone: string): string {
  const day = dayNumber(dayIn(ms, zone));
  const away = day - dayNumber(dayIn(nowMs, zone));
  const time = timeWords(ms, zone);
  const other = minutesAhead(ms, zone) === minutesAhead(nowMs, zone) ? '' : ` (${zoneWord(ms, zone)})`;
  return `${dayWord(ms, nowMs, zone, day, away)} at ${time}${other}`;
}

function dayWord(ms: number, nowMs: number, zone: string, day: number, away: number): string {
  const near = away === 0 ? 'today' : away === 1 ? 'tomorrow' : away === -1 ? 'yesterday' : undefined;
  if (near) return near;
  const weekday = WEEKDAYS[((day % 7) + 7) % 7] ?? '';
  if (away > 0 && away < 7) return weekday;
  const { year, month, day: date } = wallIn(ms, zone);
  const otherYear = year === wallIn(nowMs, zone).year ? '' : ` ${year}`;
  return `${weekday} ${date} ${MONTHS[month - 1]}${otherYear}`;
}

/** `20 min`, `3 h`, `2 days`: how long it is until then, or was since. */
export function spanWords(ms: number): string {
  const minutes = Math.max(1, Math.round(Math.abs(ms) / 60_000));
  if (minutes < 60) return `${minutes} min`;
  const hours = Math.round(minutes / 60);
  if (hours < 36) return `${hours} h`;
  return `${Math.round(hours / 24)} days`;
}

/** `35 min`, `2 h 5 min`: work as it is written down. */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return whole % 60 === 0 ? `${whole / 60} h` : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}

/** `0:35:12` on a running timer. */
export function stopWatch(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}
