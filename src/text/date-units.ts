import { type Doubt, daysInMonth, doubtOf, edtfDate, MONTHS, ordinal, SEASONS, withDoubt } from './date-names.ts';

/** One stretch of time someone can name: a day, a month, a season, a year, a decade, a century, or a part of one. */
export interface DateUnit {
  /** First and last day, month or year in it, as EDTF. The same where the unit is one of those. */
  readonly start: string;
  readonly end: string;
  /** The whole as one EDTF date, 193X for a decade; null where EDTF has none. */
  readonly single: string | null;
  readonly name: string;
  readonly doubt: Doubt;
}

/** Why something cannot be read, as a sentence for the person who typed it. */
export interface Refusal {
  readonly refused: string;
}
export const refuse = (refused: string): Refusal => ({ refused });
export const isRefusal = (reading: object): reading is Refusal => 'refused' in reading;

const span = (start: number, end: number, single: string | null, name: string, doubt: Doubt = ''): DateUnit => ({
  start: edtfDate(start),
  end: edtfDate(end),
  single,
  name,
  doubt,
});
const single = (edtf: string, name: string): DateUnit => ({ start: edtf, end: edtf, single: edtf, name, doubt: '' });

/** 1 to 12 for a month's name or its first three letters and more; 0 for anything else. */
const monthOf = (word: string): number => {
  const start = word.replace(/\.$/, '');
  return start.length < 3 ? 0 : 1 + MONTHS.findIndex((month) => month.toLowerCase().startsWith(start));
};

function month(year: number, month: number): DateUnit | Refusal {
  const name = MONTHS[month - 1];
  return name ? single(edtfDate(year, month), `${name} ${year}`) : refuse(`There is no month ${month}.`);
}

function day(year: number, month: number, day: number): DateUnit | Refusal {
  const name = MONTHS[month - 1];
  if (!name) return refuse(`There is no month ${month}.`);
  const days = daysInMonth(year, month);
  if (day < 1 || day > days) return refuse(`${name} ${year} has ${days} days.`);
  return single(edtfDate(year, month, day), `${day} ${name} ${year}`);
}

/** 17/10/2026 is plain, 3/4/1958 is not: people put day and month either way round. With dots the day comes first. */
function numericDay(first: number, second: number, year: number, mark: string): DateUnit | Refusal {
  if (mark === '.' || first > 12 || first < 1 || second < 1 || first === second) return day(year, second, first);
  if (second > 12) return day(year, first, second);
  return refuse(
    `That could be ${first} ${MONTHS[second - 1]} or ${second} ${MONTHS[first - 1]} ${year}. Write the month as a word.`,
  );
}

/** Early, mid and late are read as thirds, and as about: own reading, no source. */
const PARTS = { early: 0, mid: 1, late: 2 } as const;
type Part = keyof typeof PARTS;

const DECADE_THIRDS = [
  [0, 3],
  [4, 6],
  [7, 9],
] as const;
const CENTURY_THIRDS = [
  [0, 33],
  [34, 66],
  [67, 99],
] as const;

function partOf(
  part: Part,
  from: number,
  thirds: typeof DECADE_THIRDS | typeof CENTURY_THIRDS,
  name: string,
): DateUnit {
  const [first, last] = thirds[PARTS[part]];
  return span(from + first, from + last, null, `${part} ${name}`, '~');
}

const decade = (from: number): DateUnit =>
  span(from, from + 9, String(from).slice(0, 3).concat('X'), from % 100 === 0 ? `${from}s (decade)` : `${from}s`);
const century = (nth: number): DateUnit =>
  span(100 * (nth - 1), 100 * nth - 1, `${nth - 1}XX`, `${ordinal(nth)} century`);

const NAMED_CENTURIES: Readonly<Record<string, string>> = {
  seventeenth: '17th',
  eighteenth: '18th',
  nineteenth: '19th',
  twentieth: '20th',
  'twenty-first': '21st',
};

type Rule = readonly [RegExp, (...groups: string[]) => DateUnit | Refusal];
const n = Number;
const PART = '(?:(early|mid|late)[ -](?:the )?)?';

