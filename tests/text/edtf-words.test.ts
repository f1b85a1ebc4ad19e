/// <reference path="../../src/text/edtf.d.ts" />
import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'edtf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DateReading, edtfFromWords, readEdtf } from '../../src/text/edtf-words.ts';
import { checksOf, titleOf } from '../handbook/checks.ts';

/** “edtf | label | first day..last day”, or the refusal. */
const line = (reading: DateReading): string =>
  reading.ok
    ? `${reading.edtf} | ${reading.label} | ${reading.earliest ?? ''}..${reading.latest ?? ''}`
    : `refused: ${reading.reason}`;

describe('the meaning of a stored date', () => {
  it.each(checksOf('date').map((row) => [titleOf(row), row] as const))('%s', (_, row) => {
    const reading = readEdtf(String(row.inputs.text));
    expect(reading.ok && reading.meaning).toBe(row.expected);
  });

  // Meanings by the Extended Date/Time Format specification, Library of Congress, 2019; wording ours.
  it.each([
    ['1940~/1949~', 'about the 1940s'],
    ['1930?/1939?', 'perhaps the 1930s'],
    ['1800~/1899~', 'about the 19th century'],
    ['1900~/1909~', 'from about 1900 to about 1909'],
    ['1940~/1949', 'from about 1940 to 1949'],
    ['190X', 'some year from 1900 to 1909'],
    ['19XX', 'some year from 1900 to 1999'],
    ['1931-XX', 'some month in 1931'],
    ['1931-11-XX', 'some day in November 1931'],
    ['1931-XX-XX', 'some day in 1931'],
    ['1931-11-03', '3 November 1931'],
    ['1931-11~', 'about November 1931'],
    ['1931-21', 'spring 1931'],
    ['1940/..', 'open end, from 1940'],
    ['1940/', 'end unknown, from 1940'],
    ['/1940', 'start unknown, to 1940'],
    ['2026-10-17T10:30:00', 'a moment, its zone not given'],
  ])('%s means “%s”', (edtf, meaning) => {
    const reading = readEdtf(edtf);
    expect(reading.ok && reading.meaning).toBe(meaning);
  });
});

describe('first and last day of a stored date', () => {
  it.each([
    ['1931', '1931 | 1931 | 1931-01-01..1931-12-31'],
    ['193X', '193X | 1930s | 1930-01-01..1939-12-31'],
    ['1958-11', '1958-11 | November 1958 | 1958-11-01..1958-11-30'],
    ['2024-02', '2024-02 | February 2024 | 2024-02-01..2024-02-29'],
    ['../1940', '../1940 | until 1940 | ..1940-12-31'],
    ['1940/..', '1940/.. | 1940 or later | 1940-01-01..'],
    ['../..', '../.. | any time | ..'],
    ['1940/', '1940/ | from 1940 (end unknown) | 1940-01-01..'],
    ['1931-21', '1931-21 | spring 1931 | 1931-01-01..1931-12-31'],
    ['1931-24', '1931-24 | winter 1931 | 1931-01-01..1932-02-29'],
    // Half past midnight in London is still the day before in Greenwich; the day on the clock counts.
    [
      '2026-10-17T00:30:00+01:00',
      '2026-10-17T00:30:00+01:00 | 17 October 2026, 00:30 (+01:00) | 2026-10-17..2026-10-17',
    ],
  ])('%s', (edtf, expected) => expect(line(readEdtf(edtf))).toBe(expected));

  it.each([
    ['194X~', 'not a date in the form this keeps'],
    ['1931-02-29', 'names a day that does not exist'],
    ['1931/1931-02-30', 'not a date in the form this keeps'],
    ['1930-02-28/1931-02-29', 'names a day that does not exist'],
    ['1964/1931', 'ends before it starts'],
    ['Y17000', 'outside the years'],
    ['-0044', 'outside the years'],
    ['19', 'not a date in the form this keeps'],
    ['', 'not a date in the form this keeps'],
    ['[1938..1945]', 'not a date in the form this keeps'],
  ])('refuses %s: %s', (edtf, reason) => expect(line(readEdtf(edtf))).toContain(reason));
});

