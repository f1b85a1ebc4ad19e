import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type CalendarEvent, calendarFile, escapedText, folded } from '../../src/exports/calendar.ts';

const MADE = Date.parse('2026-10-17T10:30:00Z');
const anEvent = (fields: Partial<CalendarEvent> = {}): CalendarEvent => ({
  uid: '019b76da-a800-7000-8000-000000000001-look-3@blockworth.invalid',
  start: '2026-10-31',
  summary: 'Look at L04 in quarantine',
  description: 'Fresh dust on the paper?',
  sequence: 3,
  cancelled: false,
  ...fields,
});

const read = (text: string): ICAL.Event[] =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
const readOne = (fields: Partial<CalendarEvent> = {}): ICAL.Event => {
  const [event] = read(calendarFile([anEvent(fields)], MADE));
  if (!event) throw new Error('No event was read.');
  return event;
};
const octets = (text: string): number => new TextEncoder().encode(text).length;
/** Any text a person may type, awkward characters often among it. */
const anyText = fc.string({
  unit: fc.oneof(
    fc.constantFrom(',', ';', '\\', '\n', ':', '"', 'é', '—', '½', '帽', '🎩', ' '),
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }),
  ),
  maxLength: 400,
});
/** What a value may not hold is left out, and line breaks are all one. SOURCE: RFC 5545, 3.3.11. */
const asKept = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the characters the standard forbids
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, '').replace(/\r\n|\r/g, '\n');

describe('a calendar file, read back by ical.js', () => {
  it('keeps a whole day a date, without a time zone', () => {
    const event = readOne();
    expect(event.startDate.isDate).toBe(true);
    expect(event.startDate.toString()).toBe('2026-10-31');
    expect(event.endDate.toString()).toBe('2026-11-01');
  });

  it('keeps a moment in universal time', () => {
    const event = readOne({ start: '2026-10-31T18:30:12.345Z' });
    expect(event.startDate.isDate).toBe(false);
    expect(event.startDate.zone.tzid).toBe('UTC');
    expect(event.startDate.toString()).toBe('2026-10-31T18:30:12Z');
  });

  it('says who made it, when, and how often it was changed', () => {
    const event = readOne();
    expect(event.uid).toBe(anEvent().uid);
    expect(event.sequence).toBe(3);
    expect(String(event.component.getFirstPropertyValue('dtstamp'))).toBe('2026-10-17T10:30:00Z');
    expect(event.component.parent?.getFirstPropertyValue('version')).toBe('2.0');
    expect(event.component.parent?.getFirstPropertyValue('prodid')).toContain('Blockworth');
  });

  it('rings at nine on a day and at once at a moment', () => {
    const alarm = (event: ICAL.Event) => event.component.getFirstSubcomponent('valarm');
    const day = alarm(readOne());
    expect(day?.getFirstPropertyValue('action')).toBe('DISPLAY');
    expect(day?.getFirstPropertyValue('description')).toBe('Look at L04 in quarantine');
    expect(String(day?.getFirstPropertyValue('trigger'))).toBe('PT9H');
    expect(String(alarm(readOne({ start: '2026-10-31T18:30:00Z' }))?.getFirstPropertyValue('trigger'))).toBe('PT0S');
  });

  it('takes out what is cancelled and lets it ring no more', () => {
    const event = readOne({ cancelled: true, sequence: 4 });
    expect(event.component.getFirstPropertyValue('status')).toBe('CANCELLED');
    expect(event.component.getFirstSubcomponent('valarm')).toBeNull();
  });

  it('is a calendar also with nothing in it', () => {
    expect(calendarFile([], MADE)).toBe(
      'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Blockworth//Reminders//EN\r\nCALSCALE:GREGORIAN\r\nEND:VCALENDAR\r\n',
    );
  });

  it('gives back whatever was typed, and no line is over 75 octets', () => {
    fc.assert(
      fc.property(anyText, anyText, (summary, description) => {
        const text = calendarFile([anEvent({ summary, description })], MADE);
        const [event] = read(text);
        expect(event?.summary ?? '').toBe(asKept(summary));
        expect(event?.description ?? '').toBe(asKept(description));
        for (const line of text.split('\r\n')) expect(octets(line)).toBeLessThanOrEqual(75);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      }),
      { numRuns: 300 },
    );
  });
});

describe('folding and escaping', () => {
  // RFC 5545, 3.1 and 3.3.11.
  it('leaves a line of exactly 75 octets whole and cuts the next one', () => {
    expect(folded('x'.repeat(75))).toBe('x'.repeat(75));
    expect(folded('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x`);
  });

  it('counts octets, not letters, and never cuts inside a letter', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
        const lines = folded(text.replace(/[\r\n]/g, '')).split('\r\n');
        for (const line of lines) {
          expect(octets(line)).toBeLessThanOrEqual(75);
          expect(() => encodeURIComponent(line)).not.toThrow();
        }
        expect(lines.map((line, index) => (index === 0 ? line : line.slice(1))).join('')).toBe(
          text.replace(/[\r\n]/g, ''),
        );
      }),
    );
  });

  it('escapes the backslash first', () => {
    expect(escapedText('a\\n; b, c\r\nd')).toBe('a\\\\n\\; b\\, c\\nd');
  });
});

// A second reader that shares no code with ours or the first: Debian's python3-icalendar.
const python = '/usr/bin/python3';
const hasPython = spawnSync(python, ['-c', 'import icalendar']).status === 0;

describe.skipIf(!hasPython)('the same file, read by python3-icalendar', () => {
  it('says the same days, moments and words', () => {
    const words = 'Dæmp, “warm”; 帽子 \\ end\nsecond line '.repeat(4);
    const text = calendarFile(
      [anEvent({ summary: words }), anEvent({ uid: 'b', start: '2026-10-31T18:30:00Z', cancelled: true, sequence: 9 })],
      MADE,
    );
    const script = `
import sys, json, icalendar
calendar = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
print(json.dumps([[str(e['UID']), e['DTSTART'].dt.isoformat(), str(e['SUMMARY']), int(e['SEQUENCE']), str(e['STATUS']), len(e.subcomponents)] for e in calendar.walk('VEVENT')]))
`;
    const { stdout, stderr } = spawnSync(python, ['-c', script], { input: text, encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(JSON.parse(stdout)).toEqual([
      [anEvent().uid, '2026-10-31', words, 3, 'CONFIRMED', 1],
      ['b', '2026-10-31T18:30:00+00:00', 'Look at L04 in quarantine', 9, 'CANCELLED', 0],
    ]);
  });
});