/** What people write, most particular first. Years have four digits and start with 1 or 2. */
const RULES: readonly Rule[] = [
  [/^([12]\d{3})$/, (year = '') => single(year, year)],
  [/^([12]\d{3})-(\d\d)$/, (y, m) => month(n(y), n(m))],
  [/^([12]\d{3})-(\d\d)-(\d\d)$/, (y, m, d) => day(n(y), n(m), n(d))],
  [/^(\d\d?)[/.]([12]\d{3})$/, (m, y) => month(n(y), n(m))],
  [/^(\d\d?)([/.-])(\d\d?)\2([12]\d{3})$/, (a, mark = '', b, y) => numericDay(n(a), n(b), n(y), mark)],
  [/^(early|mid|late)[ -]([12]\d{3})$/, (part, y) => partOfYear(part as Part, n(y))],
  [/^([a-z]+\.?),? ?([12]\d{3})$/, (word = '', y) => (monthOf(word) ? month(n(y), monthOf(word)) : season(word, n(y)))],
  [/^(\d\d?)(?:st|nd|rd|th)? (?:of )?([a-z]+\.?),? ([12]\d{3})$/, (d, word = '', y) => wordDay(word, n(d), n(y))],
  [/^([a-z]+\.?) (\d\d?)(?:st|nd|rd|th)?,? ([12]\d{3})$/, (word = '', d, y) => wordDay(word, n(d), n(y))],
  [/^([a-z]+) of ([12]\d{3})$/, (word = '', y) => season(word, n(y))],
  [
    /^([12]\d)00'?s$/,
    (c) => refuse(`“${c}00s” can mean ten years or a hundred. Write ${c}00-${c}09 or ${ordinal(n(c) + 1)} century.`),
  ],
  [/^([12]\d00)'?s \(?decade\)?$/, (from) => decade(n(from))],
  [
    new RegExp(`^${PART}([12]\\d[1-9]0)'?s$`),
    (part, from) => (part ? partOf(part as Part, n(from), DECADE_THIRDS, `${from}s`) : decade(n(from))),
  ],
  [
    new RegExp(`^${PART}(1\\d|2[01])(?:st|nd|rd|th) (?:century|cent\\.?|c\\.?)$`),
    (part, nth) =>
      part ? partOf(part as Part, 100 * (n(nth) - 1), CENTURY_THIRDS, `${ordinal(n(nth))} century`) : century(n(nth)),
  ],
  [
    /^(?:[a-z]+\.? )?'?\d\d'?s?$|^\d\d?[/.-]\d\d?[/.-]\d\d$|^\d\d? [a-z]+\.? '?\d\d$/,
    () => refuse('Write the year in full, like 1931.'),
  ],
];

function season(word: string, year: number): DateUnit | Refusal {
  const code = Object.entries(SEASONS).find(([, name]) => name === (word === 'fall' ? 'autumn' : word))?.[0];
  if (!code) return refuse(`“${word}” is no month or season.`);
  return single(`${year}-${code}`, `${SEASONS[n(code)]} ${year}`);
}

function wordDay(word: string, date: number, year: number): DateUnit | Refusal {
  return monthOf(word) ? day(year, monthOf(word), date) : refuse(`“${word}” is no month.`);
}

function partOfYear(part: Part, year: number): DateUnit {
  const from = 1 + 4 * PARTS[part];
  return {
    start: edtfDate(year, from),
    end: edtfDate(year, from + 3),
    single: null,
    name: `${part} ${year}`,
    doubt: '~',
  };
}

const ABOUT =
  /^(?:about|abt\.?|around|circa|approx(?:imately|\.)?|roughly|ca\.?|c\.?|~)(?: ?(?=\d)| +)|[ ]?(?:approx\.?|~)$/;
const PERHAPS = /^(?:perhaps|possibly|maybe|probably|likely)(?: and)? +|^\? ?| ?(?:\(\?\)|\?)$/;
const BOTH = /%$/;
const FILLER = /^(?:the|in|on|year|dated|made in|made|(?:mon|tues?|wednes|thurs?|fri|satur|sun)day,?) /;

/** Takes the doubt words off a text. */
export function splitDoubt(text: string): { readonly rest: string; readonly doubt: Doubt } {
  let [rest, about, perhaps] = [text, false, false];
  for (let before = ''; before !== rest; ) {
    before = rest;
    rest = rest.replace(FILLER, '');
    for (const [pattern, isAbout, isPerhaps] of [
      [ABOUT, true, false],
      [PERHAPS, false, true],
      [BOTH, true, true],
    ] as const) {
      if (!pattern.test(rest)) continue;
      rest = rest.replace(pattern, '').trim();
      about ||= isAbout;
      perhaps ||= isPerhaps;
    }
  }
  return { rest, doubt: doubtOf(about, perhaps) };
}

/** Reads one unit with its doubt; null when it is nothing known here. Expects lower case and single spaces. */
export function readUnit(text: string): DateUnit | Refusal | null {
  const { rest, doubt } = splitDoubt(text);
  const plain = rest.replace(/^(.*?)(\S+)(?= cent)/, (all, before, word) =>
    NAMED_CENTURIES[word] ? before + NAMED_CENTURIES[word] : all,
  );
  for (const [pattern, read] of RULES) {
    const match = pattern.exec(plain);
    if (!match) continue;
    const unit = read(...match.slice(1));
    return isRefusal(unit) ? unit : { ...unit, doubt: addDoubt(unit.doubt, doubt) };
  }
  return null;
}

export const addDoubt = (a: Doubt, b: Doubt): Doubt =>
  doubtOf(
    [a, b].some((mark) => mark === '~' || mark === '%'),
    [a, b].some((mark) => mark === '?' || mark === '%'),
  );

/** Seasons have no agreed months, and the grammar takes them neither doubtful nor as the end of a range. */
export const isSeason = ({ start }: DateUnit): boolean => /^\d{4}-2[1-4]$/.test(start);

/** A unit as printed on a label; early, mid and late say already that they are about. */
export const unitLabel = ({ name, doubt, single: one, start, end }: DateUnit): string =>
  one === null && start !== end ? withDoubt(name, doubt === '%' ? '?' : '') : withDoubt(name, doubt);

/** The same inside a phrase: “before the 1940s”. */
export const unitInPhrase = (unit: DateUnit): string => {
  const label = unitLabel(unit);
  const isPeriod = unit.single === null || unit.single.endsWith('X');
  return isPeriod && label.startsWith(unit.name) ? `the ${label}` : label;
};

/** The unit in EDTF. A doubtful decade becomes an interval, the grammar refusing 194X~. */
export const unitEdtf = ({ start, end, single: one, doubt }: DateUnit): string =>
  doubt === '' && one !== null ? one : start === end ? start + doubt : `${start}${doubt}/${end}${doubt}`;
