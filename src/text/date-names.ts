/** Names of months, seasons and doubt, shared by what reads dates and what writes them. */
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** EDTF's season codes. Which months they mean depends on the hemisphere, so no months are claimed. */
export const SEASONS: Readonly<Record<number, string>> = { 21: 'spring', 22: 'summer', 23: 'autumn', 24: 'winter' };

/** EDTF's signs of doubt: about, perhaps, both. */
export type Doubt = '' | '~' | '?' | '%';

export const doubtOf = (about: boolean, perhaps: boolean): Doubt =>
  about && perhaps ? '%' : about ? '~' : perhaps ? '?' : '';

/** As printed on a label: “c. 1931”, “1931?”, “c. 1931?”. */
export const withDoubt = (name: string, doubt: Doubt): string =>
  `${doubt === '~' || doubt === '%' ? 'c. ' : ''}${name}${doubt === '?' || doubt === '%' ? '?' : ''}`;

/** 1st, 2nd, 3rd, 4th … 11th, 21st. */
export function ordinal(n: number): string {
  const tens = n % 100 >= 11 && n % 100 <= 13;
  const ending = tens ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${ending}`;
}

export const daysInMonth = (year: number, month: number): number => new Date(Date.UTC(year, month, 0)).getUTCDate();

/** A date's EDTF text from its numbers, month from 1. */
export const edtfDate = (year: number, month?: number, day?: number): string =>
  [
    String(year).padStart(4, '0'),
    ...[month, day].flatMap((n) => (n === undefined ? [] : [String(n).padStart(2, '0')])),
  ].join('-');
