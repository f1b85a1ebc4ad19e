/*
 * The one file that brings in the date grammar (some 13 kB packed): load it with `import('../text/edtf-words.ts')` when a
 * date is first typed or printed.
 */
import edtf, { type ParsedDate, type ParsedEnd, type ParsedInterval, parse } from 'edtf';
import { type Doubt, daysInMonth, doubtOf, edtfDate, MONTHS, ordinal, SEASONS, withDoubt } from './date-names.ts';
import { readPhrase } from './date-phrases.ts';
import { isRefusal } from './date-units.ts';

/** A date as understood. */
export interface ReadDate {
  /** EDTF level 0 or 1, as stored. */
  readonly edtf: string;
  /** What it says, in plain words: “some year in the 1930s”. */
  readonly meaning: string;
  /** As printed on a label: “1930s”. */
  readonly label: string;
  /** First and last day it can mean, ISO; null where open or unknown. */
  readonly earliest: string | null;
  readonly latest: string | null;
}

export type DateReading = ({ readonly ok: true } & ReadDate) | { readonly ok: false; readonly reason: string };

const refusal = (reason: string): DateReading => ({ ok: false, reason });
const LEVEL = { level: 1 } as const;

const doubtIn = ({ approximate, uncertain }: ParsedDate): Doubt => doubtOf(Boolean(approximate), Boolean(uncertain));
const DOUBT_WORDS: Readonly<Record<Doubt, string>> = {
  '': '',
  '~': 'about ',
  '?': 'perhaps ',
  '%': 'perhaps and about ',
};

/** Bits of the X digits, as the grammar numbers them. */
const UNSPECIFIED = { decade: 8, century: 12, month: 48, day: 192, monthAndDay: 240 } as const;

const clock = ([, , , hour = 0, minute = 0]: readonly number[]): string =>
  [hour, minute].map((part) => String(part).padStart(2, '0')).join(':');

/** Name of one date without its doubt. The grammar counts months from 0. */
function nameOf({ type, values, unspecified }: ParsedDate): string {
  const [year = 0, month = 0, day = 0] = values;
  const monthName = `${MONTHS[month]} ${year}`;
  if (type === 'Season') return `${SEASONS[month]} ${year}`;
  if (unspecified === UNSPECIFIED.decade) return year % 100 === 0 ? `${year}s (decade)` : `${year}s`;
  if (unspecified === UNSPECIFIED.century) return `${ordinal(year / 100 + 1)} century`;
  if (unspecified === UNSPECIFIED.month || unspecified === UNSPECIFIED.monthAndDay || values.length === 1)
    return String(year);
  if (unspecified === UNSPECIFIED.day || values.length === 2) return monthName;
  return `${day} ${monthName}`;
}

/** What one date says. Source of the wording: trade handbook, dates; meanings by the EDTF specification, 2019. */
function meaningOf(date: ParsedDate): string {
  const { type, values, unspecified, timeZone } = date;
  const doubt = DOUBT_WORDS[doubtIn(date)];
  const name = nameOf(date);
  const year = values[0] ?? 0;
  if (values.length > 3) return timeZone === undefined ? 'a moment, its zone not given' : 'a moment with zone';
  if (unspecified === UNSPECIFIED.decade)
    return year % 100 === 0 ? `some year from ${year} to ${year + 9}` : `some year in the ${name}`;
  if (unspecified === UNSPECIFIED.century) return `some year from ${year} to ${year + 99}`;
  if (unspecified === UNSPECIFIED.month) return `some month in ${name}`;
  if (unspecified) return `some day in ${name}`;
  return doubt === '' && values.length === 1 && type === 'Date' ? `the year ${name}` : doubt + name;
}

function labelOf(date: ParsedDate): string {
  const { values, timeZone } = date;
  if (values.length <= 3) return withDoubt(nameOf(date), doubtIn(date));
  return `${nameOf({ ...date, values: values.slice(0, 3) })}, ${clock(values)}${timeZone === undefined ? '' : ` (${timeZone})`}`;
}

/** A whole decade or century in doubt is stored as an interval of two equally doubtful years; here it gets its name back. */
function wholeSpan(start: ParsedDate, end: ParsedDate): string | null {
  const [from = 0, to = 0] = [start.values[0], end.values[0]];
  const alike = doubtIn(start) !== '' && doubtIn(start) === doubtIn(end);
  if (!alike || start.values.length > 1 || end.values.length > 1) return null;
  if (from % 10 === 0 && from % 100 !== 0 && to === from + 9) return `${from}s`;
  return from % 100 === 0 && to === from + 99 ? `${ordinal(from / 100 + 1)} century` : null;
}

type Words = Pick<ReadDate, 'meaning' | 'label'>;

const inPhrase = (date: ParsedDate): string => DOUBT_WORDS[doubtIn(date)] + nameOf(date);

const dateAt = (end: ParsedEnd): ParsedDate | null => (typeof end === 'object' ? end : null);

