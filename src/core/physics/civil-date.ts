/**
 * Civil dates as `YYYY-MM-DD` text and whole days since 1970-01-01: no clock, no time zone. Years 1000 to 9999, Gregorian throughout.
 */
const DAY_MS = 86_400_000;
const SHAPE = /^([1-9]\d{3})-(\d\d)-(\d\d)$/;

/**
 * Days since 1970-01-01.
 * @throws RangeError for anything that is not a date of the calendar, such as 2025-02-30
 */
export function dayNumber(isoDate: string): number {
  const [, year, month, day] = SHAPE.exec(isoDate) ?? [];
  const days = Date.UTC(Number(year), Number(month) - 1, Number(day)) / DAY_MS;
  if (Number.isInteger(days) && isoDateOf(days) === isoDate) return days;
  throw new RangeError(`date: got ${isoDate}, expected a calendar date as YYYY-MM-DD.`);
}

/**
 * `YYYY-MM-DD` of a day number.
 * @throws RangeError outside the years 1000 to 9999, or for a part of a day
 */
export function isoDateOf(days: number): string {
  const text = Number.isInteger(days) && Math.abs(days) < 1e8 ? new Date(days * DAY_MS).toISOString().slice(0, 10) : '';
  if (SHAPE.test(text)) return text;
  throw new RangeError(`day number: got ${days}, expected a whole day within the years 1000 to 9999.`);
}

/** The date so many days later (earlier, if negative). @throws RangeError as {@link dayNumber} and {@link isoDateOf} */
export const daysAfter = (isoDate: string, days: number): string => isoDateOf(dayNumber(isoDate) + days);

/** Later of two dates; as text they sort in time. */
export const laterOf = (a: string, b: string): string => (a < b ? b : a);

/** Whether a text is a day of the calendar, `YYYY-MM-DD`. */
export function isDay(text: string): boolean {
  const [, year, month, day] = SHAPE.exec(text) ?? [];
  const at = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
}
