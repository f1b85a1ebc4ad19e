/**
 * Words for numbers. Units and currency come in as arguments: the settings know, the numbers do not. Between a number and
 * its unit stands a space that does not break, so that no line begins with a unit.
 */

export type LengthUnits = 'mm' | 'inch';

/** Digits after the point of a currency, by ISO 4217 as the platform knows it. */
export function minorDigits(currency: string): number {
  return new Intl.NumberFormat('en-GB', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

/** `£42`, `£42.50`, `−£3`: whole amounts without an empty fraction. */
export function money(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  const value = minor / 10 ** digits;
  const whole = Number.isInteger(value);
  return new Intl.NumberFormat('en-GB', {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
    minimumFractionDigits: whole ? 0 : digits,
    maximumFractionDigits: whole ? 0 : digits,
  })
    .format(value)
    .replace('-', '−');
}

/** `£42`: to the whole unit, downwards, for limits and ranges where pence would pretend. */
export function moneyAbout(minor: number, currency: string): string {
  const unit = 10 ** minorDigits(currency);
  return money(Math.floor(minor / unit) * unit, currency);
}

/** The symbol to stand beside a money field. */
export const currencySymbol = (currency: string): string =>
  new Intl.NumberFormat('en-GB', { style: 'currency', currency, currencyDisplay: 'narrowSymbol' })
    .formatToParts(0)
    .find(({ type }) => type === 'currency')?.value ?? currency;

/** Reads what a person types into a money field; null when empty, undefined when it is not an amount. */
export function readMoney(text: string, currency: string): number | null | undefined {
  const bare = text.replace(/[\s,£$€]/g, '').replace('−', '-');
  if (bare === '') return null;
  if (!/^-?\d{1,7}(\.\d{0,3})?$/.test(bare)) return undefined;
  const minor = Number(bare) * 10 ** minorDigits(currency);
  return Math.round(minor);
}

const trim = (value: number, digits: number): string =>
  value.toLocaleString('en-GB', { maximumFractionDigits: digits, useGrouping: false }).replace('-', '−');

/** `42 mm`, `0.3 mm`, or `1⅝ in` to the eighth above an inch and decimal below. */
export function length(mm: number, units: LengthUnits): string {
  if (units === 'mm') return `${trim(mm, mm < 10 ? 2 : 1)}\u00a0mm`;
  const inches = mm / 25.4;
  if (inches < 1) return `${trim(inches, 3)}\u00a0in`;
  const eighths = Math.round(inches * 8);
  const fraction = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'][eighths % 8] ?? '';
  return `${Math.floor(eighths / 8)}${fraction}\u00a0in`;
}

/** `1¼ h`, `12 h`, `20 min`: hands-on time as one says it. */
export function hours(value: number): string {
  if (value < 0.05) return '0\u00a0h';
  if (value < 1) return `${Math.max(5, Math.round((value * 60) / 5) * 5)}\u00a0min`;
  const quarters = Math.round(value * 4);
  if (value >= 10) return `${Math.round(value)}\u00a0h`;
  const fraction = ['', '¼', '½', '¾'][quarters % 4] ?? '';
  return `${Math.floor(quarters / 4)}${fraction}\u00a0h`;
}

/** `5–8 h`, `1–3 days`, `20 min–2 h`, `£5–£8`: two figures as a range, a unit they share said once. */
export function between(low: string, high: string): string {
  if (low === high) return low;
  const [first, unit] = low.split('\u00a0');
  const same = unit !== undefined && unit.replace(/s$/, '') === high.split('\u00a0')[1]?.replace(/s$/, '');
  return same ? `${first}–${high}` : `${low}–${high}`;
}

/** `5–8 h`, `20–40 min`: a range in one unit. */
export const hoursRange = (low: number, high: number): string => between(hours(low), hours(high));

export const days = (value: number): string => (value === 1 ? '1\u00a0day' : `${value}\u00a0days`);

/** `90 %` from 0.9. */
export const percent = (share: number): string => `${Math.round(share * 100)}\u00a0%`;

/** `9 times in 10`, for a chance said aloud. */
export function timesInTen(share: number): string {
  const tenths = Math.round(share * 10);
  if (tenths >= 10) return share > 0.985 ? 'practically always' : 'more than 9 times in 10';
  if (tenths <= 0) return 'hardly ever';
  return `${tenths} ${tenths === 1 ? 'time' : 'times'} in 10`;
}

/** `a`, `a and b`, `a, b and c`. */
export function list(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** A measure with its unit as it is asked for: `12 %`, `3 per cm²`, `40 mm`. */
export function measured(value: number, unit: string, units: LengthUnits): string {
  if (unit === 'mm') return length(value, units);
  const word =
    {
      pct: '\u00a0%',
      cm2: '\u00a0cm²',
      count: '',
      perCm2: '\u00a0per\u00a0cm²',
      perDm2: '\u00a0per\u00a0dm²',
      g: '\u00a0g',
      level: ' of 4',
    }[unit] ?? '';
  return `${trim(value, 2)}${word}`;
}

/** First letter large, for a term that opens a line. */
export const opening = (text: string): string => text.charAt(0).toLocaleUpperCase('en-GB') + text.slice(1);