/** “..” is an end known to be open, nothing at all an end not known. */
function openWords(startEnd: ParsedEnd, endEnd: ParsedEnd): Words {
  const [start, end] = [dateAt(startEnd), dateAt(endEnd)];
  if (start) {
    return endEnd === null
      ? { meaning: `end unknown, from ${inPhrase(start)}`, label: `from ${labelOf(start)} (end unknown)` }
      : { meaning: `open end, from ${inPhrase(start)}`, label: `${labelOf(start)} or later` };
  }
  if (!end) return { meaning: 'any time', label: 'any time' };
  return startEnd === null
    ? { meaning: `start unknown, to ${inPhrase(end)}`, label: `until ${labelOf(end)} (start unknown)` }
    : { meaning: `open start, to ${inPhrase(end)}`, label: `until ${labelOf(end)}` };
}

function intervalWords([startEnd, endEnd]: ParsedInterval['values']): Words {
  const [start, end] = [dateAt(startEnd), dateAt(endEnd)];
  if (!start || !end) return openWords(startEnd, endEnd);
  const doubt = doubtIn(start);
  const whole = wholeSpan(start, end);
  if (whole) return { meaning: `${DOUBT_WORDS[doubt]}the ${whole}`, label: withDoubt(whole, doubt) };
  const meaning = `from ${inPhrase(start)} to ${inPhrase(end)}`;
  if (doubt !== doubtIn(end)) return { meaning, label: `from ${labelOf(start)} to ${labelOf(end)}` };
  return { meaning, label: withDoubt(`${nameOf(start)}–${nameOf(end)}`, doubt) };
}

/** Whether a day exists; the package would roll 30 February on into March. */
const dayExists = ({ values: [year = 0, month = 0, day = 1] }: ParsedDate): boolean =>
  day <= daysInMonth(year, month + 1);

const isInterval = (date: ParsedDate | ParsedInterval): date is ParsedInterval => date.type === 'Interval';
const isoDay = (milliseconds: number | null): string | null =>
  milliseconds === null || !Number.isFinite(milliseconds) ? null : new Date(milliseconds).toISOString().slice(0, 10);

/**
 * First and last day of what is written; a moment's is the day on its own clock, not Greenwich's.
 * @returns null for an interval that does not run forward: the package makes no object of it
 */
function bounds(parsed: ParsedDate | ParsedInterval, text: string): Pick<ReadDate, 'earliest' | 'latest'> | null {
  if (isInterval(parsed)) {
    try {
      const { min, max } = edtf(text, LEVEL);
      return { earliest: isoDay(min), latest: isoDay(max) };
    } catch {
      return null;
    }
  }
  if (parsed.values.length > 3) return { earliest: text.slice(0, 10), latest: text.slice(0, 10) };
  const [year = 0, season] = parsed.values;
  if (parsed.type === 'Season') {
    // Winter in the north and summer in the south run into the next year; February may have 29 days.
    const runsOver = season === 24 || season === 22;
    const last = runsOver ? edtfDate(year + 1, 2, daysInMonth(year + 1, 2)) : edtfDate(year, 12, 31);
    return { earliest: edtfDate(year, 1, 1), latest: last };
  }
  const { min, max } = edtf(text, LEVEL);
  return { earliest: isoDay(min), latest: isoDay(max) };
}

const notKept = (text: string): string => `“${text}” is not a date in the form this keeps.`;

/**
 * Reads an EDTF string, level 0 or 1, years 0000 to 9999.
 * @returns its meaning, label and first and last day, or a refusal with the reason as a sentence; never throws
 */
export function readEdtf(text: string): DateReading {
  const written = text.trim();
  let parsed: ParsedDate | ParsedInterval;
  try {
    parsed = parse(written, LEVEL);
  } catch {
    return refusal(notKept(written));
  }
  const dates = isInterval(parsed) ? parsed.values.map(dateAt).filter((date) => date !== null) : [parsed];
  if (dates.some(({ type }) => type === 'Century' || type === 'Decade')) return refusal(notKept(written));
  const outside = dates.some(({ type, values: [year = 0] }) => type === 'Year' || year < 0);
  if (outside) return refusal(`“${written}” is outside the years 0000 to 9999.`);
  if (!dates.every((date) => date.type === 'Season' || dayExists(date)))
    return refusal(`“${written}” names a day that does not exist.`);
  const days = bounds(parsed, written);
  if (days === null) return refusal(`“${written}” ends before it starts.`);
  const words = isInterval(parsed)
    ? intervalWords(parsed.values)
    : { meaning: meaningOf(parsed), label: labelOf(parsed) };
  return { ok: true, edtf: written, ...words, ...days };
}

/**
 * Reads what a milliner types: “about 1931”, “1930s”, “c. 1940s”, “before 1940”, “1931-64”, “November 1958”, “17 Oct 2026”,
 * or EDTF itself. What could be read two ways is refused with both ways named. “Before” and “after” leave the year itself
 * out; early, mid and late are thirds, as about (own reading).
 * @returns EDTF, words and days, or a refusal that says what to write instead; never throws
 */
export function edtfFromWords(typed: string): DateReading {
  const phrase = readPhrase(typed);
  if (isRefusal(phrase)) return refusal(phrase.refused);
  const reading = readEdtf(phrase.edtf);
  return reading.ok && phrase.label ? { ...reading, label: phrase.label } : reading;
}
