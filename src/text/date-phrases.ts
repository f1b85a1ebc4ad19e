import type { Doubt } from './date-names.ts';
import { daysInMonth, edtfDate, MONTHS } from './date-names.ts';
import {
  addDoubt,
  type DateUnit,
  isRefusal,
  isSeason,
  type Refusal,
  readUnit,
  refuse,
  splitDoubt,
  unitEdtf,
  unitInPhrase,
  unitLabel,
} from './date-units.ts';

/** A phrase in EDTF, not yet checked by its grammar, and the words for a label where they say more than the EDTF. */
export interface DatePhrase {
  readonly edtf: string;
  readonly label?: string;
}

/** The day, month or year next to an EDTF date. */
function neighbour(date: string, step: 1 | -1): string {
  const [year = 0, month, day] = date.split('-').map(Number);
  if (month === undefined) return edtfDate(year + step);
  if (day === undefined) {
    const index = 12 * year + month - 1 + step;
    return edtfDate(Math.floor(index / 12), (index % 12) + 1);
  }
  if (day + step >= 1 && day + step <= daysInMonth(year, month)) return edtfDate(year, month, day + step);
  const [nextYear = 0, nextMonth = 1] = neighbour(edtfDate(year, month), step).split('-').map(Number);
  return edtfDate(nextYear, nextMonth, step === 1 ? 1 : daysInMonth(nextYear, nextMonth));
}

/** Open ends. Before and after leave the unit itself out, unless it is doubtful and has no sharp edge to leave out. */
type Open = (unit: DateUnit) => DatePhrase;
const before: Open = (unit) => ({
  edtf: `../${unit.doubt ? unit.start + unit.doubt : neighbour(unit.start, -1)}`,
  label: `before ${unitInPhrase(unit)}`,
});
const until: Open = (unit) => ({ edtf: `../${unit.end}${unit.doubt}`, label: `until ${unitInPhrase(unit)}` });
const after: Open = (unit) => ({
  edtf: `${unit.doubt ? unit.end + unit.doubt : neighbour(unit.end, 1)}/..`,
  label: `after ${unitInPhrase(unit)}`,
});
const since: Open = (unit) => ({ edtf: `${unit.start}${unit.doubt}/..`, label: `${unitInPhrase(unit)} or later` });

const OPEN: readonly (readonly [RegExp, Open])[] = [
  [/^(?:before|prior to|earlier than|pre[- ])\s*(.+)$/, before],
  [/^(?:until|till|up to|by|to|not (?:after|later than)|no later than)\s+(.+)$/, until],
  [/^(.+?) or (?:earlier|before)$/, until],
  [/^(?:after|later than|post[- ])\s*(.+)$/, after],
  [/^(.+?) (?:or (?:later|after)|onwards?|on)$/, since],
  [/^(?:since|from|not (?:before|earlier than)|no earlier than)\s+(.+?)(?: onwards?| on)?$/, since],
];

const SEASON_ENDS = 'A season cannot be an end of a range or in doubt. Write months or a year instead.';