describe('what a milliner types', () => {
  it.each([
    ['about 1931', '1931~ | c. 1931 | 1931-01-01..1931-12-31'],
    ['c1931', '1931~ | c. 1931 | 1931-01-01..1931-12-31'],
    ['ca. 1931', '1931~ | c. 1931 | 1931-01-01..1931-12-31'],
    ['1931?', '1931? | 1931? | 1931-01-01..1931-12-31'],
    ['possibly 1931', '1931? | 1931? | 1931-01-01..1931-12-31'],
    ['c. 1931?', '1931% | c. 1931? | 1931-01-01..1931-12-31'],
    ['perhaps about 1931', '1931% | c. 1931? | 1931-01-01..1931-12-31'],
    ['in 1931', '1931 | 1931 | 1931-01-01..1931-12-31'],
    ['1930s', '193X | 1930s | 1930-01-01..1939-12-31'],
    ['the 1930’s', '193X | 1930s | 1930-01-01..1939-12-31'],
    ['c. 1940s', '1940~/1949~ | c. 1940s | 1940-01-01..1949-12-31'],
    ['194X~', '1940~/1949~ | c. 1940s | 1940-01-01..1949-12-31'],
    ['19xx?', '1900?/1999? | 20th century? | 1900-01-01..1999-12-31'],
    ['early 1930s', '1930~/1933~ | early 1930s | 1930-01-01..1933-12-31'],
    ['mid-1930s', '1934~/1936~ | mid 1930s | 1934-01-01..1936-12-31'],
    ['late 1930s', '1937~/1939~ | late 1930s | 1937-01-01..1939-12-31'],
    ['mid-1930s - late 1940s', '1934~/1949~ | c. 1934–1949 | 1934-01-01..1949-12-31'],
    ['early 1931', '1931-01~/1931-04~ | early 1931 | 1931-01-01..1931-04-30'],
    ['nineteenth century', '18XX | 19th century | 1800-01-01..1899-12-31'],
    ['late 19th c.', '1867~/1899~ | late 19th century | 1867-01-01..1899-12-31'],
    ['before 1940', '../1939 | before 1940 | ..1939-12-31'],
    ['pre-1940', '../1939 | before 1940 | ..1939-12-31'],
    ['before the 1940s', '../1939 | before the 1940s | ..1939-12-31'],
    ['before March 1932', '../1932-02 | before March 1932 | ..1932-02-29'],
    ['before 1 Jan 1958', '../1957-12-31 | before 1 January 1958 | ..1957-12-31'],
    ['before c. 1940', '../1940~ | before c. 1940 | ..1940-12-31'],
    ['by 1940', '../1940 | until 1940 | ..1940-12-31'],
    ['after 1940', '1941/.. | after 1940 | 1941-01-01..'],
    ['after 28 Feb 1931', '1931-03-01/.. | after 28 February 1931 | 1931-03-01..'],
    ['after December 1958', '1959-01/.. | after December 1958 | 1959-01-01..'],
    ['1940 or later', '1940/.. | 1940 or later | 1940-01-01..'],
    ['since the 1940s', '1940/.. | the 1940s or later | 1940-01-01..'],
    ['1931-64', '1931/1964 | 1931–1964 | 1931-01-01..1964-12-31'],
    ['1931–64', '1931/1964 | 1931–1964 | 1931-01-01..1964-12-31'],
    ['1931 to 1964', '1931/1964 | 1931–1964 | 1931-01-01..1964-12-31'],
    ['between 1931 and 1964', '1931/1964 | 1931–1964 | 1931-01-01..1964-12-31'],
    ['c. 1931-64', '1931~/1964~ | c. 1931–1964 | 1931-01-01..1964-12-31'],
    ['from c. 1931 to 1964', '1931~/1964 | from c. 1931 to 1964 | 1931-01-01..1964-12-31'],
    ['1931?–1964', '1931?/1964 | from 1931? to 1964 | 1931-01-01..1964-12-31'],
    ['1930s-40s', '1930/1949 | 1930–1949 | 1930-01-01..1949-12-31'],
    // In EDTF this would be autumn 1922; nobody types season codes into a date field.
    ['1922-23', '1922/1923 | 1922–1923 | 1922-01-01..1923-12-31'],
    ['1909–10', '1909/1910 | 1909–1910 | 1909-01-01..1910-12-31'],
    ['1931-11', '1931-11 | November 1931 | 1931-11-01..1931-11-30'],
    ['November 1958', '1958-11 | November 1958 | 1958-11-01..1958-11-30'],
    ['Nov. 1958', '1958-11 | November 1958 | 1958-11-01..1958-11-30'],
    ['Sept 1958', '1958-09 | September 1958 | 1958-09-01..1958-09-30'],
    ['11/1958', '1958-11 | November 1958 | 1958-11-01..1958-11-30'],
    ['Nov-Dec 1958', '1958-11/1958-12 | November 1958–December 1958 | 1958-11-01..1958-12-31'],
    ['17 Oct 2026', '2026-10-17 | 17 October 2026 | 2026-10-17..2026-10-17'],
    ['Saturday 17th of October 2026', '2026-10-17 | 17 October 2026 | 2026-10-17..2026-10-17'],
    ['October 17, 2026', '2026-10-17 | 17 October 2026 | 2026-10-17..2026-10-17'],
    ['17/10/2026', '2026-10-17 | 17 October 2026 | 2026-10-17..2026-10-17'],
    ['3.4.1958', '1958-04-03 | 3 April 1958 | 1958-04-03..1958-04-03'],
    ['17-19 Oct 2026', '2026-10-17/2026-10-19 | 17 October 2026–19 October 2026 | 2026-10-17..2026-10-19'],
    ['29 Feb 1932', '1932-02-29 | 29 February 1932 | 1932-02-29..1932-02-29'],
    ['spring 1931', '1931-21 | spring 1931 | 1931-01-01..1931-12-31'],
    ['fall of 1931', '1931-23 | autumn 1931 | 1931-01-01..1931-12-31'],
    ['1940/1940', '1940 | 1940 | 1940-01-01..1940-12-31'],
  ])('reads “%s” as %s', (typed, expected) => expect(line(edtfFromWords(typed))).toBe(expected));

  it.each([
    ['', 'Nothing is written yet.'],
    ['unknown', 'Leave the date empty'],
    ['today', 'Write the date itself'],
    ['before the war', 'Write years instead'],
    ['31', 'Write the year in full'],
    ['17/10/26', 'Write the year in full'],
    ['3/4/1958', 'could be 3 April or 4 March 1958'],
    ['1909-10', 'could be October 1909 or 1909 to 1910'],
    ['1900s', 'ten years or a hundred. Write 1900-1909 or 20th century'],
    ['1964-31', '1964 to 1931 ends before it starts'],
    ['1964-1931', 'ends before it starts'],
    ['31 Nov 1958', 'November 1958 has 30 days.'],
    ['29 Feb 1931', 'February 1931 has 28 days.'],
    ['13/13/1958', 'There is no month 13.'],
    ['about spring 1931', 'A season cannot be'],
    ['1931 or 1932', 'Write a range'],
    ['the old lady said so', 'is not a date this can read. Try'],
    ['x'.repeat(500), 'Write the date alone'],
  ])('refuses “%s”, saying: %s', (typed, reason) => {
    const reading = edtfFromWords(typed);
    expect(reading.ok).toBe(false);
    expect(line(reading)).toContain(reason);
  });
});

