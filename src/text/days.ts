import { MONTHS } from './date-names.ts';

/** `30 September 2026` from `2026-09-30`. */
export function dayWords(isoDate: string): string {
  const [year, month, day] = isoDate.split('-').map(Number);
  return `${day} ${MONTHS[(month ?? 1) - 1]} ${year}`;
}

/** `1 April to 30 September 2026`: the first year only where it differs. */
export function daySpan(first: string, last: string): string {
  const from = dayWords(first);
  return `${first.slice(0, 4) === last.slice(0, 4) ? from.replace(/ \d+$/, '') : from} to ${dayWords(last)}`;
}

/** The day it is where the phone is, `YYYY-MM-DD`, from Unix milliseconds. */
export function dayHere(ms: number): string {
  const at = new Date(ms);
  return [at.getFullYear(), at.getMonth() + 1, at.getDate()]
    .map((part, index) => String(part).padStart(index === 0 ? 4 : 2, '0'))
    .join('-');
}

/** `20 October 2026, 18:30`: a moment as the clock on the wall shows it, from UTC. */
export const momentWords = (instant: string): string =>
  `${dayWords(dayHere(Date.parse(instant)))}, ${clockHere(Date.parse(instant))}`;

/** `18:30` where the phone is. */
export const clockHere = (ms: number): string => {
  const at = new Date(ms);
  return [at.getHours(), at.getMinutes()].map((part) => String(part).padStart(2, '0')).join(':');
};