/** Completes a range's short end: 1931–64, 1930s–40s, 17–19 Oct 2026, Nov–Dec 1958. */
function completeEnds(first: string, second: string): readonly [string, string] {
  const year = /(?<!\d)([12]\d)(\d)\d(s?)/.exec(first);
  const short = /^'?(\d\d?)(s?)$/.exec(splitDoubt(second).rest);
  if (year && short) {
    const [, century = '', tens = '', plural = ''] = year;
    const [, tail = '', shortPlural = ''] = short;
    if (tail.length === 2 && plural === shortPlural) return [first, second.replace(/'?\d\d/, century + tail)];
    if (tail.length === 1 && plural === '' && shortPlural === '')
      return [first, second.replace(/\d/, century + tens + tail)];
  }
  const last = readUnit(second);
  if (year || last === null || isRefusal(last)) return [first, second];
  const [lastYear = '', lastMonth] = last.start.split('-');
  const bareDay = /^\d\d?(?:st|nd|rd|th)?$/.test(first);
  return [
    bareDay && lastMonth
      ? `${first} ${MONTHS[Number(lastMonth) - 1]?.toLowerCase()} ${lastYear}`
      : `${first} ${lastYear}`,
    second,
  ];
}

/** @param shared doubt that stands before or after the whole range and so speaks of both ends */
function range(first: string, second: string, shared: Doubt): DatePhrase | Refusal | null {
  const [from, to] = completeEnds(first, second).map(readUnit);
  if (!from || !to) return null;
  if (isRefusal(from)) return from;
  if (isRefusal(to)) return to;
  if (isSeason(from) || isSeason(to)) return refuse(SEASON_ENDS);
  const start = from.start + addDoubt(from.doubt, shared);
  const end = to.end + addDoubt(to.doubt, shared);
  return { edtf: start === end ? start : `${start}/${end}` };
}

/** A range joined by a dash or “to”: every joint is tried, for “mid-1930s - late 1940s” has three. */
function joinedRange(text: string): DatePhrase | Refusal | null {
  const { rest, doubt } = splitDoubt(text);
  const ranges = [...rest.matchAll(/ ?[–-] ?| (?:to|till|until|through) /g)].map((joint) =>
    range(rest.slice(0, joint.index), rest.slice(joint.index + joint[0].length), doubt),
  );
  return ranges.find((reading) => reading && !isRefusal(reading)) ?? ranges.find((reading) => reading) ?? null;
}

/** A year and two digits joined by a hyphen: 1931-64 is a range, 1931-11 a month, 1909-10 could be either. */
function yearHyphen(text: string, doubt: Doubt): DatePhrase | Refusal | null {
  const match = /^([12]\d)(\d\d)-(\d\d?)$/.exec(text);
  if (!match) return null;
  const [, century = '', year = '', tail = ''] = match;
  const end = tail.length === 1 ? year.slice(0, 1) + tail : tail;
  const monthName = MONTHS[Number(tail) - 1];
  const years = `${century}${year} to ${century}${end}`;
  if (Number(end) > Number(year)) {
    if (!monthName) return { edtf: `${century}${year}${doubt}/${century}${end}${doubt}` };
    return refuse(`“${text}” could be ${monthName} ${century}${year} or ${years}. Write one of these.`);
  }
  if (monthName) return { edtf: `${century}${year}-${tail.padStart(2, '0')}${doubt}` };
  if (!isSeasonCode(tail)) return refuse(`“${text}” is no month, and ${years} ends before it starts.`);
  return doubt === '' ? { edtf: text } : refuse(SEASON_ENDS);
}

const isSeasonCode = (code: string): boolean => /^2[1-4]$/.test(code);

const DATE = '\\d{4}(?:-\\d\\d(?:-\\d\\d)?)?[~?%]?|\\d\\d[\\dX]X|\\d{4}-XX(?:-XX)?|\\d{4}-\\d\\d-XX';
const EDTF = new RegExp(
  `^(?:${DATE}|(?:${DATE}|\\.\\.|)/(?:${DATE}|\\.\\.|)|\\d{4}-\\d\\d-\\d\\dT[\\d:.]+(?:Z|[+-][\\d:]+)?)$`,
);
const DOUBTFUL_DECADE = /^(\d{2})(\d|X)X([~?%])$/;

function openEnd(text: string): DatePhrase | Refusal | null {
  for (const [pattern, open] of OPEN) {
    const unit = readUnit(pattern.exec(text)?.[1] ?? '');
    if (unit === null) continue;
    if (isRefusal(unit)) return unit;
    return isSeason(unit) ? refuse(SEASON_ENDS) : open(unit);
  }
  return null;
}

function oneUnit(text: string): DatePhrase | Refusal | null {
  const unit = readUnit(text);
  if (unit === null || isRefusal(unit)) return unit;
  if (isSeason(unit) && unit.doubt !== '') return refuse(SEASON_ENDS);
  return unit.single === null ? { edtf: unitEdtf(unit), label: unitLabel(unit) } : { edtf: unitEdtf(unit) };
}

const EXAMPLES = 'Try “about 1931”, “1930s”, “before 1940” or “17 Oct 2026”.';

/** No date takes more characters; what is longer is a note. */
const LONGEST = 80;

/** Answers for what is no date at all. */
const NO_DATE: readonly (readonly [RegExp, string])[] = [
  [/^$/, 'Nothing is written yet.'],
  [/^(?:unknown|undated|not known|no date|n\.? ?d\.?|none|\?+|-+)$/, 'Leave the date empty when it is not known.'],
  [
    /\b(?:today|yesterday|now|last|this|next|ago)\b/,
    'Write the date itself: these words change their meaning tomorrow.',
  ],
  [
    /\bwar\b|\bvictorian\b|\bedwardian\b|\bgeorgian\b|\bregency\b/,
    'Write years instead of a period’s name, like “before 1940”.',
  ],
  [/^[12]\d{3} or '?\d/, 'Write a range or “about” instead of “or”, like 1931-32.'],
];

/** What a milliner types → EDTF and label, or a refusal that says what to write instead. Pure text; no calendar library. */
export function readPhrase(typed: string): DatePhrase | Refusal {
  const plain = typed.trim().replace(/[‐‑−]/g, '-').replace(/[‒–—]/g, '–').replace(/[’‘]/g, "'").replace(/\s+/g, ' ');
  if (plain.length > LONGEST) return refuse(`Write the date alone. ${EXAMPLES}`);
  const refused = NO_DATE.find(([pattern]) => pattern.test(plain.toLowerCase()));
  if (refused) return refuse(refused[1]);
  const bare = splitDoubt(plain.toLowerCase());
  const hyphen = yearHyphen(bare.rest, bare.doubt);
  if (hyphen) return hyphen;
  const upper = plain.toUpperCase();
  const decade = DOUBTFUL_DECADE.exec(upper);
  if (decade) {
    const [, century = '', tens = '', doubt = ''] = decade;
    const [low, high] = tens === 'X' ? ['0', '9'] : [tens, tens];
    return { edtf: `${century}${low}0${doubt}/${century}${high}9${doubt}` };
  }
  if (EDTF.test(upper)) return { edtf: upper.replace(/^(.+)\/\1$/, '$1') };

  const text = plain.toLowerCase();
  const between = /^between (.+) and (.+)$/.exec(text) ?? /^from (.+?) (?:to|till|until|through) (.+)$/.exec(text);
  const reading = between
    ? range(between[1] ?? '', between[2] ?? '', '')
    : (openEnd(text) ?? oneUnit(text) ?? joinedRange(text));
  return reading ?? refuse(`“${typed.trim()}” is not a date this can read. ${EXAMPLES}`);
}