const year = fc.integer({ min: 1700, max: 2099 });
const month = fc.integer({ min: 1, max: 12 });
const two = (n: number) => String(n).padStart(2, '0');
const oneDate = fc.oneof(
  year.map(String),
  fc.tuple(year, month).map(([y, m]) => `${y}-${two(m)}`),
  fc
    .date({ min: new Date('1700-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
    .map((day) => day.toISOString().slice(0, 10)),
);
const doubt = fc.constantFrom('', '', '~', '?', '%');
const storedDate = fc.oneof(
  fc.tuple(oneDate, doubt).map(([date, mark]) => date + mark),
  year.map((y) => `${String(y).slice(0, 3)}X`),
  year.map((y) => `${String(y).slice(0, 2)}XX`),
  fc.tuple(year, fc.integer({ min: 21, max: 24 })).map(([y, season]) => `${y}-${season}`),
  fc.tuple(oneDate, doubt, fc.boolean()).map(([date, mark, end]) => (end ? `../${date}${mark}` : `${date}${mark}/..`)),
  fc
    .tuple(oneDate, oneDate, doubt, doubt)
    .filter(([a, b]) => a.slice(0, 4) < b.slice(0, 4))
    .map(([a, b, m, n]) => `${a}${m}/${b}${n}`),
);

// The grammar takes about a millisecond a date: room for a busy machine.
describe('whatever is written', { timeout: 30_000 }, () => {
  it('comes back from its label to the same stored date', () => {
    fc.assert(
      fc.property(storedDate, (stored) => {
        const reading = readEdtf(stored);
        expect(reading.ok, stored).toBe(true);
        if (!reading.ok) return;
        const again = edtfFromWords(reading.label);
        expect(again.ok && again.edtf, `${stored} printed as ${reading.label}`).toBe(stored);
      }),
      { numRuns: 600 },
    );
  });

  it('has days in order, inside the years it names', () => {
    fc.assert(
      fc.property(storedDate, (stored) => {
        const reading = readEdtf(stored);
        if (!reading.ok) throw new Error(`${stored} was refused.`);
        for (const day of [reading.earliest, reading.latest])
          if (day !== null) expect(day).toMatch(/^\d{4}-\d\d-\d\d$/);
        if (reading.earliest && reading.latest) expect(reading.earliest <= reading.latest).toBe(true);
        expect(reading.earliest === null).toBe(stored.startsWith('..'));
        expect(reading.latest === null).toBe(stored.endsWith('..'));
      }),
      { numRuns: 500 },
    );
  });

  const scraps = fc.constantFrom(
    '1931',
    '1930s',
    "'31",
    '64',
    '-',
    '–',
    '/',
    'c.',
    'about ',
    '?',
    '~',
    '%',
    'X',
    'before ',
    'after ',
    'to ',
    'and ',
    'between ',
    'Nov',
    'spring',
    '17',
    ' ',
    '.',
    'T10:30',
    '..',
    'century',
    '19th',
    'early ',
    'or later',
    ',',
  );
  it('is read or refused with a sentence, never anything else, and what is kept parses at level 1', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'grapheme', maxLength: 40 }),
          fc.array(scraps, { maxLength: 8 }).map((parts) => parts.join('')),
        ),
        (typed) => {
          const reading = edtfFromWords(typed);
          if (!reading.ok) {
            expect(reading.reason).toMatch(/[.:]$/);
            expect(reading.reason).not.toMatch(/undefined|NaN/);
            return;
          }
          expect(() => parse(reading.edtf, { level: 1 })).not.toThrow();
          expect(`${reading.meaning} ${reading.label}`).not.toMatch(/undefined|NaN/);
          expect(readEdtf(reading.edtf)).toMatchObject({
            ok: true,
            earliest: reading.earliest,
            latest: reading.latest,
          });
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('the date grammar', () => {
  it('is brought in by one file of the text ring, so that it can be loaded when first needed', () => {
    const folder = new URL('../../src/', import.meta.url);
    const users = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'))
      .filter((file) => /from 'edtf'|import\('edtf'\)/.test(readFileSync(new URL(file, folder), 'utf8')));
    expect(users.map((file) => file.replaceAll('\\', '/'))).toEqual(['text/edtf-words.ts']);
  });
});
